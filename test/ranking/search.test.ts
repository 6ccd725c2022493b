/** The map of places and the closer look around its best, with made-up readings. */

import { describe, expect, test } from "vitest";
import type { FrameFile } from "../../src/frame/types.ts";
import { buildModel } from "../../src/model/build.ts";
import type { Candidate, Model } from "../../src/model/types.ts";
import type { Assessed } from "../../src/ranking/assess.ts";
import { findPlaces } from "../../src/ranking/candidates.ts";
import { keptPlaces } from "../../src/ranking/kept.ts";
import { search } from "../../src/ranking/search.ts";
import { crossSections, frameOf } from "../modes/toys.ts";
import { onMaterial } from "./on-material.ts";

type Sections = Record<string, Record<string, object>>;
const sections = crossSections() as Sections;
/** Nobody drills more exactly, m. */
const FINEST = 2e-3;

interface Frame {
  readonly file: FrameFile;
  readonly model: Model;
}

function frame(plate: object = {}, more: object = {}): Frame {
  const hub = { ...sections.plates.hub, ...plate };
  const file = frameOf({ ...sections, plates: { hub }, candidates: {}, ...more });
  return { file, model: buildModel(file) };
}

/** Places as they are, without readings. */
const unread = (places: readonly Candidate[]) =>
  places.map((candidate) => ({ candidate }) as unknown as Assessed);

type Cost = (x: number, y: number) => number;

/** Runs the search for the least of a cost over x and y in mm, and keeps all places it looked at. */
function lookFor({ file, model }: Frame, cost: Cost, options = {}) {
  const seen: Candidate[] = [];
  const read = (places: readonly Candidate[]) => {
    seen.push(...places);
    return unread(places);
  };
  const of = ({ candidate }: Assessed) => cost(candidate.x * 1e3, candidate.y * 1e3);
  return { ...search(file, model, read, of, options), seen, of };
}

/** A round bowl, a long one turned by some 20 degrees, and one with a second, shallower hollow. */
const BOWLS: readonly { name: string; at: readonly [number, number]; cost: Cost }[] = [
  { name: "round", at: [13.7, -5.3], cost: (x, y) => (x - 13.7) ** 2 + (y + 5.3) ** 2 },
  {
    name: "long and turned",
    at: [-17.3, 8.1],
    cost: (x, y) => {
      const [u, v] = [x + 17.3, y - 8.1];
      return (0.94 * u + 0.34 * v) ** 2 + 4 * (0.94 * v - 0.34 * u) ** 2;
    },
  },
  {
    name: "of two hollows",
    at: [-30.4, 11.2],
    cost: (x, y) => {
      const hollow = (a: number, b: number) => Math.exp(-((x - a) ** 2 + (y - b) ** 2) / 200);
      return -hollow(-30.4, 11.2) - 0.8 * hollow(28, -9);
    },
  },
];

describe.each(BOWLS)("a bowl, $name", ({ at, cost }) => {
  const plain = frame();
  const found = lookFor(plain, cost);

  // steps are halved while they stay above the finest
  test("its bottom is found to within twice the finest step", () => {
    const { x, y } = found.best[0].candidate;
    expect(Math.abs(x * 1e3 - at[0])).toBeLessThanOrEqual(2 * FINEST * 1e3);
    expect(Math.abs(y * 1e3 - at[1])).toBeLessThanOrEqual(2 * FINEST * 1e3);
  });

  test("a closer look never ends worse than the map", () => {
    const least = Math.min(...found.map.map(found.of));
    expect(found.of(found.best[0])).toBeLessThanOrEqual(least);
    const costs = found.best.map(found.of);
    expect(costs).toEqual([...costs].sort((a, b) => a - b));
    expect(costs.length).toBeGreaterThan(0);
    expect(costs.length).toBeLessThanOrEqual(3);
  });

  test("every place it looks at has its pattern on the plate", () => {
    expect(found.seen.length).toBeGreaterThan(found.map.length);
    expect(found.seen.filter((c) => !onMaterial(plain.model, c)).map((c) => c.name)).toEqual([]);
  });

  test("again it looks at the same places in the same order", () => {
    expect(lookFor(plain, cost).seen).toEqual(found.seen);
  });
});

test("a bottom that lies off the plate is looked for as near as the pattern fits", () => {
  // 30 mm pattern with 6 mm heads on 120 x 80 mm: no further than 42 and 22
  const { best } = lookFor(frame(), (x, y) => (x - 80) ** 2 + (y - 3) ** 2);
  const [x, y] = [best[0].candidate.x * 1e3, best[0].candidate.y * 1e3];
  expect(x).toBeLessThan(42 + 1e-6);
  expect(x).toBeGreaterThan(42 - 2);
  expect(Math.abs(y - 3)).toBeLessThanOrEqual(2);
});

test("places to avoid are left, however good they look beside others to avoid", () => {
  const cost: Cost = (x, y) => (x > 0 ? Number.POSITIVE_INFINITY : (x - 30) ** 2 + y ** 2);
  const { best, of } = lookFor(frame(), cost);
  expect(of(best[0])).toBeLessThan(Number.POSITIVE_INFINITY);
  expect(best[0].candidate.x).toBeLessThanOrEqual(0);
  expect(best[0].candidate.x).toBeGreaterThan(-2e-3);
});

test("where every place is to be avoided the map is still there", () => {
  const { map, best, of } = lookFor(frame(), () => Number.POSITIVE_INFINITY);
  expect(map.length).toBeGreaterThan(20);
  expect(best.map(of).every((c) => c === Number.POSITIVE_INFINITY)).toBe(true);
});

const rectangle = (x: number, y: number) => ({
  outline: [
    [x, y],
    [-x, y],
    [-x, -y],
    [x, -y],
  ],
});

describe("small plates", () => {
  const onSmall = (half: number) => {
    const { stack: _, arms: __, propulsion: ___, ...rest } = sections;
    const hub = { ...sections.plates.hub, ...rectangle(half, half) };
    const file = frameOf({ ...rest, plates: { hub }, candidates: {} });
    return { file, model: buildModel(file) };
  };

  test("with room for the plain board in one place only", () => {
    // pattern 20 mm and heads of 6 mm: 26 mm
    const found = lookFor(onSmall(13), (x, y) => x + y);
    expect(found.map.map((p) => [p.candidate.x, p.candidate.y])).toEqual([[0, 0]]);
    expect(found.best).toEqual(found.map);
    expect(keptPlaces([], found, found.of, () => false)).toEqual(found.map);
  });

  test("with room for none", () => {
    const found = lookFor(onSmall(12.9), (x, y) => x + y);
    expect([found.map, found.best]).toEqual([[], []]);
    expect(keptPlaces([], found, found.of, () => false)).toEqual([]);
  });
});

describe("how many places", () => {
  const { file, model } = frame(rectangle(200, 150));
  const key = ({ x, y }: Candidate) => `${Math.round(x * 1e7)},${Math.round(y * 1e7)}`;

  test.each([10, 37, 150, 600])("%d at most, as regular as they come", (most) => {
    const { pitch, places } = findPlaces(file, model, most);
    expect(places.length).toBeLessThanOrEqual(most);
    // a pitch 1.25 times as wide has 0.64 of the places, or a little less at the edge
    expect(places.length).toBeGreaterThan(0.4 * most);
    const xs = [...new Set(places.map((c) => Math.round(c.x * 1e7)))].sort((a, b) => a - b);
    xs.slice(1).forEach((x, i) => {
      expect((x - xs[i]) / (pitch * 1e7)).toBeCloseTo(1, 4);
    });
    const all = new Set(places.map(key));
    expect(all.size).toBe(places.length);
    for (const { x, y } of places) {
      expect(all.has(key({ x: -x, y } as Candidate))).toBe(true);
      expect(all.has(key({ x, y: -y } as Candidate))).toBe(true);
    }
  });

  test("a pitch that is asked for is kept where there is room for so many", () => {
    // without the arms, which would be in the way
    const bare = { file, model: { ...model, arms: [] } };
    const { pitch, map } = lookFor(bare, (x, y) => x * x + y * y, { pitch: 0.01 });
    expect(pitch).toBe(0.01);
    // 2 (182/10) + 1 by 2 (132/10) + 1
    expect(map.length).toBe(37 * 27);
  });

  test("and widened where there is not", () => {
    const { pitch, places } = findPlaces(file, model, 4000, 2e-3);
    expect(places.length).toBeLessThanOrEqual(4000);
    expect(pitch).toBeGreaterThan(2e-3);
    expect(pitch).toBeLessThan(6.2e-3);
  });
});

describe("kept for the table", () => {
  const plain = frame();
  const found = lookFor(plain, BOWLS[2].cost);
  const named = (x: number, more: object = {}) =>
    unread([
      { ...found.map[0].candidate, name: `named ${x}`, x: x * 1e-3, y: 0, named: true, ...more },
    ])[0];

  test("where the file names two places or more, those and the best that was found elsewhere", () => {
    const both = [named(-10), named(10)];
    expect(found.best.length).toBeGreaterThan(1);
    expect(keptPlaces(both, found, found.of, () => false)).toEqual([...both, found.best[0]]);
  });

  test("never one that a closer look rules out; one ruled out hides nothing near it", () => {
    const both = [named(-10), named(10)];
    const [first, second] = found.best;
    expect(keptPlaces(both, found, found.of, (p) => p === first)).toEqual([...both, second]);
    const { x, y } = first.candidate;
    const shadowed = [named(x * 1e3, { y }), named(-40)];
    const kept = keptPlaces(shadowed, found, found.of, (p) => p === shadowed[0]);
    expect(kept).toEqual([...shadowed, first]);
  });

  test("nothing that is nearer than 12 mm to a named one", () => {
    const { x } = found.best[0].candidate;
    const near = [named(10), named(x * 1e3 + 5, { y: found.best[0].candidate.y })];
    const kept = keptPlaces(near, found, found.of, () => false);
    for (const k of kept.slice(2)) {
      for (const { candidate: c } of near) {
        expect(Math.hypot(k.candidate.x - c.x, k.candidate.y - c.y)).toBeGreaterThanOrEqual(0.012);
      }
    }
  });

  test("where only the place as drawn is known, ten or so at least 12 mm apart, a bad one among them", () => {
    const drawn = named(0, { designed: true });
    const kept = keptPlaces([drawn], found, found.of, () => false);
    expect(kept[0]).toBe(drawn);
    expect(kept.length).toBeGreaterThan(4);
    expect(kept.length).toBeLessThanOrEqual(11);
    expect(kept[1]).toBe(found.best[0]);
    kept.forEach((a, i) => {
      for (const b of kept.slice(i + 1)) {
        const apart = Math.hypot(a.candidate.x - b.candidate.x, a.candidate.y - b.candidate.y);
        expect(apart).toBeGreaterThanOrEqual(0.012);
      }
    });
    const costs = found.map.map(found.of).sort((a, b) => a - b);
    const worst = Math.max(...kept.slice(1).map(found.of));
    expect(worst).toBeGreaterThan(costs[Math.floor(0.6 * costs.length)]);
  });
});
