/** Reasons to avoid a place, or to mind. */

import type { Flag } from "../ranking/types.ts";
import { type Html, html, type Part } from "./html.ts";
import { folded, list } from "./section.ts";

/** One line per flag, with its numbers, reasons to avoid first; what there is to say beyond them is folded. Nothing without flags. */
export function flagLines(
  all: readonly Flag[],
  options: { readonly explained?: boolean } = {},
): Part {
  const flags = all.toSorted((a, b) => Number(b.hard) - Number(a.hard));
  const explained = options.explained === false ? [] : flags.filter((f) => f.brief !== undefined);
  return (
    flags.length > 0 &&
    html`<ul class="flags">${flags.map((f) => html`<li>${flagLine(f)}</li>`)}</ul>${
      explained.length > 0 &&
      folded("Explained", list(explained.map((f) => html`<strong>${f.kind}</strong>: ${f.text}.`)))
    }`
  );
}

/** The line alone. */
function flagLine({ hard, kind, brief, text }: Flag): Html {
  return html`<strong class="${hard ? "hard" : "soft"}">${hard ? "avoid" : "mind"}: ${kind}</strong> <span>${brief ?? text}</span>`;
}
