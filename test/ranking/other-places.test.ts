/** The rest of the plates: which places there are, and what is read there. */

import { describe, expect, test } from "vitest";
import { analyse } from "../../src/analyse.ts";
import { buildModel } from "../../src/model/build.ts";
import { findPlaces, patternFits } from "../../src/ranking/candidates.ts";
import { otherPlaces } from "../../src/ranking/other-places.ts";
import { hasRoom } from "../../src/ranking/room.ts";
import { canSit, type MapPlace } from "../../src/ranking/types.ts";
import { crossSections, frameOf } from "../modes/toys.ts";
import { smallCross } from "../response/joined.ts";
import { onMaterial } from "./on-material.ts";

type Sections = Record<string, Record<string, Record<string, object>>>;
const sections = crossSections() as unknown as Sections;
const PITCH = 8e-3;

/** The cross with a box on the plate, and a narrow tail behind. */
function frame() {
  const tail = [
    [60, 40],
    [-60, 40],
    [-60, 6],
    [-90, 6],
    [-90, -6],
    [-60, -6],
    [-60, -40],
    [60, -40],
  ];
  const hub = { ...sections.plates.hub, outline: tail, symmetry: "none" };
  const box = { mass: "30 g", at: [20, 0, 12], size: [30, 30, 20], on: "hub" };
  const below = { mass: "30 g", at: [20, 0, -12], size: [30, 30, 20], on: "hub" };
  return frameOf({
    ...sections,
    plates: { hub },
    candidates: {},
    bodies: { ...sections.bodies, box, below },
  });
}

describe("on a plate with boxes on it and a narrow tail", () => {
  const file = frame();
  const model = buildModel(file);
  const { places } = findPlaces(file, model, 1000, PITCH);
  const others = otherPlaces(file, model, places, 1000, PITCH);
  const [plate] = model.plates;

  test("each has its pattern on material, as large as fits", () => {
    expect(others.length).toBeGreaterThan(20);
    for (const { candidate: c, patternShare: share } of others) {
      expect(onMaterial(model, c)).toBe(true);
      if (share === undefined) continue;
      const larger = (share + 0.1) / share;
      const holes = c.holes.map(
        ([u, v]) => [c.x + larger * (u - c.x), c.y + larger * (v - c.y)] as const,
      );
      expect(patternFits(plate, { ...c, holes, footprint: larger * c.footprint })).toBe(false);
    }
  });

  test("what is in the way is named, where something is", () => {
    const taken = others.filter((o) => o.inTheWay !== undefined);
    expect(new Set(taken.map((o) => o.inTheWay))).toContain('"box"');
    for (const { candidate: c, inTheWay: way, patternShare: share } of others) {
      const free = hasRoom(file, model, plate, c.x, c.y, c.side > 0 ? "above" : "below");
      expect(free).toBe(way === undefined);
      if (way === undefined || share !== undefined) continue;
      expect(hasRoom(file, model, plate, c.x, c.y, "below")).toBe(false);
    }
  });

  test("the plate is covered, its tail too", () => {
    const all = [...places, ...others.map((o) => o.candidate)];
    const away = (x: number, y: number) =>
      Math.min(...all.map((p) => Math.hypot(p.x - x, p.y - y)));
    // Within a cell and a bit, and where at least a fifth of the pattern fits.
    for (let x = -0.084; x <= 0.055; x += 4e-3) expect(away(x, 0)).toBeLessThan(1.2 * PITCH);
    for (let y = -0.035; y <= 0.035; y += 5e-3) expect(away(0, y)).toBeLessThan(1.2 * PITCH);
    expect(others.some((o) => o.candidate.x < -0.08)).toBe(true);
  });

  test("cells widen until there are as few as wanted", () => {
    for (const most of [40, 10, 1]) {
      const fewer = otherPlaces(file, model, [], most, PITCH);
      expect(fewer.length).toBeLessThanOrEqual(most);
      expect(fewer.length).toBeGreaterThan(0);
    }
  });
});

describe("on a comb, whose rows have a place in every tooth however wide the cells are", () => {
  const TEETH = 56;
  const STEP = 12;
  const wide = TEETH * STEP;
  // A back along y with teeth 8 mm wide towards the front, which hold more than half of its length.
  const teeth = Array.from({ length: TEETH }, (_, i): [number, number][] => {
    const y = i * STEP - wide / 2;
    return [
      [-10, y],
      [60, y],
      [60, y + 8],
      [-10, y + 8],
    ];
  }).flat();
  const hub = {
    ...sections.plates.hub,
    symmetry: "none",
    outline: [...teeth, [-10, wide / 2], [-60, wide / 2], [-60, -wide / 2]],
  };
  const stack = {
    ...(sections.stack as object),
    at: [-35, 0],
    holes: { spacing: "4 mm", footprint: "3 mm" },
  };
  const file = frameOf({ ...sections, plates: { hub }, stack, candidates: {} });
  const model = buildModel(file);

  /** Fails, where it would run for ever, once the plates have been looked at very often. */
  function bounded() {
    let looks = 0;
    return new Proxy(model, {
      get(of, key: keyof typeof model) {
        if (key === "plates" && ++looks > 50_000) throw new Error("does not end");
        return of[key];
      },
    });
  }

  test.each([50, 7, 1])("there are %i places at most, from one end to the other", (most) => {
    const found = otherPlaces(file, bounded(), [], most, PITCH);
    expect(found).toHaveLength(most);
    expect(new Set(found.map((o) => o.candidate))).toHaveProperty("size", most);
    if (most < 7) return;
    const ys = found.map((o) => o.candidate.y).sort((a, b) => a - b);
    const gaps = ys.slice(1).map((y, i) => y - ys[i]);
    const [all, even] = [(TEETH * STEP) / 1e3, (TEETH * STEP) / 1e3 / most];
    expect(ys[ys.length - 1] - ys[0]).toBeGreaterThan(0.8 * all);
    expect(Math.max(...gaps)).toBeLessThan(2 * even + 1e-9);
  });
});

describe("readings", () => {
  const spot = { x: -0.04, y: 0.02 };
  const { ranking: bare } = analyse(
    smallCross({}, {}, { candidates: { here: { plate: "hub", at: [0, 0] } } }),
    {
      modes: 12,
      map: { pitch: 0.02 },
    },
  );
  const rest = bare?.map.places.filter((p) => !canSit(p)) ?? [];
  const near = (p: MapPlace) => Math.hypot(p.x - spot.x, p.y - spot.y);
  const small = rest
    .filter((p) => p.patternShare !== undefined)
    .sort((a, b) => near(a) - near(b))[0];

  test("on a smaller pattern are those of a stack that has such a pattern", () => {
    const share = small.patternShare ?? 1;
    const file = smallCross({}, {});
    const { spacing, turned, footprint } = file.stack!.holes;
    const mm = (v: number) => `${v * 1e3} mm`;
    const holes = {
      spacing: spacing.map((s) => mm(share * s)),
      turned: `${(turned * 180) / Math.PI} deg`,
      footprint: mm(share * footprint),
    };
    const at = [1e3 * small.x, 1e3 * small.y];
    const there = { plate: "hub", at, side: small.side > 0 ? "above" : "below", holes };
    const { ranking } = analyse(smallCross({}, {}, { candidates: { there } }), {
      modes: 12,
      map: { pitch: 0.04 },
    });
    const same = ranking?.candidates.find((c) => c.candidate.name === "there");
    expect(small.gyro / (same?.sensed.gyro ?? 0)).toBeCloseTo(1, 9);
    expect(small.accel / (same?.sensed.accel ?? 0)).toBeCloseTo(1, 9);
    expect(small.tilt).toBeCloseTo(same?.leverArm.reading.tilt ?? 0, 9);
  });

  test("come after those where the stack can sit, on the one map", () => {
    const places = bare?.map.places ?? [];
    const first = places.findIndex((p) => !canSit(p));
    expect(first).toBeGreaterThan(0);
    expect(places.slice(first).some(canSit)).toBe(false);
  });
});
