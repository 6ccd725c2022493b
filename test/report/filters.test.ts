import { describe, expect, test } from "vitest";
import { filtersFigure, WAYS } from "../../src/report/filters-figure.ts";
import { filtersFinding, filtersSection } from "../../src/report/filters-section.ts";
import { fixture, HOSTILE, withoutMotors } from "./fixture.ts";
import { tableRows, text } from "./text.ts";

const analysed = fixture();
const ranking = analysed.ranking!;

describe("the bars", () => {
  const figure = filtersFigure(analysed)!;

  test("are as long as the ranking's delays, in ms", () => {
    for (const [k, { key }] of WAYS.entries()) {
      const delays = ranking.candidates.map((c) => c.filter[key]);
      expect(figure.traces[k].x).toEqual(
        delays.map((b) => (b.attainable ? Number((1e3 * b.delay).toPrecision(3)) : 0)),
      );
    }
  });

  test("carry their figures, or why there is none", () => {
    expect(figure.traces.map((t) => t.text)).toEqual([
      ["2.1\u00a0ms", "2.34\u00a0ms", " out of reach"],
      ["1.2\u00a0ms", " none needed", "5.5\u00a0ms"],
    ]);
  });

  test("lie side by side, first place on top, told apart without colour", () => {
    const [alone, notched] = figure.traces;
    expect(alone.y).toEqual([0, 1, 2]);
    expect(alone.offset! + alone.width!).toBeLessThanOrEqual(notched.offset!);
    const { range } = figure.layout.yaxis as { range: number[] };
    expect(range[0]).toBeGreaterThan(range[1]);
    expect(figure.traces.map((t) => "pattern" in t.marker!)).toEqual([false, true]);
    const { range: along } = figure.layout.xaxis as { range: number[] };
    expect(along[1]).toBeGreaterThan(5.5);
  });

  test("name places as they are, whole in the labels and cut beside the bars", () => {
    const { ticktext } = figure.layout.yaxis as { ticktext: string[] };
    expect(ticktext[0]).toBe("1a: &lt;/script&gt;&lt;b&gt;bold&lt;/b&gt;");
    expect(ticktext[2]).toBe("3: &lt;!--&lt;script&gt;javascri…");
    expect(figure.traces[0].customdata?.[0]).toBe(
      "1a: &lt;/script&gt;&lt;b&gt;bold&lt;/b&gt;, low-pass alone: low-pass of 2nd order at 120\u00a0Hz: 2.1\u00a0ms, leaves 0.95\u00a0deg/s rms",
    );
    expect(figure.traces[1].customdata?.[2]).toContain(
      "low-pass of 4th order at 61.5\u00a0Hz and notches at once per turn, 3 per turn: 5.5\u00a0ms",
    );
    expect(figure.traces[0].customdata?.[2]).toContain("out of reach: even low-pass of 4th order");
    expect(figure.narrowAxis).toEqual({ ticktext: ["1a", "1b", "3"] });
  });

  test("are those of the places with spectra where there are many", () => {
    const [one] = ranking.candidates;
    const many = Array.from({ length: 40 }, (_, i) => ({
      ...one,
      place: i + 1,
      candidate: { ...one.candidate, designed: i === 0 },
    }));
    const crowded = { ...analysed, ranking: { ...ranking, candidates: many } };
    expect(filtersFigure(crowded)?.traces[0].y.length).toBeLessThan(20);
    const section = filtersSection(crowded)!;
    expect(text(section)).toContain("of the 40 places; the table has all");
    expect(tableRows(section).length).toBe(40);
  });
});

describe("the section", () => {
  const section = filtersSection(analysed)!;

  test("has a row for every place: chain, delay and what is left, without and with notches", () => {
    const rows = tableRows(section);
    expect(rows.map((r) => r.slice(1))).toEqual([
      [
        "low-pass of 2nd order at 120 Hz",
        "2.1 ms the least 22.7 degrees 99 %: 2.31 ms",
        "0.95 most: once per turn",
        "notches once per turn",
        "1.2 ms +1.20 ms 13 degrees 99 %: 1.32 ms",
        "0.95 most: once per turn",
      ],
      [
        "low-pass of 1st order at 111 Hz",
        "2.34 ms +0.24 ms 25.3 degrees 99 %: 2.57 ms",
        "0.95 most: once per turn",
        "none",
        "none needed the least",
        "0.95 most: the chip’s noise",
      ],
      [
        "low-pass of 4th order at 31 Hz",
        "out of reach",
        "3.21 most: once per turn",
        "low-pass of 4th order at 61.5 Hz; notches once per turn, 3 per turn",
        "5.5 ms +5.50 ms 59.4 degrees 99 %: 6.05 ms",
        "0.95 most: once per turn",
      ],
    ]);
  });

  test("says from where to where the delays go", () => {
    expect(filtersFinding(ranking)).toBe(
      `Low-pass alone: from 2.1\u00a0ms at “${HOSTILE.best}” to 2.34\u00a0ms at “${HOSTILE.second}”; at 1 of 3 it is out of reach. With notches: from nothing at “${HOSTILE.second}” to 5.5\u00a0ms at “${HOSTILE.third}”.`,
    );
    const [one] = ranking.candidates;
    expect(filtersFinding({ candidates: [one, one] })).toBe(
      "Low-pass alone: 2.1\u00a0ms at every place. With notches: 1.2\u00a0ms at every place.",
    );
    expect(filtersFinding({ candidates: [one] })).toBe(
      "Low-pass alone: 2.1\u00a0ms. With notches: 1.2\u00a0ms.",
    );
    const lost = {
      ...one,
      filter: { ...one.filter, with: { ...one.filter.with, attainable: false } },
    };
    expect(filtersFinding({ candidates: [lost, lost] })).toContain(
      "With notches, no place comes down to that.",
    );
  });

  test("is left out without a ranking", () => {
    expect(filtersSection(withoutMotors())).toBeUndefined();
    expect(filtersFigure(withoutMotors())).toBeUndefined();
  });
});
