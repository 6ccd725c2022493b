import { createHash } from "node:crypto";
import { describe, expect, test } from "vitest";
import type { Trace } from "../../src/report/figure.ts";
import { answerFigure } from "../../src/report/study/answer.ts";
import { frequenciesFigure, hoverOrders } from "../../src/report/study/frequencies-figure.ts";
import { delayFigure, spotsFigure } from "../../src/report/study/spots-figure.ts";
import { chancesFigure } from "../../src/report/study/sure-section.ts";
import { renderComparison } from "../../src/report/study-page.ts";
import {
  HOSTILE_SPOT,
  HOSTILE_TITLE,
  HOSTILE_VARIANT,
  madeStudy,
  madeVariants,
} from "../study/made-study.ts";
import { INPUT } from "./fixture.ts";
import { pageDataOf } from "./page-data.ts";
import { tableRows } from "./text.ts";

const study = madeStudy();
const page = renderComparison(study, INPUT);
const alone = madeStudy(madeVariants().slice(0, 1));
const hostile = madeStudy(
  madeVariants([HOSTILE_VARIANT, "4 mm", "6 mm"], HOSTILE_SPOT),
  64,
  HOSTILE_TITLE,
);
const sections = (html: string) => [...html.matchAll(/<section id="([\w-]+)"/g)].map((m) => m[1]);
const part = (id: string, html = page) =>
  new RegExp(`<section id="${id}".*?</section>`, "s").exec(html)?.[0] ?? "";
const rows = (id: string, html = page) => tableRows({ html: part(id, html) });
const series = (traces: readonly Trace[], name: string) => traces.find((t) => t.name === name);

describe("the page of a comparison", () => {
  test("has its sections in the order of reading, each in the contents", () => {
    const ids = sections(page);
    expect(ids).toEqual([
      "answer",
      "variants",
      "noise",
      "delay",
      "frequencies",
      "crossings",
      "sure",
      "changes",
      "limits",
      "cautions",
      "inputs",
      "words",
    ]);
    for (const id of ids) {
      expect(page).toContain(`id="${id}-heading">`);
      expect(page).toMatch(
        new RegExp(`<nav .*<a (?:class="chapter" )?href="#${id}">.*</nav>`, "s"),
      );
    }
  });

  test("leads with the answer", () => {
    const answer = part("answer").replaceAll("\u00a0", " ");
    for (const k of [0, 2]) {
      expect(answer).toContain(study.words[k].replace(/"([^"]*)"/g, "“$1”"));
    }
  });

  test("has variants side by side with their changes", () => {
    const [reference, thin] = rows("variants");
    expect(reference.slice(1, 5)).toEqual(["5 mm", "641", "128", "176"]);
    // 0.6298/0.6412 = -1.8 %, 97/128 = -24.2 %, 134/176 = -23.9 %.
    expect(thin.slice(1, 5)).toEqual(["4 mm", "630 −1.8 %", "97 −24.2 %", "134 −23.9 %"]);
    expect(thin.at(-1)).toBe("0 % within 1 dB: 0 %");
  });

  test("has the noise of every spot with its change, and why to avoid one", () => {
    const [sandwich, , , tail] = rows("noise");
    expect(sandwich[2]).toMatch(/^3\.9 \+4\.2 dB [\d.]+ to [\d.]+ best$/);
    expect(tail[1]).toBe("9.8 avoid: cantilevered");
  });

  test("explains likeness, and has it for every matched mode", () => {
    expect(part("frequencies")).toContain("likeness of shapes is 1 where");
    const [, flap] = rows("frequencies");
    expect(flap[3]).toMatch(/^158 mode 2 \+23\.4 %, likeness 0\.91 1\d\d to 1\d\d$/);
  });

  test("tells what is met near hover, new and gone", () => {
    expect(rows("crossings").map((r) => [r[0], r[2], r[4]])).toEqual([
      ["5 mm", "there", "176"],
      ["4 mm", "gone", "176"],
      ["6 mm", "new", "158"],
      ["6 mm", "gone", "176"],
    ]);
  });

  test("tells what was varied and where each spread comes from", () => {
    expect(rows("sure")).toContainEqual(["materials.carbon.E1", "±10 %", "the file"]);
    expect(rows("sure")).toContainEqual([
      "arms.arm.joint.kappa",
      "5.3 to 28",
      "common practice, no source",
    ]);
    expect(part("changes")).toContain("the arms weigh more than the motors they carry");
    expect(part("changes")).toContain("<code>arms.arm.thickness = 4 mm</code>");
  });

  test("is the same, byte for byte, and allows exactly the scripts it holds", () => {
    expect(renderComparison(madeStudy(), INPUT)).toBe(page);
    const scripts = [...page.matchAll(/<script>(.*?)<\/script>/gs)].map((m) => m[1]);
    const hashes = scripts.map(
      (s) => `&#39;sha256-${createHash("sha256").update(s).digest("base64")}&#39;`,
    );
    expect(page).toContain(`script-src ${hashes.join(" ")} blob:;`);
    expect(page.replace(/<script type="text.*?<\/script>/gs, "")).not.toMatch(/https?:|\/\/[a-z]/i);
  });

  test("tells every chart in words, and has data for each place", () => {
    const labels = [...page.matchAll(/id="([\w-]+)" role="img" aria-label="([^"]*)"/g)];
    const data = pageDataOf(page);
    expect(Object.keys(data.charts ?? {}).sort()).toEqual(labels.map((l) => l[1]).sort());
    for (const [, , label] of labels) expect(label.length).toBeGreaterThan(30);
  });

  test("holds hostile names as text only", () => {
    const html = renderComparison(hostile, INPUT);
    const outside = html.replace(/<script>.*?<\/script>/gs, "");
    for (const name of [HOSTILE_SPOT, HOSTILE_VARIANT, HOSTILE_TITLE]) {
      expect(outside).not.toContain(name);
    }
    expect(outside.match(/<(?:img|bdi|b|i)\b[^>]*\bon\w+=/g)).toBeNull();
    expect(outside.match(/<script/g)?.length).toBe(2);
    const { traces, layout } = spotsFigure(hostile);
    expect(JSON.stringify([traces, layout])).not.toMatch(/<(?:img|b|\/script)/);
  });

  test("writes numbers with at most three meaningful digits", () => {
    const told = ["variants", "noise", "delay", "frequencies", "crossings"].map((id) => part(id));
    const words = told.join(" ").replace(/<[^>]*>/g, " ");
    const numbers = words.match(/\d[\d\u202f]*(?:\.\d+)?/g) ?? [];
    expect(numbers.length).toBeGreaterThan(100);
    const long = numbers.filter((n) => {
      const digits = n.replace(/\D/g, "").replace(/^0+/, "");
      return (n.includes(".") ? digits : digits.replace(/0+$/, "")).length > 3;
    });
    expect(long).toEqual([]);
  });

  test("of one frame is its uncertainty: spots with chances, nothing to compare", () => {
    const html = renderComparison(alone, INPUT);
    expect(sections(html)).toEqual([
      "answer",
      "noise",
      "frequencies",
      "crossings",
      "sure",
      "changes",
      "limits",
      "cautions",
      "inputs",
      "words",
    ]);
    const [first] = rows("noise", html);
    expect(first[0]).toBe("sandwich on middle");
    expect(first.slice(3)).toEqual(["96 %", "99 %", "0 %"]);
    expect(part("frequencies", html)).not.toContain("likeness");
  });

  test("says so where nothing was varied, and where nothing turns or is named", () => {
    const plain = renderComparison(madeStudy(madeVariants(), 0), INPUT);
    expect(part("sure", plain)).toContain("Nothing was varied");
    const still = madeVariants().map(({ outcome: { best: _, ...o }, ...v }) => ({
      ...v,
      outcome: { ...o, hover: 0, spots: [], meetings: [] },
    }));
    const bare = renderComparison(madeStudy(still, 0), INPUT);
    expect(sections(bare)).not.toContain("crossings");
    expect(bare).toContain("No spot for a sensor stack is named");
    expect(bare.replace(/<script>.*?<\/script>/gs, "")).not.toMatch(/NaN|undefined|Infinity/);
  });
});

describe("the charts of a comparison", () => {
  test("prove the answer by paired differences", () => {
    const { traces } = answerFigure(study);
    const pair = study.sure?.pairs[0].noise.decibel;
    const bars = series(traces, "4 mm")?.error_x as { array: number[]; arrayminus: number[] };
    const [middle] = (series(traces, "4 mm")?.x ?? []) as number[];
    expect(middle).toBeCloseTo(pair?.median.value ?? 0, 2);
    expect(middle + bars.array[0]).toBeCloseTo(pair?.high.value ?? 0, 2);
    expect(middle - bars.arrayminus[0]).toBeCloseTo(pair?.low.value ?? 0, 2);
  });

  test("put matched modes into one row, each variant with its own mark", () => {
    const { traces } = frequenciesFigure(study);
    const marks = traces.filter((t) => t.mode === "markers");
    expect(new Set(marks.map((t) => `${t.marker?.symbol} ${t.marker?.color}`)).size).toBe(3);
    const rowsOf = (t: Trace) => t.y.map((y) => Math.abs(Math.round(y ?? -1)));
    for (const t of marks) expect(rowsOf(t)).toEqual([0, 1, 2, 3, 4]);
  });

  test("have hover's orders over all variants", () => {
    // Hover of the variants: 1169 to 1191 rad/s.
    const [unbalance, blade] = hoverOrders(study);
    expect(unbalance.name).toBe("unbalance");
    expect(unbalance.from).toBeCloseTo(1169 / (2 * Math.PI), 9);
    expect(blade.to).toBeCloseTo((3 * 1191) / (2 * Math.PI), 9);
  });

  test("have noise in dB against the best spot of the reference", () => {
    const plain = spotsFigure(madeStudy(madeVariants(), 0));
    const levels = series(plain.traces, "4 mm")?.x;
    expect(levels?.[0]).toBeCloseTo(20 * Math.log10(3.9 / 2.4), 2);
    expect(levels?.[3]).toBeCloseTo(20 * Math.log10(9.1 / 2.4), 2);
    expect(series(plain.traces, "5 mm")?.x?.[0]).toBe(0);
  });

  test("have delays in ms, and words where there is none", () => {
    const { traces } = delayFigure(study) ?? { traces: [] };
    expect(series(traces, "4 mm")?.x?.slice(0, 3)).toEqual([3.4, 3.5, 6.1]);
    const words = traces.find((t) => t.mode === "text");
    expect(words?.text?.map((t) => t.trim())).toEqual(Array(3).fill("out of reach"));
    const slow = madeVariants().map((v) => ({
      ...v,
      outcome: {
        ...v.outcome,
        spots: v.outcome.spots.map(({ delay: _, delayWithNotches: __, ...s }) => s),
      },
    }));
    expect(delayFigure(madeStudy(slow, 0))).toBeUndefined();
  });

  test("have chances of the variants, or of the spots of one alone", () => {
    const [best] = chancesFigure(study)?.traces ?? [];
    const [first] = study.sure?.chances.rivals ?? [];
    expect(best.x?.[0]).toBeCloseTo(100 * first.best.share, 0);
    expect(chancesFigure(alone)?.traces[0].x?.length).toBe(4);
    expect(chancesFigure(madeStudy(madeVariants(), 0))).toBeUndefined();
  });
});
