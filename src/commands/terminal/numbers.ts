/** Numbers for people: at most three meaningful digits, always with a unit. */

import { shellWord } from "../../report/shell-word.ts";
import { HARD_SPACE } from "./wrap.ts";

/** "0.00123", "4.50", "312", "10800"; powers of ten only where a number would be too long. */
export function digits(value: number): string {
  if (Number.isNaN(value)) return "unknown";
  if (!Number.isFinite(value)) return value > 0 ? "infinite" : "-infinite";
  const rounded = Number(value.toPrecision(3));
  const size = Math.abs(rounded);
  if (size === 0) return "0";
  if (size >= 1e7 || size < 1e-4) return rounded.toExponential().replace("e+", "e");
  return rounded.toFixed(Math.max(0, 2 - Math.floor(Math.log10(size))));
}

/** The same without zeros at the end, for values that somebody chose: "60", "0.1". */
export function shortest(value: number): string {
  const text = digits(value);
  return /^-?\d+\.\d+$/.test(text) ? text.replace(/\.?0+$/, "") : text;
}

export function quantity(value: number, unit: string): string {
  return `${digits(value)}${HARD_SPACE}${unit}`;
}

/** rad/s as "10800 rpm". */
export function rpm(speed: number): string {
  return quantity(toRpm(speed), "rpm");
}

export function toRpm(speed: number): number {
  return (speed * 30) / Math.PI;
}

/** 0.0123 as "1.23 %". */
export function percent(share: number): string {
  return quantity(100 * share, "%");
}

/** 0.837 as "84 %", for shares that sum to a whole. */
export function wholePercent(share: number): string {
  return `${Math.round(100 * share)}${HARD_SPACE}%`;
}

/**
 * m as mm, to a tenth below 100 mm. Coordinates stand in a column, so they share their decimals, and
 * what rounds to nothing is 0 and not -0.0.
 */
export function millimetres(length: number): string {
  const mm = length * 1e3;
  return plainZero(mm.toFixed(Math.abs(mm) < 99.95 ? 1 : 0));
}

/** To a tenth, for columns of levels, angles and delays: "0.0", "12.3". */
export function tenths(value: number): string {
  return Number.isFinite(value) ? plainZero(value.toFixed(1)) : digits(value);
}

/** The same as a difference: "+0.5", "-13.1", and "0.0" for none. */
export function signedTenths(value: number): string {
  const text = tenths(value);
  return Number(text) > 0 && Number.isFinite(value) ? `+${text}` : text;
}

/** An angle (rad) in degrees. */
export function toDegrees(angle: number): number {
  return (angle * 180) / Math.PI;
}

/** "+4 %", "-12 %": a signed share. */
export function signedPercent(share: number): string {
  const text = plainZero((100 * share).toFixed(0));
  return `${Number(text) > 0 ? "+" : ""}${text}${HARD_SPACE}%`;
}

function plainZero(text: string): string {
  return /^-0(?:\.0+)?$/.test(text) ? text.slice(1) : text;
}

export function count(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

/** A command to be typed: it stays in one line. */
export function commandLine(...words: readonly string[]): string {
  return ["stillpoint", ...words.map(shellWord)].join(HARD_SPACE);
}
