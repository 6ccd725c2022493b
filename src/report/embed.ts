/** Data and scripts inside the page, and the policy that lets nothing else run or load. */

import { createHash } from "node:crypto";
import { type Html, raw } from "./html.ts";

/** A script as it stands in the page, and the hash by which the policy knows it. */
export interface InlineScript {
  readonly tag: Html;
  /** "'sha256-...'" */
  readonly source: string;
}

/** Data for the page's script; no sign in it can end the element or begin a comment. */
export function dataElement(id: string, data: unknown): Html {
  const json = JSON.stringify(data).replace(
    /[<>&\u2028\u2029]/g,
    (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
  return raw(`<script type="application/json" id="${id}">${json}</script>`);
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
 * The page may run the scripts with these hashes and nothing else, and may load nothing at all.
 * Styles must be 'unsafe-inline': the plot library writes rules and style attributes while it draws;
 * with every kind of loading forbidden a style cannot reach the network either.
 */
export function contentPolicy(scripts: readonly InlineScript[]): string {
  return [
    "default-src 'none'",
    `script-src ${scripts.map((s) => s.source).join(" ")}`,
    "style-src 'unsafe-inline'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
}
