/** What the small print of the wing's masses does, and what its compliant root would. */

import { describe, expect, test } from "vitest";
import { wingModes } from "./spar-wing.ts";

const whole = wingModes();
const firstFour = ({ outOfPlane, torsion }: typeof whole) => [
  ...outOfPlane.slice(0, 3),
  torsion[0],
];

describe("aluminium-spar wing", () => {
  test("inertias about chord and normal lower every mode but torsion, by 1 % at most", () => {
    const onAxis = wingModes({ offsets: false });
    const spanOnly = wingModes({ offsets: false, allInertias: false });
    for (const kind of ["outOfPlane", "inPlane"] as const) {
      onAxis[kind].slice(0, 3).forEach((f, i) => {
        expect(f, `${kind} ${i + 1}`).toBeLessThan(spanOnly[kind][i]);
        expect(f, `${kind} ${i + 1}`).toBeGreaterThan(0.99 * spanOnly[kind][i]);
      });
    }
    expect(onAxis.torsion[0] / spanOnly.torsion[0]).toBeCloseTo(1, 9);
  });

  test("offsets of the centres of gravity move no mode of the test by more than 1.1 %", () => {
    const onAxis = firstFour(wingModes({ offsets: false }));
    firstFour(whole).forEach((f, i) => {
      expect(Math.abs(f / onAxis[i] - 1)).toBeLessThan(0.011);
    });
    // The tip rod hangs 4.9 mm beside the axis: twisting has to swing it.
    expect(whole.torsion[0]).toBeLessThan(wingModes({ offsets: false }).torsion[0]);
  });

  test("a root that gives way in the plane explains 60.7 Hz and touches no other mode", () => {
    expect(whole.inPlane[0]).toBeGreaterThan(100);
    const compliant = wingModes({ rootSpring: 9700 });
    expect(Math.abs(compliant.inPlane[0] / 60.7 - 1)).toBeLessThan(0.01);
    firstFour(whole).forEach((f, i) => {
      expect(firstFour(compliant)[i] / f).toBeCloseTo(1, 3);
    });
  });
});
