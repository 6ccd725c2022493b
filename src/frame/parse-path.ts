import { type InputError, inputError } from "../errors.ts";
import type { FilePath } from "./file-path.ts";
import { shown } from "./shown.ts";

const QUOTED = /"(?:[^"\\]|\\.)*"/y;
/** What may stand without quotes: names with spaces too, as long as they cannot be misread. */
const BARE = /[^.#"[\]]+/y;
const ENTRY = /#\s*(\d{0,9})(?![\w])/y;

/**
 * The place that a text such as `plates."rear deck".outline#3` means: the inverse of `formatPath`.
 * List entries are counted from 1 and may follow each other, `outline#3#1`. Names with spaces may
 * stand without quotes. "*" is a step like any other; `expandPath` reads it as any name.
 * Throws InputError for a text that cannot be read.
 */
export function parsePath(text: string): FilePath {
  const path: (string | number)[] = [];
  let at = 0;
  const take = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    at += found?.[0].length ?? 0;
    return found;
  };
  const skipSpaces = () => {
    while (text[at] === " ") at++;
  };
  skipSpaces();
  if (at === text.length) throw unreadable(text, "it is empty");
  for (let first = true; ; first = false) {
    skipSpaces();
    if (at === text.length) return path;
    const entry = take(ENTRY);
    if (entry !== null) {
      const position = Number(entry[1]);
      if (!(position >= 1)) throw unreadable(text, "list entries are counted from 1, as in #1");
      path.push(position - 1);
      continue;
    }
    const isDot = text[at] === ".";
    if (isDot === first) {
      if (text[at] === "[") throw unreadable(text, "list entries are written #1, #2, not [0], [1]");
      throw unreadable(
        text,
        isDot ? "it begins with a dot" : `${atSign(text, at)} is not expected`,
      );
    }
    if (isDot) at++;
    skipSpaces();
    const quoted = take(QUOTED);
    if (quoted !== null) {
      path.push(unquoted(text, quoted[0]));
      continue;
    }
    const name = take(BARE)?.[0].trim() ?? "";
    if (name === "") {
      const end =
        at === text.length ? "it ends with a dot" : `a name is missing at ${atSign(text, at)}`;
      throw unreadable(text, text[at] === '"' ? "a quotation mark is never closed" : end);
    }
    path.push(name);
  }
}

function unquoted(text: string, quoted: string): string {
  try {
    return JSON.parse(quoted) as string;
  } catch {
    throw unreadable(text, `${quoted} is no text in quotes`);
  }
}

function atSign(text: string, at: number): string {
  return `${shown([...text.slice(at)][0] ?? "")} (character ${at + 1})`;
}

function unreadable(text: string, why: string): InputError {
  const message = `The path ${shown(text)} cannot be read: ${why}. Write it like arms.arm.thickness, plates."rear deck".z or arms.arm.width#1.`;
  return inputError("", message);
}
