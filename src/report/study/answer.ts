/** The answer: what the comparison says, and the chart that proves it. */

import { bestSpot } from "../../study/across.ts";
import type { Edge } from "../../study/bands.ts";
import { differenceOf, LEAST_LEVEL } from "../../study/difference.ts";
import type { ComparisonStudy, PairResult } from "../../study/results.ts";
import { percentOf } from "../../study/share-words.ts";
import { shortNames } from "../../study/short-names.ts";
import { bandFigure, topNote, uprightBand, uprightLine } from "../band-figure.ts";
import { chartBox, type Figure } from "../figure.ts";
import { type Html, html, named, type Part } from "../html.ts";
import { namesCompared } from "../known-names.ts";
import { decibels, degreesPerSecond, mass, whole } from "../numbers.ts";
import { prose } from "../prose.ts";
import { facts } from "../section.ts";
import { marksLegend } from "../series-marks.ts";
import { signedTicks } from "../ticks.ts";
import { spotsFigure, spotsFinding } from "./spots-figure.ts";

const ID = "answer-chart";

export function answerFigure(study: ComparisonStudy): Figure {
  if (study.sure && study.sure.pairs.length > 0) return pairsFigure(study, study.sure.pairs);
  return spotsFigure(study);
}

export function answerSection(study: ComparisonStudy): Html {
  const names = namesCompared(study);
  const [first, ...more] = study.words.map((s) => prose(s, names));
  const pairs = study.sure?.pairs ?? [];
  const finding = pairs.length > 0 ? pairsFinding(pairs) : spotsFinding(study);
  const rows = pairs.length > 0 ? 0.6 + pairs.length : study.variants[0].outcome.spots.length;
  return html`<section id="answer" class="verdict" aria-labelledby="answer-heading">
<h2 id="answer-heading">${first}</h2>
<div class="words">
${more.map((s) => html`<p>${s}</p>`)}
${keyFacts(study)}
</div>
<figure class="picture">${chartBox(ID, "bars", finding, rows)}
<figcaption>${caption(study)}</figcaption></figure>
</section>
`;
}

/** Noise at the best spot of one variant against another's, frame by frame. */
function pairsFigure({ variants }: ComparisonStudy, pairs: readonly PairResult[]): Figure {
  const bands = pairs.map((p) => p.noise.decibel);
  const ends = bands.flatMap((b) => (b ? [b.low.value, b.high.value] : []));
  const names = variants.map((v) => v.name);
  const cuts = shortNames(names);
  const short = (name: string) => cuts[names.indexOf(name)] ?? name;
  const reach = 1.25 * Math.max(1.5, ...ends.map(Math.abs));
  return bandFigure({
    rows: pairs.map((p) => ({
      name: `${short(p.name)} against ${short(p.reference)}`,
      short: `${short(p.name)}/${short(p.reference)}`,
    })),
    series: variants.map((v) => v.name),
    marks: pairs.flatMap((p, i) => {
      const band = bands[i];
      if (!band) return [];
      const [low, middle, high] = [band.low.value, band.median.value, band.high.value];
      const series = variants.findIndex((v) => v.name === p.name);
      return [{ at: i, series, low, middle, high, words: pairWords(p) }];
    }),
    xaxis: {
      title: { text: "difference of gyro noise, dB", standoff: 8 },
      range: [-reach, reach],
      ...signedTicks(-reach, reach),
    },
    shapes: [uprightBand(-LEAST_LEVEL, LEAST_LEVEL, "--cautionSoft"), uprightLine(0, "solid")],
    annotations: [
      topNote(-0.02 * reach, "← quieter", { xanchor: "right" }),
      topNote(0.02 * reach, "louder →", { xanchor: "left" }),
    ],
    topMargin: 30,
  });
}

const edge = ({ value }: Edge) => decibels(value);

/** "“6 mm” against “5 mm”: −2.4 dB, in nine of ten frames −3.6 dB to −1.2 dB, a real difference" */
function pairWords({ name, reference, noise }: PairResult): string {
  const who = `“${name}” against “${reference}”`;
  const { decibel } = noise;
  const difference = differenceOf(noise);
  if (!decibel || !difference) return `${who}: no frame has a place in both that is not ruled out`;
  const { low, median, high } = decibel;
  const verdict = {
    real: "a real difference",
    unsure: "not yet a real difference, with so few samples",
    small: "too small to matter",
    alike: "as good as equal",
    open: "not a real difference",
  }[difference.kind];
  return `${who}: ${edge(median)}, in nine of ten frames ${edge(low)} to ${edge(high)}, ${verdict}`;
}

function pairsFinding(pairs: readonly PairResult[]): string {
  return `Gyro noise at the best spots: ${pairs.map(pairWords).join("; ")}.`;
}

function caption({ variants, sure }: ComparisonStudy): Html {
  const names = variants.map((v) => v.name);
  if (sure && sure.pairs.length > 0) {
    return html`<p class="key">Each variant at its own best spot, two in the same frames: nine of ten differences lie within the bar, half of them on either side of the mark. A bar clear of 0 with its mark outside the orange band (${LEAST_LEVEL} dB, which does not matter) is a real difference.</p>`;
  }
  const bars = sure ? " Nine of ten frames lie within the bar, half of them on either side." : "";
  return html`${names.length > 1 && marksLegend(names)}<p class="key">Gyro noise at every spot, in dB: 6 dB are a factor of two.${bars}</p>`;
}

function keyFacts(study: ComparisonStudy): Html {
  const { variants, sure } = study;
  const pairs: (readonly [Part, Part])[] = [];
  const [light] = variants.toSorted((a, b) => a.outcome.mass - b.outcome.mass);
  if (variants.length > 1) {
    pairs.push(["lightest", html`${mass(light.outcome.mass)} <small>${named(light.name)}</small>`]);
    const best = variants.flatMap((v) => {
      const cell = bestSpot(v);
      return cell ? [{ v, cell }] : [];
    });
    const [quiet] = best.toSorted((a, b) => a.cell.spot.gyro - b.cell.spot.gyro);
    if (quiet) {
      const level = degreesPerSecond(quiet.cell.spot.gyro);
      pairs.push([
        "quietest as drawn",
        html`${level} <small>${named(quiet.v.name)}, ${named(quiet.cell.spot.name)}</small>`,
      ]);
    }
  } else {
    pairs.push(["all-up mass", mass(light.outcome.mass)]);
    const cell = bestSpot(light);
    if (cell) {
      const level = degreesPerSecond(cell.spot.gyro);
      pairs.push(["best as drawn", html`${level} <small>${named(cell.spot.name)}</small>`]);
    }
  }
  if (sure) {
    const first = (variants.length > 1 ? sure.chances : variants[0].sampled?.chances)?.rivals[0];
    if (first) {
      const often = percentOf(first.best.share);
      const word = variants.length > 1 ? "quietest" : "best";
      pairs.push([`most often the ${word}`, html`${often} <small>${named(first.name)}</small>`]);
    }
    pairs.push([
      "frames tried",
      html`${whole(sure.samples)}${variants.length > 1 && html` <small>of each variant</small>`}`,
    ]);
  }
  return facts(pairs);
}
