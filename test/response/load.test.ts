/** Unit loads of a rotor and the phase of those that turn, by plain algebra on the mesh moved as one. */

import { describe, expect, test } from "vitest";
import { buildMesh } from "../../src/mesh/build.ts";
import { buildModel } from "../../src/model/build.ts";
import { modalForce, ofUnitAmplitude, rotorLoads } from "../../src/response/load.ts";
import { crossFrame } from "../modes/toys.ts";

type Vector = readonly [number, number, number];

const model = buildModel(crossFrame());
const mesh = buildMesh(model);
const rotor = model.rotors[1];
const loads = rotorLoads(mesh, rotor);

/** The mesh moved as one: u = d + phi x r, the same small turn everywhere. */
function rigidMotion(d: Vector, phi: Vector): Float64Array {
  const nodes = mesh.xyz.length / 3;
  const out = new Float64Array(6 * nodes);
  for (let k = 0; k < nodes; k++) {
    const [x, y, z] = mesh.xyz.subarray(3 * k, 3 * k + 3);
    out.set([d[0] + phi[1] * z - phi[2] * y], 6 * k);
    out.set([d[1] + phi[2] * x - phi[0] * z], 6 * k + 1);
    out.set([d[2] + phi[0] * y - phi[1] * x], 6 * k + 2);
    out.set(phi, 6 * k + 3);
  }
  return out;
}

const D: Vector = [0.3, -0.7, 0.2];
const PHI: Vector = [1.1, -0.4, 0.6];

describe("the work of a unit load on a rigid motion", () => {
  test("of a couple is the turn about its axis, wherever the rotor sits", () => {
    const motion = rigidMotion(D, PHI);
    expect(modalForce(motion, loads.momentX)).toBeCloseTo(PHI[0], 12);
    expect(modalForce(motion, loads.momentY)).toBeCloseTo(PHI[1], 12);
    expect(modalForce(motion, loads.torque)).toBeCloseTo(PHI[2], 12);
  });

  test("of a force is the motion of the propeller's centre along it", () => {
    const motion = rigidMotion(D, PHI);
    const [x, y, z] = rotor.position;
    expect(modalForce(motion, loads.sideX)).toBeCloseTo(D[0] + PHI[1] * z - PHI[2] * y, 12);
    expect(modalForce(motion, loads.sideY)).toBeCloseTo(D[1] + PHI[2] * x - PHI[0] * z, 12);
    expect(modalForce(motion, loads.thrust)).toBeCloseTo(D[2] + PHI[0] * y - PHI[1] * x, 12);
  });
});

describe.each([
  ["side force", "sideX", "sideY"],
  ["rotating moment", "momentX", "momentY"],
] as const)("%s", (kind, x, y) => {
  /** Six components of the load at a phase of the turn. */
  const at = (spin: 1 | -1, phase: number) => {
    const { re, im } = ofUnitAmplitude(kind, spin, (load) => loads[load].force);
    // Re[(re + i im) e^(i phase)]
    return re.map((r, i) => r * Math.cos(phase) - im[i] * Math.sin(phase));
  };
  const sum = (a: number, b: number) => loads[x].force.map((v, i) => a * v + b * loads[y].force[i]);
  const expectNear = (a: Float64Array, b: Float64Array) => {
    for (const i of a.keys()) expect(a[i]).toBeCloseTo(b[i], 12);
  };

  test.each([1, -1] as const)(
    "points forward, a quarter turn later with spin %i sideways",
    (spin) => {
      expectNear(at(spin, 0), sum(1, 0));
      // anticlockwise seen from above: from x (forward) to y (left)
      expectNear(at(spin, Math.PI / 2), sum(0, spin));
      expectNear(at(spin, Math.PI), sum(-1, 0));
    },
  );

  test("keeps its size while it turns", () => {
    for (const phase of [0.3, 1.2, 2.5, 4.4]) {
      expectNear(at(-1, phase), sum(Math.cos(phase), -Math.sin(phase)));
    }
  });
});

test("thrust and torque stay where they are", () => {
  for (const kind of ["thrust", "torque"] as const) {
    const { re, im } = ofUnitAmplitude(kind, -1, (load) => loads[load].force);
    expect(re).toBe(loads[kind].force);
    expect(im).toEqual(new Float64Array(6));
  }
});
