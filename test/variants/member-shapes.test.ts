import { describe, expect, test } from "vitest";
import { changedFrame, parseFrameSource } from "../../src/frame/change.ts";
import { matchModes } from "../../src/study/match-modes.ts";
import { track } from "../../src/study/track.ts";
import { exactOutcome } from "../../src/variants/exact.ts";
import { prepareVariant } from "../../src/variants/prepare.ts";

/** A straight strip: modes that bend flat, bend edgewise and twist have nothing to do with each other. */
const STRIP = `{
  "version": 1, "name": "strip",
  "points": { "clamp": [0, 0, 0], "end": [200, 0, 0] },
  "members": { "strip": { "from": "clamp", "to": "end", "material": "steel",
    "section": { "shape": "rectangle", "width": "10 mm", "height": "3 mm" }, "elements": 24 } },
  "supports": { "vice": { "point": "clamp", "fix": "all" } }
}`;
const source = parseFrameSource(STRIP, "strip.jsonc");
const strip = (height: string) => {
  const path = ["members", "strip", "section", "height"];
  const { file } = changedFrame(source, [{ path, written: height }]);
  return exactOutcome(prepareVariant(file), { modes: 16 });
};

describe("a strip that is all there is", () => {
  const outcomes = ["2.4 mm", "2.7 mm", "3 mm"].map(strip);

  test("is matched with itself mode by mode, twisting ones too", () => {
    for (const o of outcomes) {
      const { pairs, lost } = matchModes(o, o, 10);
      expect(lost).toEqual([]);
      expect(pairs.every(({ a, b }) => a === b)).toBe(true);
    }
  });

  test("has modes that cross and none that veer", () => {
    const { branches, veerings } = track(outcomes, undefined, { values: [2.4, 2.7, 3], count: 8 });
    expect(veerings).toEqual([]);
    expect(branches.length).toBeGreaterThanOrEqual(8);
    // bending flat goes with the height, edgewise it stays
    const ratios = branches.slice(0, 4).map(({ frequencies: [a = 0, , b = 0] }) => b / a);
    for (const r of ratios)
      expect(Math.min(Math.abs(r - 1), Math.abs(r - 1.25))).toBeLessThan(0.01);
  });
});
