/** Why a place is noisy: forces and modes, what bends in them, and what would move them. */

import type { Speeds } from "../excitation/types.ts";
import type { Cause, Ranking } from "../ranking/types.ts";
import { type Html, html, joined, named, type Part } from "./html.ts";
import { hertz, percent, three, toRpm } from "./numbers.ts";
import { type Labelled, labelled, placeName } from "./place-names.ts";
import { folded, table } from "./section.ts";

/** Places shown before the rest is folded away. */
const SHOWN = 3;

interface Row extends Labelled {
  readonly cause: Cause;
  readonly first: boolean;
}

export function causesPart({ candidates }: Pick<Ranking, "candidates">, speeds: Speeds): Part {
  const all = labelled(candidates);
  const rest = all.slice(SHOWN);
  return html`<h3>Why: forces and modes</h3>
<p>The largest shares of the gyro’s noise power over the flight. Frequencies are those with the stack at that place, so they differ a little from the table of mode shapes, which has the stack where the file puts it. What a change would do is estimated with the shape kept.</p>
${causesTable("Main causes of gyro noise, largest first", all.slice(0, SHOWN), speeds)}
${rest.length > 0 && folded(`Causes at the other ${rest.length === 1 ? "place" : `${rest.length} places`}`, causesTable("Main causes of gyro noise at the other places", rest, speeds))}`;
}

function causesTable(caption: string, places: readonly Labelled[], speeds: Speeds): Html {
  const rows = places.flatMap((l) =>
    l.place.causes.map((cause, i): Row => ({ ...l, cause, first: i === 0 })),
  );
  return table(
    caption,
    [
      { head: "place", names: true, cell: placeName },
      { head: "share", number: true, cell: ({ cause }) => percent(cause.share, 2) },
      { head: "force", cell: ({ cause }) => cause.order },
      { head: "moves", cell: ({ cause }) => modeWords(cause) },
      { head: "met", cell: ({ cause }) => whereMet(cause, speeds) },
      { head: "what bends most", cell: ({ cause }) => partWords(cause) },
      { head: "what would move it", long: true, cell: ({ cause }) => cause.remedy || "–" },
    ],
    rows,
    { className: "by-place", rowClass: (r) => (r.first ? "first" : "") },
  );
}

function modeWords({ mode, frequency, modeName }: Cause): Part {
  if (mode === 0) return "the whole craft as one, which no place avoids";
  return html`${hertz(frequency)} <small>${modeName}</small>`;
}

function partWords({ mode, parts }: Cause): Part {
  if (mode === 0) return "nothing";
  if (parts.length === 0) return html`<span class="quiet">many parts, little each</span>`;
  return joined(
    parts.map((p) => html`${named(p.name)} ${percent(p.share, 2)}`),
    ", ",
  );
}

/** A mode outside the speeds considered still answers to a force inside them, off its peak. */
export function whereMet({ mode, met, rpm }: Cause, { full }: Speeds): string {
  if (mode === 0) return "at all speeds";
  if (met) return `at ${three(rpm)}\u00a0rpm`;
  return rpm > toRpm(full) ? "above full throttle" : "below the lowest speed";
}
