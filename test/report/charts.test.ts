import { describe, expect, test } from "vitest";
import { campbellFigure, orderLines, perTurn } from "../../src/report/campbell.ts";
import {
  campbellFinding,
  campbellSection,
  spectraSection,
} from "../../src/report/charts-sections.ts";
import type { Trace } from "../../src/report/figure.ts";
import { peak, plainTicks, spectraFigures, spectrumCurves } from "../../src/report/spectra.ts";
import type { Analysed } from "../../src/report/types.ts";
import { fixture, withoutMotors } from "./fixture.ts";

const analysed = fixture();

interface Shape {
  readonly type: string;
  readonly x0: number;
  readonly x1: number;
}

describe("the interference diagram", () => {
  const figure = campbellFigure(analysed);
  const traces = figure?.traces ?? [];
  const named = (name: string) => traces.filter((t) => t.name?.startsWith(name));
  const axes = figure?.layout as Record<"xaxis" | "yaxis", { range: number[] }>;

  test("has one line per order, through the origin with its own slope", () => {
    expect(orderLines(analysed)).toEqual([
      { order: 1, names: ["unbalance"] },
      { order: 3, names: ["blade pass", "blade-pass torque"] },
    ]);
    const [unbalance] = named("unbalance");
    const [blade] = named("blade pass, blade-pass torque");
    // Up to 6 % beyond full speed, 24 000 rpm, and to 8 % beyond the highest frequency checked, 700 Hz.
    expect([unbalance.x, unbalance.y]).toEqual([
      [0, 25_440],
      [0, 424],
    ]);
    expect([blade.x, blade.y]).toEqual([
      [0, 15_120],
      [0, 756],
    ]);
    expect([axes.xaxis.range, axes.yaxis.range]).toEqual([
      [0, 25_440],
      [0, 756],
    ]);
  });

  test("has every mode as a level line", () => {
    expect(named("mode").map((t) => t.y)).toEqual([
      [160, 160],
      [230, 230],
      [450, 450],
    ]);
  });

  test("marks the crossings, those near hover apart", () => {
    const marks = traces.filter((t) => t.mode === "markers");
    const points = (t: Trace) => t.x?.map((x, i) => [x, t.y[i]]);
    expect(marks.map(points)).toEqual([
      [[13_800, 230]],
      [
        [9000, 450],
        [9600, 160],
      ],
    ]);
    expect(new Set(marks.map((t) => t.marker?.symbol)).size).toBe(2);
  });

  test("shades the working band and hover, and marks three speeds", () => {
    const shapes = figure?.layout.shapes as Shape[];
    expect(shapes.filter((s) => s.type === "rect").map((s) => [s.x0, s.x1])).toEqual([
      [7500, 24_000],
      [9000, 11_000],
    ]);
    const lines = shapes.filter((s) => s.type === "line").map((s) => s.x0);
    expect(lines).toEqual([7500, 10_000, 24_000]);
  });

  test("names the band around hover in the figure and by its colour in words", () => {
    const notes = figure?.layout.annotations as { text: string }[];
    expect(notes.map((n) => n.text)).toContain("hover ±10\u00a0%");
    expect(campbellSection(analysed).html).toContain("narrow orange one is hover ±10\u00a0%");
  });

  test("leaves out names of modes that would lie on each other", () => {
    const modes = analysed.modes.described;
    const close = [100, 101, 102, 400].map((frequency, i) => ({
      ...modes[0],
      number: i + 1,
      frequency,
    }));
    const crowded: Analysed = { ...analysed, modes: { ...analysed.modes, described: close } };
    const notes = campbellFigure(crowded)?.layout.annotations as { text: string }[];
    expect(notes.map((n) => n.text).filter((t) => t.includes(":"))).toEqual(["1: 100", "4: 400"]);
  });

  test("says the nearest crossing in words", () => {
    const near = (analysed.ranking?.crossings ?? []).filter((c) => c.nearHover);
    expect(campbellFinding(near)).toBe(
      "2 crossings lie within 10\u00a0% of hover; the nearest: unbalance meets mode 1 (arms flap, all together, 160\u00a0Hz) at 9\u202f600\u00a0rpm, 4\u00a0% below hover.",
    );
    expect(campbellFinding([])).toContain("No force meets a mode");
  });

  test("needs motors", () => {
    expect(campbellFigure(withoutMotors())).toBeUndefined();
  });

  test("names orders in words", () => {
    expect([1, 3, 0.5].map(perTurn)).toEqual(["once per turn", "3 per turn", "0.5 per turn"]);
  });
});

describe("the spectra", () => {
  const figures = spectraFigures(analysed);

  test("have a curve per place with its own style, over the grid of speeds in rpm", () => {
    expect(figures?.x.length).toBe(60);
    expect([figures?.x[0], figures?.x.at(-1)]).toEqual([7500, 24_000]);
    const styles = figures?.gyro.traces.map((t) => `${t.line?.color} ${t.line?.dash}`);
    expect(new Set(styles).size).toBe(3);
    // The best place's last reading: 2 (24 000/10 000)^2 and the tail of the resonance.
    const tail = 1 + 6 / (1 + ((24_000 - 13_800) / 400) ** 2);
    expect(figures?.gyro.traces[0].y.at(-1)).toBeCloseTo(2 * 2.4 ** 2 * tail, 1);
    expect(figures?.accel.traces[0].y.at(-1)).toBeCloseTo(0.8 * 2.4 ** 2 * tail, 2);
  });

  test("write names so that the plot library shows them as they are", () => {
    expect(figures?.gyro.traces[0].name).toBe("&lt;/script&gt;&lt;b&gt;bold&lt;/b&gt;");
    for (const t of figures?.gyro.traces ?? []) expect(t.hovertemplate).not.toContain("bold");
  });

  test("leave zero out of a logarithmic axis", () => {
    const ranking = analysed.ranking;
    if (!ranking) throw new Error("the fixture has a ranking");
    const silent = ranking.candidates.map((c) => ({ ...c, gyroTotal: c.gyroTotal.map(() => 0) }));
    const figure = spectraFigures({ ...analysed, ranking: { ...ranking, candidates: silent } });
    expect(figure?.gyro.traces[0].y.every((v) => v === null)).toBe(true);
    const axis = figure?.gyro.layout.yaxis as { range: number[] } | undefined;
    expect(axis?.range.every(Number.isFinite)).toBe(true);
  });

  test("keep the best, the last and the drawn place of many", () => {
    const ranking = analysed.ranking;
    if (!ranking) throw new Error("the fixture has a ranking");
    const [one] = ranking.candidates;
    const many = Array.from({ length: 40 }, (_, i) => ({
      ...one,
      place: i + 1,
      candidate: { ...one.candidate, designed: i === 25 },
    }));
    const curves = spectrumCurves({ ranking: { ...ranking, candidates: many } });
    expect(curves.map((c) => c.index)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 25, 37, 38, 39]);
    expect(curves.filter((c) => c.drawn).map((c) => c.index)).toEqual([0, 1, 2, 3, 4, 5, 25, 39]);
    const section = spectraSection({ ...analysed, ranking: { ...ranking, candidates: many } });
    expect(section.html).toContain("Curves of 14 of the 40 places");
  });

  test("have ticks that are written out", () => {
    expect(plainTicks(-1, 1)).toEqual({
      tickvals: [0.1, 0.2, 0.5, 1, 2, 5, 10],
      ticktext: ["0.1", "0.2", "0.5", "1", "2", "5", "10"],
    });
    expect(plainTicks(-1.2, 3.1).tickvals).toEqual([0.1, 1, 10, 100, 1000]);
  });

  test("know their peak", () => {
    const e = analysed.excitation;
    if (!e) throw new Error("the fixture has an excitation");
    const values = e.grid.map((_, i) => (i === 7 ? 3 : 1));
    expect(peak(e, values)).toEqual({ speed: e.grid[7], value: 3 });
  });
});
