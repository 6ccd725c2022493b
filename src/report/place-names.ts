/** A place as the tables of the sections below the ranking name it. */

import type { RankedCandidate } from "../ranking/types.ts";
import { type Html, html, named } from "./html.ts";
import { placeLabels } from "./markers.ts";

/** A place with the sign it has in the drawings. */
export interface Labelled {
  readonly label: string;
  readonly place: RankedCandidate;
}

export function labelled(candidates: readonly RankedCandidate[]): Labelled[] {
  const labels = placeLabels(candidates);
  return candidates.map((place, i) => ({ label: labels[i], place }));
}

/** "1a: sandwich, on middle" */
export function placeName({ label, place }: Labelled): Html {
  return html`<strong>${label}: ${named(place.candidate.name)}</strong> <small>${sideWord(place.candidate)} ${named(place.plate)}</small>`;
}

/** The same as plain text. */
export function placeText({ label, place }: Labelled): string {
  return `${label}: ${place.candidate.name}`;
}

export function sideWord({ side }: { readonly side: 1 | -1 }): "on" | "under" {
  return side > 0 ? "on" : "under";
}

/** A name between marks, as findings have it. */
export const quoted = (name: string): string => `“${name}”`;
