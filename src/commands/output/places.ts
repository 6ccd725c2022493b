/** The table of places and the reasons behind their flags. */

import type { Flag, RankedCandidate, Ranking } from "../../ranking/types.ts";
import type { Ink } from "../terminal/ink.ts";
import { count, decibels, digits, millimetres } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { renderTable } from "../terminal/table.ts";
import { bullets, wrap } from "../terminal/wrap.ts";

/** All places are printed up to this many, otherwise the best few and those the file names. */
const ALL_UP_TO = 16;
const BEST = 10;

interface Shown {
  readonly places: readonly RankedCandidate[];
  readonly left: number;
}

export function shownPlaces(candidates: readonly RankedCandidate[]): Shown {
  const places =
    candidates.length <= ALL_UP_TO
      ? candidates
      : candidates.filter(({ candidate: { named, designed } }, i) => i < BEST || named || designed);
  return { places, left: candidates.length - places.length };
}

export function placesTable({ places, left }: Shown, { candidates }: Ranking, ink: Ink): string {
  const shared = new Set(
    candidates.map(({ place }) => place).filter((p, i, all) => all[i - 1] === p),
  );
  const columns = [
    { title: "Place" },
    { title: "Name", least: 12 },
    { title: "Plate", least: 6 },
    { title: "Gyro", unit: "deg/s", align: "right" },
    { title: "Hover", unit: "deg/s", align: "right" },
    { title: "Level", unit: "dB", align: "right" },
    { title: "Acc.", unit: "g", align: "right" },
    { title: "C.g.", unit: "mm", align: "right" },
    { title: "Flags", least: 5 },
  ] as const;
  const rows = places.map((ranked) => [
    `${ranked.place}${shared.has(ranked.place) ? "=" : ""}`,
    ranked.candidate.name,
    ranked.plate,
    digits(ranked.gyro),
    digits(ranked.gyroAtHover),
    decibels(ranked.decibel),
    digits(ranked.accel),
    millimetres(ranked.fromCg),
    flagMark(ranked.flags),
  ]);
  const table = renderTable(columns, rows, {
    headingInk: ink.quiet,
    ink: (r, text) => {
      if (places[r].flags.some(({ hard }) => hard)) return ink.alarm(text);
      return places[r].place === 1 ? ink.best(text) : text;
    },
    under: (r) => underRow(places[r]),
  });
  return (
    table +
    (left > 0 ? wrap(`and ${count(left, "more place")}; the report has them all`, "  ") : "") +
    wrap("Gyro: rms over the flight mix. Hover: the gyro's rms at hover speed alone.") +
    wrap(
      "Rms (root mean square) is of what the motors cause. Level: Gyro against the quietest place that is not to be avoided. Acc.: accelerometer, over the flight mix. C.g.: from the chip to the centre of gravity, in the plan.",
    )
  );
}

function underRow({ candidate: { side, designed } }: RankedCandidate): string {
  const remarks = [
    ...(side < 0 ? ["on the underside of the plate"] : []),
    ...(designed ? ["the file has the stack here"] : []),
  ];
  return remarks.length === 0 ? "" : wrap(remarks.join("; "), "         ");
}

/** "avoid" outranks "mind"; the number tells how many reasons follow below. */
function flagMark(flags: readonly Flag[]): string {
  if (flags.length === 0) return "";
  const word = flags.some(({ hard }) => hard) ? "avoid" : "mind";
  return flags.length === 1 ? word : `${word} (${flags.length})`;
}

/** Each flag once, with the places it holds for. */
export function flagsText(
  places: readonly RankedCandidate[],
  section: (title: string, body: string) => string,
): string {
  const holders = new Map<string, { flag: Flag; names: string[] }>();
  for (const { candidate, flags } of places) {
    for (const flag of flags) {
      const key = `${flag.kind} ${flag.hard} ${flag.text}`;
      const known = holders.get(key);
      if (known === undefined) holders.set(key, { flag, names: [candidate.name] });
      else known.names.push(candidate.name);
    }
  }
  if (holders.size === 0) return "";
  const texts = [...holders.values()].map(({ flag, names }) => {
    const where = names.map(printable).join(", ");
    return `${where} (${flag.hard ? "avoid" : "mind"}): ${printable(flag.text)}`;
  });
  return section("Flags", bullets(texts));
}
