/** Links that show a mode. */

import { type Html, html } from "./html.ts";

/** A link that shows a mode of the frame as drawn. */
export function modeLink(mode: number, words: string): Html {
  return html`<a href="#modes" data-mode="${mode}" title="show mode ${mode}">${words}</a>`;
}
