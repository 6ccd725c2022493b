/** The diagram of lever arms against the closed form tan(tilt) = rate^2 distance/g. */

import { describe, expect, test } from "vitest";
import { leverFigure, placeTiltWords, rings } from "../../src/report/lever-figure.ts";
import { labelled } from "../../src/report/place-names.ts";
import { fixture, HOSTILE, withoutMotors } from "./fixture.ts";

const analysed = fixture();
const figure = leverFigure(analysed)!;
const RATE = (200 * Math.PI) / 180;
const DEGREE = Math.PI / 180;
const radius = (tilt: number, rate = RATE) => (1e3 * 9.80665 * Math.tan(tilt)) / rate ** 2;

interface Note {
  readonly text: string;
  readonly showarrow: boolean;
  readonly x: number;
  readonly y: number;
  readonly ax: number;
  readonly ay: number;
}
const notes = figure.layout.annotations as Note[];

describe("the rings", () => {
  test("have the exact radii of their tilts, not those of small angles", () => {
    const all = rings(RATE, 3 * DEGREE, 1000);
    expect(all.some((r) => r.tilt > 0.3)).toBe(true);
    for (const r of all) expect(r.radius).toBeCloseTo(radius(r.tilt), 6);
    const [outer] = all.slice(-1);
    expect(outer.radius / radius(1 * DEGREE)).toBeGreaterThan(1.02 * (outer.tilt / DEGREE));
  });

  test("keep the rule of thumb's, and leave out what would lie on another or outside", () => {
    const all = rings(RATE, 1.1 * DEGREE, 40);
    expect(all.filter((r) => r.rule).map((r) => r.tilt)).toEqual([1.1 * DEGREE]);
    for (const r of all) expect(r.radius).toBeLessThanOrEqual(40);
    expect(all.map((r) => Math.round(r.tilt / DEGREE))).not.toContain(1 + 4);
    expect(all.filter((r) => Math.abs(r.tilt - DEGREE) < 1e-9)).toEqual([]);
  });

  test("of a craft that does not yaw are none", () => {
    expect(rings(0, DEGREE, 100)).toEqual([]);
  });

  test("are drawn as circles with their tilts", () => {
    const ring = figure.traces.find((t) => t.name?.includes("rule of thumb"))!;
    expect(ring.name).toBe("1\u00a0degree of false tilt, the rule of thumb");
    for (const [i, x] of ring.x!.entries()) {
      expect(Math.hypot(x!, ring.y[i]!) / radius(DEGREE)).toBeCloseTo(1, 2);
    }
    expect(new Set(figure.traces.slice(0, 3).map((t) => t.line?.dash)).size).toBe(2);
  });
});

describe("the places", () => {
  // 5.2 mm from it, behind and ahead on the left, and 70.1 mm behind.
  const POINTS = [
    [-4.25, -3],
    [-4.25, 3],
    [0, -70.1],
  ];
  const marks = figure.traces.filter((t) => t.customdata !== undefined);

  test("stand right and ahead of the centre of gravity by the ranking's lever arms", () => {
    const points = marks.flatMap((t) => t.x!.map((x, i) => [x, t.y[i]]));
    expect(points).toEqual(POINTS);
  });

  test("have an arrow from the centre of gravity each, and their numbers", () => {
    const arrows = notes.filter((n) => n.showarrow);
    expect(arrows.map((n) => [n.ax, n.ay, n.x, n.y])).toEqual(POINTS.map((p) => [0, 0, ...p]));
    for (const label of ["1a", "1b", "3"]) {
      expect(notes.map((n) => n.text)).toContain(label);
    }
  });

  test("at one spot share a mark and its words", () => {
    const ranking = analysed.ranking!;
    const [one, two, last] = ranking.candidates;
    const candidates = [one, { ...two, leverArm: one.leverArm }, last];
    const shared = leverFigure({ ranking: { ...ranking, candidates } })!;
    const words = shared.traces.flatMap((t) => t.customdata ?? []).map(String);
    expect(words.map((w) => w.split("<br>").length)).toEqual([2, 1]);
    const texts = (shared.layout.annotations as Note[]).map((n) => n.text);
    expect(texts).toContain("1a, 1b");
  });

  test("to avoid have a mark of another shape", () => {
    expect(marks.map((t) => [t.marker?.symbol, t.x?.length])).toEqual([
      ["circle", 2],
      ["x", 1],
    ]);
  });

  test("say in words which side looks low, names as they are", () => {
    const [, , third] = labelled(analysed.ranking!.candidates);
    expect(placeTiltWords(third)).toBe(
      `3: ${HOSTILE.third}: 70 mm behind the centre of gravity; in a steady yaw of 200 deg/s it reads 4.98 degrees nose up`,
    );
    expect(marks[1].customdata?.[0]).not.toContain("<script");
  });

  test("are drawn to one scale, front at the top", () => {
    const { xaxis, yaxis } = figure.layout as Record<string, Record<string, unknown>>;
    expect([yaxis.scaleanchor, yaxis.scaleratio]).toEqual(["x", 1]);
    expect(xaxis.range).toEqual(yaxis.range);
    expect((yaxis.range as number[])[1]).toBeGreaterThan(70.1);
  });

  test("need a ranking", () => {
    expect(leverFigure(withoutMotors())).toBeUndefined();
  });
});
