/** The ranking as a table, with the reasons. */

import type { RankedCandidate, Ranking } from "../ranking/types.ts";
import { weightsText } from "../ranking/use.ts";
import { axesTable } from "./axes-table.ts";
import { delayWords } from "./filters-words.ts";
import { flagLines } from "./flag-list.ts";
import { type Html, html, named, type Part } from "./html.ts";
import { inlineMark, placeLabels, standing } from "./markers.ts";
import { decibels, hertz, inColumn, percent, signed, three, whole } from "./numbers.ts";
import { sideWord } from "./place-names.ts";
import { rankingFinding } from "./ranking-words.ts";
import { type Column, folded, list, section, table } from "./section.ts";
import type { Analysed } from "./types.ts";
import { term } from "./words.ts";

export function rankingSection(analysed: Analysed): Html {
  const { ranking, excitation } = analysed;
  if (!ranking || !excitation) {
    const finding = excitation
      ? "The file names no place for a sensor stack and none was found, so there is nothing to rank."
      : "The file has no motors, so nothing shakes the frame and there is nothing to rank.";
    return section("ranking", "Ranking", { finding });
  }
  const { candidates } = ranking;
  return section(
    "ranking",
    "Ranking",
    { finding: rankingFinding(ranking), how: how(ranking) },
    table("Places in order, best first", columns(ranking, placeLabels(candidates)), candidates, {
      className: "ranking",
      cards: true,
      rowClass: (c, i) => standing(c, i),
      under: (c) => flagLines(c.flags),
    }),
    folded("Axis by axis, in hover, and what the board truly does", axesTable(ranking)),
    folded(
      "How the figures are made",
      html`<div class="notes">${list([mixNote(excitation.mixName), rangeNote(ranking), ...ranking.notes])}</div>`,
    ),
  );
}

function how({ use }: Ranking): Html {
  return html`Score: ${weightsText(use)}; less is better. Noise is what the chips pass on, before any filter of the flight controller, as ${term("rms")} over the ${term("flight-mix")}. Each 6 ${term("db")} is a factor of two.`;
}

const mixNote = (mixName: string): string =>
  `The flight mix is “${mixName}”. 1 g is 9.81 m/s². Against quietest: the quietest place that is not to be avoided.`;

function rangeNote({ frequencyBand, tieBand }: Ranking): string {
  return `The range beside a gyro figure, and the line across its bar, is what it would be if all natural frequencies were up to ${percent(frequencyBand)} off. Ties come within ${three(tieBand)} dB of the best somewhere in that range.`;
}

function columns(
  { candidates, controlBandwidth }: Ranking,
  labels: readonly string[],
): Column<RankedCandidate>[] {
  const loudest = Math.max(...candidates.map((c) => c.gyroRange[1]));
  const yawRate = three(((candidates[0]?.leverArm.yawRate ?? 0) * 180) / Math.PI);
  return [
    { head: "place", names: true, cell: (c, i) => where(c, i, labels[i]) },
    {
      head: html`gyro noise<br><small>deg/s rms</small>`,
      label: "gyro noise, deg/s rms",
      cell: (c) => levelCell(c, loudest),
    },
    {
      head: html`against quietest<br><small>gyro, dB</small>`,
      label: "against quietest",
      number: true,
      cell: (c) => decibels(c.decibel),
    },
    {
      head: html`filter delay<br><small>at ${hertz(controlBandwidth)} in hover</small>`,
      label: "filter delay",
      number: true,
      cell: (c) =>
        html`${delayWords(c.filter.without)} <small class="axis">with notches: ${delayWords(c.filter.with)}</small>`,
    },
    {
      head: html`acceleration<br><small>g rms</small>`,
      label: "acceleration, g rms",
      number: true,
      cell: (c) => inColumn(c.sensed.accel),
    },
    {
      head: html`false tilt<br><small>yaw of ${yawRate} deg/s</small>`,
      label: `false tilt, yaw ${yawRate} deg/s`,
      number: true,
      cell: (c) =>
        html`${tilt(c)}° <small class="axis">${whole(1e3 * c.fromCg)}\u00a0mm from c. of g.</small>`,
    },
    {
      head: html`score<br><small>dB</small>`,
      label: "score, dB",
      number: true,
      cell: (c) =>
        html`<strong>${signed(c.score)}</strong>${c.tied && html` <small class="axis">tie</small>`}`,
    },
  ];
}

/** Degrees; hundredths are nothing in flight. */
function tilt({ leverArm }: RankedCandidate): string {
  return signed((leverArm.reading.tilt * 180) / Math.PI).replace("+", "");
}

/** The figure over its bar; a line across the bar's end shows the range. */
function levelCell({ sensed, gyroRange: [low, high] }: RankedCandidate, loudest: number): Part {
  const share = (v: number) => (v / loudest).toFixed(3);
  return html`<span class="level"><strong>${inColumn(sensed.gyro)}</strong> <small>${inColumn(low)} to ${inColumn(high)}</small><span class="bar range" style="--share: ${share(sensed.gyro)}; --low: ${share(low)}; --high: ${share(high)}" aria-hidden="true"></span></span>`;
}

function where(c: RankedCandidate, i: number, text: string): Html {
  const kind = standing(c, i);
  const notes = [
    { best: "best", fine: "", avoid: "avoid" }[kind],
    c.candidate.designed ? "as drawn in the file" : c.found ? "found by the search" : "",
  ].filter((n) => n !== "");
  return html`<span class="place">${inlineMark(kind, text)}<span class="spoken">${text}</span><span><strong>${named(c.candidate.name)}</strong> <small class="axis">${sideWord(c.candidate)} ${named(c.plate)}</small>${notes.length > 0 && html` <small class="axis">${notes.join(", ")}</small>`}</span></span>`;
}
