/** How sure the answer is: chances, samples, what was varied. */

import type { Chances } from "../../study/chances.ts";
import type { ComparisonStudy, SampledInput } from "../../study/results.ts";
import { limits, percentOf } from "../../study/share-words.ts";
import { spreadGroups } from "../../study/spread-groups.ts";
import { cut } from "../band-figure.ts";
import { type BarWay, waysLegend } from "../bars-figure.ts";
import { chartBox, type Figure, MARGIN, plainLayout, type Trace } from "../figure.ts";
import { type Html, html, named, plotText } from "../html.ts";
import { namesCompared } from "../known-names.ts";
import { rounded, whole } from "../numbers.ts";
import { prose } from "../prose.ts";
import { facts, list, section, table } from "../section.ts";

/** Thickness of a bar, of the room for a row. */
const THICKNESS = 0.36;

const WAYS: readonly BarWay[] = [
  { name: "the best", colour: "--series0", hatched: false },
  { name: "within 1 dB of the best", colour: "--series1", hatched: true },
];

/** Of the variants, or of the spots of one variant alone. */
function rivalsOf({ variants, sure }: ComparisonStudy): Chances | undefined {
  return variants.length > 1 ? sure?.chances : variants[0].sampled?.chances;
}

/** undefined where nothing was sampled. */
export function chancesFigure(study: ComparisonStudy): Figure | undefined {
  const chances = rivalsOf(study);
  if (!chances || chances.rivals.length === 0) return undefined;
  const { rivals } = chances;
  const y = rivals.map((_, i) => i);
  const traces = WAYS.map(({ name, colour, hatched }, k): Trace => {
    const own = rivals.map((r) => (k === 0 ? r.best : r.near));
    return {
      type: "bar",
      orientation: "h",
      name,
      x: own.map((c) => rounded(100 * c.share, 3)),
      y,
      width: THICKNESS,
      offset: (k - 1) * THICKNESS,
      marker: {
        color: colour,
        ...(hatched && {
          pattern: { shape: "/", bgcolor: colour, fgcolor: "--surface", size: 9, solidity: 0.25 },
        }),
      },
      error_x: {
        type: "data",
        symmetric: false,
        array: own.map((c) => rounded(100 * (c.upper - c.share), 3)),
        arrayminus: own.map((c) => rounded(100 * (c.share - c.lower), 3)),
        color: "--ink",
        thickness: 1.4,
        width: 4,
      },
      customdata: rivals.map((r, i) =>
        plotText(`${r.name}, ${name}: ${percentOf(own[i].share)} of frames (${limits(own[i])})`),
      ),
      hovertemplate: "%{customdata}<extra></extra>",
    };
  });
  const layout = plainLayout(
    {
      title: { text: "share of the frames tried, %", standoff: 8 },
      range: [0, 116],
      tickvals: [0, 20, 40, 60, 80, 100],
    },
    {
      tickmode: "array",
      tickvals: y,
      ticktext: rivals.map((r) => plotText(cut(r.name))),
      range: [rivals.length - 0.4, -0.6],
      ticklen: 0,
      showgrid: false,
      fixedrange: true,
    },
    { margin: { ...MARGIN, t: 12 }, hovermode: "closest", barmode: "overlay" },
  );
  const narrowAxis = { ticktext: rivals.map((r) => plotText(cut(r.name, 12))) };
  return { traces: [...traces, shareLabels(rivals)], layout, narrowAxis };
}

/** Every share beside its bar, behind the line of its limits. */
function shareLabels(rivals: Chances["rivals"]): Trace {
  const all = rivals.flatMap((r, i) =>
    [r.best, r.near].map((c, k) => ({ c, y: i + (k - 0.5) * THICKNESS })),
  );
  return {
    type: "scatter",
    mode: "text",
    x: all.map(({ c }) => rounded(100 * c.upper, 3)),
    y: all.map(({ y }) => rounded(y)),
    text: all.map(({ c }) => `\u2002${percentOf(c.share)}`),
    textposition: "middle right",
    hoverinfo: "skip",
    cliponaxis: false,
  };
}

export function sureSection(study: ComparisonStudy): Html {
  const { sure, variants } = study;
  if (!sure) {
    return section("sure", "How sure this is", {
      finding:
        "Nothing was varied, so it cannot be told whether a difference is larger than what scatters from frame to frame.",
    });
  }
  const chances = rivalsOf(study);
  const what = variants.length > 1 ? ", the same ones of every variant" : "";
  return section(
    "sure",
    "How sure this is",
    {
      finding: chances ? chancesFinding(chances, variants.length > 1) : "No place is left.",
      how: `Frames were built on paper${what}: with thicknesses, moduli, masses, joints and damping drawn from where 95 % of real ones lie.`,
    },
    chancesPart(study),
    variants.length > 1 &&
      html`<h3>The best spot of each variant</h3>${list(variants.flatMap((v) => (v.sampled ? [html`<strong>${named(v.name)}</strong>: ${prose(v.sampled.words, namesCompared(study))}`] : [])))}`,
    html`<h3>Samples</h3>`,
    samplesPart(sure, variants.length > 1),
  );
}

/** The chart of chances with its legend; undefined where nothing was sampled. */
export function chancesPart(study: ComparisonStudy): Html | undefined {
  const chances = rivalsOf(study);
  if (!chances) return undefined;
  const finding = chancesFinding(chances, study.variants.length > 1);
  return html`<figure>${chartBox("chances-chart", "bars", finding, 0.9 * chances.rivals.length)}
<figcaption>${waysLegend(WAYS)}<p class="key">Thin lines: where the true share lies, 19 times in 20, for so many frames tried.</p></figcaption></figure>`;
}

/** How many frames were drawn, what failed, and what was varied. */
export function samplesPart(sure: NonNullable<ComparisonStudy["sure"]>, ofEach: boolean): Html {
  return html`<p>${prose(sure.text)}</p>
${facts([
  ["frames tried", html`${whole(sure.samples)}${ofEach && html` <small>of each variant</small>`}`],
  [
    "solved by a reduced model",
    html`${whole(sure.reduced)} <small>where the estimate of its error allows</small>`,
  ],
  ["solved in full", whole(sure.exact)],
  ["seed", html`${sure.seed} <small>the same seed gives the same samples</small>`],
])}
${sure.failed.length > 0 && html`<div class="warnings"><h3>Samples that could not be solved</h3>${list(sure.failed.map((f) => `${whole(f.count)}: ${f.reason}`))}</div>`}
${inputsTable(sure.inputs)}`;
}

function chancesFinding({ rivals: [first] }: Chances, ofVariants: boolean): string {
  if (!first) return "";
  const word = ofVariants ? "quietest variant" : "best spot";
  return `“${first.name}” is most often the ${word}, in ${percentOf(first.best.share)} of frames, and within 1 dB of the best in ${percentOf(first.near.share)}.`;
}

function inputsTable(inputs: readonly SampledInput[]): Html {
  if (inputs.length === 0)
    return html`<p>No input of the file has a spread, so nothing was varied.</p>`;
  return table(
    "What was varied: 95 % of real frames are taken to lie between",
    [
      {
        head: "inputs",
        names: true,
        cell: (g) => html`${g.names.map((n, i) => html`${i > 0 && ", "}<code>${n}</code>`)}`,
      },
      { head: "spread", label: "spread", cell: (g) => g.spread },
      {
        head: "where the spread comes from",
        label: "where it comes from",
        cell: (g) => (g.source === "file" ? "the file" : g.source),
      },
    ],
    spreadGroups(inputs),
    { cards: true },
  );
}
