/**
 * Rayleigh-Ritz: elements with consistent mass that are cut in two can move in every way they could
 * before, so that no eigenvalue rises and all come down upon those of the beams themselves. That holds
 * for Euler-Bernoulli and Rayleigh beams; the shape functions with shear depend on the element's length.
 */

import { describe, expect, test } from "vitest";
import { type MemberFrame, memberFrame } from "./member-frames.ts";
import { forAll, mapValues } from "./runs.ts";
import { eigenvalues, expectAtLeast } from "./spectra.ts";

function cut(frame: MemberFrame, times: number): MemberFrame {
  const members = mapValues(frame.members, (m) => ({ ...m, elements: times * m.elements }));
  return { ...frame, members };
}

describe.each(["euler-bernoulli", "rayleigh"] as const)("%s beams", (theory) => {
  test("halving the elements of all members raises no eigenvalue, however often", () => {
    forAll(memberFrame({ theory }), 6, (frame) => {
      const MODES = 16;
      const spectra = [1, 2, 4, 8].map((times) => eigenvalues(cut(frame, times), MODES));
      for (let i = 1; i < spectra.length; i++) expectAtLeast(spectra[i - 1], spectra[i]);
      // The steps shrink towards a limit: the last is no larger than all before it together.
      const [coarse, , middle, fine] = spectra;
      const bent = fine.findIndex((l) => l > 0);
      expect(middle[bent] - fine[bent]).toBeLessThanOrEqual(
        coarse[bent] - middle[bent] + 1e-6 * fine[bent],
      );
    });
  });

  test("halving one member alone raises none either", () => {
    forAll(memberFrame({ theory }), 6, (frame) => {
      const [name, m] = Object.entries(frame.members)[0];
      const finer = {
        ...frame,
        members: { ...frame.members, [name]: { ...m, elements: 2 * m.elements } },
      };
      expectAtLeast(eigenvalues(frame, 16), eigenvalues(finer, 16));
    });
  });
});
