/** A little colour, which never says anything that the words do not say. */

export interface Ink {
  readonly heading: (text: string) => string;
  readonly best: (text: string) => string;
  readonly alarm: (text: string) => string;
  readonly quiet: (text: string) => string;
}

const plain = (text: string): string => text;

export const NO_INK: Ink = { heading: plain, best: plain, alarm: plain, quiet: plain };

/** Terminal codes (ECMA-48, Select Graphic Rendition): on and off. */
function code(on: number, off: number): (text: string) => string {
  return (text) => `\u001b[${on}m${text}\u001b[${off}m`;
}

const COLOURS: Ink = {
  heading: code(1, 22),
  best: code(32, 39),
  alarm: code(33, 39),
  quiet: code(2, 22),
};

/** Colour only on a terminal that can show it and when the user has not switched it off. */
export function inkFor(
  isTerminal: boolean,
  env: Readonly<Record<string, string | undefined>>,
): Ink {
  const unwanted = (env.NO_COLOR ?? "") !== "" || env.TERM === "dumb";
  return isTerminal && !unwanted ? COLOURS : NO_INK;
}
