/** The signs of which bars in text are made, where the terminal shows them, and plain ones elsewhere. */

export interface BarSigns {
  readonly from: string;
  readonly line: string;
  readonly middle: string;
  readonly to: string;
  /** where two of these fall on one column */
  readonly point: string;
}

export const DRAWN_SIGNS: BarSigns = { from: "├", line: "─", middle: "●", to: "┤", point: "●" };
export const PLAIN_SIGNS: BarSigns = { from: "|", line: "-", middle: "o", to: "|", point: "o" };

/**
 * By the locale, as POSIX ranks its variables. Where none is set, plain signs, unless the terminal is
 * one of Windows that says of itself in WT_SESSION that it is a new one.
 */
export function barSignsFor(env: Readonly<Record<string, string | undefined>>): BarSigns {
  const locale = [env.LC_ALL, env.LC_CTYPE, env.LANG].find((v) => (v ?? "") !== "");
  const isUnicode = locale === undefined ? (env.WT_SESSION ?? "") !== "" : /utf-?8/i.test(locale);
  return isUnicode ? DRAWN_SIGNS : PLAIN_SIGNS;
}
