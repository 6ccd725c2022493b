/**
 * Reader for the usual notation of laminate stacks, e.g. `[0/45/-45/90]2s`.
 *
 *     stack  = "[" list "]" [ repeat ] [ "s" | "T" ]
 *     list   = item { "/" item }
 *     item   = group | pair | ply
 *     group  = "(" list ")" [ repeat ]
 *     pair   = ( "+-" | "+/-" | "±" | "-+" | "-/+" | "∓" ) size    two plies, first sign first
 *     ply    = [ "+" | "-" ] size [ "_" count ] [ "~" ]
 *     size   = digits [ "." digits ] [ "°" ]                       degrees, at most 180
 *     repeat = [ "_" ] count
 *
 * Spaces may stand between the parts. The first ply written is the bottom one. A repeat applies
 * before the mirror: [0/90]2s is 0/90/0/90/90/0/90/0. "s" (or "S") mirrors the stack; "T" says
 * that it is written in full. "~" after the last ply of a stack that ends in a plain "s" puts this
 * ply on the mirror plane, once (printed with a bar in books): [0/90~]s is 0/90/0.
 * A group is always a sequence of plies, never one woven ply; a woven ply is written by the angle
 * of its warp.
 */

import { type InputError, inputError } from "../errors.ts";

/** More plies than this is taken for a slip: 500 plies are 60 mm and more. */
export const MAX_PLIES = 500;

const MAX_NESTING = 8;
const EXAMPLE = "[0/45/-45/90]2s";
const PAIRS: readonly (readonly [string, 1 | -1])[] = [
  ["+/-", 1],
  ["+-", 1],
  ["±", 1],
  ["-/+", -1],
  ["-+", -1],
  ["∓", -1],
];

interface Cursor {
  readonly text: string;
  readonly path: string;
  /** Index of the next character. */
  at: number;
  /** Index of the "~", or -1. */
  middle: number;
}

/**
 * Ply angles in degrees, from bottom to top.
 * Throws InputError (at `path`): what was found, at which character (counted from 1), what is
 * allowed there, and an example.
 */
export function parseStack(text: string, path = ""): readonly number[] {
  const cursor: Cursor = { text, path, at: 0, middle: -1 };
  if (!accept(cursor, "[")) throw unexpected(cursor, '"["');
  const list = parseList(cursor, 0);
  if (!accept(cursor, "]")) throw unexpected(cursor, '"/", "_" with a count, or "]"');
  const start = cursor.at;
  const count = parseRepeat(cursor);
  const once = repeat(cursor, list, count ?? 1, start);
  const mirrored = accept(cursor, "s") || accept(cursor, "S");
  if (!mirrored) accept(cursor, "T");
  skipSpaces(cursor);
  if (cursor.at < text.length) {
    throw unexpected(
      cursor,
      mirrored ? "nothing (a count stands before the s)" : 'a count, "s", "T" or nothing',
    );
  }
  if (cursor.middle >= 0) {
    if (!mirrored || count !== undefined) {
      throw problem(
        cursor,
        cursor.middle,
        'found "~" in a stack that does not end in a plain "]s"',
        "the middle ply of [0/90~]s",
      );
    }
    return limited(cursor, [...once, ...once.slice(0, -1).reverse()], start);
  }
  return mirrored ? limited(cursor, [...once, ...once.toReversed()], start) : once;
}

function parseList(cursor: Cursor, depth: number): readonly number[] {
  const angles: number[] = [];
  do {
    const start = cursor.at;
    angles.push(...parseItem(cursor, depth));
    limited(cursor, angles, start);
  } while (accept(cursor, "/"));
  return angles;
}

function parseItem(cursor: Cursor, depth: number): readonly number[] {
  const start = cursor.at;
  if (accept(cursor, "(")) {
    if (depth >= MAX_NESTING) {
      throw problem(
        cursor,
        start,
        "found a group inside too many groups",
        `up to ${MAX_NESTING} levels`,
      );
    }
    const list = parseList(cursor, depth + 1);
    if (!accept(cursor, ")")) throw unexpected(cursor, '"/", "_" with a count, or ")"');
    const at = cursor.at;
    return repeat(cursor, list, parseRepeat(cursor) ?? 1, at);
  }
  const pair = PAIRS.find(([sign]) => accept(cursor, sign));
  if (pair !== undefined) {
    const angle = signed(pair[1], parseSize(cursor));
    if (cursor.text[cursor.at] === "_") {
      throw problem(
        cursor,
        cursor.at,
        'found "_" after a plus-minus pair, which is read in two ways',
        "(+-45)2 for 45/-45/45/-45, or 45_2/-45_2",
      );
    }
    return [angle, signed(-1, angle)];
  }
  const sign = accept(cursor, "-") || accept(cursor, "−") ? -1 : 1;
  if (sign === 1) accept(cursor, "+");
  const angle = signed(sign, parseSize(cursor));
  const at = cursor.at;
  if (accept(cursor, "_")) return repeat(cursor, [angle], parseCount(cursor), at);
  if (depth === 0) parseMiddle(cursor);
  return [angle];
}

/** sign x angle, without a negative zero. */
function signed(sign: 1 | -1, angle: number): number {
  return angle === 0 ? 0 : sign * angle;
}

function parseMiddle(cursor: Cursor): void {
  skipSpaces(cursor);
  const at = cursor.at;
  if (!accept(cursor, "~")) return;
  cursor.middle = at;
  skipSpaces(cursor);
  if (cursor.text[cursor.at] !== "]")
    throw unexpected(cursor, '"]" (only the last ply takes a "~")');
}

function parseSize(cursor: Cursor): number {
  const found = match(cursor, /\d+(\.\d+)?/y);
  if (found === undefined) throw unexpected(cursor, 'an angle in degrees, "+-" or "("');
  const size = Number(found);
  if (size > 180) {
    throw problem(
      cursor,
      cursor.at - found.length,
      `found the angle ${found}`,
      "-180 to 180 degrees",
    );
  }
  accept(cursor, "°");
  return size;
}

/** The count after "]" or ")", with or without "_"; undefined when there is none. */
function parseRepeat(cursor: Cursor): number | undefined {
  if (accept(cursor, "_")) return parseCount(cursor);
  skipSpaces(cursor);
  return /\d/.test(cursor.text[cursor.at] ?? "") ? parseCount(cursor) : undefined;
}

function parseCount(cursor: Cursor): number {
  const found = match(cursor, /\d+/y);
  if (found === undefined) throw unexpected(cursor, "a whole number of repeats");
  const count = Number(found);
  if (count < 1 || count > MAX_PLIES) {
    throw problem(
      cursor,
      cursor.at - found.length,
      `found the repeat count ${found}`,
      `1 to ${MAX_PLIES}`,
    );
  }
  return count;
}

function repeat(
  cursor: Cursor,
  list: readonly number[],
  count: number,
  start: number,
): readonly number[] {
  // Both factors are at most MAX_PLIES, so the product is made only when it is small enough.
  if (list.length * count > MAX_PLIES) throw tooMany(cursor, list.length * count, start);
  return Array.from({ length: count }, () => list).flat();
}

function limited(cursor: Cursor, list: readonly number[], start: number): readonly number[] {
  if (list.length > MAX_PLIES) throw tooMany(cursor, list.length, start);
  return list;
}

function match(cursor: Cursor, pattern: RegExp): string | undefined {
  skipSpaces(cursor);
  pattern.lastIndex = cursor.at;
  const found = pattern.exec(cursor.text)?.[0];
  if (found !== undefined) cursor.at += found.length;
  return found;
}

function accept(cursor: Cursor, token: string): boolean {
  skipSpaces(cursor);
  if (!cursor.text.startsWith(token, cursor.at)) return false;
  cursor.at += token.length;
  return true;
}

function skipSpaces(cursor: Cursor): void {
  while (cursor.text[cursor.at] === " ") cursor.at++;
}

function tooMany(cursor: Cursor, count: number, at: number): InputError {
  return problem(cursor, at, `found ${count} plies`, `at most ${MAX_PLIES}`);
}

function unexpected(cursor: Cursor, allowed: string): InputError {
  skipSpaces(cursor);
  const found = [...cursor.text.slice(cursor.at)][0];
  return problem(
    cursor,
    cursor.at,
    found === undefined ? "found the end of the text" : `found "${found}"`,
    allowed,
  );
}

function problem(cursor: Cursor, at: number, found: string, allowed: string): InputError {
  const shown = cursor.text.length > 60 ? `${cursor.text.slice(0, 60)}...` : cursor.text;
  return inputError(
    cursor.path,
    `The stack "${shown}": ${found} at character ${at + 1}; allowed here: ${allowed}. A valid stack is ${EXAMPLE}.`,
  );
}
