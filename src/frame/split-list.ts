import { inputError } from "../errors.ts";
import { shown } from "./shown.ts";

const CLOSING: Readonly<Record<string, string>> = { "[": "]", "{": "}", "(": ")" };

/**
 * The entries of a list as typed, split at commas outside brackets and texts in quotes, without the
 * spaces around them. Throws InputError for brackets that do not match.
 */
export function splitList(text: string): string[] {
  const entries: string[] = [];
  const open: string[] = [];
  let start = 0;
  for (let at = 0; at < text.length; at++) {
    const sign = text[at];
    // after a value a quotation mark may be the sign for inches
    if (sign === '"' && (open.length > 0 || text.slice(start, at).trim() === "")) {
      at = endOfQuoted(text, at);
    } else if (Object.hasOwn(CLOSING, sign)) {
      open.push(CLOSING[sign]);
    } else if (sign === "]" || sign === "}" || sign === ")") {
      if (open.pop() !== sign) throw unmatched(text, sign, at, "was never opened");
    } else if (sign === "," && open.length === 0) {
      entries.push(text.slice(start, at).trim());
      start = at + 1;
    }
  }
  const missing = open.at(-1);
  if (missing !== undefined) throw unmatched(text, missing, text.length, "is missing at the end");
  return [...entries, text.slice(start).trim()];
}

/** Position of the closing quotation mark, or of the last sign. */
function endOfQuoted(text: string, from: number): number {
  for (let at = from + 1; at < text.length; at++) {
    if (text[at] === "\\") at++;
    else if (text[at] === '"') return at;
  }
  throw unmatched(text, '"', from, "is never closed");
}

function unmatched(text: string, sign: string, at: number, what: string) {
  const where = at < text.length ? ` (character ${at + 1})` : "";
  return inputError("", `The list ${shown(text)} cannot be read: "${sign}"${where} ${what}.`);
}
