/** How sure a ranking is, on its page: figures against what they are made of. */

import { describe, expect, test } from "vitest";
import type { Ranking } from "../../src/ranking/types.ts";
import type { Figure } from "../../src/report/figure.ts";
import { renderReport } from "../../src/report/page.ts";
import { gramsMore, helpFigure, helpFinding } from "../../src/report/sure/help.ts";
import { mayMeetHover } from "../../src/report/sure/hover.ts";
import { moversFigure, movingMode, movingSpot } from "../../src/report/sure/movers.ts";
import { rangesFigure, sampledPlace } from "../../src/report/sure/ranges.ts";
import { tiesFinding } from "../../src/report/sure/ties.ts";
import type { HowSure } from "../../src/study/how-sure.ts";
import { tellingModesOf } from "../../src/study/sensitivity-study.ts";
import { meeting } from "../study/compare-fixtures.ts";
import { madeSensitivity } from "../study/made-sensitivity.ts";
import { madeStudy, madeVariants } from "../study/made-study.ts";
import { fixture, HOSTILE, INPUT } from "./fixture.ts";
import { pageDataOf } from "./page-data.ts";

const made = fixture();
const ranking = made.ranking as Ranking;
/** The first place of the fixture under the name that the study knows. */
const places = ranking.candidates.map((c, i) =>
  i === 0 ? { ...c, plate: "middle", candidate: { ...c.candidate, name: "sandwich" } } : c,
);
const analysed = { ...made, ranking: { ...ranking, candidates: places } };
const sure: HowSure = {
  sampled: madeStudy(madeVariants().slice(0, 1)),
  moved: madeSensitivity(HOSTILE.body),
};
const page = renderReport(analysed, { ...INPUT, sure });
const part = (html: string) => /<section id="sure".*?<\/section>/s.exec(html)?.[0] ?? "";
const charts = (html: string) => pageDataOf(html).charts ?? {};
const ends = (figure: Figure | undefined, n: number) => {
  const { x = [], error_x } = figure?.traces[n] ?? {};
  const { array, arrayminus } = error_x as { array: number[]; arrayminus: number[] };
  return x.map((v, i) => [(v ?? 0) - arrayminus[i], (v ?? 0) + array[i]]);
};

describe("without samples", () => {
  const plain = part(renderReport(made, INPUT));

  test("says which places tie and why, what hover means, and what tells more", () => {
    const text = plain.replace(/<[^>]*>/g, "");
    expect(text).toContain(
      "are too close for one to be called the best: as drawn their scores differ by",
    );
    expect(text).toMatch(/hover/i);
    for (const command of ["rank", "uncertainty", "sensitivity"]) {
      expect(text).toContain(`stillpoint ${command} `);
    }
    expect(text).toContain("--sure");
    expect(plain.indexOf('class="finding"')).toBeLessThan(plain.indexOf('class="lead"'));
  });

  test("has the range of every place", () => {
    const bars = ends(rangesFigure(ranking), 0);
    for (const [i, { gyroRange }] of ranking.candidates.entries()) {
      expect(bars[i][0]).toBeCloseTo(gyroRange[0], 2);
      expect(bars[i][1]).toBeCloseTo(gyroRange[1], 2);
    }
  });

  test("tells a lead from a tie, and both from nothing left", () => {
    const [a, b, c] = ranking.candidates;
    const alone = { ...ranking, candidates: [{ ...a, tied: false }, { ...b, tied: false }, c] };
    expect(tiesFinding(alone)).toContain("stays ahead");
    const far = { ...ranking, candidates: [{ ...a, score: 0 }, { ...b, score: 2.5 }, c] };
    expect(tiesFinding(far)).toMatch(/differ by 2\.5.dB at most, but frequencies 7.% off bring/);
    expect(tiesFinding({ ...ranking, candidates: [c] })).toContain("Every place is to be avoided");
  });

  test("finds the crossings that an error of a frequency can bring to hover", () => {
    const [first] = ranking.crossings;
    const at = (fromHover: number) => ({ ...first, fromHover });
    const all = [-0.2, -0.07, -0.06, 0.05, 0.074, 0.08].map(at);
    // brute force over the error of the frequency
    const reached = all.filter(({ fromHover }) =>
      Array.from({ length: 2001 }, (_, i) => -0.07 + (0.14 * i) / 2000).some(
        (s) => Math.abs((1 + fromHover) * (1 + s) - 1) < 1e-4,
      ),
    );
    const found = mayMeetHover(all, 0.07).map((c) => c.fromHover);
    expect([...found].sort((a, b) => a - b)).toEqual(reached.map((c) => c.fromHover));
    expect(found[0]).toBe(0.05);
  });
});

describe("with samples", () => {
  test("has a chart for each part, with data for each place in the page", () => {
    const ids = [...part(page).matchAll(/id="([\w-]+-chart)" role="img"/g)].map((m) => m[1]);
    expect(ids).toEqual([
      "sure-ranges-chart",
      "chances-chart",
      "sure-modes-chart",
      "sure-spot-chart",
      "sure-mode-chart",
      "help-chart",
    ]);
    expect(Object.keys(charts(page)).sort()).toEqual(
      [...ids, "filters-chart", "lever-chart"].toSorted(),
    );
  });

  test("begins with what the samples say, in the quotes of a page", () => {
    const finding = /class="finding">(.*?)<\/p>/s.exec(part(page))?.[1].replaceAll("\u00a0", " ");
    const words = sure.sampled.variants[0].sampled?.words ?? "-";
    expect(finding).toBe(words.replace(/"([^"]*)"/g, "“$1”"));
  });

  test("has the band of a sampled place beside its range", () => {
    const band = sampledPlace(sure, places[0])?.noise?.perSecond;
    expect(sampledPlace(sure, places[1])).toBeUndefined();
    const [[low, high]] = ends(rangesFigure(analysed.ranking, sure), 1);
    expect(low).toBeCloseTo(band?.low.value ?? 0, 2);
    expect(high).toBeCloseTo(band?.high.value ?? 0, 2);
  });

  test("has bars of what each input does at both ends, the strongest first", () => {
    const movers = movingSpot(sure.moved.table, 0);
    expect(movers.map((m) => m.input.name).slice(0, 2)).toEqual([
      "dampingFactor",
      "arms.arm.thickness",
    ]);
    const [low, high] = moversFigure(movers, "dB", 8)?.traces ?? [];
    expect(low.x).toEqual([2.5, 1.5, 0.2]);
    expect(high.x).toEqual([0.75, -1.25, -0.25]);
    expect(high.text?.map((t) => t.trim())).toEqual(["+0.75", "−1.3", "−0.25"]);
    // 20e3 Hz/m over 0.2 mm to either side
    const mode = moversFigure(movingMode(sure.moved.table, 2), "Hz", 8)?.traces;
    expect(mode?.map((t) => t.x?.[0])).toEqual([-4, 4]);
  });

  test("has suggestions in dB against grams, with the command that tells more", () => {
    const [bars] = helpFigure(sure.moved.suggested)?.traces ?? [];
    expect(bars.x).toEqual([-2.34, -1.8]);
    expect(bars.text?.[0].trim()).toBe("−2.3 dB, +12 g");
    expect(gramsMore({ mass: 1e-6 })).toBe("no heavier");
    expect(part(page)).toContain("--set arms.arm.thickness=6</code>");
    const none = { found: [], tried: 4, none: "None of 4 changes helps." };
    expect(helpFigure(none)).toBeUndefined();
    expect(helpFinding(none)).toBe("None of 4 changes helps.");
  });

  test("where nothing helps says so once, and nothing where it was not looked for", () => {
    const none = "None of 4 changes helps.";
    const render = (suggested: HowSure["moved"]["suggested"]) => {
      const { suggested: _, ...moved } = sure.moved;
      const found = { ...sure, moved: { ...moved, ...(suggested && { suggested }) } };
      return part(renderReport(analysed, { ...INPUT, sure: found }));
    };
    expect(render({ found: [], tried: 4, none }).split(none)).toHaveLength(2);
    expect(render(sure.moved.suggested)).toContain("<h3>What would help</h3>");
    expect(render(undefined)).not.toContain("What would help");
  });

  test("without a named place has the quotes of a page too", () => {
    const { sure: _, ...unsampled } = sure.sampled;
    const words = part(renderReport(analysed, { ...INPUT, sure: { ...sure, sampled: unsampled } }));
    expect(words).toContain("in the section “candidates”");
    expect(words.replace(/<[^>]*>/g, "")).not.toMatch(/in the section &quot;/);
  });

  test("holds hostile names as text only", () => {
    expect(part(page)).not.toContain(HOSTILE.body);
    expect(part(page)).toContain("&quot; onmouseover=");
    expect(JSON.stringify(charts(page))).not.toMatch(/<(?:img|b|\/script)/);
  });
});

test("telling modes are those nearest to a force in hover, by ratio", () => {
  const modes = [50, 90, 130, 195, 310, 420, 590].map((frequency, i) => {
    return { number: i + 1, frequency, name: "" };
  });
  const hover = 2 * Math.PI * 200;
  const meetings = [meeting(4, 0, 1), meeting(7, 0, 3)];
  expect(tellingModesOf(modes, { hover, meetings }, 2)).toEqual([4, 7]);
  // 130/200 and 420/600 are off by factors of 1.54 and 1.43, 310/200 by 1.55
  expect(tellingModesOf(modes, { hover, meetings }, 4)).toEqual([3, 4, 6, 7]);
  expect(tellingModesOf(modes, { hover: 0, meetings: [] }, 3)).toEqual([1, 2, 3]);
});
