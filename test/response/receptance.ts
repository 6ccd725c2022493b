/** Receptances: the motion per unit load at any frequency, by superposition and by brute force. */

import type { OrderForce } from "../../src/excitation/types.ts";
import { multiply } from "../../src/linalg/product.ts";
import { expand } from "../../src/matrices/reduction.ts";
import { type Seat as Sensor, seatMotion as sense } from "../../src/mesh/seat.ts";
import type { Mesh } from "../../src/mesh/types.ts";
import type { Rotor } from "../../src/model/types.ts";
import { type Harmonics, harmonics } from "../../src/response/harmonic.ts";
import { rotorLoads } from "../../src/response/load.ts";
import { type Complex, type Dense, denseSystem, directMotions, rotorForce } from "./direct.ts";
import { motionOf, type Shaken } from "./pipeline.ts";

/** One load of each kind, once per turn; A = omega^2, so that motions are divided by it. */
const KINDS: readonly OrderForce[] = (
  ["side force", "rotating moment", "thrust", "torque"] as const
).map((kind) => ({ name: kind, order: 1, kind, coefficient: 1, source: "" }));

/** The modal amplitudes at chosen frequencies (rad/s) under each kind of load on each rotor. */
export function harmonicsAt(
  { mesh, model, solved, residuals, excitation }: Shaken,
  grid: Float64Array,
) {
  const weights = new Float64Array(grid.length).fill(1 / grid.length);
  const e = { ...excitation, orders: KINDS, grid, weights };
  return harmonics(mesh, solved.modes, solved.rigidShapes, model.rotors, residuals, e);
}

/** The mesh's motion under each unit load, rotor by rotor and kind by kind, at one frequency. */
export function superposed(h: Harmonics, at: number): Complex[] {
  return h.rotors.flatMap((_, rotor) =>
    KINDS.map((_, order) => {
      const { re, im, A } = motionOf(h, order, rotor, at);
      return { re: re.map((v) => v / A), im: im.map((v) => v / A) };
    }),
  );
}

/** The same from (K + i D - omega^2 M) x = f. */
export function direct({ system, mesh, model }: Shaken, d: Dense, omega: number): Complex[] {
  const none = new Float64Array(d.n);
  const loads = model.rotors.flatMap((rotor): Complex[] => {
    const on = (F: readonly number[], M?: readonly number[]) =>
      rotorForce(system, mesh, rotor, F, M);
    return [
      { re: on([1, 0, 0]), im: on([0, -rotor.spin, 0]) },
      { re: on([0, 0, 0], [1, 0, 0]), im: on([0, 0, 0], [0, -rotor.spin, 0]) },
      { re: on([0, 0, 1]), im: none },
      { re: on([0, 0, 0], [0, 0, 1]), im: none },
    ];
  });
  return directMotions(d, omega, loads).map(({ re, im }) => ({
    re: expand(system.reduction, re),
    im: expand(system.reduction, im),
  }));
}

/**
 * The structure with its modal damping as one matrix in physical coordinates: the part of the
 * stiffness that is out of phase, D = M Phi diag(eta lambda) Phi'M, so that Phi'D Phi is
 * diag(eta lambda). All modes must be at hand.
 */
export function modallyDamped({ system, mesh, solved }: Shaken): Dense {
  const plain = denseSystem(system, mesh, () => 0);
  const { n } = plain;
  const { lambda, phi, described } = solved.modes;
  const loss = new Float64Array(n * n);
  const m = new Float64Array(n);
  lambda.forEach((l, k) => {
    multiply(m, system.M, phi.subarray(k * n, (k + 1) * n));
    const c = described[k].lossFactor * l;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) loss[i * n + j] += c * m[i] * m[j];
    }
  });
  return { ...plain, loss };
}

/** Work of a unit load on a motion of the mesh: the complex amplitude of the load's own displacement. */
export function workOn(
  mesh: Mesh,
  rotor: Rotor,
  kind: number,
  u: Complex,
): readonly [number, number] {
  const { sideX, sideY, momentX, momentY, thrust, torque } = rotorLoads(mesh, rotor);
  const at = (a: Float64Array, { node, force }: typeof sideX) =>
    force.reduce((sum, f, i) => sum + f * a[6 * node + i], 0);
  if (kind > 1) {
    const load = kind === 2 ? thrust : torque;
    return [at(u.re, load), at(u.im, load)];
  }
  // (x - i s y)'u, not conjugated
  const [x, y] = kind === 0 ? [sideX, sideY] : [momentX, momentY];
  const s = rotor.spin;
  return [at(u.re, x) + s * at(u.im, y), at(u.im, x) - s * at(u.re, y)];
}

/** A board that is part of a named point: its rotations and displacements. */
export function pointSensor(mesh: Mesh, point: string): Sensor {
  const node = mesh.pointNodes.get(point);
  if (node === undefined) throw new Error(`no point "${point}"`);
  const rows = new Float64Array(36);
  for (let i = 0; i < 6; i++) rows[6 * i + ((i + 3) % 6)] = 1;
  return { dofs: Int32Array.from({ length: 6 }, (_, i) => 6 * node + i), rows };
}

/** Below, at and between the lowest modes and above these, rad/s. */
export function manyFrequencies(lambda: Float64Array, count: number): Float64Array {
  const omega = Array.from(lambda.subarray(0, count + 1), Math.sqrt);
  const between = omega.slice(1).map((w, i) => Math.sqrt(w * omega[i]));
  const below = [0.1, 0.5, 0.8].map((f) => f * omega[0]);
  const above = [2, 5].map((f) => f * omega[count]);
  return Float64Array.from([...below, ...omega.slice(0, count), ...between, ...above]).sort();
}

/**
 * A bound on what a static residual flexibility leaves out, for each reading (6) of a sensor under a
 * load (numbered as by `superposed`) at omega: each mode that is not kept adds
 * psi phi'f/(lambda - sigma) where it should add psi phi'f/(lambda (1 + i eta) - omega^2), so it errs
 * by at most |psi phi'f|/(lambda - sigma) (omega^2 + |sigma| + eta lambda)/(lambda - omega^2).
 *
 * @param all with every mode
 * @param kept modes, all above omega among those left out
 * @param sigma shift of the residual flexibility
 */
export function residualBound(
  { mesh, model, solved }: Shaken,
  kept: number,
  sigma: number,
  sensor: Sensor,
): (load: number, omega: number) => Float64Array {
  const { shapes, lambda, described } = solved.modes;
  const leftOut = shapes.slice(kept).map((shape, j) => ({
    psi: sense(sensor, shape).map(Math.abs),
    f: model.rotors.flatMap((rotor) => KINDS.map((_, kind) => modalLoad(mesh, rotor, kind, shape))),
    lambda: lambda[kept + j],
    eta: described[kept + j].lossFactor,
  }));
  return (load, omega) => {
    const bound = new Float64Array(6);
    for (const { psi, f, lambda: l, eta } of leftOut) {
      const off = (omega ** 2 + Math.abs(sigma) + eta * l) / (l - omega ** 2);
      for (let i = 0; i < 6; i++) bound[i] += ((psi[i] * f[load]) / (l - sigma)) * off;
    }
    return bound;
  };
}

/** |phi'f| of a mode. */
function modalLoad(mesh: Mesh, rotor: Rotor, kind: number, shape: Float64Array): number {
  return Math.hypot(
    ...workOn(mesh, rotor, kind, { re: shape, im: new Float64Array(shape.length) }),
  );
}
