/** Models of small frames for the tests here and downstream, by way of the reader. */

import { type Finding, InputError } from "../../src/errors.ts";
import { parseFrame } from "../../src/frame/read.ts";
import { buildModel } from "../../src/model/build.ts";
import type { Model } from "../../src/model/types.ts";

/** A frame file but for its version and name; lengths in mm, masses in g. */
export function modelOf(sections: object): Model {
  const text = JSON.stringify({ version: 1, name: "test", ...sections });
  return buildModel(parseFrame(text, "test.jsonc"));
}

/** The findings about a frame that the model stage refuses; empty when it does not. */
export function findingsOf(sections: object): readonly Finding[] {
  const text = JSON.stringify({ version: 1, name: "test", ...sections });
  const file = parseFrame(text, "test.jsonc"); // whatever the reader finds is not meant here
  try {
    buildModel(file);
  } catch (error) {
    if (error instanceof InputError) return error.findings;
    throw error;
  }
  return [];
}

/** 80 x 40 mm, 2 mm thick, its middle at height z. */
export const plateAt = (z: number, more: object = {}) => ({
  material: "carbon-plate-0-90",
  thickness: 2,
  z,
  outline: [
    [40, 20],
    [-40, 20],
    [-40, -20],
    [40, -20],
  ],
  ...more,
});

export const BASE = { plates: { base: plateAt(0) } };

/** One arm 60 mm long to the front left, cut in one piece with the base plate. */
export const arm = (more: object = {}) => ({
  material: "carbon-plate-quasi-isotropic",
  thickness: 2,
  width: 10,
  root: [30, 15],
  tip: [66, 63],
  joint: { kind: "one piece", plate: "base" },
  ...more,
});

/** A standoff between two plates. */
export const post = (at: readonly number[], more: object = {}) => ({
  at,
  between: ["base", "top"],
  section: { shape: "rod", diameter: 5 },
  material: "aluminium-7075-t651",
  ...more,
});
