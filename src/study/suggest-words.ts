/** Suggestions in words. */

import { decibelsOf, gramsOf, hertzOf } from "./figures.ts";
import type { Suggestion } from "./suggest-types.ts";

/** Changes below these are not worth a word: kg, dB, share of a frequency. Common practice, no source. */
const LEAST = { mass: 5e-5, accel: 0.5, mode: 0.005 };

/**
 * "Arms 5.5 mm thick instead of 5 mm: 6 g more, the gyro noise at "sandwich centre" falls by 1.1 dB, mode 13
 * (arms flap) rises from 122 to 133 Hz (solved anew)."
 */
export function suggestionWords(
  { words, mass, gyro, accel, mode }: Omit<Suggestion, "text">,
  spot: string,
): string {
  const weight =
    Math.abs(mass) < LEAST.mass
      ? "no heavier"
      : `${gramsOf(Math.abs(mass))} ${mass > 0 ? "more" : "less"}`;
  const noise = `the gyro noise at "${spot}" falls by ${decibelsOf(-gyro)}`;
  const shaken =
    Math.abs(accel) < LEAST.accel
      ? []
      : [`the accelerometer's ${accel > 0 ? "rises" : "falls"} by ${decibelsOf(Math.abs(accel))}`];
  const text = [weight, noise, ...shaken, modeWords(mode)].join(", ");
  return `${words}: ${text} (solved anew).`;
}

function modeWords(mode: Suggestion["mode"]): string {
  if (!mode || Math.abs(mode.to / mode.from - 1) < LEAST.mode) {
    return "no mode moves by more than 0.5 %";
  }
  const { number, name, from, to } = mode;
  const verb = to > from ? "rises" : "falls";
  const which = name === `mode ${number}` ? name : `mode ${number} (${name})`;
  const [before, after] = [hertzOf(from), hertzOf(to)];
  return `${which} ${verb} from ${before.replace(" Hz", "")} to ${after}`;
}

/** @param spot absent where none can be improved */
export function noneWords(spot: string | undefined, tried: number): string {
  if (spot === undefined) {
    return "There is no spot to improve: none is named, or a flag rules every one of them out.";
  }
  return `None of ${tried} changes that a builder could make takes 0.3 dB or more off the gyro noise at "${spot}".`;
}
