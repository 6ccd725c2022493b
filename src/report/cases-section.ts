/** The places when one propeller is worse than the others. */

import type { CaseReading, Ranking } from "../ranking/types.ts";
import { type Html, html } from "./html.ts";
import { isToAvoid } from "./markers.ts";
import { degreesPerSecond, inColumn, three } from "./numbers.ts";
import { type Labelled, labelled, placeName, quoted } from "./place-names.ts";
import { type Column, folded, list, section, table } from "./section.ts";
import type { Analysed } from "./types.ts";

/** undefined without a ranking or other states. */
export function casesSection({ ranking }: Analysed): Html | undefined {
  const cases = ranking?.candidates[0]?.cases ?? [];
  if (!ranking || cases.length === 0) return undefined;
  return section(
    "cases",
    "Other states",
    {
      finding: casesFinding(ranking),
      how: "The ranking is for propellers that are all alike. Here one is worse than the others, on the motor where that harms the place most; the flight is the same.",
    },
    table(
      "Gyro noise in other states, deg/s rms over the flight mix",
      columns(cases.map((c) => c.name)),
      labelled(ranking.candidates),
      { className: "by-place", cards: true },
    ),
    folded(
      "What these states are",
      html`<div class="notes">${list(cases.map((c) => html`<strong>${c.name}</strong>: ${c.text}`))}</div>`,
    ),
  );
}

const named = (cases: readonly CaseReading[], name: string) => cases.find((c) => c.name === name);

function columns(names: readonly string[]): Column<Labelled>[] {
  return [
    { head: "place", names: true, cell: placeName },
    { head: "all alike", number: true, cell: ({ place }) => inColumn(place.sensed.gyro) },
    ...names.map(
      (name): Column<Labelled> => ({
        head: name,
        number: true,
        cell: ({ place: { cases, sensed } }) => {
          const found = named(cases, name);
          return found === undefined
            ? "–"
            : html`<strong>${inColumn(found.gyro)}</strong> <small class="axis">${three(found.gyro / sensed.gyro, 2)} times, ${found.motor}</small>`;
        },
      }),
    ),
  ];
}

/** What the first place reads, and whether another would then be better. */
export function casesFinding({ candidates }: Pick<Ranking, "candidates">): string {
  const [first] = candidates;
  const open = candidates.filter((c) => !isToAvoid(c));
  return first.cases
    .map(({ name, gyro }) => {
      const level = (c: (typeof candidates)[number]) =>
        named(c.cases, name)?.gyro ?? Number.POSITIVE_INFINITY;
      const least = open.reduce((a, b) => (level(b) < level(a) ? b : a), first);
      const other =
        least === first
          ? "still the least"
          : `the least is ${degreesPerSecond(level(least))} at ${quoted(least.candidate.name)}`;
      const begun = `${name[0].toUpperCase()}${name.slice(1)}`;
      return `${begun}: ${degreesPerSecond(gyro)} rms at the first place, ${three(gyro / first.sensed.gyro, 2)} times as much; ${other}${open.length < candidates.length ? " of those not to be avoided" : ""}.`;
    })
    .join(" ");
}
