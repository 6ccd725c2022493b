/**
 * Levels as text: each number from -1 to 1 in 4095 steps becomes two signs, a third of what
 * decimal digits would take. The steps are 0.02 % of the whole range.
 */

const SIGNS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
const HALF = 2047;

/** Two signs per number; numbers beyond -1 to 1 are cut off. */
export function packUnit(values: ArrayLike<number>): string {
  let text = "";
  for (let i = 0; i < values.length; i++) {
    const step = Math.round(Math.min(1, Math.max(-1, values[i])) * HALF) + HALF;
    text += SIGNS[step >> 6] + SIGNS[step & 63];
  }
  return text;
}

/** The numbers again. Runs in the page: needs nothing from outside itself. */
export function unpackUnit(text: string): Float64Array {
  const value = (i: number) => {
    const c = text.charCodeAt(i);
    if (c >= 97) return c - 71; // a-z
    if (c >= 65 && c <= 90) return c - 65; // A-Z
    if (c >= 48 && c <= 57) return c + 4; // 0-9
    return c === 45 ? 62 : 63; // - and _
  };
  const out = new Float64Array(text.length / 2);
  for (let i = 0; i < out.length; i++) {
    out[i] = (64 * value(2 * i) + value(2 * i + 1)) / 2047 - 1;
  }
  return out;
}
