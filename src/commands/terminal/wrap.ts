/** Paragraphs for a terminal of 80 columns. */

import { beginning, columnsOf } from "./printable.ts";

export const PAGE_COLUMNS = 80;

/** Joins a number and its unit, so that no line ends between them; printed as a plain space. */
export const HARD_SPACE = "\u00a0";

/**
 * Lines of at most 80 columns, ended by line breaks. The first begins with `first`, the others with
 * `rest` (both are kept as they are, whatever their width). Words that are wider than a line are cut.
 */
export function wrap(text: string, first = "", rest = first): string {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  const finish = (): void => {
    lines.push(line.trimEnd());
    line = rest;
    empty = true;
  };
  for (const word of text.split(/[ \n]+/)) {
    let left = word;
    if (left === "") continue;
    const room = (): number => PAGE_COLUMNS - columnsOf(line) - (empty ? 0 : 1);
    if (columnsOf(left) > room() && (!empty || line !== rest)) finish();
    while (left !== "" && columnsOf(left) > room()) {
      // at least one sign, or a prefix wider than the page would never let the word go
      const piece = beginning(left, room()) || [...left][0];
      line += piece;
      left = left.slice(piece.length);
      finish();
    }
    if (left === "") continue;
    line += empty ? left : ` ${left}`;
    empty = false;
  }
  if (!empty || lines.length === 0) finish();
  return `${lines.join("\n").replaceAll(HARD_SPACE, " ")}\n`;
}

/** One paragraph per text, each behind a dash. */
export function bullets(texts: readonly string[], indent = "  "): string {
  return texts.map((text) => wrap(text, `${indent}- `, `${indent}  `)).join("");
}
