/** Order between the spectra of one frame held or drawn in different ways. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { support } from "./changes.ts";
import { DOFS, memberFrame } from "./member-frames.ts";
import { fileOf, type Multirotor, multirotor } from "./multirotors.ts";
import { forAll, mapValues } from "./runs.ts";
import { ALL, eigenvalues, expectAtLeast, expectInterlaced, expectSame } from "./spectra.ts";

describe("a spring that grows from nothing to a support", () => {
  const RISING = [0, 0.1, 10, 1e3, 1e5];

  test("raises every eigenvalue of a frame of members all the way", () => {
    forAll(fc.tuple(memberFrame(), fc.constantFrom(...DOFS)), 10, ([frame, dof]) => {
      const spectra = RISING.map((k) => {
        const tether = { between: ["p1", "ground"] as const, [dof]: k };
        return eigenvalues({ ...frame, springs: { ...frame.springs, tether } }, ALL);
      });
      const pin = { point: "p1", fix: [dof] };
      spectra.push(eigenvalues({ ...frame, supports: { ...frame.supports, pin } }, ALL));
      for (let i = 1; i < spectra.length; i++) {
        expectAtLeast(spectra[i], spectra[i - 1]);
        expectInterlaced(spectra[0], spectra[i], 1);
      }
      // Without stiffness it is not there at all.
      expectSame(spectra[0], eigenvalues(frame, ALL));
    });
  });

  test("takes a multirotor's rigid-body motions one by one", () => {
    forAll(multirotor(), 2, (craft) => {
      const held = DOFS.map((_, i) => {
        const springs = { tether: { between: ["eye", "ground"], ...springAlong(i + 1) } };
        return eigenvalues({ ...fileOf(craft), springs }, 8);
      });
      held.forEach((spectrum, i) => {
        expect(spectrum.filter((l) => l === 0).length).toBe(5 - i);
        if (i > 0) expectInterlaced(held[i - 1], spectrum, 1);
      });
    });
  });
});

/** 30 N/mm or 30 N m/rad in the first directions. */
function springAlong(directions: number): object {
  return Object.fromEntries(DOFS.slice(0, directions).map((dof) => [dof, 30]));
}

test("a support that is said twice holds as well as once", () => {
  forAll(fc.tuple(memberFrame(), support), 10, ([frame, { apply }]) => {
    const once = apply(frame);
    const again = { ...once.supports, "pin again": Object.values(once.supports).at(-1)! };
    expectSame(eigenvalues({ ...once, supports: again }, ALL), eigenvalues(once, ALL));
  });
});

test("more elements in a multirotor's arms never raise an eigenvalue (nested, Rayleigh-Ritz)", () => {
  const withElements = (craft: Multirotor, elements: number) => {
    const arms = mapValues(craft.arms, (arm) => ({ ...arm, elements }));
    return eigenvalues(fileOf({ ...craft, arms }), 16);
  };
  forAll(multirotor(), 3, (craft) => {
    const [coarse, middle, fine] = [2, 4, 8].map((elements) => withElements(craft, elements));
    expectAtLeast(coarse, middle);
    expectAtLeast(middle, fine);
    expect(fine.at(-1)).toBeLessThan(coarse.at(-1)!);
  });
});
