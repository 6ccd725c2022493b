/** Plates that reach past their last support. */

import { describe, expect, test } from "vitest";
import { analyse, analyseModes } from "../../src/analyse.ts";
import { reachWanted } from "../../src/excitation/excite.ts";
import { readFrame } from "../../src/frame/read.ts";
import type { FrameFile } from "../../src/frame/types.ts";
import { findOverhangs } from "../../src/ranking/overhang.ts";
import type { Overhang } from "../../src/ranking/types.ts";
import { crossSections, frameOf } from "../modes/toys.ts";

const seven = readFrame("frames/seven-inch.jsonc");
const COARSE = { meshSize: 11e-3, modes: 40 };
function overhangsOf(file: FrameFile): readonly Overhang[] {
  const { model, mesh, modes, excitation } = analyseModes(file, COARSE);
  if (!excitation) throw new Error("the sample has motors");
  return findOverhangs(model, mesh, modes, reachWanted(excitation));
}

describe("the seven-inch sample's deck", () => {
  const [deck, ...others] = overhangsOf(seven);

  test("is the only one", () => {
    expect(others).toEqual([]);
    expect([deck.plate, deck.direction, deck.flagged]).toEqual(["rear deck", "rear", true]);
  });

  test("cut off behind its screws overhangs no more", () => {
    const { "rear deck": whole } = seven.plates;
    const outline = whole.outline.map(([x, y]) => [Math.max(x, -0.072), y] as const).slice(0, 3);
    const { "video transmitter": _, "satellite receiver": __, ...bodies } = seven.bodies;
    const { "rear deck": ___, ...candidates } = seven.candidates;
    const short = {
      ...seven,
      plates: { ...seven.plates, "rear deck": { ...whole, outline } },
      bodies,
      candidates,
    };
    expect(overhangsOf(short)).toEqual([]);
  });

  test("half as thick again has its mode higher", () => {
    const plates = {
      ...seven.plates,
      "rear deck": { ...seven.plates["rear deck"], thickness: 3e-3, z: 7e-3 },
    };
    const [thick] = overhangsOf({ ...seven, plates });
    expect(thick.length).toBeCloseTo(deck.length, 9);
    expect(thick.frequency ?? 0).toBeGreaterThan(1.2 * (deck.frequency ?? 0));
  });
});

/** A long second plate on four posts over the hub, in one of four directions, with a weight at its end. */
function withShelf(direction: Overhang["direction"], weight: number): FrameFile {
  const s = crossSections() as Record<string, Record<string, object>>;
  const turn = ([x, y]: readonly [number, number]): [number, number] =>
    ({
      front: [x, y] as [number, number],
      rear: [-x, -y] as [number, number],
      left: [-y, x] as [number, number],
      right: [y, -x] as [number, number],
    })[direction];
  const outline = (
    [
      [25, 18],
      [-25, 18],
      [-25, -18],
      [25, -18],
      [110, -18],
      [110, 18],
    ] as [number, number][]
  ).map(turn);
  const posts = (
    [
      [20, 13],
      [-20, 13],
      [-20, -13],
      [20, -13],
    ] as [number, number][]
  ).map(turn);
  const [x, y] = turn([95, 0]);
  const [cx, cy] = turn([60, 0]);
  return frameOf({
    ...s,
    // a slow loop, so that the middle of this light and hardly damped craft stays out of its reach
    control: { bandwidth: "10 Hz" },
    plates: {
      ...s.plates,
      shelf: { material: "metal", thickness: 1.5, z: 21, outline },
    },
    standoffs: {
      post: {
        at: posts,
        between: ["hub", "shelf"],
        section: { shape: "rod", diameter: 5 },
        material: "metal",
      },
    },
    bodies: {
      weight: { mass: weight, at: [x, y, 24], on: "shelf", hold: "spread", footprint: [10, 10] },
    },
    candidates: {
      middle: { plate: "hub", at: [0, 0] },
      out: { plate: "shelf", at: [cx, cy], holes: { spacing: 16, footprint: 4 } },
    },
  });
}

describe.each(["front", "rear", "left", "right"] as const)("a shelf to the %s", (direction) => {
  const quick = { meshSize: 15e-3, modes: 40, map: { pitch: 0.05 } };
  const { ranking } = analyse(withShelf(direction, 20), quick);
  const found = ranking?.overhangs.filter((o) => o.plate === "shelf") ?? [];

  test("is found with its length, mass and mode", () => {
    expect(found.map((o) => o.direction)).toEqual([direction]);
    const [o] = found;
    expect(o.length).toBeCloseTo(0.09, 9);
    expect(o.flagged).toBe(true);
    // 90 x 36 x 1.5 mm of 2700 kg/m3 and the weight
    expect(o.mass).toBeCloseTo(0.09 * 0.036 * 1.5e-3 * 2700 + 0.02, 6);
    // by hand: 3 E I/L^3 of 75 mm is 5.0 N/mm, under the weight and 0.24 of the strip: 73 Hz
    expect(o.frequency).toBeGreaterThan(60);
    expect(o.frequency).toBeLessThan(85);
    expect(o.text).toContain(`to the ${direction}`);
    expect(o.text).toContain("90 mm");
    expect(o.text).toContain("60 times its 1.5 mm thickness");
  });

  test("rules out the candidate on it, and only that one", () => {
    const out = ranking?.candidates.find((c) => c.candidate.name === "out");
    // at some 73 Hz the shelf is in reach of the rate loop as well
    const reasons = ["cantilevered", "in the control band"];
    expect(out?.flags.filter((f) => f.hard).map((f) => f.kind)).toEqual(reasons);
    const middle = ranking?.candidates.find((c) => c.candidate.name === "middle");
    expect(middle?.flags.some((f) => f.hard)).toBe(false);
    expect(ranking?.candidates.find((c) => !c.found)).toBe(middle);
    expect(ranking?.verdict.sentences.join(" ")).toContain('"out" (cantilevered; ');
  });
});
