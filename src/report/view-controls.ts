/** What turns a three-dimensional picture, for all of them alike. */

import { type Html, html } from "./html.ts";

export function viewButtons(): Html {
  const views = [
    ["corner", "corner"],
    ["above", "above"],
    ["front", "front"],
    ["side", "side"],
  ] as const;
  return html`<span class="views" role="group" aria-label="seen from">seen from ${views.map(([id, words]) => html`<button type="button" data-view="${id}">${words}</button>`)}<button type="button" data-zoom="in" aria-label="larger">+</button><button type="button" data-zoom="out" aria-label="smaller">−</button></span>`;
}

/** @param more what else can be done with the picture */
export function pictureHint(id: string, more: string): Html {
  return html`<p class="picture-hint" id="${id}-hint">Drag it to turn it, or use the arrow keys; + and − make it larger and smaller. ${more}</p>`;
}
