/** Why a place is noisy: forces and modes, what bends in them, and what would move them. */

import type { Speeds } from "../excitation/types.ts";
import { type Fed, fedModes } from "../ranking/fed-modes.ts";
import type { Cause, RankedCandidate } from "../ranking/types.ts";
import { type Html, html, joined, named, type Part } from "./html.ts";
import { modeLink } from "./mode-link.ts";
import { drawnMode } from "./modes-that-matter.ts";
import { hertz, percent, three, toRpm } from "./numbers.ts";
import { type Labelled, labelled, placeName, quoted } from "./place-names.ts";
import { folded, table } from "./section.ts";
import type { Analysed } from "./types.ts";

/** Places shown before the rest is folded away. */
const SHOWN = 1;

interface Row extends Labelled {
  readonly fed: Fed;
  readonly first: boolean;
}

export function causesPart(analysed: Analysed): Part {
  const { excitation, ranking } = analysed;
  if (!excitation || !ranking) return undefined;
  const all = labelled(ranking.candidates);
  const rest = all.slice(SHOWN);
  const tableOf = (caption: string, places: readonly Labelled[]) =>
    causesTable(caption, places, excitation.speeds, analysed);
  return html`<h3>Why: forces and modes</h3>
<p class="finding">${causesFinding(ranking.candidates, excitation.speeds)}</p>
<p class="lead">The largest shares of the gyro’s noise power over the flight. Frequencies have the stack at that place; a click shows the mode of the frame as drawn that is nearest to it. What a change would do is estimated with the shape kept.</p>
${tableOf("Main causes of gyro noise at the first place, largest first", all.slice(0, SHOWN))}
${rest.length > 0 && folded(`Causes at the other ${rest.length === 1 ? "place" : `${rest.length} places`}`, tableOf("Main causes of gyro noise at the other places", rest))}`;
}

/** The main cause at the first place, and what would move it. */
export function causesFinding(candidates: readonly RankedCandidate[], speeds: Speeds): string {
  const [place] = candidates;
  const [most] = place ? fedModes(place.causes) : [];
  if (!place || !most) return "Nothing that the motors do reaches the gyro.";
  const { cause, share, forces } = most;
  const by = forces.map((f) => f.order).join(" and ");
  const at = quoted(place.candidate.name);
  if (cause.mode === 0) {
    return `At ${at} ${percent(share, 2)} of the noise is the whole craft shaken as one by ${by}, which no place avoids.`;
  }
  const remedy =
    cause.remedy === "" ? "" : ` ${cause.remedy[0].toUpperCase()}${cause.remedy.slice(1)}.`;
  return `At ${at} ${percent(share, 2)} of the noise is ${by} on ${hertz(cause.frequency)} (${cause.modeName}), met ${whereMet(cause, speeds)}.${remedy}`;
}

function causesTable(
  caption: string,
  places: readonly Labelled[],
  speeds: Speeds,
  analysed: Analysed,
): Html {
  const rows = places.flatMap((l) =>
    fedModes(l.place.causes).map((fed, i): Row => ({ ...l, fed, first: i === 0 })),
  );
  return table(
    caption,
    [
      {
        head: "place",
        names: true,
        // The name is there for those who hear the table; those who see it see where it begins.
        cell: (r) => (r.first ? placeName(r) : html`<span class="spoken">${placeName(r)}</span>`),
      },
      { head: "share", number: true, cell: ({ fed }) => percent(fed.share, 2) },
      { head: "force", cell: ({ fed }) => forceWords(fed) },
      { head: "moves", cell: ({ fed: { cause } }) => modeWords(cause, analysed) },
      { head: "met", cell: ({ fed: { cause } }) => whereMet(cause, speeds) },
      { head: "what bends most", cell: ({ fed: { cause } }) => partWords(cause) },
      {
        head: "what would move it",
        long: true,
        cell: ({ fed: { cause } }) => cause.remedy || "–",
      },
    ],
    rows,
    { className: "by-place causes", cards: true, rowClass: (r) => (r.first ? "first" : "") },
  );
}

/** "unbalance", "unbalance (53 %), blade difference (9 %)" */
function forceWords({ forces }: Fed): string {
  if (forces.length === 1) return forces[0].order;
  return forces.map((f) => `${f.order} (${percent(f.share, 2)})`).join(", ");
}

function modeWords(cause: Cause, { modes, ranking }: Analysed): Part {
  const { mode, frequency, modeName } = cause;
  if (mode === 0) return "the whole craft as one, which no place avoids";
  const drawn = drawnMode(cause, modes.described, ranking?.frequencyBand ?? 0);
  const words = hertz(frequency);
  return html`${drawn ? modeLink(drawn.number, words) : words} <small>${modeName}</small>`;
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
