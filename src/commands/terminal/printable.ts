/** Texts from files and from the command line, made safe to print, and how wide they print. */

/** What could move the cursor, colour the screen, reverse the line or hide: shown as an escape. */
const UNSAFE = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Zl}\p{Zp}]/gu;
/** More marks than this on one letter pile up over the lines above. */
const MARK_PILE = /(\p{M}{3})\p{M}+/gu;
/** Letters written from right to left: Hebrew, Arabic and their relatives. */
const RIGHT_TO_LEFT =
  /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufeff\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;
const ZERO_WIDTH = /[\p{M}\p{Cf}]/u;
const EMOJI = /\p{Emoji_Presentation}/u;

/** Blocks of East Asian characters that take two columns (Unicode annex 11, from memory). */
// biome-ignore format: pairs of first and last
const WIDE: readonly (readonly [number, number])[] = [
  [0x1100, 0x115f], [0x2e80, 0x303e], [0x3041, 0xa4cf], [0xa960, 0xa97f], [0xac00, 0xd7a3],
  [0xf900, 0xfaff], [0xfe30, 0xfe6f], [0xff00, 0xff60], [0xffe0, 0xffe6], [0x16fe0, 0x18dff],
  [0x1b000, 0x1b2ff], [0x1f300, 0x1f64f], [0x1f680, 0x1f6ff], [0x1f900, 0x1faff], [0x20000, 0x3fffd],
];

/** The text as one line without anything that acts on a terminal; `\u001b` stands for an escape. */
export function printable(text: string): string {
  return text
    .replace(/[\t\n\r]+/g, " ")
    .replace(UNSAFE, (sign) => {
      return `\\u${(sign.codePointAt(0) ?? 0).toString(16).padStart(4, "0")}`;
    })
    .normalize("NFC")
    .replace(MARK_PILE, "$1");
}

/** Columns that the text takes on a terminal. */
export function columnsOf(text: string): number {
  let columns = 0;
  for (const sign of text) columns += widthOf(sign);
  return columns;
}

function widthOf(sign: string): number {
  const code = sign.codePointAt(0) ?? 0;
  if (code < 0x300) return 1;
  // a variation selector may turn the sign before it into a picture of two columns
  if (code === 0xfe0f) return 1;
  if (ZERO_WIDTH.test(sign)) return 0;
  return WIDE.some(([first, last]) => code >= first && code <= last) || EMOJI.test(sign) ? 2 : 1;
}

/** At most `columns` wide; what does not fit is cut and "…" stands in its place. */
export function shorten(text: string, columns: number): string {
  if (columnsOf(text) <= columns) return text;
  return `${beginning(text, columns - 1).trimEnd()}…`;
}

/** As much from the beginning as fits into `columns`, never half of a letter with its marks. */
export function beginning(text: string, columns: number): string {
  let taken = "";
  let width = 0;
  for (const sign of text) {
    width += widthOf(sign);
    if (width > columns) break;
    taken += sign;
  }
  return taken;
}

/** Keeps a name that is written from right to left from turning the numbers beside it. */
export function isolated(text: string): string {
  return RIGHT_TO_LEFT.test(text) ? `\u2068${text}\u2069` : text;
}
