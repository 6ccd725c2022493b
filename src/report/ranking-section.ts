/** The ranking as a table, with the reasons. */

import type { RankedCandidate, Ranking } from "../ranking/types.ts";
import { weightsText } from "../ranking/use.ts";
import { delayWords, overWords } from "./filters-words.ts";
import { flagList } from "./flag-list.ts";
import { type Html, html, named, type Part } from "./html.ts";
import { inlineMark, placeLabels, standing } from "./markers.ts";
import { decibels, hertz, inDegrees, millimetres, percent, signed, three } from "./numbers.ts";
import { sideWord } from "./place-names.ts";
import { type Column, list, section, table } from "./section.ts";
import type { Analysed } from "./types.ts";

export function rankingSection(analysed: Analysed): Html {
  const { ranking, excitation } = analysed;
  if (!ranking || !excitation) {
    const missing = excitation
      ? "The file names no place for a sensor stack and none was found, so there is nothing to rank."
      : "The file has no motors, so nothing shakes the frame and there is nothing to rank.";
    return section("ranking", "Ranking", missing);
  }
  return section(
    "ranking",
    "Ranking",
    lead(ranking, excitation.mixName),
    table(
      "Places in order, best first",
      columns(ranking, placeLabels(ranking.candidates)),
      ranking.candidates,
      {
        className: "ranking",
        rowClass: (c, i) => standing(c, i),
      },
    ),
    ranking.notes.length > 0 && html`<div class="notes">${list(ranking.notes)}</div>`,
  );
}

function lead({ use, frequencyBand, tieBand }: Ranking, mixName: string): Html {
  return html`What the chips of a stack pass on at each place, as root mean square over the flight mix “${mixName}”, and what it costs. The score weighs ${weightsText(use)}, noise in dB against the best and false tilt against what is put up with; less is better, and places to avoid come last. Under each gyro figure stand the range for natural frequencies that are ${percent(frequencyBand)} off, the level at hover speed alone, and the true turning of the board with its axes. Ties come within ${three(tieBand)} dB of the best somewhere in that range. Every 6 dB is a factor of two; 1 g is 9.81 m/s².`;
}

const AXES = ["roll", "pitch", "yaw"] as const;

function columns(
  { candidates, controlBandwidth }: Ranking,
  labels: readonly string[],
): Column<RankedCandidate>[] {
  const loudest = Math.max(...candidates.map((c) => c.sensed.gyro));
  const yawRate = three(((candidates[0]?.leverArm.yawRate ?? 0) * 180) / Math.PI);
  return [
    { head: "place", cell: (c, i) => placeMark(c, i, labels[i]) },
    { head: "where", names: true, cell: where },
    {
      head: html`gyro<br><small>deg/s rms</small>`,
      label: "gyro, deg/s rms",
      number: true,
      cell: (c) =>
        html`<strong>${three(c.sensed.gyro)}</strong><span class="bar" style="--share: ${(c.sensed.gyro / loudest).toFixed(3)}" aria-hidden="true"></span><small class="axis">${range(c.gyroRange)}</small> <small class="axis hover">at hover ${three(c.sensed.gyroAtHover)}</small> <small class="axis">true ${three(c.gyro)}</small>${c.gyroAxes.map((v, k) => html` <small class="axis">${AXES[k]} ${three(v)}</small>`)}`,
    },
    {
      head: html`against<br>quietest<br><small>gyro</small>`,
      label: "gyro against quietest",
      number: true,
      cell: (c) => decibels(c.decibel),
    },
    {
      head: html`filter delay<br><small>at ${hertz(controlBandwidth)} in hover</small>`,
      label: "filter delay",
      number: true,
      cell: (c) =>
        html`<strong>${delayWords(c.filter.without)}</strong>${over(overWords(c.filter.without, c.delayOver.without))} <small class="axis">with notches:</small> <small class="axis">${delayWords(c.filter.with)}</small>${over(overWords(c.filter.with, c.delayOver.with))}`,
    },
    {
      head: html`acceleration<br><small>g rms</small>`,
      label: "acceleration, g rms",
      number: true,
      cell: (c) =>
        html`${three(c.sensed.accel)} <small class="axis">true ${three(c.accel)}</small>`,
    },
    {
      head: html`false tilt<br><small>degrees, yaw<br>at ${yawRate} deg/s</small>`,
      label: "false tilt, degrees",
      number: true,
      cell: (c) =>
        html`${inDegrees(c.leverArm.reading.tilt)} <small class="axis">${millimetres(c.fromCg)}</small> <small class="axis">from c. of g.</small>`,
    },
    {
      head: html`score<br><small>dB</small>`,
      label: "score, dB",
      number: true,
      cell: (c) =>
        html`<strong>${signed(c.score)}</strong>${c.tied && html` <small class="axis">tie</small>`}`,
    },
    { head: "flags", label: "flags", cell: (c) => flagList(c.flags) },
  ];
}

function where(c: RankedCandidate): Part {
  const note = c.candidate.designed
    ? "as drawn in the file"
    : c.found
      ? "found by the search"
      : undefined;
  return html`<strong>${named(c.candidate.name)}</strong><br>${sideWord(c.candidate)} ${named(c.plate)}${note && html`<br><em>${note}</em>`}`;
}

/** The reading if all natural frequencies were a little off. */
function range([low, high]: readonly [number, number]): string {
  return `${three(low)} to ${three(high)}`;
}

function over(words: string): Part {
  return words !== "" && html` <small class="axis">${words}</small>`;
}

function placeMark(c: RankedCandidate, i: number, text: string): Html {
  const kind = standing(c, i);
  const word = { best: "best", fine: "", avoid: "avoid" }[kind];
  return html`<span class="place">${inlineMark(kind, text)}<span class="spoken">${text}</span>${word && html`<small>${word}</small>`}</span>`;
}
