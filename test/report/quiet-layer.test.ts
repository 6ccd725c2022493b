/** The quiet map in the picture of the verdict. */

import { describe, expect, test } from "vitest";
import { cellsBetween } from "../../src/ranking/cells.ts";
import type { MapPlace } from "../../src/ranking/types.ts";
import { nearest, weightsAt } from "../../src/report/field.ts";
import { QUANTITIES } from "../../src/report/map-quantities.ts";
import { shareOf, tickWords, tileColour, tileSide, valueAt } from "../../src/report/map-scale.ts";
import { quietLayers, quietMapLayer, scaleOf } from "../../src/report/quiet-layer.ts";
import type { Analysed } from "../../src/report/types.ts";
import { mapFinding, planFigure } from "../../src/report/verdict-picture.ts";
import { fixture, withoutMotors } from "./fixture.ts";
import { text } from "./text.ts";

const analysed = fixture();
const ranking = analysed.ranking!;
const { places } = ranking.map;

function withPlaces(changed: readonly MapPlace[]): Analysed {
  return { ...analysed, ranking: { ...ranking, map: { pitch: 0.01, places: changed } } };
}

/** Tiles of the layer: colour, and sides in mm. */
function tiles(of: Analysed) {
  const paths = quietMapLayer(of).html.matchAll(/<path fill="(#[0-9a-f]{6})" d="([^"]+)"/g);
  return Array.from(paths).flatMap(([, colour, d]) =>
    Array.from(d.matchAll(/M([-\d.]+) ([-\d.]+)h([-\d.]+)v([-\d.]+)h/g), ([, x, y, w, h]) => ({
      colour,
      middle: [Number(x) + Number(w) / 2, Number(y) + Number(h) / 2],
      side: Number(w),
    })),
  );
}

describe("between the places", () => {
  const known = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 0, y: 20 },
  ];

  test("weights add up to one and are a place's own on it", () => {
    for (const [x, y] of [
      [3, 4],
      [-50, 7],
      [5, 0],
    ]) {
      const w = weightsAt(known, x, y);
      expect(w.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
      expect(Math.min(...w)).toBeGreaterThanOrEqual(0);
    }
    expect(Array.from(weightsAt(known, 10, 0))).toEqual([0, 1, 0]);
    // Distances 1 and 2: inverse fourth powers are as 16 to 1.
    const [a, b] = weightsAt(known.slice(0, 2), 10 / 3, 0);
    expect(a / b).toBeCloseTo(16, 9);
  });

  test("the nearest is found, and cells fill their bounds", () => {
    expect(nearest(known, 7, 1)).toBe(1);
    expect(nearest([], 0, 0)).toBe(-1);
    expect(cellsBetween(-3, 3, 2.1)).toEqual({ each: 2, middles: [-2, 0, 2] });
    expect(cellsBetween(0, 1, 50).middles).toEqual([0.5]);
  });
});

describe("the scale", () => {
  test("has equal steps for equal ratios of levels, for equal differences of the rest", () => {
    const levels = { low: 10, high: 40, byRatio: true };
    expect([10, 20, 40].map((v) => shareOf(v, levels))).toEqual([0, 0.5, 1]);
    expect(tickWords(levels)).toEqual(["10", "14", "20", "28", "40"]);
    const plain = { low: 0, high: 4, byRatio: false };
    expect([0, 1, 9].map((v) => shareOf(v, plain))).toEqual([0, 0.25, 1]);
    for (const s of [levels, plain]) expect(shareOf(valueAt(0.3, s), s)).toBeCloseTo(0.3, 12);
    expect(tickWords({ low: 3, high: 3, byRatio: false })).toEqual(["", "", "3", "", ""]);
  });

  test("does not make much of differences below 3 dB", () => {
    const alike = places.map((p, i) => ({ ...p, gyro: i === 0 ? 11 : 10 }));
    expect(scaleOf(alike, QUANTITIES[0])).toEqual({
      low: 10,
      high: 10 * Math.SQRT2,
      byRatio: true,
    });
    const far = places.map((p, i) => ({ ...p, gyro: i === 0 ? 30 : 10 }));
    expect(scaleOf(far, QUANTITIES[0])).toEqual({ low: 10, high: 30, byRatio: true });
  });
});

describe("the picture", () => {
  test("has tiles of the value at a place in colour and in size", () => {
    const drawn = tiles(analysed);
    expect(drawn.length).toBeGreaterThan(100);
    const scale = scaleOf(places, QUANTITIES[0]);
    const [x0] = drawn.map((t) => t.side).sort((a, b) => b - a);
    for (const p of places.filter((q) => Math.abs(q.y) < 1e-9)) {
      // Left is left, the front is up.
      const away = drawn.map((t) => Math.hypot(t.middle[0] + 1e3 * p.y, t.middle[1] + 1e3 * p.x));
      const tile = drawn[away.indexOf(Math.min(...away))];
      const share = shareOf(p.gyro, scale);
      expect(Math.abs(tile.side / x0 - tileSide(share) / tileSide(1))).toBeLessThan(0.08);
      if (share === 0 || share === 1) expect(tile.colour).toBe(tileColour(share));
    }
  });

  test("outlines where the stack fits, and nothing where it fits everywhere or nowhere", () => {
    const edge = (of: Analysed) =>
      /class="free-edge" d="([^"]*)"/.exec(quietMapLayer(of).html)?.[1];
    expect(edge(analysed)).toMatch(/^(M\S+ \S+[hv]\S+?)+$/);
    expect(edge(withPlaces(places.map((p) => ({ ...p, inTheWay: "an arm" }))))).toBeUndefined();
  });

  test("says which plate it shows, where it is quiet, and what the best place reads", () => {
    expect(quietLayers(analysed).map((l) => l.plate.name)).toEqual([places[0].plate]);
    expect(mapFinding(analysed)).toMatch(
      /least 1\.5.deg\/s rms at .*most 5\.6.deg\/s rms at .*best place/,
    );
    const words = text(planFigure(analysed));
    expect(words).toContain("deg/s rms");
    expect(words).toContain("Shown: the plate");
    expect(words).toContain("could sit as well");
    expect(planFigure(analysed).html).toContain('class="best-box"');
  });

  test("is the plain frame without a map", () => {
    expect(quietLayers(withPlaces([]))).toEqual([]);
    expect(quietMapLayer(withoutMotors()).html).toBe("");
    expect(planFigure(withoutMotors()).html).not.toContain("tile-scale");
    expect(planFigure(withoutMotors()).html).not.toContain("best-box");
  });
});
