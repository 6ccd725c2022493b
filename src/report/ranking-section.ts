/** The ranking as a table, with the reasons. */

import type { Speeds } from "../excitation/types.ts";
import type { Cause, RankedCandidate } from "../ranking/types.ts";
import { type Html, html, named, type Part } from "./html.ts";
import { inlineMark, placeLabels, standing } from "./markers.ts";
import { decibels, hertz, millimetres, percent, three, toRpm } from "./numbers.ts";
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
  const loudest = Math.max(...ranking.candidates.map((c) => c.gyro));
  const lead = html`What a stack would read at each place, as root mean square over the flight mix “${excitation.mixName}”. Turning of the board comes first, because the gyro feels it directly; the range under each figure is for natural frequencies that are ${percent(ranking.frequencyBand)} off, and below it stands the level at hover speed alone. Ties come within ${three(ranking.tieBand)} dB of the quietest somewhere in that range. Every 6 dB is a factor of two; 1 g is 9.81 m/s².`;
  return section(
    "ranking",
    "Ranking",
    lead,
    table(
      "Places in order, best first",
      columns(loudest, placeLabels(ranking.candidates), excitation.speeds),
      ranking.candidates,
      {
        className: "ranking",
        rowClass: (c, i) => standing(c, i),
      },
    ),
    ranking.notes.length > 0 && html`<div class="notes">${list(ranking.notes)}</div>`,
  );
}

const AXES = ["roll", "pitch", "yaw"] as const;

function columns(
  loudest: number,
  labels: readonly string[],
  speeds: Speeds,
): Column<RankedCandidate>[] {
  return [
    { head: "place", cell: (c, i) => placeMark(c, i, labels[i]) },
    {
      head: "where",
      names: true,
      cell: (c) =>
        html`<strong>${named(c.candidate.name)}</strong><br>${c.candidate.side > 0 ? "on" : "under"} ${named(c.plate)}${c.candidate.designed && html`<br><em>as drawn in the file</em>`}`,
    },
    {
      head: html`gyro<br><small>deg/s rms</small>`,
      label: "gyro, deg/s rms",
      number: true,
      cell: (c) =>
        html`<strong>${three(c.gyro)}</strong><span class="bar" style="--share: ${(c.gyro / loudest).toFixed(3)}" aria-hidden="true"></span><small class="axis">${range(c.gyroRange)}</small><small class="axis hover">at hover ${three(c.gyroAtHover)}</small>${c.gyroAxes.map((v, k) => html`<small class="axis">${AXES[k]} ${three(v)}</small>`)}`,
    },
    {
      head: html`against<br>quietest<br><small>gyro</small>`,
      label: "against quietest",
      number: true,
      cell: (c) => `${decibels(c.decibel)}${c.tied ? " (tie)" : ""}`,
    },
    {
      head: html`acceleration<br><small>g rms</small>`,
      label: "acceleration, g rms",
      number: true,
      cell: (c) => three(c.accel),
    },
    {
      head: html`from centre<br>of gravity`,
      label: "from centre of gravity",
      number: true,
      cell: (c) =>
        html`${millimetres(c.fromCg)} <small>in plan</small><br>${millimetres(c.fromCg3d)} <small>in all</small>`,
    },
    { head: "flags", label: "flags", cell: flags },
    {
      head: "main causes of gyro noise",
      label: "main causes of gyro noise",
      cell: (c) => causes(c, speeds),
    },
  ];
}

/** The reading if all natural frequencies were a little off. */
function range([low, high]: readonly [number, number]): string {
  return `${three(low)} to ${three(high)}`;
}

function placeMark(c: RankedCandidate, i: number, text: string): Html {
  const kind = standing(c, i);
  const word = { best: "best", fine: "", avoid: "avoid" }[kind];
  return html`<span class="place">${inlineMark(kind, text)}<span class="spoken">${text}</span>${word && html`<small>${word}</small>`}</span>`;
}

function flags(c: RankedCandidate): Part {
  if (c.flags.length === 0) return html`<span class="quiet">none</span>`;
  const items = c.flags.map(
    (f) =>
      html`<strong class="${f.hard ? "hard" : "soft"}">${f.hard ? "avoid: " : "mind: "}${f.kind}</strong>: ${f.text}`,
  );
  return html`<ul class="plain">${items.map((i) => html`<li>${i}</li>`)}</ul>`;
}

function causes(c: RankedCandidate, speeds: Speeds): Part {
  return html`<ul class="plain">${c.causes.map((cause) => html`<li>${causeWords(cause, speeds)}</li>`)}</ul>`;
}

/** "62 %: unbalance meets mode 3 (126 Hz, arms flap, all together) at 7 560 rpm". */
export function causeWords(c: Cause, speeds: Speeds): Html {
  const share = html`<strong>${percent(c.share, 2)}</strong>`;
  if (c.mode === 0) return html`${share} ${c.order}, which shakes the whole craft as one`;
  return html`${share} ${c.order} on mode ${c.mode} <small>(${hertz(c.frequency)}, ${c.modeName})</small>, ${whereMet(c, speeds)}`;
}

/** A mode outside the speeds considered still answers to a force inside them, off its peak. */
function whereMet({ met, rpm }: Cause, { full }: Speeds): string {
  if (met) return `met at ${three(rpm)} rpm`;
  return rpm > toRpm(full) ? "above full throttle" : "below the lowest speed";
}
