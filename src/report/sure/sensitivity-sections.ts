/** What moves the noise at a spot, and what moves the modes, for a page of their own. */

import { listed } from "../../ranking/words.ts";
import type { SensitivityStudy } from "../../study/sensitivity-study.ts";
import type { SensitivityTable } from "../../study/sensitivity-types.ts";
import { waysLegend } from "../bars-figure.ts";
import { chartBox, type Figure } from "../figure.ts";
import { type Html, html, named } from "../html.ts";
import { degreesPerSecond, hertz, whole } from "../numbers.ts";
import { facts, folded, section } from "../section.ts";
import { helpFigure, helpFinding } from "./help.ts";
import {
  ENDS,
  modesTable,
  moversFigure,
  moverWords,
  movingMode,
  movingSpot,
  shownRows,
} from "./movers.ts";

/** Inputs in the chart of a spot, and of a mode. */
const INPUTS = 12;
const INPUTS_OF_MODE = 5;

const modeId = (number: number) => `mode-${number}-chart`;

export function sensitivityFigures({
  table,
  spot,
  suggested,
  telling,
}: SensitivityStudy): Readonly<Record<string, Figure | undefined>> {
  return {
    "spot-chart":
      spot === undefined ? undefined : moversFigure(movingSpot(table, spot), "dB", INPUTS),
    "help-chart": helpFigure(suggested),
    ...Object.fromEntries(
      telling.map((n) => [modeId(n), moversFigure(movingMode(table, n), "Hz", INPUTS_OF_MODE)]),
    ),
  };
}

/** The first screen: what moves the noise most. */
export function answerPart({ table, spot, suggested, telling }: SensitivityStudy): Html {
  const movers = spot === undefined ? [] : movingSpot(table, spot);
  const [most] = movers;
  const headline =
    spot === undefined
      ? "Nothing shakes this frame, or it names no spot: only its modes are told."
      : most
        ? `The noise at “${table.spots[spot].name}” is moved most by ${moverWords(most, "dB")}.`
        : `No number of the file moves the noise at “${table.spots[spot].name}”.`;
  const others = movers.slice(1, 3).map((m) => m.input.name);
  const next = others.length > 0 ? `Next come ${listed(others)}.` : "";
  return html`<section id="answer" class="verdict" aria-labelledby="answer-heading">
<h2 id="answer-heading">${headline}</h2>
<div class="words">
${next !== "" && html`<p>${next}</p>`}
${suggested && html`<p>${helpFinding(suggested)}</p>`}
<p class="lead">Every number of the file is moved, one at a time, to both ends of where 95 % of real frames lie, and the frame is computed anew.</p>
${facts([
  ...(spot === undefined
    ? []
    : ([
        [
          "noise as drawn",
          html`${degreesPerSecond(table.spots[spot].gyro)} <small>rms at ${named(table.spots[spot].name)}</small>`,
        ],
      ] as const)),
  ["inputs moved", whole(table.rows.length)],
  ["that move the noise", whole(movers.length)],
  ["modes told in full", whole(telling.length)],
])}
</div>
<figure class="picture">${most && chartBox("spot-chart", "bars named", headline, shownRows(movers, INPUTS))}
<figcaption>${most && waysLegend(ENDS)}</figcaption></figure>
</section>
`;
}

/** Small charts of the modes that tell most, and a table of all. */
export function modesPart({ table, telling }: SensitivityStudy): Html {
  const moved = telling.filter((n) => movingMode(table, n).length > 0);
  const steepest = moved
    .map((n) => ({ n, share: Math.abs(movingMode(table, n)[0].to) / table.modes[n - 1].frequency }))
    .toSorted((a, b) => b.share - a.share)[0];
  const chart = (n: number) => {
    const { name, frequency } = table.modes[n - 1];
    const movers = movingMode(table, n);
    const finding = `Mode ${n}, ${name}, ${hertz(frequency)}: moved most by ${moverWords(movers[0], "Hz")}.`;
    return html`<figure><h3>Mode ${n}: ${named(name)}, ${hertz(frequency)}</h3>${chartBox(modeId(n), "bars named", finding, shownRows(movers, INPUTS_OF_MODE))}</figure>`;
  };
  return section(
    "modes",
    "What moves the modes",
    {
      finding: steepest
        ? `Of the modes that the motors’ forces come nearest to in hover, number ${steepest.n} (${table.modes[steepest.n - 1].name}) moves most: ${moverWords(movingMode(table, steepest.n)[0], "Hz")}.`
        : "No number of the file moves these modes.",
      how: "Frequencies follow their slopes at the drawing, over the range of each input alone. The modes shown are those that the motors’ forces come nearest to in hover, or the lowest where nothing turns.",
    },
    html`<div class="small-charts">${moved.map(chart)}</div>${waysLegend(ENDS)}`,
    folded(`All ${table.modes.length} modes as a table`, modesTable(table)),
  );
}

/** What was taken as it is, mixed or impossible. */
export function notesOf({ clusters, rows }: SensitivityTable): string[] {
  const assumed = rows.some(({ reach }) => reach.why !== "spread");
  const rough = rows.filter((r) => r.notSmooth !== undefined).map((r) => r.input.name);
  const gone = rows.filter((r) => r.impossible !== undefined).map((r) => r.input.name);
  return [
    ...(assumed
      ? [
          "Inputs without a spread of their own are moved by 5 %, positions by 1 mm, which is no statement about real frames.",
        ]
      : []),
    ...clusters.map(
      (group) =>
        `Modes ${listed(group.map(String), group.length)} lie so close that they mix as soon as anything moves: their figures are those of the group.`,
    ),
    ...rough.map((n) => `${n} changes the mesh by jumps, so that modes have no slope in it.`),
    ...gone.map((n) => `${n}: the frame cannot be computed at both ends of its range.`),
  ];
}
