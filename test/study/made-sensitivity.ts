/** What moves an invented frame, all numbers made up. */

import type { Input } from "../../src/frame/inputs.ts";
import { reachOf } from "../../src/study/reach.ts";
import type { SensitivityStudy } from "../../src/study/sensitivity-study.ts";
import type { SensitivityRow } from "../../src/study/sensitivity-types.ts";
import type { Suggestion } from "../../src/study/suggest-types.ts";

const input = (path: Input["path"], name: string, more: Partial<Input>): Input => ({
  name,
  path,
  kind: "mass",
  value: 0.1,
  perSI: 1e3,
  unit: "g",
  ...more,
});

const row = (of: Input, slopes: readonly number[], from: number, to: number): SensitivityRow => ({
  input: of,
  reach: reachOf(of),
  slopes: Float64Array.from(slopes),
  noise: { from: Float64Array.of(from, -from), to: Float64Array.of(to, -to), method: "reduced" },
});

const suggestion = (more: Partial<Suggestion>): Suggestion => ({
  kind: "thickness",
  part: "arms.arm",
  words: "Arms 6 mm thick instead of 5 mm",
  changes: [{ path: ["arms", "arm", "thickness"], written: 6 }],
  mass: 0.0123,
  gyro: -2.34,
  accel: 0,
  score: -1.6,
  moved: [],
  text: 'Arms 6 mm thick instead of 5 mm: 12.3 g more, the gyro noise at "sandwich" falls by 2.3 dB (solved anew).',
  ...more,
});

/** @param hostile a name of a body that tries to break out of the page */
export function madeSensitivity(hostile = "pack"): SensitivityStudy {
  return {
    table: {
      modes: [
        { number: 1, frequency: 62, name: "battery sways" },
        { number: 2, frequency: 128, name: "arms flap, all together" },
        { number: 3, frequency: 176, name: "arms flap, diagonal pairs" },
      ],
      clusters: [[2, 3]],
      spots: [
        { name: "sandwich", plate: "middle", gyro: 2.4 },
        { name: "nose", plate: "middle", gyro: 5.1 },
      ],
      best: 0,
      rows: [
        row(
          input(["bodies", hostile, "mass"], `bodies.${hostile}.mass`, {}),
          [-200, 0, 0],
          0.2,
          -0.25,
        ),
        row(
          input(["arms", "arm", "thickness"], "arms.arm.thickness", {
            kind: "thickness",
            value: 5e-3,
            unit: "mm",
            spread: { from: 4.8e-3, to: 5.2e-3, scale: "even", source: "file" },
          }),
          [0, 20e3, 25e3],
          1.5,
          -1.25,
        ),
        row(
          input(["dampingFactor"], "dampingFactor", {
            kind: "damping",
            value: 1,
            perSI: 1,
            unit: "",
          }),
          [0, 0, 0],
          2.5,
          0.75,
        ),
        {
          ...row(
            input(["arms", "arm", "tip", 0], "arms.arm.tip#1", { kind: "position" }),
            [0, 0, 0],
            0.001,
            0,
          ),
          impossible: "the arm misses the plate",
        },
      ],
    },
    spot: 0,
    telling: [2, 3],
    suggested: {
      spot: "sandwich",
      tried: 23,
      found: [
        suggestion({}),
        suggestion({ words: "Arms 2 mm narrower", kind: "width", mass: -0.0057, gyro: -1.8 }),
      ],
    },
  };
}
