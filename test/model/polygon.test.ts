import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  borderDistance,
  bounds,
  clipToConvex,
  contains,
  crossingSides,
  disc,
  type Moments,
  moments,
  oriented,
  type Polygon,
  rectangle,
  strip,
  sumMoments,
} from "../../src/model/polygon.ts";

const KEYS = ["area", "x", "y", "xx", "yy", "xy"] as const;
const polygon = (...v: number[]): Polygon => Float64Array.from(v);
const reversed = (p: Polygon) =>
  Float64Array.from({ length: p.length }, (_, k) => p[p.length - 2 - k + 2 * (k % 2)]);

function expectMoments(m: Moments, expected: Partial<Moments>, digits = 13) {
  for (const [k, v] of Object.entries(expected))
    expect(m[k as keyof Moments]).toBeCloseTo(v, digits);
}

/** Around the origin, anticlockwise, seldom convex, never crossing itself. */
const star = fc
  .array(
    fc.record({
      r: fc.double({ min: 0.2, max: 2, noNaN: true }),
      turn: fc.double({ min: 0.5, max: 1, noNaN: true }),
    }),
    { minLength: 4, maxLength: 10 },
  )
  .map((spokes) => {
    const total = spokes.reduce((s, k) => s + k.turn, 0);
    let angle = 0;
    return Float64Array.from(
      spokes.flatMap(({ r, turn }) => {
        angle += (2 * Math.PI * turn) / total;
        return [r * Math.cos(angle), r * Math.sin(angle)];
      }),
    );
  });
const runs = { seed: 11, numRuns: 100 };

describe("area moments", () => {
  test("rectangle and triangle", () => {
    expectMoments(moments(rectangle(1, 2, 4, 7)), {
      area: 15,
      x: 37.5,
      y: 67.5,
      xx: ((64 - 1) / 3) * 5,
      yy: ((343 - 8) / 3) * 3,
      xy: (15 / 2) * (45 / 2),
    });
    // p! q!/(p + q + 2)!
    expectMoments(moments(polygon(0, 0, 1, 0, 0, 1)), {
      area: 1 / 2,
      x: 1 / 6,
      y: 1 / 6,
      xx: 1 / 12,
      yy: 1 / 12,
      xy: 1 / 24,
    });
  });

  test("clockwise polygons count minus; a plate less its hole", () => {
    const whole = rectangle(0, 0, 4, 4);
    const hole = reversed(rectangle(1, 1, 2, 2));
    expectMoments(moments(hole), { area: -1, x: -1.5 });
    expectMoments(sumMoments([whole, hole]), { area: 15, x: 30.5, xx: 256 / 3 - 7 / 3 });
  });

  test("moved and turned as the parallel-axis rules say", () => {
    fc.assert(
      fc.property(star, fc.double({ min: -3, max: 3, noNaN: true }), (p, d) => {
        const moved = p.map((v, i) => (i % 2 === 0 ? v + d : v));
        const [m, n] = [moments(p), moments(moved)];
        expect(n.area).toBeCloseTo(m.area, 11);
        expect(n.xx).toBeCloseTo(m.xx + 2 * d * m.x + d * d * m.area, 10);
        expect(n.xy).toBeCloseTo(m.xy + d * m.y, 10);
        // A quarter turn: (x, y) -> (-y, x).
        const turned = p.map((_, i) => (i % 2 === 0 ? -p[i + 1] : p[i - 1]));
        expect(moments(turned).xx).toBeCloseTo(m.yy, 11);
        expect(moments(turned).xy).toBeCloseTo(-m.xy, 11);
      }),
      runs,
    );
  });

  test("oriented: anticlockwise or clockwise, the same corners", () => {
    const p = polygon(0, 0, 2, 0, 1, 1);
    expect(oriented(p, 1)).toBe(p);
    expect(moments(oriented(p, -1)).area).toBe(-1);
    expect(oriented(oriented(p, -1), 1)).toEqual(p);
  });
});

describe("clipping", () => {
  test("the parts in the cells of a grid have together the moments of the whole", () => {
    fc.assert(
      fc.property(star, (p) => {
        const parts: Polygon[] = [];
        for (let i = -3; i < 3; i++)
          for (let j = -3; j < 3; j++)
            parts.push(clipToConvex(p, rectangle(0.7 * i, 0.9 * j, 0.7 * i + 0.7, 0.9 * j + 0.9)));
        const [sum, whole] = [sumMoments(parts), moments(p)];
        for (const k of KEYS) expect(sum[k]).toBeCloseTo(whole[k], 11);
      }),
      runs,
    );
  });

  test("to a turned strip: the same area whichever of two convex polygons is clipped", () => {
    const a = strip(0, 0, 0.6, 2, 1);
    const b = rectangle(0.2, -0.4, 1.3, 0.9);
    expect(moments(clipToConvex(a, b)).area).toBeCloseTo(moments(clipToConvex(b, a)).area, 13);
  });

  test("nothing in common, or all of it", () => {
    const p = rectangle(0, 0, 1, 1);
    expect(clipToConvex(p, rectangle(2, 2, 3, 3)).length).toBe(0);
    expect(clipToConvex(p, rectangle(-1, -1, 3, 3))).toEqual(p);
  });

  test("a hole keeps its sign", () => {
    const hole = reversed(rectangle(0, 0, 2, 2));
    expect(moments(clipToConvex(hole, rectangle(1, 1, 5, 5))).area).toBe(-1);
  });
});

describe("where a point is", () => {
  const L = polygon(0, 0, 3, 0, 3, 1, 1, 1, 1, 3, 0, 3);

  test("inside and outside of an L", () => {
    expect(contains(L, 0.5, 2.5)).toBe(true);
    expect(contains(L, 2.5, 0.5)).toBe(true);
    expect(contains(L, 2, 2)).toBe(false);
    expect(contains(L, -0.1, 1)).toBe(false);
  });

  test("distance to the border, from inside and outside, to sides and corners", () => {
    expect(borderDistance(L, 0.5, 2)).toBeCloseTo(0.5, 14);
    expect(borderDistance(L, 2, 2)).toBeCloseTo(1, 14);
    expect(borderDistance(L, 4, -1)).toBeCloseTo(Math.SQRT2, 14);
    expect(borderDistance(L, 3, 0.3)).toBe(0);
  });

  test("a point is inside a star when its ray from the middle is shorter than the border", () => {
    fc.assert(
      fc.property(star, (p) => {
        for (let i = 0; i < p.length; i += 2) {
          expect(contains(p, 0.999 * p[i], 0.999 * p[i + 1])).toBe(true);
          expect(contains(p, 1.001 * p[i], 1.001 * p[i + 1])).toBe(false);
        }
      }),
      runs,
    );
  });
});

describe("sides that cross", () => {
  test("a bow tie, by the numbers of its sides", () => {
    expect(crossingSides(polygon(0, 0, 2, 2, 2, 0, 0, 2))).toEqual([0, 2]);
  });

  test("a corner that touches another side", () => {
    expect(crossingSides(polygon(0, 0, 4, 0, 4, 2, 2, 0, 0, 2))).toEqual([0, 2]);
  });

  test("sides that run back over one another", () => {
    expect(crossingSides(polygon(0, 0, 4, 0, 4, 1, 3, 0, 1, 0, 0, 1))).toBeDefined();
  });

  test("none in a star, and none where three corners are on one line", () => {
    fc.assert(
      fc.property(star, (p) => {
        expect(crossingSides(p)).toBeUndefined();
      }),
      runs,
    );
    expect(crossingSides(polygon(0, 0, 1, 0, 2, 0, 3, 0, 3, 1, 0, 1))).toBeUndefined();
  });
});

describe("shapes", () => {
  test("a strip runs from the middle of one end in its direction", () => {
    const s = strip(1, 2, Math.PI / 2, 4, 2);
    expectMoments(moments(s), { area: 8, x: 8, y: 8 * 4 });
    expect(bounds(s).map((v) => Math.round(v * 1e9) / 1e9)).toEqual([0, 2, 2, 6]);
  });

  test("a disc has the circle's area and centre, whatever its number of sides", () => {
    for (const sides of [8, 12, 24]) {
      const d = disc(0.3, -0.2, 0.5, sides);
      expectMoments(moments(d), { area: Math.PI / 16, x: (0.3 * Math.PI) / 16 }, 14);
      // The second moment of the circle, pi d^4/64, to the square of the angle of a side.
      const own = moments(d).yy - 0.04 * moments(d).area;
      expect(Math.abs(own / ((Math.PI * 0.5 ** 4) / 64) - 1)).toBeLessThan(4 / sides ** 3);
    }
  });
});
