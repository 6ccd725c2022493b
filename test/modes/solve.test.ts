/** Modes of whole frames: energies, proof, rigid motions, laws of scale. */

import { describe, expect, test } from "vitest";
import { analyseModes } from "../../src/analyse.ts";
import { readFrame } from "../../src/frame/read.ts";
import type { FrameFile } from "../../src/frame/types.ts";
import { multiply } from "../../src/linalg/product.ts";
import type { SymmetricSparse } from "../../src/linalg/sparse.ts";
import { modeEnergies } from "../../src/modes/energy.ts";
import { MODES_DEFAULT_COUNT } from "../../src/modes/solve.ts";
import { crossFrame, crossSections, frameOf, PROPULSION, stiffer } from "./toys.ts";

const five = analyseModes(readFrame("frames/five-inch.jsonc"), { meshSize: 9e-3 });
const toy = analyseModes(crossFrame({ lopsided: true }), { modes: 20 });
const sum = (a: Iterable<number>) => [...a].reduce((s, v) => s + v, 0);
const dot = (a: Float64Array, b: Float64Array) => a.reduce((s, v, i) => s + v * b[i], 0);
const frequencies = (file: FrameFile, modes = 12) =>
  analyseModes(file, { modes }).modes.described.map((m) => m.frequency);

const twice = (v: unknown): unknown => (Array.isArray(v) ? v.map(twice) : 2 * (v as number));

function times(A: SymmetricSparse, x: Float64Array): Float64Array {
  const out = new Float64Array(x.length);
  multiply(out, A, x);
  return out;
}

describe.each([
  ["five-inch sample", five],
  ["lopsided cross", toy],
] as const)("%s", (_, { modes, system, mesh, model }) => {
  const n = system.reduction.n;
  const phi = (k: number) => modes.phi.subarray(k * n, (k + 1) * n);
  const energies = modeEnergies(mesh, system, modes.shapes, model.theory);

  test("strain energies of a mode's parts add up to lambda/2, kinetic ones to 1/2", () => {
    modes.lambda.forEach((lambda, k) => {
      expect(sum(energies[k].strain) / (lambda / 2)).toBeCloseTo(1, 7);
      expect(sum(energies[k].kinetic)).toBeCloseTo(0.5, 9);
    });
  });

  test("shares by kind of motion add up to 1, and none is negative but for rounding", () => {
    for (const { motion } of modes.described) {
      expect(sum(Object.values(motion))).toBeCloseTo(1, 9);
      for (const share of Object.values(motion)) expect(share).toBeGreaterThan(-1e-9);
    }
  });

  test("parts are listed by their shares, largest first, and hardly anything is missing", () => {
    for (const { shares } of modes.described) {
      const both = shares.map((s) => s.strain + s.kinetic);
      expect(both).toEqual([...both].sort((a, b) => b - a));
      const missing = mesh.parts.length * 0.01;
      expect(sum(shares.map((s) => s.strain))).toBeGreaterThan(1 - missing);
      expect(sum(shares.map((s) => s.strain))).toBeLessThan(1 + 1e-9);
      expect(sum(shares.map((s) => s.kinetic))).toBeLessThan(1 + 1e-9);
    }
  });

  test("frequencies are those of the eigenvalues, in order", () => {
    modes.described.forEach((m, k) => {
      expect(m.number).toBe(k + 1);
      expect((2 * Math.PI * m.frequency) ** 2 / modes.lambda[k]).toBeCloseTo(1, 12);
      if (k > 0) expect(m.frequency).toBeGreaterThanOrEqual(modes.described[k - 1].frequency);
    });
  });

  test("K phi = lambda M phi, with Rayleigh's quotient and M-orthonormality", () => {
    modes.lambda.forEach((lambda, k) => {
      const [K, M] = [times(system.K, phi(k)), times(system.M, phi(k))];
      const residual = Math.hypot(...K.map((v, i) => v - lambda * M[i]));
      expect(residual / (Math.hypot(...K) + lambda * Math.hypot(...M))).toBeLessThan(1e-7);
      expect(dot(phi(k), K) / lambda).toBeCloseTo(1, 8);
      for (let j = 0; j <= k; j++) expect(dot(phi(j), M)).toBeCloseTo(+(j === k), 9);
      for (const r of modes.rigid) expect(Math.abs(dot(r, M))).toBeLessThan(1e-9);
    });
  });

  test("six rigid motions, M-orthonormal and without strain", () => {
    expect(modes.rigid.length).toBe(6);
    modes.rigid.forEach((r, i) => {
      const M = times(system.M, r);
      for (let j = 0; j < 6; j++) expect(dot(modes.rigid[j], M)).toBeCloseTo(+(i === j), 10);
      // against the stiffness of the first mode at the same amplitude
      expect(Math.abs(dot(r, times(system.K, r)))).toBeLessThan(1e-6 * modes.lambda[0]);
    });
  });

  test("the proof: counted by inertia and found are the same, at a place above every mode", () => {
    const e = modes.evidence;
    expect(e.counted).toBe(e.found);
    expect(e.found).toBeGreaterThanOrEqual(modes.lambda.length + 6);
    expect(e.checkFrequency).toBeGreaterThan(modes.described[modes.lambda.length - 1].frequency);
    expect(e.maxResidual).toBeLessThan(1e-7);
    expect(e.orthogonality).toBeLessThan(1e-10);
    expect(e.unknowns).toBe(n);
  });
});

test("the proof counts every mode below its place, as a search for more of them shows", () => {
  const { evidence } = toy.modes;
  const more = frequencies(crossFrame({ lopsided: true }), 40);
  expect(more[39]).toBeGreaterThan(evidence.checkFrequency);
  expect(more.filter((f) => f < evidence.checkFrequency).length + 6).toBe(evidence.counted);
});

test("forty modes where no number is given", () => {
  expect(MODES_DEFAULT_COUNT).toBe(40);
  expect(five.modes.lambda.length).toBe(40);
});

describe("damping", () => {
  test("one material and no joint: its loss factor in every mode", () => {
    for (const m of toy.modes.described) {
      expect(m.lossFactor).toBeCloseTo(0.02, 10);
      expect(m.damping).toBeCloseTo(0.01, 10);
    }
  });

  test("screws and wires add their factor, but not to soft mounts", () => {
    const body = { mass: "150 g", at: [0, 0, 24], size: [60, 36, 34], on: "hub" };
    const soft = { ...body, hold: "soft", soft: { bounce: "40 Hz", lossFactor: 0.3 } };
    const more = { assemblyLossFactor: 0.015, bodies: { soft } };
    const { modes } = analyseModes(crossFrame({ lossFactor: 0.004 }, more), { modes: 16 });
    let mounts = 0;
    for (const m of modes.described) {
      const s = m.motion.softMount;
      expect(m.lossFactor).toBeCloseTo(s * 0.3 + (1 - s) * (0.004 + 0.015), 9);
      if (s > 0.98) mounts++;
    }
    expect(mounts).toBeGreaterThanOrEqual(4);
  });
});

describe("laws of scale", () => {
  const base = frequencies(crossFrame({ lopsided: true }));
  const ratio = (file: FrameFile) => frequencies(file).map((f, i) => f / base[i]);

  test("stiffness times four doubles every frequency", () => {
    for (const r of ratio(stiffer(crossFrame({ lopsided: true }), 4))) expect(r).toBeCloseTo(2, 6);
  });

  test("everything twice as large and eight times as heavy: half of every frequency", () => {
    const scaled = (o: unknown, keys: readonly string[]) =>
      Object.fromEntries(
        Object.entries(o as object).map(([k, v]) => [k, keys.includes(k) ? twice(v) : v]),
      );
    const s = crossSections() as Record<string, Record<string, unknown>>;
    const { motor, propeller } = PROPULSION;
    const large = frameOf({
      ...s,
      meshSize: 60,
      plates: { hub: scaled(s.plates.hub, ["thickness", "outline"]) },
      arms: { arm: scaled(s.arms.arm, ["thickness", "root", "tip", "width"]) },
      propulsion: {
        cells: 4,
        motor: {
          ...motor,
          mass: "240 g",
          screwMass: "16 g",
          bellMass: "144 g",
          cgHeight: "18 mm",
          size: ["56 mm", "36 mm"],
        },
        propeller: {
          ...propeller,
          mass: "32 g",
          nutMass: "8 g",
          diameter: "10 in",
          planeHeight: "40 mm",
        },
      },
      stack: {
        ...scaled(s.stack, ["size"]),
        mass: "160 g",
        height: "16 mm",
        holes: { spacing: "60 mm", footprint: "12 mm" },
      },
      candidates: {},
    });
    const small = frequencies(crossFrame());
    frequencies(large).forEach((f, i) => {
      expect(f / small[i]).toBeCloseTo(0.5, 7);
    });
  });

  test("a mass added without inertia lowers every frequency, none below the third one down", () => {
    const heavier = frequencies(
      crossFrame(
        {},
        {
          bodies: {
            lump: { mass: "60 g", at: [40, 24, 12], size: [20, 18, 16], on: "hub" },
            more: {
              mass: "40 g",
              at: [-40, 0, 10],
              on: "hub",
              hold: "spread",
              footprint: [20, 20],
            },
          },
        },
      ),
    );
    // interlacing: a mass matrix of rank 3
    heavier.forEach((f, i) => {
      expect(f).toBeLessThan(base[i] * (1 + 1e-9));
      if (i >= 3) expect(f).toBeGreaterThan(base[i - 3] * (1 - 1e-9));
    });
    expect(heavier[1]).toBeLessThan(0.99 * base[1]);
  });
});
