/**
 * Lists of whole numbers as text. Neighbours on a plate move nearly alike, so each number is written as
 * its difference from the one before. Two differences of at most 2 in size, one after the other, take one
 * sign together; any other has its own: the sign of the number goes to the lowest bit, five bits go into
 * each of as many signs as are needed, and the sixth bit says that more follow.
 */

const SIGNS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
/** For pairs; none of them means anything in a string of JSON or to HTML inside a script. */
const PAIRS = "!#$%'()*+,./:;=?@[]^`{|}~";

/** @param values whole numbers that differ from their neighbours by less than 2^29 */
export function packIntegers(values: Iterable<number>): string {
  const steps: number[] = [];
  let last = 0;
  for (const value of values) {
    steps.push(value - last);
    last = value;
  }
  const small = (i: number) => Math.abs(steps[i] ?? 3) <= 2;
  let text = "";
  for (let i = 0; i < steps.length; i++) {
    if (small(i) && small(i + 1)) {
      text += PAIRS[5 * (steps[i] + 2) + steps[i + 1] + 2];
      i++;
      continue;
    }
    let rest = steps[i] < 0 ? -2 * steps[i] - 1 : 2 * steps[i];
    for (; rest >= 32; rest >>>= 5) text += SIGNS[32 | (rest & 31)];
    text += SIGNS[rest];
  }
  return text;
}

/** The numbers again. Runs in the page: needs nothing from outside itself. */
export function unpackIntegers(text: string): number[] {
  const pairs = "!#$%'()*+,./:;=?@[]^`{|}~";
  const out: number[] = [];
  let last = 0;
  let bits = 0;
  let shift = 0;
  const add = (step: number) => {
    last += step;
    out.push(last);
  };
  for (let i = 0; i < text.length; i++) {
    const pair = pairs.indexOf(text[i]);
    if (pair >= 0) {
      add(Math.floor(pair / 5) - 2);
      add((pair % 5) - 2);
      continue;
    }
    const c = text.charCodeAt(i);
    // a-z, _, A-Z, 0-9, -
    const v = c >= 97 ? c - 71 : c === 95 ? 63 : c >= 65 ? c - 65 : c >= 48 ? c + 4 : 62;
    bits |= (v & 31) << shift;
    shift += 5;
    if (v >= 32) continue;
    add(bits & 1 ? -(bits + 1) / 2 : bits / 2);
    bits = 0;
    shift = 0;
  }
  return out;
}
