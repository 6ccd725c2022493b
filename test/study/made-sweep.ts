/**
 * A sweep of an invented frame over layup and thickness, all numbers made up: one mode rises with the
 * thickness through one that stays, and veers from another that it is coupled to.
 */

import type { SweepRow, SweepStudy } from "../../src/study/results-sweep.ts";
import { sweepStudy } from "../../src/study/sweep-study.ts";
import type { Outcome } from "../../src/variants/types.ts";
import { meeting, spot } from "./compare-fixtures.ts";
import { massesOnSprings, square } from "./made-outcomes.ts";

export const HOSTILE_SWEPT = "arms.<b>arm</b>.thickness";

const LAYUPS = ["0/90", "<i>quasi</i>"];
const VALUES = [3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7];

/** At 5 mm the rising mode is at 150 Hz; it crosses 120 Hz at 4 mm and veers at 180 Hz, 6 mm. */
export function sweptOutcome(thickness: number, layup: number, first = "sandwich"): Outcome {
  const stiffer = 1 + 0.05 * layup;
  const rising = 30 * thickness * stiffer;
  const base = massesOnSprings([
    [square(120), 0, 0],
    [0, square(rising), 4e4],
    [0, 4e4, square(180)],
  ]);
  const gyro = 12 / thickness + 3 * Math.exp(-((thickness - 5.5) ** 2));
  return {
    ...base,
    mass: 0.55 + 0.012 * thickness + 0.004 * layup,
    hover: 1100 + 5 * thickness,
    modeNames: ["arms flap", "battery sways", "top bends"],
    spots: [
      spot(first, { gyro: gyro / stiffer, score: 0 }),
      spot("nose", {
        gyro: 1.5 * gyro,
        score: 4,
        ...(thickness < 4 && { ruledOut: "cantilevered" }),
      }),
    ],
    best: 0,
    meetings: [meeting(2, 0.03, 1)],
  };
}

export function madeSweep(first = "sandwich", name = "arms.arm.thickness"): SweepStudy {
  const rows = LAYUPS.flatMap((_, l) =>
    VALUES.map((t, k): SweepRow => {
      if (l === 1 && k === 8) return { at: [l, k], failed: "the arms would touch the <u>top</u>" };
      return { at: [l, k], outcome: sweptOutcome(t, l, first) };
    }),
  );
  return sweepStudy({
    title: "Brindle",
    files: [{ path: "frames/brindle.jsonc", hash: "cd".repeat(32) }],
    parameters: [
      { name: "arms.arm.layup", unit: "", texts: LAYUPS },
      { name, unit: "mm", texts: VALUES.map((v) => `${v} mm`), numbers: VALUES },
    ],
    rows,
  });
}
