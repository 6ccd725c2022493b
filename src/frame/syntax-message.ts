/**
 * What is wrong with text that is not JSON, in words; `code` is the parser's name of the error at
 * `offset`. Looks at the text around it for the slips people make most.
 */
export function syntaxMessage(text: string, offset: number, code: string): string {
  const before = text.slice(Math.max(0, offset - 40), offset);
  const here = text.slice(offset, offset + 40);
  const comma = /(-?\d+),\s*$/.exec(before);
  const decimals = /^\d+/.exec(here);
  if (code === "PropertyNameExpected" && comma !== null && decimals !== null) {
    const point = `${comma[1]}.${decimals[0]}`;
    return `A decimal comma cannot be read here: write ${point} with a point.`;
  }
  if (here.startsWith("#")) return "A comment begins with // and not with #.";
  if (here.startsWith("\0"))
    return "There is a zero byte here: save the file as plain text in UTF-8.";
  if (here.startsWith("'")) return "Texts and names stand in double quotes: write \" and not '.";
  if (/^[“”„]/.test(here)) return 'These are printed quotes: write the straight sign ".';
  const word = /^[A-Za-z_][\w-]*(?=\s*:)/.exec(here)?.[0];
  if (word !== undefined) {
    return `Names stand in quotes: write "${word}": ...`;
  }
  if (code === "InvalidSymbol" || code === "CommaExpected") {
    const number = /[-+]?[\d.]+ ?$/.exec(before)?.[0] ?? "";
    const value = /^[-+\w./^%]+(?: [A-Za-z][\w/^]*)?/.exec(here)?.[0];
    const whole = value !== undefined && /^[-+]?\d+(\.\d+)?$/.test(value);
    if (whole && /[\d"\]}]\s+$/.test(before)) return GENERAL.CommaExpected;
    if (value !== undefined && /^[-+]?[\d.]+$/.test(value)) {
      return `${value} cannot be read as a number: write it like 0.5 or -2.`;
    }
    if (value === "NaN" || value?.endsWith("Infinity"))
      return `${value} is not a number to work with.`;
    if (value !== undefined && /^[A-Za-z%]/.test(value)) {
      return `${number}${value} stands in quotes in a frame file: write "${number}${value}".`;
    }
  }
  if (code === "CommaExpected" && here.startsWith("}")) return GENERAL.CloseBracketExpected;
  if (code === "CommaExpected" && here.startsWith("]")) return GENERAL.CloseBraceExpected;
  return GENERAL[code] ?? "The text cannot be read as a frame file from here on.";
}

const GENERAL: Readonly<Record<string, string>> = {
  InvalidSymbol: "This sign has no meaning here: texts stand in double quotes.",
  InvalidNumberFormat: "This number cannot be read: write it like 2.5 or -0.8.",
  PropertyNameExpected: 'A name in quotes is missing here, like "thickness": ...',
  ValueExpected:
    "A value is missing here: a number, a text in quotes, a list in [ ] or a section in { }.",
  ColonExpected: "A colon is missing here, between the name and its value.",
  CommaExpected: "A comma is missing before this.",
  CloseBraceExpected: "A closing } is missing before this.",
  CloseBracketExpected: "A closing ] is missing before this.",
  EndOfFileExpected:
    "There is something after the end of the file's last }: remove it, or check the braces above.",
  InvalidCommentToken: "A comment begins with // and runs to the end of the line.",
  UnexpectedEndOfComment: "This comment is not closed: */ is missing.",
  UnexpectedEndOfString: "A text is not closed: its second quote is missing on this line.",
  UnexpectedEndOfNumber: "This number is not complete.",
  InvalidUnicode: "This \\u sign is not complete: it takes four digits.",
  InvalidEscapeCharacter: "A backslash in a text is written twice: \\\\.",
  InvalidCharacter: "There is a tab or another invisible sign inside a text: remove it.",
};
