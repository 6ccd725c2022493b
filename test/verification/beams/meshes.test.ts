/** What holds of every mesh of a beam: it errs upwards, and motions that are apart stay apart. */

import { describe, expect, test } from "vitest";
import { expectClose, worstError } from "../compare.ts";
import { frequencies, onePerPair, solveFrame } from "../frequencies.ts";
import { angular, type End, meshError, squares, unitBeam } from "../unit-beam.ts";
import { flatBending } from "./supported-beam.ts";
import { MOTIONS, unitRod, waveNumbers } from "./unit-rod.ts";

const CLAMPED_FREE = [3.5160152685, 22.0344915647, 61.6972144135];
const PINNED_PINNED = [9.86960440109, 39.4784176044, 88.8264396098];

describe("nested meshes", () => {
  const meshes = [1, 2, 4, 8, 16, 32];

  /** Every frequency of every mesh lies above the exact one and above that of the next finer mesh. */
  function expectFalling(solve: (elements: number) => number[], exact: readonly number[]) {
    const spectra = [...meshes.map(solve), exact];
    spectra.slice(1).forEach((finer, i) => {
      finer.slice(0, spectra[i].length).forEach((value, mode) => {
        expect(value, `${meshes[i]} elements, mode ${mode + 1}`).toBeLessThan(spectra[i][mode]);
      });
    });
  }

  test("bending comes down on the exact frequencies", () => {
    expectFalling((n) => squares(unitBeam("clamped", "free", n), Math.min(3, 2 * n)), CLAMPED_FREE);
    expectFalling(
      (n) => squares(unitBeam("pinned", "pinned", n), Math.min(3, 2 * n)),
      PINNED_PINNED,
    );
  });

  test.each(MOTIONS)("%s comes down on the exact frequencies", (motion) => {
    const exact = [0.5 * Math.PI, 1.5 * Math.PI, 2.5 * Math.PI];
    const rod = (n: number) => unitRod(motion, ["fixed", "free"], n);
    expectFalling((n) => waveNumbers(rod(n), Math.min(3, n)), exact);
  });

  test("bending with shear comes down on the exact frequencies", () => {
    const coarse = flatBending("timoshenko", 10, "5/6", 8);
    const fine = flatBending("timoshenko", 10, "5/6", 16);
    [9.707477235, 37.09615885, 78.15473629].forEach((exact, mode) => {
      expect(fine[mode]).toBeGreaterThan(exact);
      expect(coarse[mode]).toBeGreaterThan(fine[mode]);
    });
  });
});

const PAIRS: readonly (readonly [End, End])[] = [
  ["clamped", "free"],
  ["free", "free"],
  ["clamped", "clamped"],
  ["pinned", "pinned"],
  ["clamped", "pinned"],
  ["pinned", "free"],
  ["clamped", "guided"],
  ["pinned", "guided"],
];

describe("motions that do not touch", () => {
  test.each(PAIRS)("%s and %s: the two bending planes have the same frequencies", (left, right) => {
    const found = angular(frequencies(unitBeam(left, right, 8), { modes: 8 }));
    expectClose(onePerPair(found.slice(1)), onePerPair(found), 1e-12);
  });

  test("a rod with equal speeds of stretching and twisting has each frequency twice", () => {
    const section = { shape: "stiffness", EA: 1, EIy: 100, EIz: 100, GJ: 1 };
    const rod = {
      points: { root: [0, 0, 0], tip: ["1 m", 0, 0] },
      members: {
        rod: {
          from: "root",
          to: "tip",
          section: { ...section, massPerLength: 1, inertiaPerLength: 1 },
          elements: 32,
        },
      },
      supports: {
        wall: { point: "root", fix: "all" },
        guide: { point: "tip", fix: ["y", "z", "ry", "rz"] },
      },
    };
    const found = angular(frequencies(rod, { modes: 4 }));
    expectClose(onePerPair(found.slice(1)), onePerPair(found), 1e-12);
    expect(worstError(onePerPair(found), [0.5 * Math.PI, 1.5 * Math.PI])).toBeLessThan(1e-3);
  });

  test("a plain beam takes no notice of its shear area", () => {
    const [rectangle, cowper] = (["5/6", "Cowper"] as const).map((shear) =>
      flatBending("euler-bernoulli", 10, shear, 32).slice(0, 3),
    );
    expectClose(rectangle, cowper, 1e-9);
    expectClose(rectangle, PINNED_PINNED, meshError(3 * Math.PI, 32));
  });
});

describe("rigid-body motions that the ends leave free", () => {
  test.each<{ ends: readonly [End, End]; motions: number; which: string }>([
    { ends: ["free", "free"], motions: 6, which: "all" },
    { ends: ["pinned", "free"], motions: 2, which: "it swings about the pin in both planes" },
    { ends: ["guided", "free"], motions: 2, which: "it slides across" },
    { ends: ["pinned", "guided"], motions: 0, which: "none" },
    { ends: ["clamped", "free"], motions: 0, which: "none" },
  ])("$ends.0 and $ends.1: $which", ({ ends, motions }) => {
    expect(solveFrame(unitBeam(...ends, 4), { modes: 2 }).modes.rigid.length).toBe(motions);
  });
});
