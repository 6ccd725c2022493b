import { describe, expect, test } from "vitest";
import type { Trace } from "../../src/report/figure.ts";
import {
  branchesFigure,
  courseFigure,
  frontFigure,
  shownLine,
} from "../../src/report/study/sweep-figures.ts";
import { renderSweep } from "../../src/report/sweep-page.ts";
import type { SweepStudy } from "../../src/study/results-sweep.ts";
import { HOSTILE_SPOT } from "../study/made-study.ts";
import { HOSTILE_SWEPT, madeSweep, sweptOutcome } from "../study/made-sweep.ts";
import { INPUT } from "./fixture.ts";
import { pageDataOf } from "./page-data.ts";
import { tableRows, text } from "./text.ts";

const study = madeSweep();
const page = renderSweep(study, INPUT);
const part = (id: string, html = page) =>
  new RegExp(`<section id="${id}".*?</section>`, "s").exec(html)?.[0] ?? "";
const named = (traces: readonly Trace[], name: string) => traces.filter((t) => t.name === name);
const line = shownLine(study);
if (!line) throw new Error("the sweep has a line");

describe("the page of a sweep", () => {
  test("leads with the findings and has its sections in the contents", () => {
    const ids = [...page.matchAll(/<section id="([\w-]+)"/g)].map((m) => m[1]);
    expect(ids).toEqual([
      "findings",
      "front",
      "course",
      "rows",
      "branches",
      "limits",
      "cautions",
      "inputs",
      "words",
    ]);
    for (const id of ids) {
      expect(page).toMatch(
        new RegExp(`<nav .*<a (?:class="chapter" )?href="#${id}">.*</nav>`, "s"),
      );
    }
    expect(text({ html: part("findings") })).toContain(
      study.words[1].replaceAll('"', "&quot;").replaceAll("<", "&lt;").slice(0, 40),
    );
  });

  test("has the front, lightest first, and every variant with the reason of a failure", () => {
    const front = tableRows({ html: part("front") });
    expect(front.length).toBe(study.front.length);
    const masses = front.map((r) => Number(r[2]));
    expect(masses).toEqual([...masses].sort((a, b) => a - b));
    const all = tableRows({ html: part("rows") });
    expect(all.length).toBe(18);
    // 0.55 + 0.012 x 3 = 586 g; 12/3 + 3 exp(-6.25) = 4.01.
    expect(all[0]).toEqual(["0/90", "3 mm", "586", "4.01", "3", "sandwich"]);
    expect(all[17].at(-1)).toBe("the arms would touch the &lt;u&gt;top&lt;/u&gt;");
  });

  test("names what is held along the line that is drawn", () => {
    expect(text({ html: part("branches") })).toContain("Held: arms.arm.layup 0/90.");
    expect(part("branches")).toContain("one of 2");
  });

  test("has data for every chart, in words too, and the same bytes again", () => {
    const labels = [...page.matchAll(/id="([\w-]+)" role="img" aria-label="([^"]*)"/g)];
    const data = pageDataOf(page);
    expect(Object.keys(data.charts ?? {}).sort()).toEqual(labels.map((l) => l[1]).sort());
    for (const [, , label] of labels) expect(label.length).toBeGreaterThan(30);
    expect(renderSweep(madeSweep(), INPUT)).toBe(page);
    expect(page.replace(/<script.*?<\/script>/gs, "")).not.toMatch(/NaN|undefined|Infinity/);
  });

  test("holds hostile names as text only", () => {
    const html = renderSweep(madeSweep(HOSTILE_SPOT, HOSTILE_SWEPT), INPUT);
    const outside = html.replace(/<script>.*?<\/script>/gs, "");
    for (const name of [HOSTILE_SPOT, HOSTILE_SWEPT, "<i>quasi</i>", "<u>top</u>"]) {
      expect(outside).not.toContain(name);
    }
    expect(outside.match(/<script/g)?.length).toBe(2);
  });

  test("does without numbers and without spots", () => {
    const words: SweepStudy = { ...study, lines: [] };
    const html = renderSweep(words, INPUT);
    expect(html).not.toContain('id="branches"');
    expect(html).toContain('id="front"');
    const { quietest: _, ...rest } = study;
    const rows = study.rows.map(({ at }) => {
      const { best: __, ...closed } = sweptOutcome(5, 0);
      return { at, outcome: { ...closed, spots: [] } };
    });
    const bare = renderSweep({ ...rest, rows, front: [], lines: [] }, INPUT);
    expect(bare).not.toContain('id="front-chart"');
    expect(bare.replace(/<script.*?<\/script>/gs, "")).not.toMatch(/NaN|undefined|Infinity/);
  });
});

describe("the charts of a sweep", () => {
  test("set mass against noise, with the front and the quietest marked", () => {
    const { traces } = frontFigure(study) ?? { traces: [] };
    const [beaten] = named(traces, "beaten");
    const [front] = named(traces, "front");
    expect((beaten.x?.length ?? 0) + (front.x?.length ?? 0)).toBe(17);
    const y = front.y as number[];
    expect(y).toEqual([...y].sort((a, b) => b - a));
    expect(named(traces, "quietest")[0].y).toEqual([Math.min(...y)]);
  });

  test("follow every spot along the parameter, open where it is ruled out", () => {
    const { traces } = courseFigure(study, line) ?? { traces: [] };
    const [curve, marks] = named(traces, "nose");
    expect(curve.x).toEqual(line.values);
    // At 5.5 mm: 1.5 (12/5.5 + 3).
    expect(curve.y[line.values.indexOf(5.5)]).toBeCloseTo(1.5 * (12 / 5.5 + 3), 2);
    const symbols = marks.marker?.symbol as string[];
    expect(symbols.map((s) => s.endsWith("-open"))).toEqual(line.values.map((v) => v < 4));
  });

  test("follow modes by shape, through crossings and round veerings", () => {
    const { traces } = branchesFigure(study, line);
    // The mode that stays at 120 Hz is one line all along, whatever its number.
    const steady = traces.filter((t) => t.mode === "lines" && t.y.every((f) => f === 120));
    expect(steady.length).toBe(1);
    const [crossing] = named(traces, "crossing");
    // 30 x 1.05 t = 120 Hz, a little below since the coupled mode is pushed down.
    expect(crossing.x?.[0]).toBeGreaterThan(3.8);
    expect(crossing.x?.[0]).toBeLessThan(4.2);
    expect(named(traces, "veering")[0].y[0]).toBeCloseTo(180, -1);
  });
});
