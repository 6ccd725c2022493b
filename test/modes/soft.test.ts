/** Parts that are very much softer than the rest of a frame: right, or a clear failure. */

import { describe, expect, test } from "vitest";
import { analyseModes } from "../../src/analyse.ts";
import { SolveError } from "../../src/errors.ts";
import type { FrameFile } from "../../src/frame/types.ts";
import { requireKnown } from "../../src/modes/solve.ts";
import { crossFrame, crossSections, frameOf, metal } from "./toys.ts";

const frequencies = (file: FrameFile) =>
  analyseModes(file, { modes: 8 }).modes.described.map((m) => m.frequency);

describe("a body on mounts", () => {
  const onMounts = (bounce: string) => {
    const body = { mass: "150 g", at: [0, 0, 24], size: [60, 36, 34], on: "hub" };
    const soft = { ...body, hold: "soft", soft: { bounce, lossFactor: 0.3 } };
    return crossFrame({}, { bodies: { soft } });
  };
  const usual = frequencies(onMounts("1 Hz"));

  test("ten times as soft: a tenth of its six frequencies, and the frame's are the same", () => {
    const softer = frequencies(onMounts("0.1 Hz"));
    // At 1 Hz the frame still gives way a little: (1 / 80)^2 of the mounts.
    for (let k = 0; k < 6; k++) expect(usual[k] / softer[k] / 10).toBeCloseTo(1, 3);
    for (let k = 6; k < 8; k++) expect(softer[k] / usual[k]).toBeCloseTo(1, 4);
  });

  test("softer than rounding lets one compute: refused, and said why", () => {
    for (const bounce of ["0.01 Hz", "0.0001 Hz"]) {
      expect(() => frequencies(onMounts(bounce))).toThrow(SolveError);
      expect(() => frequencies(onMounts(bounce))).toThrow("drowns in the rounding of the rest");
    }
  });
});

describe("arms of another stuff than the hub", () => {
  const withArms = (E: string) => {
    const sections = crossSections();
    const { arm } = sections.arms as Record<string, object>;
    return frameOf({
      ...sections,
      materials: { metal: metal({}), jelly: { ...(metal({}) as object), E } },
      arms: { arm: { ...arm, material: "jelly" } },
    });
  };

  const million = frequencies(withArms("70 kPa"));
  /** How far the frequencies of so much softer arms are from those of the root of it. */
  const error = (softer: number) => {
    const found = frequencies(withArms(`${70e9 / softer} Pa`));
    const ratio = Math.sqrt(softer / 1e6);
    return Math.max(...found.map((f, k) => Math.abs(million[k] / f / ratio - 1)));
  };

  test("up to a billion times softer: the hub is rigid to them, so all goes with the root", () => {
    expect(error(1e8)).toBeLessThan(1e-4);
    // Arms that give way along and across differ by 1e6 besides: three digits are left of sixteen.
    expect(error(1e9)).toBeLessThan(3e-3);
  });

  test("softer still: right to a hundredth, or refused", () => {
    for (const softer of [1e10, 1e12, 1e15]) {
      try {
        expect(error(softer)).toBeLessThan(0.01);
      } catch (refused) {
        expect(refused).toBeInstanceOf(SolveError);
      }
    }
    expect(() => error(1e15)).toThrow(SolveError);
  });
});

describe("requireKnown", () => {
  const known = (lambda: number[], uncertainty: number[]) =>
    requireKnown(Float64Array.from(lambda), Float64Array.from(uncertainty));

  test("lets through what is known to a tenth, or lies below 0.1 Hz", () => {
    known([4e3, 1e6], [399, 1]);
    known([1e-4, -1e-4, 0, 1e6], [0.3, 0.3, 0.3, 1]);
  });

  test("names the mode and the range it lies in", () => {
    // (2 pi 10)^2 = 3948, with a half of it either way: 7.07 and 12.2 Hz
    expect(() => known([3e3, 3948], [1, 1974])).toThrow(
      new SolveError(
        "mode 2 is too soft beside the rest of the frame to be computed: its frequency lies between " +
          "7.1 and 12 Hz, as far as rounding lets one tell. Use a coarser mesh, or stiffen what holds " +
          "the part",
      ),
    );
    expect(() => known([1], [5])).toThrow("between 0.0 and 0.39 Hz");
    expect(() => known([1e6], [Number.NaN])).toThrow("mode 1");
  });
});
