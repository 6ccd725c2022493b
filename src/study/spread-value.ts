/** From a number of the unit interval to a value of an input within its spread. */

import { inputError } from "../errors.ts";
import { normalQuantile, SIGMAS_95 } from "./normal.ts";

/** Where 95 % of real frames lie, SI. */
export interface SpreadRange {
  readonly from: number;
  readonly to: number;
  /** the value itself is normal ("even") or its logarithm ("log") */
  readonly scale: "even" | "log";
}

export interface SpreadInput {
  readonly name: string;
  /** a "position" may lie on either side of zero, all else may not */
  readonly kind: string;
  /** SI */
  readonly value: number;
  /** undefined: taken as exact */
  readonly spread?: SpreadRange;
  /** for messages: factor from SI to the unit of a bare number in the file, and that unit */
  readonly perSI?: number;
  readonly unit?: string;
}

/** Beyond this many standard deviations there are no samples, so that no impossible frame appears. */
const CUT = 3;
/** Share of the normal distribution below -CUT. */
const BELOW_CUT = 0.00134989803163009;

/**
 * The value of an input that a share `u` of frames lie below, SI.
 *
 * A normal distribution, of the value or of its logarithm, in two pieces: the nominal value is the
 * median, and either side has its own standard deviation, the distance to that end of the spread over
 * 1.96. So the frame as written is the frame in the middle also where the spread is lopsided, such as
 * a joint of 12.8 in 5.3 to 28, and either end cuts off its 2.5 %. Cut at 3 standard deviations and
 * brought back to a whole: 95.3 % then lie within the ends, and none beyond 1.53 times as far.
 *
 * @param u 0 to 1
 * @throws InputError where `checkSpread` does, or for a `u` outside 0..1
 */
export function spreadValue(input: SpreadInput, u: number): number {
  if (!(u >= 0 && u <= 1)) {
    throw inputError(input.name, `A share must be from 0 to 1, but is ${u}.`);
  }
  checkSpread(input);
  const { value, spread } = input;
  if (spread === undefined) return value;
  const z = normalQuantile(BELOW_CUT + u * (1 - 2 * BELOW_CUT));
  return atSigmas(value, spread, z);
}

/** Whether an input varies at all. */
export function varies({ spread }: SpreadInput): boolean {
  return spread !== undefined && spread.to !== spread.from;
}

/**
 * @throws InputError when the spread does not hold the value, is not finite, is one of the logarithm
 *   and not above zero, or reaches below zero where no real value can
 */
export function checkSpread(input: SpreadInput): void {
  const { name, kind, value, spread } = input;
  if (spread === undefined) return;
  const { from, to, scale } = spread;
  const range = `${shown(from, input)} to ${shown(to, input)}`;
  if (![from, value, to].every(Number.isFinite) || !(from <= value && value <= to)) {
    throw inputError(
      name,
      `The spread must be two finite numbers with the value between them, but is ${range} about ${shown(value, input)}. Give one that holds the value, or a share such as "2 %" where the value is changed.`,
    );
  }
  if (scale === "log" && from <= 0) {
    throw inputError(
      name,
      `A spread of the logarithm must lie above 0, but is ${range}. Give a lower end above 0.`,
    );
  }
  const least = atSigmas(value, spread, -CUT);
  if (kind !== "position" && least < 0) {
    throw inputError(
      name,
      `The spread ${range} about ${shown(value, input)} makes some frames in a thousand as low as ${shown(least, input)}, below 0, which cannot be. Give a narrower spread.`,
    );
  }
}

function shown(value: number, { perSI = 1, unit = "" }: SpreadInput): string {
  return `${Number((value * perSI).toPrecision(3))} ${unit}`.trimEnd();
}

function atSigmas(value: number, { from, to, scale }: SpreadRange, z: number): number {
  const end = z < 0 ? from : to;
  const share = Math.abs(z) / SIGMAS_95;
  return scale === "even" ? value + share * (end - value) : value * (end / value) ** share;
}
