/** Modes of a frame with a stack joined to it, against the frame with the stack in its matrices. */

import { describe, expect, test } from "vitest";
import { multiply } from "../../src/linalg/product.ts";
import { restrict } from "../../src/matrices/reduction.ts";
import type { Candidate } from "../../src/model/types.ts";
import { type CoupledModes, coupledModes } from "../../src/response/coupled-modes.ts";
import { stackDynamics } from "../../src/response/mount-stiffness.ts";
import { type Place, readingPoint } from "../../src/response/place.ts";
import { readPlace } from "../../src/response/reading.ts";
import { type Dense, denseSystem } from "./direct.ts";
import { ALL, type Bare, bareOf, joined, placeOf, smallCross } from "./joined.ts";

const HERTZ = 2 * Math.PI;
const TOP = 600;
const SOFT = { axial: "6 kN/m", lateral: "3 kN/m", lossFactor: 0.3 };
const NOSE = { plate: "hub", at: [44, 0], holes: { spacing: "20 mm" } };
const PLACES = {
  candidates: {
    nose: NOSE,
    "nose, soft": { ...NOSE, isolators: SOFT },
    "left edge, below": { ...NOSE, at: [10, 26], side: "below" },
  },
};

/** Number of frequencies below omega: negative pivots of K - omega^2 M, by elimination (Sylvester). */
function countBelow({ n, K, M }: Dense, omega: number): number {
  const A = K.map((k, i) => k - omega * omega * M[i]);
  let below = 0;
  for (let p = 0; p < n; p++) {
    const pivot = A[p * n + p];
    if (pivot < 0) below++;
    for (let i = p + 1; i < n; i++) {
      const factor = A[i * n + p] / pivot;
      if (factor === 0) continue;
      for (let j = p + 1; j < n; j++) A[i * n + j] -= factor * A[p * n + j];
    }
  }
  return below;
}

/** Numbers and angular frequencies of the elastic coupled modes up to TOP. */
function lowest({ lambda }: CoupledModes, rigid: number) {
  return Array.from(lambda, (l, k) => ({ k, omega: Math.sqrt(l) })).filter(
    ({ k, omega }) => k >= rigid && omega < HERTZ * TOP,
  );
}

const HUB = [
  [-60, -40],
  [-30, -40],
  [-30, 40],
  [-60, 40],
];

/** Largest shares by which frequencies may be off; about three times what was measured. */
const FRAMES = [
  { name: "a board of 20 g", file: smallCross({}, {}, PLACES), rigid: 6, within: 2e-6 },
  {
    name: "one as heavy as the frame",
    file: smallCross({}, { mass: "300 g" }, PLACES),
    rigid: 6,
    within: 5e-5,
  },
  {
    name: "one as light as a feather",
    file: smallCross({}, { mass: "0.05 g" }, { candidates: { nose: NOSE } }),
    rigid: 6,
    within: 1e-9,
  },
  {
    name: "a frame whose tail is held",
    file: smallCross(
      {},
      {},
      { ...PLACES, supports: { bench: { plate: "hub", within: HUB, fix: "all" } } },
    ),
    rigid: 0,
    within: 2e-6,
  },
];

describe.each(FRAMES)("$name", ({ name, file, rigid, within }) => {
  const frame = bareOf(file, 40, 20);
  const all = frame.model.candidates.map((c) => {
    const place = placeOf(frame, c);
    return { c, place, coupled: coupledModes(frame.solved.modes, place) };
  });

  test("each frequency up to 600 Hz is where the count of pivots with the stack in the mesh steps", () => {
    if (name.includes("heavy")) {
      expect(all[0].c.stack.mass / frame.mass.mass).toBeGreaterThan(0.7);
    }
    for (const { c, coupled } of all) {
      const { system, mesh } = joined(frame, c, 1);
      const dense = denseSystem(system, mesh);
      const found = lowest(coupled, rigid);
      expect(found.length).toBeGreaterThan(7);
      for (const { k, omega } of found) {
        expect(countBelow(dense, omega * (1 - within))).toBeLessThanOrEqual(k);
        expect(countBelow(dense, omega * (1 + within))).toBeGreaterThan(k);
      }
    }
  });

  test("modes are orthonormal in the mass of the frame and of the stack", () => {
    for (const { c, coupled, place } of all) {
      const shapes = lowest(coupled, 0).map(({ k }) => motionOf(frame, coupled, place, k));
      shapes.forEach((a, i) => {
        shapes.forEach((b, j) => {
          const sum =
            a.times(b) + a.stack.reduce((s, u, d) => s + u * massOf(c)[d] * b.stack[d], 0);
          expect(sum).toBeCloseTo(i === j ? 1 : 0, 8);
        });
      });
    }
  });

  test("isolators hold none of the strain where there are none, and all of it in their own modes", () => {
    for (const { c, coupled } of all) {
      const shares = lowest(coupled, rigid).map(({ k }) => coupled.isolatorShare[k]);
      if (!c.isolators) expect(Math.max(...shares)).toBe(0);
      else {
        const whole = joined(frame, c, shares.length).solved.modes.described;
        shares.forEach((share, i) => {
          const mount = whole[i].shares.find((s) => s.kind === "mount")?.strain ?? 0;
          // parts with less than 1 % of both energies are not listed
          expect(Math.abs(share - mount)).toBeLessThan(mount === 0 ? 0.01 : 2e-3);
        });
        expect(Math.max(...shares)).toBeGreaterThan(0.9);
      }
    }
  });

  test("so does the loss factor of each mode", () => {
    for (const { c, coupled } of all) {
      const found = lowest(coupled, rigid);
      const whole = joined(frame, c, found.length).solved.modes.described;
      found.forEach(({ k }, i) => {
        expect(coupled.lossFactor[k] / whole[i].lossFactor).toBeCloseTo(1, 2);
      });
      expect([...coupled.lossFactor.subarray(0, rigid)]).toEqual(Array(rigid).fill(0));
    }
  });
});

const massOf = (c: Candidate) => stackDynamics(c).M;

/** A coupled mode as the bare frame's mesh and the stack's centre of gravity move. */
function motionOf({ system, bare }: Bare, coupled: CoupledModes, place: Place, k: number) {
  const terms = bare.h.shapes.length;
  const u = new Float64Array(bare.h.shapes[0].length);
  bare.h.shapes.forEach((shape, t) => {
    const a = coupled.amplitudes[k * terms + t];
    for (let i = 0; i < u.length; i++) u[i] += a * shape[i];
  });
  const q = restrict(system.reduction, u);
  const Mq = new Float64Array(q.length);
  multiply(Mq, system.M, q);
  const back = place.stack?.back ?? new Float64Array(36);
  const y = coupled.stack.subarray(6 * k, 6 * k + 6);
  const stack = Array.from({ length: 6 }, (_, i) =>
    y.reduce((sum, v, j) => sum + back[6 * i + j] * v, 0),
  );
  return { q, stack, times: (other: { q: Float64Array }) => dot(Mq, other.q) };
}

const dot = (a: Float64Array, b: Float64Array) => a.reduce((sum, v, i) => sum + v * b[i], 0);

/** One loss factor for metal and mounts, so that the modes of the undamped frame serve the damped one. */
describe.each([
  // what keeps the flexibility of no modes at all from being singular moves the peaks by so little
  { modes: ALL, loss: 0.02, within: 1e-4 },
  // damping of what the modes left out hold is told from that of the others, not from none
  { modes: 40, loss: 0.002, within: 2e-3 },
])("with $modes modes known, the response is the sum of the coupled modes", (given) => {
  const isolators = { ...SOFT, lossFactor: given.loss };
  const candidates = { nose: NOSE, soft: { ...NOSE, isolators } };
  const frame = bareOf(smallCross({ lossFactor: given.loss }, {}, { candidates }), given.modes, 46);

  test.each(frame.model.candidates.map((c) => [c.name, c] as const))("%s", (_, c) => {
    const place = placeOf(frame, c);
    const coupled = coupledModes(frame.solved.modes, place);
    const reading = readPlace(frame.bare, place);
    frame.bare.h.orders.forEach((force, o) => {
      if (force.kind === "side force" || force.kind === "rotating moment") return;
      const peak = Math.max(...reading.gyroPower[o]);
      frame.excitation.grid.forEach((speed, s) => {
        const sum = summed(
          frame,
          coupled,
          place,
          force.kind as "thrust" | "torque",
          force.order * speed,
        );
        const scale = (force.order * speed * force.coefficient * speed ** 2 * 180) / Math.PI;
        const power = (sum * scale ** 2) / 2;
        expect(Math.abs(power - reading.gyroPower[o][s]) / peak).toBeLessThan(given.within);
      });
    });
  });
});

/** Sum over rotors of the squared turning of the chip under a unit load, by coupled modes. */
function summed(
  { bare }: Bare,
  { lambda, lossFactor, amplitudes, force, chip }: CoupledModes,
  { rest, stack }: Place,
  kind: "thrust" | "torque",
  omega: number,
): number {
  const terms = bare.h.shapes.length;
  const W = stack?.W ?? new Float64Array(36);
  return bare.h.rotors.reduce((total, _, r) => {
    const parts = new Float64Array(6);
    for (let k = 0; k < lambda.length; k++) {
      let f = dot(amplitudes.subarray(k * terms, (k + 1) * terms), bare.h.loads[r][kind]);
      for (let i = 0; i < 6; i++) {
        f += force[6 * k + i] * dot(W.subarray(6 * i, 6 * i + 6), rest[r][kind]);
      }
      const elastic = k >= 6;
      const [p, q] = [
        (elastic ? lambda[k] : 0) - omega ** 2,
        elastic ? lambda[k] * lossFactor[k] : 0,
      ];
      for (let i = 0; i < 3; i++) {
        parts[i] += (f * chip[6 * k + 3 + i] * p) / (p * p + q * q);
        parts[3 + i] -= (f * chip[6 * k + 3 + i] * q) / (p * p + q * q);
      }
    }
    return total + dot(parts, parts);
  }, 0);
}

test("a reading point of no weight has no coupled modes", () => {
  const frame = bareOf(smallCross(), 10, 100);
  const seat = { dofs: Int32Array.of(0), rows: new Float64Array(6) };
  expect(() => coupledModes(frame.solved.modes, readingPoint(frame.bare.h, seat))).toThrow(
    RangeError,
  );
});
