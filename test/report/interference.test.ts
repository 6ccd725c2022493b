import { describe, expect, test } from "vitest";
import type { Crossing } from "../../src/ranking/types.ts";
import { campbellData, frequencyRange } from "../../src/report/campbell.ts";
import { campbellSection } from "../../src/report/campbell-section.ts";
import { campbellFinding, orderLines, perTurn } from "../../src/report/campbell-words.ts";
import { modeBands, modePoints } from "../../src/report/client/mode-bands.ts";
import type { Trace } from "../../src/report/figure.ts";
import { drawnMode, mayBeAtHover, modesThatMatter } from "../../src/report/modes-that-matter.ts";
import type { Analysed } from "../../src/report/types.ts";
import { fixture, withoutMotors } from "./fixture.ts";
import { tableRows } from "./text.ts";

const analysed = fixture();
const excitation = analysed.excitation!;
const ranking = analysed.ranking!;

interface Shape {
  readonly type: string;
  readonly x0: number;
  readonly x1: number;
}

describe("the interference diagram", () => {
  const data = campbellData(analysed)!;
  const { figure } = data;
  const traces = figure.traces;
  const named = (name: string) => traces.filter((t) => t.name?.startsWith(name));
  const axes = figure.layout as Record<"xaxis" | "yaxis", { range: number[]; type: string }>;

  test("has one line per order, each with its own multiple, over what is flown", () => {
    expect(orderLines(analysed)).toEqual([
      { order: 1, names: ["unbalance"] },
      { order: 3, names: ["blade pass", "blade-pass torque"] },
    ]);
    for (const [name, order] of [
      ["unbalance", 1],
      ["blade pass, blade-pass torque", 3],
    ] as const) {
      const [line] = named(name);
      line.x?.forEach((x, i) => {
        expect(line.y[i]! / ((order * x!) / 60)).toBeCloseTo(1, 3);
      });
    }
    // From 7 500 to 24 000 rpm with 3 % to spare; up to 8 % beyond the highest frequency checked, 700 Hz.
    const [low, high] = axes.xaxis.range.map((v) => 10 ** v);
    expect(low * 1.03).toBeCloseTo(7500, 0);
    expect(high / 1.03).toBeCloseTo(24_000, 0);
    expect(10 ** axes.yaxis.range[1]).toBeCloseTo(756, 0);
    expect(10 ** axes.yaxis.range[0]).toBeLessThan(7500 / 60);
    expect([axes.xaxis.type, axes.yaxis.type]).toEqual(["log", "log"]);
  });

  test("has every mode as a level line that can be pointed at anywhere", () => {
    expect(named("modes")[0].y.filter((y) => y !== null)).toEqual([160, 160, 230, 230, 450, 450]);
    const points = modePoints(data);
    expect(new Set(points.y)).toEqual(new Set([160, 230, 450]));
    const first = points.x!.slice(0, points.x!.length / 3) as number[];
    expect([first[0], first.at(-1)]).toEqual([data.rpm[0], expect.closeTo(data.rpm[1], 6)]);
    points.customdata?.forEach((mode, i) => {
      expect(analysed.modes.described[Number(mode) - 1].frequency).toBe(points.y[i]);
    });
    expect(points.text?.[0]).toBe("mode 1: 160\u00a0Hz give or take 11, arms flap, all together");
    expect(points.text?.[first.length]).toContain(
      "; 62\u00a0% of the noise at 1a, 62\u00a0% at 1b",
    );
  });

  test("draws bands of 7 % for what is met near hover and what makes noise, and for no other", () => {
    const bands = named("band of mode");
    expect(bands.map((t) => t.name)).toEqual([1, 2, 3].map((m) => `band of mode ${m}`));
    bands.forEach((t, i) => {
      const f = [160, 230, 450][i];
      expect(t.y).toEqual([0.93, 0.93, 1.07, 1.07].map((k) => expect.closeTo(k * f, 1)));
    });
    // the one caused, not met near hover, has the other colour
    expect(bands.map((t) => t.fillcolor)).toEqual([
      "--cautionSoft",
      "--accentSoft",
      "--cautionSoft",
    ]);
    const crossings = ranking.crossings.filter((c) => c.mode !== 3);
    const candidates = ranking.candidates.map((c) => ({ ...c, causes: [] }));
    const fewer = { ...analysed, ranking: { ...ranking, crossings, candidates } };
    expect(modesThatMatter(fewer).map((m) => m.mode.number)).toEqual([1]);
  });

  test("draws the band of the mode that is chosen", () => {
    const { x, y } = modeBands(data, [2]);
    expect(y).toEqual(
      [0.93, 0.93, 1.07, 1.07, 0.93].map((k) => expect.closeTo(k * 230, 6)).concat([null]),
    );
    expect([x[0], x[1]]).toEqual(data.rpm);
    expect(modeBands(data, [0]).x).toEqual([]);
  });

  test("marks the crossings: may lie at hover, near it, elsewhere", () => {
    const marks = traces.filter((t) => t.mode === "markers");
    const points = (t: Trace) => t.x?.map((x, i) => [x, t.y[i]]);
    // 160 Hz at 10 000 rpm would be 166.7 Hz, 4 % off; 450 Hz would be 500 Hz, 11 % off.
    expect(marks.map(points)).toEqual([[[13_800, 230]], [[9000, 450]], [[9600, 160]]]);
    expect(new Set(marks.map((t) => `${t.marker?.symbol} ${t.marker?.color}`)).size).toBe(3);
    expect(marks.map((t) => t.customdata)).toEqual([[2], [3], [1]]);
  });

  test.each([
    [160, 1],
    [178, 1],
    [180, 1],
    [155, 1],
    [469, 3],
    [540, 3],
  ])("knows whether %d Hz may be met at hover by order %d", (frequency, order) => {
    const fromHover = (60 * frequency) / order / 10_000 - 1;
    const wanted = (order * 10_000) / 60;
    const within = wanted >= 0.93 * frequency && wanted <= 1.07 * frequency;
    expect(mayBeAtHover({ fromHover } as Crossing, 0.07)).toBe(within);
  });

  test("finds the mode that a cause is about", () => {
    const modes = analysed.modes.described;
    const cause = (frequency: number, modeName: string, mode = 5) =>
      drawnMode({ frequency, modeName, mode }, modes, 0.07)?.number;
    expect(cause(235, "")).toBe(2);
    expect(cause(300, "")).toBeUndefined();
    expect(cause(230, "", 0)).toBeUndefined();
    const twins = [{ ...modes[0], frequency: 228 }, modes[1]];
    expect(drawnMode({ frequency: 231, modeName: modes[0].name, mode: 4 }, twins, 0.07)).toBe(
      twins[0],
    );
  });

  test("shades hover, and marks three speeds", () => {
    const shapes = figure.layout.shapes as Shape[];
    expect(shapes.filter((s) => s.type === "rect").map((s) => [s.x0, s.x1])).toEqual([
      [9000, 11_000],
    ]);
    const lines = shapes.filter((s) => s.type === "line").map((s) => s.x0);
    expect(lines).toEqual([7500, 10_000, 24_000]);
    const notes = figure.layout.annotations as { text: string }[];
    expect(notes.map((n) => n.text)).toContain("hover ±10\u00a0%");
    expect(notes.map((n) => n.text)).toContain("around hover 100\u00a0%");
  });

  test("shows where the flight is spent as a ridge", () => {
    const mixed: Analysed = {
      ...analysed,
      excitation: { ...excitation, nominalWeights: excitation.grid.map((_, i) => +(i === 40)) },
    };
    const ridge = campbellData(mixed)?.figure.traces.find((t) => t.yaxis === "y2");
    expect(ridge?.y.indexOf(1)).toBe(40);
    expect(ridge?.y.filter((y) => y !== 0).length).toBe(1);
    expect(ridge?.name).toBe("the flight, “mostly hover”: 100\u00a0% around hover");
  });

  test("leaves out names of modes that would lie on each other, not those that matter", () => {
    const modes = analysed.modes.described;
    const close = [158, 159, 160, 161, 400].map((frequency, i) => ({
      ...modes[0],
      number: [11, 12, 1, 13, 14][i],
      frequency,
    }));
    const crowded: Analysed = { ...analysed, modes: { ...analysed.modes, described: close } };
    const notes = campbellData(crowded)?.figure.layout.annotations as { text: string }[];
    const labels = notes.map((n) => n.text).filter((t) => t.includes(": "));
    expect(labels).toEqual(["1: 160", "14: 400"]);
  });

  test("says what is met near hover, the lowest order by name, and where noise comes from", () => {
    expect(campbellFinding(ranking)).toMatch(
      /^Near hover forces meet 2 modes; 1 of them could lie right on it, since frequencies are known to ±7\s%\. The lowest order: unbalance meets mode 1 \(arms flap, all together, 160\sHz\) at 9\s600\srpm, 4\s% below hover\. The largest share of the noise at “.*”, 62\s%, comes where unbalance meets 230\sHz at 13\s800\srpm\.$/,
    );
    expect(campbellFinding({ ...ranking, crossings: [], candidates: [] })).toBe(
      "No force meets a mode within 10\u00a0% of hover.",
    );
  });

  test("has its crossings in a table with links to the modes", () => {
    const { html } = campbellSection(analysed);
    const rows = tableRows({ html }).slice(0, 3);
    expect(rows.map((r) => r.slice(0, 5))).toEqual([
      ["9 000", "−10", "no", "blade pass 3 per turn", "3"],
      ["9 600", "−4.0", "yes", "unbalance once per turn", "1"],
      ["13 800", "+38", "no", "unbalance once per turn", "2"],
    ]);
    for (const mode of [1, 2, 3]) expect(html).toContain(`<a href="#modes" data-mode="${mode}"`);
  });

  test("needs motors", () => {
    expect(campbellData(withoutMotors())).toBeUndefined();
    expect(frequencyRange(withoutMotors())[1]).toBe(700);
  });

  test("names orders in words", () => {
    expect([1, 3, 0.5].map(perTurn)).toEqual(["once per turn", "3 per turn", "0.5 per turn"]);
  });
});
