import { runInNewContext } from "node:vm";
import { describe, expect, test } from "vitest";
import { spreadPower } from "../../src/excitation/spread.ts";
import { campbellData } from "../../src/report/campbell.ts";
import { CHART_TOOLS } from "../../src/report/chart-tools.ts";
import { modeBands, modePoints } from "../../src/report/client/mode-bands.ts";
import { LIGHT } from "../../src/report/palette.ts";
import { clientScript } from "../../src/report/script.ts";
import { passedTotal, spectraData, spectrumCurves } from "../../src/report/spectra.ts";
import { spectraSection } from "../../src/report/spectra-section.ts";
import { peak } from "../../src/report/spectra-words.ts";
import { plainTicks } from "../../src/report/ticks.ts";
import { fixture } from "./fixture.ts";

const analysed = fixture();
const excitation = analysed.excitation!;
const ranking = analysed.ranking!;

describe("the spectra", () => {
  const data = spectraData(analysed)!;
  const { placeFigure, allPlacesFigure, sweepFigure } = CHART_TOOLS;

  test("hold the grid of speeds in rpm, the orders and the places with styles of their own", () => {
    expect(data.rpm.map(Math.round)).toEqual([7500, 24_000]);
    expect(data.orders.map((o) => o.multiple)).toEqual([1, 3]);
    expect(new Set(data.places.map((p) => `${p.colour} ${p.dash}`)).size).toBe(3);
    expect(data.places[0].name).toBe("1a: &lt;/script&gt;&lt;b&gt;bold&lt;/b&gt;");
  });

  test.each(["gyro", "accel"] as const)(
    "at a place are the orders and their sum, of the %s, with the motors' spread",
    (quantity) => {
      for (const [i, { passed }] of ranking.candidates.entries()) {
        const { traces } = placeFigure(data, quantity, i, 500, CHART_TOOLS);
        const [total, ...orders] = traces;
        const expected = passedTotal(excitation, passed, quantity);
        total.y.forEach((y, s) => {
          expect(y! / expected[s]).toBeCloseTo(1, 2);
        });
        passed.forEach((p, o) => {
          const own = spreadPower(excitation.grid, p[quantity], excitation.motorSpread);
          orders[o].y.forEach((y, s) => {
            expect(y! / Math.sqrt(own[s])).toBeCloseTo(1, 2);
          });
        });
        total.y.forEach((y, s) => {
          const sum = passed.reduce((t, _, o) => t + orders[o].y[s]! ** 2, 0);
          expect(y! ** 2 / sum).toBeCloseTo(1, 9);
        });
        expect(total.x!.map((x) => Math.round(x!))).toEqual(
          Array.from(excitation.grid, (w) => Math.round((w * 30) / Math.PI)),
        );
      }
    },
  );

  test("of all places are the same totals, of those to be seen", () => {
    const all = allPlacesFigure(data, "gyro", [true, false, true], 500, CHART_TOOLS);
    expect(all.traces.length).toBe(3); // and the flight
    const own = placeFigure(data, "gyro", 2, 500, CHART_TOOLS).traces[0];
    all.traces[1].y.forEach((y, s) => {
      expect(y! / own.y[s]!).toBeCloseTo(1, 9);
    });
  });

  test("have labels at the ends of their lines that do not lie on each other", () => {
    const { layout } = placeFigure(data, "gyro", 0, 500, CHART_TOOLS);
    const notes = layout.annotations as { text: string; y: number }[];
    const ends = notes.filter((n) => /all together|per turn/.test(n.text));
    expect(ends.map((n) => n.text)).toEqual(["all together", "once per turn", "3 per turn"]);
    const { range } = layout.yaxis as { range: number[] };
    const pixels = ends.map((n) => ((n.y - range[0]) / (range[1] - range[0])) * 0.86 * (500 - 96));
    pixels.sort((a, b) => a - b);
    for (const [i, p] of pixels.slice(1).entries()) expect(p - pixels[i]).toBeGreaterThan(15);
  });

  test("keep names out of templates, which have signs of their own", () => {
    for (const t of placeFigure(data, "gyro", 0, 500, CHART_TOOLS).traces) {
      expect(t.hovertemplate).not.toContain("bold");
    }
  });

  test("as a map are in decibels of a density, within the scale", () => {
    const { traces } = sweepFigure(data, "gyro", 2, "dark", 500, CHART_TOOLS);
    const heat = traces[0] as unknown as {
      z: number[][];
      zmin: number;
      zmax: number;
      x: number[];
      y: number[];
    };
    const highest = Math.max(...heat.z.flat());
    expect(highest).toBeLessThanOrEqual(heat.zmax);
    expect(highest).toBeGreaterThan(heat.zmax - 10);
    expect(Math.min(...heat.z.flat())).toBe(heat.zmin);
    // The loudest spot lies on the first order where it passes the made-up resonance at 13 800 rpm.
    const row = heat.z.findIndex((r) => r.includes(highest));
    const order = heat.y[row] / (heat.x[heat.z[row].indexOf(highest)] / 60);
    expect(order).toBeCloseTo(1, 1);
  });

  test("are drawn alike by the functions cut out of their modules", () => {
    const script = clientScript();
    const tools = script.slice(script.indexOf("const tools"), script.indexOf("const starters"));
    const program = `const __name = (f) => f; ${tools}
      JSON.stringify([
        tools.placeFigure(data, "gyro", 1, 500, tools),
        tools.allPlacesFigure(data, "accel", [true, true, false], 500, tools),
        tools.sweepFigure(data, "gyro", 0, "light", 500, tools).traces[0].z[40],
        tools.modePoints(campbell),
        tools.modeBands(campbell, [3]),
        tools.fittedLayout(campbell.figure, { theme, narrow: true, text: 1 }, { clientWidth: 358, clientHeight: 500 }, tools, { wideOnly: "wide only", touch: true }),
      ])`;
    const campbell = campbellData(analysed)!;
    const made = runInNewContext(program, { data, campbell, theme: { ...LIGHT } });
    const t = CHART_TOOLS;
    const sweep = sweepFigure(data, "gyro", 0, "light", 500, t).traces[0] as unknown as {
      z: number[][];
    };
    const narrow = t.fittedLayout(
      campbell.figure,
      { theme: LIGHT, narrow: true, text: 1 },
      { clientWidth: 358, clientHeight: 500 },
      t,
      { wideOnly: "wide only", touch: true },
    );
    expect(JSON.parse(String(made))).toEqual(
      JSON.parse(
        JSON.stringify([
          placeFigure(data, "gyro", 1, 500, t),
          allPlacesFigure(data, "accel", [true, true, false], 500, t),
          sweep.z[40],
          modePoints(campbell),
          modeBands(campbell, [3]),
          narrow,
        ]),
      ),
    );
    // What narrow charts leave out, and what a finger must not do.
    const notes = narrow.annotations as { text: string }[];
    expect(notes.map((n) => n.text)).not.toContain("lowest");
    expect(narrow.dragmode).toBe(false);
    const ticks = (narrow.xaxis as { tickvals: number[] }).tickvals;
    for (const [i, v] of ticks.slice(1).entries()) {
      // 358 pixels less the margins for a factor of 3.4
      expect(
        (Math.log(v / ticks[i]) / Math.log((24_000 / 7500) * 1.03 ** 2)) * 238,
      ).toBeGreaterThan(53);
    }
  });

  test("leave zero out of a logarithmic axis", () => {
    const candidates = ranking.candidates.map((c) => ({
      ...c,
      passed: c.passed.map((p) => ({ ...p, gyro: p.gyro.map(() => 0) })),
    }));
    const silent = spectraData({ ...analysed, ranking: { ...ranking, candidates } })!;
    const figure = placeFigure(silent, "gyro", 0, 500, CHART_TOOLS);
    expect(figure.traces[0].y.every((v) => v === null)).toBe(true);
    const axis = figure.layout.yaxis as { range: number[] };
    expect(axis.range.every(Number.isFinite)).toBe(true);
    const { traces } = sweepFigure(silent, "gyro", 0, "light", 500, CHART_TOOLS);
    const { z } = traces[0] as unknown as { z: number[][] };
    expect(z.flat().every(Number.isFinite)).toBe(true);
  });

  test("say of each place the peak, hover, and the order that makes most", () => {
    expect(data.gyro.findings[0]).toMatch(
      /at most \S+\sdeg\/s rms, at 13\s900\srpm, 80\s% of its power from what pushes once per turn; in hover/,
    );
    expect(data.gyro.mapFindings[0]).toContain(
      "has the highest density at 232\u00a0Hz, where mode 2 is (arms flap",
    );
    expect(data.accel.findings[0]).toContain("g rms");
    expect(data.gyro.finding).toContain("The best place");
  });

  test("keep the best, the last and the drawn place of many", () => {
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
    const values = excitation.grid.map((_, i) => (i === 7 ? 3 : 1));
    expect(peak(excitation, values)).toEqual({ at: 7, speed: excitation.grid[7], value: 3 });
  });
});
