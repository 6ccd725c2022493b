/** Data and scripts inside the page, and the policy that lets nothing else run or load. */

import { createHash } from "node:crypto";
import { gzipSync } from "node:zlib";
import { type Html, html, raw } from "./html.ts";
import type { PlotLibrary } from "./types.ts";

/** A script as it stands in the page, and the hash by which the policy knows it. */
export interface InlineScript {
  readonly tag: Html;
  /** "'sha256-...'" */
  readonly source: string;
}

/** Text that is no script, compressed (gzip) and written with the signs of base 64. */
function packedElement(id: string, text: string): Html {
  const packed = gzipSync(text, { level: 9 }).toString("base64");
  return raw(`<script type="text/plain" id="${id}">${packed}</script>`);
}

/** Data for the page's script; nothing of it can be read as HTML. */
export function dataElement(id: string, data: unknown): Html {
  return packedElement(id, JSON.stringify(data));
}

/**
 * A script element. Inside scripts HTML looks for `</script`, `<script` and `<!--` only. They stand in
 * strings and patterns of a program alone, where an escape for one of their signs changes nothing.
 */
export function inlineScript(code: string): InlineScript {
  const text = code
    .replace(/\r\n?/g, "\n")
    .replace(/<\/(script)/gi, "<\\/$1")
    .replace(/<(script)/gi, "\\x3c$1")
    .replace(/<!--/g, "\\x3c!--");
  const hash = createHash("sha256").update(text, "utf8").digest("base64");
  return { tag: raw(`<script>${text}</script>`), source: `'sha256-${hash}'` };
}

/**
 * Where the page's script finds the plot library: compressed inside the page, as text that is not a
 * script, or the name of the file beside it. Either way nothing of it is read before the first screen
 * stands.
 */
export function libraryElement(library: PlotLibrary): Html {
  if (library.kind === "beside") {
    return html`<script type="text/plain" id="library" data-beside="${library.file}"></script>`;
  }
  return packedElement("library", library.source);
}

/**
 * The page may run the script with this hash, and what that hands over itself: the library unpacked
 * (blob:) or from the folder of the page ('self'). It may load nothing else at all, and show no images
 * but those made in the page, which is how figures are saved. Styles must be 'unsafe-inline': the plot
 * library writes rules and style attributes while it draws; with every kind of loading forbidden a style
 * cannot reach the network either.
 */
export function contentPolicy(script: InlineScript, library: PlotLibrary): string {
  return [
    "default-src 'none'",
    `script-src ${script.source} ${library.kind === "beside" ? "'self'" : "blob:"}`,
    "style-src 'unsafe-inline'",
    "img-src data: blob:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
}
