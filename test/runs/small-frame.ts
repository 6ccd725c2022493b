/** A frame small enough to be solved many times over. */

import { starterFrame } from "../../src/frame/starter.ts";
import type { FrameGiven } from "../../src/runs/compare-run.ts";

export const SMALL: FrameGiven = {
  path: "small.jsonc",
  text: starterFrame("5 inch", "Small").replace('"notes":', '"meshSize": "25 mm",\n  "notes":'),
  hash: "0".repeat(64),
  modes: 30,
};
