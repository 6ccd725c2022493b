/**
 * Readings against the receptance coupling written out in plain complex numbers: the stack's own mass
 * and stiffness matrices, one dense system for seat and stack together, one sum per mode.
 */

import { Matrix, solve } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { SolveError } from "../../src/errors.ts";
import { zeroPanels } from "../../src/linalg/panels.ts";
import { seatOf } from "../../src/mesh/seat.ts";
import type { Candidate } from "../../src/model/types.ts";
import { coupleStack, couplingRoom } from "../../src/response/coupling.ts";
import type { Harmonics } from "../../src/response/harmonic.ts";
import { ofUnitAmplitude } from "../../src/response/load.ts";
import { stackDynamics } from "../../src/response/mount-stiffness.ts";
import { type Place, placesOf, readingPoint } from "../../src/response/place.ts";
import { PAIRS } from "../../src/response/port.ts";
import { type Reading, readPlace } from "../../src/response/reading.ts";
import { type SeatFlexibility, seatFlexibility } from "../../src/response/residual.ts";
import { packHarmonics } from "../../src/response/shaken.ts";
import { crossFrame } from "../modes/toys.ts";
import { type Shaken, shake } from "./pipeline.ts";

const DEGREE = Math.PI / 180;
const G = 9.80665;

const bare = shake(
  crossFrame({ lopsided: true, lossFactor: 0.03 }, { meshSize: 15, stack: undefined }),
  { modes: 30 },
);
const [middle, nose] = bare.model.candidates;
const SOFT = { name: "soft", axial: 7e3, lateral: 4e3, lossFactor: 0.2, z: 2e-3 };

/** The candidate with its stack; the chip is off the centre of gravity in all directions. */
function placeOf(s: Shaken, c: Candidate): Place {
  const seat = seatOf(s.mesh.grids[c.plate], c.holes, c.footprint, c.cg);
  if (!seat) throw new Error("no plate there");
  const mounted = { seat, stack: stackDynamics(c), chip: [6e-3, -4e-3, 2e-3] as const };
  const rest: SeatFlexibility = (seats, psi) => seatFlexibility(s.system, s.solved, seats, psi);
  return placesOf(s.h, rest, [mounted])[0];
}

type Complex = readonly [re: number, im: number];
const times = (a: Complex, b: Complex): Complex => [
  a[0] * b[0] - a[1] * b[1],
  a[0] * b[1] + a[1] * b[0],
];
const plus = (a: Complex, b: Complex): Complex => [a[0] + b[0], a[1] + b[1]];
const sum = (all: readonly Complex[]) => all.reduce(plus, [0, 0]);
const six = <T>(f: (i: number) => T): T[] => [0, 1, 2, 3, 4, 5].map(f);

/** 1/(lambda (1 + i eta) - omega^2) of a term. */
function receptance({ solved: { modes } }: Shaken, term: number, omega: number): Complex {
  const elastic = term < modes.lambda.length;
  const lambda = elastic ? modes.lambda[term] : 0;
  const eta = elastic ? modes.described[term].lossFactor : 0;
  const [re, im] = [lambda - omega ** 2, lambda * eta];
  return [re / (re ** 2 + im ** 2), -im / (re ** 2 + im ** 2)];
}

/** The seat's six motions under one order of one rotor, the stack not there. */
function bareMotion(s: Shaken, place: Place, order: number, rotor: number, at: number): Complex[] {
  const { kind, coefficient, order: multiple } = s.excitation.orders[order];
  const speed = s.excitation.grid[at];
  const { spin } = s.model.rotors[rotor];
  const f = ofUnitAmplitude(kind, spin, (name) => s.h.loads[rotor][name]);
  const rest = ofUnitAmplitude(kind, spin, (name) => place.rest[rotor][name]);
  const A: Complex = [coefficient * speed ** 2, 0];
  const terms = place.psi.length / 6;
  return six((i) => {
    const modal = Array.from({ length: terms }, (_, t) => {
      const g = receptance(s, t, multiple * speed);
      return times([place.psi[i * terms + t], 0], times(g, [f.re[t], f.im[t]]));
    });
    return times(A, plus(sum(modal), [rest.re[i], rest.im[i]]));
  });
}

/** H of the bare frame at the seat. */
function seatReceptance(s: Shaken, place: Place, omega: number): Complex[][] {
  const terms = place.psi.length / 6;
  return six((i) =>
    six((j) => {
      const modal = Array.from({ length: terms }, (_, t) =>
        times([place.psi[i * terms + t] * place.psi[j * terms + t], 0], receptance(s, t, omega)),
      );
      return plus(sum(modal), [place.flexibility[6 * i + j], 0]);
    }),
  );
}

/**
 * The stack's motion. Unknowns b of the seat and s of the stack:
 *
 *   b - omega^2 H M s = u0
 *   K (1 + i eta) (s - b) - omega^2 M s = 0, or s = b where it is screwed down
 */
function coupled(H: Complex[][], u0: Complex[], c: Candidate, omega: number): Complex[] {
  const { M, K, lossFactor } = stackDynamics(c);
  const A = Array.from({ length: 12 }, () => Array.from({ length: 12 }, (): Complex => [0, 0]));
  const right = Array.from({ length: 12 }, (_, i): Complex => u0[i] ?? [0, 0]);
  six((i) => {
    A[i][i] = [1, 0];
    six((j) => {
      A[i][6 + j] = times([-(omega ** 2) * M[j], 0], H[i][j]);
      const k: Complex = K ? [K[6 * i + j], K[6 * i + j] * lossFactor] : [i === j ? 1 : 0, 0];
      // rows of one size, for the sake of the digits
      const scale = K ? 1 / K[7 * i] : 1;
      A[6 + i][j] = times([-scale, 0], k);
      A[6 + i][6 + j] = times([scale, 0], plus(k, [K && i === j ? -(omega ** 2) * M[i] : 0, 0]));
    });
  });
  const real = A.flatMap((row) => [
    row.flatMap(([re, im]) => [re, -im]),
    row.flatMap(([re, im]) => [im, re]),
  ]);
  const x = solve(new Matrix(real), Matrix.columnVector(right.flat())).to1DArray();
  return six((i) => [x[12 + 2 * i], x[13 + 2 * i]]);
}

/** Mean squares of the chip's six motions, acceleration in g^2 and rate in (deg/s)^2. */
function powers([x, y, z]: Place["chip"], u: Complex[], omega: number): number[] {
  const [, , , p, q, r] = u;
  const by = (a: Complex, lever: number) => times(a, [lever, 0]);
  // u + theta x (x, y, z)
  const chip = [
    sum([u[0], by(q, z), by(r, -y)]),
    sum([u[1], by(r, x), by(p, -z)]),
    sum([u[2], by(p, y), by(q, -x)]),
    p,
    q,
    r,
  ];
  return chip.map(([re, im], i) => {
    const gain = i < 3 ? omega ** 2 / G : omega / DEGREE;
    return (gain ** 2 * (re ** 2 + im ** 2)) / 2;
  });
}

/** Largest relative difference of any power by order and by axis from the plain evaluation. */
function worst(s: Shaken, reading: Reading, place: Place, c?: Candidate): number {
  let error = 0;
  const compare = (ours: number, theirs: number) => {
    error = Math.max(error, Math.abs(ours / theirs - 1));
  };
  for (const at of [0, 1, 77, 150, 223, s.excitation.grid.length - 1]) {
    const axes = [0, 0, 0, 0, 0, 0];
    s.excitation.orders.forEach(({ order: multiple }, order) => {
      const omega = multiple * s.excitation.grid[at];
      const H = c && seatReceptance(s, place, omega);
      const each = s.model.rotors.map((_, rotor) => {
        const u0 = bareMotion(s, place, order, rotor, at);
        return powers(place.chip, c && H ? coupled(H, u0, c, omega) : u0, omega);
      });
      const total = six((i) => each.reduce((t, p) => t + p[i], 0));
      total.forEach((p, i) => {
        axes[i] += p;
      });
      compare(reading.accelPower[order][at], total[0] + total[1] + total[2]);
      compare(reading.gyroPower[order][at], total[3] + total[4] + total[5]);
    });
    axes.forEach((p, i) => {
      const axis = i < 3 ? reading.accelAxisPower[i] : reading.gyroAxisPower[i - 3];
      compare(axis[at], p);
    });
  }
  return error;
}

const read = (s: Shaken, place: Place) => readPlace({ h: s.h, motions: packHarmonics(s.h) }, place);

describe("readings against plain complex algebra", () => {
  test.each([
    ["screwed down", middle],
    ["screwed down at the nose", nose],
    ["on isolators", { ...middle, isolators: SOFT }],
    ["on isolators at the nose", { ...nose, isolators: SOFT }],
  ])("a stack %s", (_, c) => {
    const place = placeOf(bare, c);
    // measured: 4e-14
    expect(worst(bare, read(bare, place), place, c)).toBeLessThan(1e-12);
  });

  test("a point without mass", () => {
    const { mesh, h } = bare;
    const seat = seatOf(mesh.grids[nose.plate], nose.holes, nose.footprint, nose.chip);
    if (!seat) throw new Error("no plate there");
    const place = readingPoint(h, seat);
    expect(worst(bare, read(bare, place), place)).toBeLessThan(1e-12);
  });

  test("loads and speeds that fill no panel", () => {
    const { h } = bare;
    const orders = h.orders.slice(0, 3);
    const grid = h.excitation.grid.slice(0, 299);
    const few: Harmonics = {
      ...h,
      orders,
      excitation: { ...h.excitation, orders, grid, weights: h.excitation.weights.slice(0, 299) },
      responses: h.responses.filter((r) => r.order < 3 && r.rotor < 3),
    };
    const three: Shaken = {
      ...bare,
      h: few,
      model: { ...bare.model, rotors: bare.model.rotors.slice(0, 3) },
      excitation: few.excitation,
    };
    const place = placeOf(three, middle);
    const reading = read(three, place);
    expect(worst(three, reading, place, middle)).toBeLessThan(1e-12);
    expect(reading.gyroShares.length).toBe(3 * few.rotors.length);
  });

  test("what orders and rotors share over the mix is what the axes read", () => {
    const { gyroShares, accelShares, gyroAxes, accelAxes } = read(bare, placeOf(bare, nose));
    const total = (values: Float64Array) => values.reduce((t, v) => t + v, 0);
    expect(gyroShares.length).toBe(24);
    expect(total(gyroShares) / total(gyroAxes)).toBeCloseTo(1, 12);
    expect(total(accelShares) / total(accelAxes)).toBeCloseTo(1, 12);
  });
});

test("right on a resonance that nothing damps there is no answer", () => {
  // a unit mass on a spring of unit flexibility along each coordinate, at 1 rad/s
  const identity = Float64Array.from({ length: 36 }, (_, i) => (i % 7 === 0 ? 1 : 0));
  const motion = {
    multiple: 1,
    omega: Float64Array.of(1),
    loads: [{ order: 0, rotor: 0 }],
    half: 4,
    receptance: zeroPanels(0, 2),
    amplitude: zeroPanels(0, 8),
    rigid: new Float64Array(0),
  };
  const port = {
    psi: new Float64Array(0),
    rigid: new Float64Array(0),
    pairs: new Float64Array(0),
    loose: new Float64Array(21),
    flexibility: Float64Array.from(PAIRS, ([i, j]) => (i === j ? 1 : 0)),
    W: identity,
    chip: identity,
  };
  const kappa = new Float64Array(6).fill(Number.POSITIVE_INFINITY);
  const stack = { W: identity, back: identity, kappa, lossFactor: 0 };
  const u0 = new Float64Array(48).fill(1);
  const solve = (flexibility: Float64Array) => {
    const out = new Float64Array(48);
    coupleStack(out, u0, couplingRoom(), motion, 0, { ...port, flexibility }, stack);
    return out;
  };
  expect(() => solve(port.flexibility)).toThrow(SolveError);
  // 1 - omega^2 F = 1/2
  expect(solve(port.flexibility.map((f) => f / 2))).toEqual(new Float64Array(48).fill(2));
});
