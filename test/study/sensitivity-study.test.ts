/** Which spot is told, for the command and for the ranking alike. */

import { expect, test } from "vitest";
import { spotTold } from "../../src/study/sensitivity-study.ts";
import { madeOutcome } from "./made-outcomes.ts";

const spot = (name: string, plate: string, ruledOut?: string) => ({
  ...{ name, plate, gyro: 1, accel: 1, tilt: 0, score: 0 },
  ...(ruledOut !== undefined && { ruledOut }),
});

test("is the one wanted, else the best, else the first, with suggestions where one can be used", () => {
  const spots = [spot("nose", "top"), spot("nose", "bottom"), spot("tail", "top")];
  const open = madeOutcome([], [], { spots, best: 2 });
  expect(spotTold(open, { name: "nose", plate: "bottom" })).toEqual({ spot: 1, suggestFor: 1 });
  // found by the program, not named in the file
  expect(spotTold(open, { name: "top (3, 4)", plate: "top" })).toEqual({ spot: 2, suggestFor: 2 });
  expect(spotTold(open)).toEqual({ spot: 2, suggestFor: 2 });
  const out = madeOutcome([], [], {
    spots: spots.map((s) => spot(s.name, s.plate, "cantilevered")),
  });
  expect(spotTold(out)).toEqual({ spot: 0 });
  expect(spotTold(out, { name: "top (3, 4)", plate: "top" })).toEqual({ spot: 0 });
  expect(spotTold(madeOutcome([], []))).toEqual({});
});
