/** Sensor chips: where lines show in their samples, and how much noise passes. */

import { foldedFrequency } from "../../../src/filter/fold.ts";
import { axisNoise, noiseBandwidth } from "../../../src/sensing/noise.ts";
import { ownPowerGain } from "../../../src/sensing/own-low-pass.ts";
import { type Case, type Family, within } from "../case.ts";
import { digits, WHY_DIGITS } from "./response-checks.ts";

const WHY_ROUNDING = "The formula is exact; what is left is rounding.";

/** f, fs and where it shows, Hz */
const FOLDED: readonly (readonly [number, number, string])[] = [
  [1130, 1000, "130"],
  [870, 1000, "130"],
  [2740, 2000, "740"],
  [27000, 8000, "3000"],
];

const folding: Case = {
  name: "Where lines show after sampling",
  source:
    "Sampling theorem: the one of the frequencies abs(f - k fs) within half the sampling rate.",
  model: "A blade-pass line at 1130 Hz and others above half the sampling rate; by hand.",
  why: WHY_ROUNDING,
  checks: FOLDED.map(([f, fs, reference]) => ({
    quantity: `${f} Hz sampled at ${fs} Hz`,
    unit: "Hz",
    reference,
    tolerance: within(1e-14),
  })),
  solve: () => FOLDED.map(([f, fs]) => foldedFrequency(f, fs)),
};

/** order and bandwidth over f0 */
const WIDTHS: readonly (readonly [number, string])[] = [
  [1, "1.5707963268"],
  [2, "1.1107207345"],
  [3, "1.0471975512"],
  [4, "1.0261721530"],
];

const noiseWidth: Case = {
  name: "Equivalent noise bandwidth of Butterworth low-passes",
  source: "Closed form: (pi/2n)/sin(pi/2n), from the integral of 1/(1 + u^2n) over all u.",
  model: "Orders 1 to 4, over the frequency at -3 dB.",
  why: WHY_DIGITS,
  checks: WIDTHS.map(([n, reference]) => digits(`order ${n}`, "", reference)),
  solve: () => WIDTHS.map(([n]) => noiseBandwidth(1, n)),
};

const published: Case = {
  name: "Noise of a gyro in 100 Hz, published",
  source:
    "Datasheet of a consumer 6-axis part: 0.0028 deg/s per sqrt(Hz), 0.028 deg/s rms in 100 Hz.",
  model: "Density times the square root of the bandwidth: one axis behind an ideal filter.",
  why: WHY_DIGITS,
  checks: [digits("one axis", "deg/s", "0.028")],
  solve: () => [axisNoise(0.0028, 100)],
};

const attenuation: Case = {
  name: "A chip's own low-pass at 500 Hz",
  source: "Closed form: power gain 1/(1 + (f/fb)^4).",
  model: "Second-order Butterworth; 26 kHz is within the drive frequencies of consumer gyros.",
  why: WHY_DIGITS,
  checks: [
    digits("100 Hz", "", "0.9984025559"),
    digits("500 Hz", "", "0.5000000000"),
    digits("1500 Hz", "", "0.0121951220"),
    digits("26000 Hz", "", "1.367686519e-7"),
  ],
  solve: () => [100, 500, 1500, 26000].map((f) => ownPowerGain(500, f)),
};

export const CHIPS: Family = {
  title: "Sampling and noise of sensor chips",
  source: "closed form, a datasheet",
  cases: [published, folding, noiseWidth, attenuation],
};
