/** Where beam and plate part for a strip that couples bending with twist. */

import { describe, expect, test } from "vitest";
import { solveFrame } from "../frequencies.ts";
import { armModes, plateModes, stripArm } from "./cantilever-strip.ts";

/** Relative excess of the plate's first bending mode over the free strip's closed form. */
function excess(degrees: number, length: number): number {
  const beam = armModes(degrees, "euler-bernoulli").bending[0] * (190.5 / length) ** 2;
  return plateModes(degrees, length, 6).bending[0] / beam - 1;
}

describe("carbon/epoxy cantilever strips", () => {
  test.each([15, 30])("%d degrees: the clamp's hold on the twist fades as 1/length", (degrees) => {
    const short = excess(degrees, 190.5);
    const long = excess(degrees, 381);
    expect(short).toBeGreaterThan(0.04);
    expect(short / long).toBeGreaterThan(1.9);
    expect(short / long).toBeLessThan(2.2);
  });

  test.each([0, 90])("%d degrees: without coupling plate and beam bend alike", (degrees) => {
    expect(Math.abs(excess(degrees, 190.5))).toBeLessThan(1e-3);
  });

  test.each([
    [15, 1526.9],
    [30, 1827.4],
  ])(
    "%d degrees: a beam without coupling twists too easily, and the program says so",
    (degrees, measured) => {
      const { torsion } = armModes(degrees, "rayleigh");
      expect(torsion[0] / measured).toBeGreaterThan(0.65);
      expect(torsion[0] / measured).toBeLessThan(0.75);
      const { warnings } = solveFrame(stripArm(degrees, "rayleigh"), { modes: 1 });
      expect(warnings.join("\n")).toContain("couples bending with twist");
    },
  );
});
