/** What can be wrong with the input of the filter burden. */

import { negative, notPositive, throwIfAny } from "../check-number.ts";
import type { Finding } from "../errors.ts";
import type { BurdenSetup, Line } from "./burden-types.ts";
import { HIGHEST_SHARE } from "./low-pass.ts";
import { MOST_FOLLOWED } from "./notch-sets.ts";

/** Shares of the speed from which on spread and tracking error are no longer small. */
const LARGE = 0.5;

/** How far weights may be from summing to 1, and a line from its multiple of the speed. */
const ROUNDING = 1e-6;

/** @throws InputError with everything that is wrong */
export function checkBurdenSetup(setup: BurdenSetup): void {
  const { fs, speeds, weights, hover, controlBandwidth, rotors, motorSpread, notch } = setup;
  throwIfAny(
    notPositive("fs", "the sampling rate", fs, "Hz"),
    notPositive("hover", "the motor speed in hover", hover, "rev/s"),
    notPositive("controlBandwidth", "the control bandwidth", controlBandwidth, "Hz"),
    belowHighest(setup),
    notPositive("target", "the target", setup.target, "deg/s"),
    negative("noiseDensity", "the noise density", setup.noiseDensity, "deg/s per sqrt(Hz)"),
    whole("rotors", "the number of motors", rotors, 1, 100),
    small("motorSpread", "the spread of the motors' speeds", motorSpread),
    notPositive("notch.quality", "the quality factor", notch.quality, ""),
    small("notch.trackingError", "the notches' tracking error", notch.trackingError),
    notch.most === undefined
      ? []
      : whole("notch.most", "the number of multiples to follow", notch.most, 0, MOST_FOLLOWED),
    each("speeds", speeds, (v) => notPositive("", "the motor speed", v, "rev/s")),
    each("weights", weights, (v) => negative("", "the share of the flight", v, "")),
    speeds.length === 0
      ? [{ path: "speeds", message: "there must be at least one motor speed." }]
      : sized("weights", "shares of the flight", weights, speeds.length),
    sumOfOne(weights),
  );
}

/** @throws InputError with everything that is wrong, up to one value a line */
export function checkLines(setup: BurdenSetup, lines: readonly Line[]): void {
  throwIfAny(
    ...lines.flatMap(({ order, frequency, folded }, l) => {
      const path = `lines[${l}]`;
      return [
        notPositive(`${path}.order`, "the multiple of the motor speed", order, ""),
        sized(`${path}.frequency`, "frequencies", frequency, setup.speeds.length),
        folded ? sized(`${path}.folded`, "marks", folded, setup.speeds.length) : [],
        each(`${path}.frequency`, frequency, (f, i) =>
          folded?.[i] ? inBand(f, setup.fs) : onMultiple(f, order * setup.speeds[i], setup.fs),
        ),
      ];
    }),
  );
}

/** @param powers as in `filterBurden` @throws InputError with everything, up to one value a line */
export function checkPowers(
  { speeds }: BurdenSetup,
  lines: readonly Line[],
  powers: readonly Float64Array[],
): void {
  throwIfAny(
    sized("powers", "spectra, one for each line", powers, lines.length),
    ...powers.flatMap((power, l) => {
      const path = `powers[${l}]`;
      const what = `the mean square of ${lines[l]?.name ?? "a line"}`;
      // asked of every place: findings are made for none but the first wrong value
      const at = power.findIndex((value) => !(value >= 0 && value < Number.POSITIVE_INFINITY));
      return [
        sized(path, "mean squares", power, speeds.length),
        at < 0 ? [] : negative(`${path}[${at}]`, what, power[at], "(deg/s)^2"),
      ];
    }),
  );
}

function belowHighest({ fs, controlBandwidth }: BurdenSetup): Finding[] {
  const highest = HIGHEST_SHARE * fs;
  if (!(fs > 0) || !(controlBandwidth >= highest)) return [];
  const message = `the control bandwidth must lie below ${HIGHEST_SHARE} of the sampling rate, ${highest} Hz, but is ${controlBandwidth} Hz: no low-pass fits above it. Sample faster or give a lower control bandwidth.`;
  return [{ path: "controlBandwidth", message }];
}

function onMultiple(f: number, expected: number, fs: number): Finding[] {
  const outside = inBand(f, fs);
  if (outside.length > 0 || Math.abs(f - expected) <= ROUNDING * expected) return outside;
  const message = `the frequency must be order x speed, ${expected} Hz, where the line is not marked as folded, but is ${f} Hz: speeds are in rev/s.`;
  return [{ path: "", message }];
}

function inBand(f: number, fs: number): Finding[] {
  if (!(f > fs / 2)) return negative("", "the frequency", f, "Hz");
  const message = `the frequency must not lie above half the sampling rate, ${fs / 2} Hz, but is ${f} Hz: give the frequency it folds back to.`;
  return [{ path: "", message }];
}

function small(path: string, what: string, value: number): Finding[] {
  if (!(value >= LARGE)) return negative(path, what, value, "");
  return [{ path, message: `${what} must lie below ${LARGE} of the speed, but is ${value}.` }];
}

function whole(path: string, what: string, value: number, from: number, to: number): Finding[] {
  if (Number.isInteger(value) && value >= from && value <= to) return [];
  return [
    { path, message: `${what} must be a whole number from ${from} to ${to}, but is ${value}.` },
  ];
}

function sized(path: string, what: string, list: ArrayLike<unknown>, size: number): Finding[] {
  if (list.length === size) return [];
  return [{ path, message: `there must be ${size} ${what}, but there are ${list.length}.` }];
}

function sumOfOne(weights: Float64Array): Finding[] {
  const sum = weights.reduce((total, weight) => total + weight, 0);
  if (!Number.isFinite(sum) || Math.abs(sum - 1) <= ROUNDING) return [];
  return [
    { path: "weights", message: `the shares of the flight must sum to 1, but sum to ${sum}.` },
  ];
}

/** What is wrong with the first value that is wrong: of three hundred, one says it. */
function each(
  path: string,
  values: Float64Array,
  findings: (value: number, index: number) => Finding[],
): Finding[] {
  for (let i = 0; i < values.length; i++) {
    const found = findings(values[i], i);
    if (found.length > 0) return found.map((finding) => ({ ...finding, path: `${path}[${i}]` }));
  }
  return [];
}
