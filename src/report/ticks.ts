/** Where the ticks of an axis stand, written out. */

import { three } from "./numbers.ts";

/** Of frequencies, in each power of ten. */
const FREQUENCY_STEPS = [1, 1.5, 2, 3, 5, 7];
/** Enough ticks of 1, 2, 5, 10 ... */
const ENOUGH = 5;

/** Values at `steps` times powers of ten from low to high, written out. */
export function steppedTicks(steps: readonly number[], low: number, high: number) {
  const tickvals: number[] = [];
  for (let decade = Math.floor(Math.log10(low)); 10 ** decade <= high; decade++) {
    for (const k of steps) {
      const value = Number(`${k}e${decade}`);
      if (value >= low && value <= high) tickvals.push(value);
    }
  }
  return { tickvals, ticktext: tickvals.map((v) => three(v)) };
}

/** Of an axis of frequency, Hz. */
export function frequencyTicks(low: number, high: number) {
  return steppedTicks(FREQUENCY_STEPS, low, high);
}

/** Ticks at 1, 2, 5, 10 ... written out in full; one per decade where there are many decades. */
export function plainTicks(bottom: number, top: number) {
  const steps = top - bottom > 2.5 ? [1] : [1, 2, 5];
  const tickvals: number[] = [];
  for (let decade = Math.floor(bottom); decade <= top; decade++) {
    for (const k of steps) {
      const value = Number(`${k}e${decade}`);
      if (Math.log10(value) >= bottom && Math.log10(value) <= top) tickvals.push(value);
    }
  }
  return { tickvals, ticktext: tickvals.map((v) => three(v)) };
}

/** Ticks with signs at equal round steps, and a bare 0. */
export function signedTicks(low: number, high: number, about = 7) {
  const vals = roundSteps(low, high, about);
  return { tickvals: vals, ticktext: vals.map((v) => (v > 0 ? `+${three(v)}` : three(v))) };
}

/** Ticks of a logarithmic axis, written out; the axis ends at these values, not at their logarithms. */
export function logTicks(low: number, high: number) {
  const coarse = plainTicks(Math.log10(low), Math.log10(high));
  if (coarse.tickvals.length >= ENOUGH) return coarse;
  const vals = high / low > 4 ? fine(low, high) : roundSteps(low, high, 7);
  return { tickvals: vals, ticktext: vals.map((v) => three(v)) };
}

function fine(low: number, high: number): number[] {
  const vals: number[] = [];
  for (let decade = 10 ** Math.floor(Math.log10(low)); decade <= high; decade *= 10) {
    vals.push(...[1, 1.5, 2, 3, 4, 5, 7].map((s) => s * decade));
  }
  return vals.filter((v) => v >= low && v <= high);
}

function roundSteps(low: number, high: number, about: number): number[] {
  const rough = (high - low) / about;
  const decade = 10 ** Math.floor(Math.log10(rough));
  const step = decade * ([1, 2, 5].find((s) => s * decade >= rough) ?? 10);
  const first = Math.ceil(low / step);
  const count = Math.floor(high / step) - first + 1;
  return Array.from({ length: count }, (_, i) => Number(((first + i) * step).toPrecision(6)));
}
