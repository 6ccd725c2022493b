/** Reasons to avoid a place, or to mind. */

import type { Flag } from "../ranking/types.ts";
import { html, type Part } from "./html.ts";

export function flagList(flags: readonly Flag[]): Part {
  if (flags.length === 0) return html`<span class="quiet">none</span>`;
  const items = flags.map(
    (f) =>
      html`<strong class="${f.hard ? "hard" : "soft"}">${f.hard ? "avoid: " : "mind: "}${f.kind}</strong>: ${f.text}`,
  );
  return html`<ul class="plain">${items.map((i) => html`<li>${i}</li>`)}</ul>`;
}
