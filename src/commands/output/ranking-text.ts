/** The ranking for people: what `rank` prints. */

import type { Excitation } from "../../excitation/types.ts";
import type { Crossing, Overhang, Ranking } from "../../ranking/types.ts";
import type { Ink } from "../terminal/ink.ts";
import { digits, millimetres, quantity, shortest, signedPercent } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { renderTable } from "../terminal/table.ts";
import { bullets, wrap } from "../terminal/wrap.ts";
import { massLine } from "./mass.ts";
import { evidenceLine, type ToldAnalysis, warningsText } from "./modes-text.ts";
import { flagsText, placesTable, shownPlaces } from "./places.ts";
import { mixText, speedsText } from "./speeds.ts";

const MOST_CROSSINGS = 10;

const SAFETY = [
  "Take the propellers off for every bench test.",
  "This is an aid to compare places, not a measurement: check with a tap test, then with a careful first hover.",
  "Follow the rules that hold where you fly.",
];

export function rankingText(
  analysis: ToldAnalysis,
  ranking: Ranking,
  excitation: Excitation,
  ink: Ink,
): string {
  const section = (title: string, body: string): string => `\n${ink.heading(title)}\n${body}`;
  const shown = shownPlaces(ranking.candidates);
  const { verdict, notes, tieBand, frequencyBand } = ranking;
  return [
    `${ink.heading(wrap(printable(analysis.model.name)).trimEnd())}\n\n`,
    `${ink.best(wrap(printable(verdict.headline)).trimEnd())}\n`,
    verdict.sentences.map((text) => wrap(printable(text))).join(""),
    section("Places, best first", placesTable(shown, ranking, ink)),
    flagsText(shown.places, section),
    section("Overhangs", overhangsText(ranking.overhangs)),
    section("Resonances met near hover", crossingsText(ranking.crossings, ink)),
    section(
      "Speeds and mass",
      speedsText(excitation.speeds) + mixText(excitation) + massLine(analysis.mass),
    ),
    warningsText(analysis.warnings, ink),
    section(
      "How sure this is",
      wrap(
        `Places marked = are ties: within ${shortest(tieBand)} dB of the quietest if the natural frequencies are up to ${shortest(100 * frequencyBand)} % off.`,
      ) +
        rangeLine(ranking) +
        evidenceLine(analysis.modes.evidence, analysis.modes.rigid.length) +
        bullets(notes.map(printable)),
    ),
    section("Before you fly", bullets(SAFETY)),
  ].join("");
}

/** How far the level of the first place follows the natural frequencies. */
function rangeLine({ candidates, frequencyBand }: Ranking): string {
  const [first] = candidates;
  if (first === undefined) return "";
  const [low, high] = first.gyroRange;
  return wrap(
    `If all frequencies were up to ${shortest(100 * frequencyBand)} % off, the first place would read ${digits(low)} to ${quantity(high, "deg/s")}.`,
  );
}

/** Overhangs worth a word; of the others only the longest, to say that they were looked at. */
function overhangsText(overhangs: readonly Overhang[]): string {
  const flagged = overhangs.filter((overhang) => overhang.flagged);
  if (flagged.length > 0) return bullets(flagged.map(({ text }) => printable(text)));
  const [longest] = overhangs.toSorted((a, b) => b.length - a.length);
  if (longest === undefined) return wrap("None.");
  return wrap(
    `None worth a worry. The longest is ${millimetres(longest.length)} mm, at the ${longest.direction} of ${printable(longest.plate)}.`,
  );
}

function crossingsText(crossings: readonly Crossing[], ink: Ink): string {
  const away = ({ fromHover }: Crossing): number => Math.abs(fromHover);
  const near = crossings.filter(({ nearHover }) => nearHover).toSorted((a, b) => away(a) - away(b));
  if (near.length === 0) {
    const [nearest] = crossings.toSorted((a, b) => away(a) - away(b));
    if (nearest === undefined) return wrap("None between the lowest and the highest speed.");
    const { modeName, frequency, order, fromHover, rpm } = nearest;
    return wrap(
      `None. The nearest is ${signedPercent(fromHover)} from hover: ${printable(order)} meets ${quantity(frequency, "Hz")} (${printable(modeName)}) at ${quantity(rpm, "rpm")}.`,
    );
  }
  const columns = [
    { title: "Speed", unit: "rpm", align: "right" },
    { title: "From hover", align: "right" },
    { title: "Mode", align: "right" },
    { title: "Frequency", unit: "Hz", align: "right" },
    { title: "What moves", least: 16 },
    { title: "Shaken by", least: 12 },
  ] as const;
  const rows = near
    .slice(0, MOST_CROSSINGS)
    .map(({ rpm, fromHover, mode, frequency, modeName, order }) => [
      digits(rpm),
      signedPercent(fromHover),
      String(mode),
      digits(frequency),
      modeName,
      order,
    ]);
  const rest = near.length - rows.length;
  return (
    renderTable(columns, rows, { headingInk: ink.quiet }) +
    (rest > 0 ? wrap(`and ${rest} more within the same distance of hover`, "  ") : "")
  );
}
