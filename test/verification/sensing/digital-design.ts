/** How digital filters are ordered and how near they come to the analogue ones. */

import {
  lowPassBiquad,
  notchBiquad,
  qOfBandwidth,
  smootherBiquad,
} from "../../../src/filter/biquad.ts";
import { biquadResponse, dcGroupDelay } from "../../../src/filter/biquad-response.ts";
import { notch, secondOrderLowPass } from "../../../src/filter/lag.ts";
import { type Case, within, withinAbsolute } from "../case.ts";
import { digits, NOTE, WHY_DIGITS } from "./response-checks.ts";

/** k, and (1 - k)/k in samples */
const SMOOTHING: readonly (readonly [number, string])[] = [
  [0.05, "19"],
  [0.1, "9"],
  [0.25, "3"],
  [0.5, "1"],
  [0.8, "0.25"],
];

export const SMOOTHER: Case = {
  name: "One-pole smoother: delay of slow signals",
  source: "Closed form: (1 - k)/k samples, from H(z) = k/(1 - (1 - k)/z).",
  model: "y += k (x - y) for five values of k, as a biquad whose other coefficients are zero.",
  why: "The formula is exact; what is left is rounding.",
  checks: SMOOTHING.map(([k, reference]) => ({
    quantity: `group delay at 0 Hz, k = ${k}`,
    unit: "samples",
    reference,
    tolerance: within(5e-15),
  })),
  solve: () => SMOOTHING.map(([k]) => dcGroupDelay(smootherBiquad(k, 1))),
};

export const BANDWIDTH: Case = {
  name: "Q of a notch from its width in octaves",
  source: `${NOTE}; 1/Q = 2 sinh((ln 2/2) BW w0/sin w0) in 30-digit arithmetic.`,
  model: "Widths of one octave and of a third at fs/12, fs/6 and fs/4.",
  why: WHY_DIGITS,
  checks: [
    digits("1 octave at fs/12", "", "1.347886432093"),
    digits("1 octave at fs/6", "", "1.158878684738"),
    digits("1 octave at fs/4", "", "0.8746028356052"),
    digits("1/3 octave at fs/12", "", "4.122952618453"),
    digits("1/3 octave at fs/6", "", "3.567683015013"),
    digits("1/3 octave at fs/4", "", "2.740280335121"),
  ],
  solve: () => [1, 1 / 3].flatMap((BW) => [12, 6, 4].map((part) => qOfBandwidth(BW, 1, part))),
};

const PROTOTYPE = { f0: 100, Q: 0.8 };

/** Order of the error of gain, phase and group delay at 60 Hz when the sampling rate is doubled. */
function orders(digital: typeof lowPassBiquad, analogue: typeof notch): number[] {
  const exact = analogue(PROTOTYPE, 60);
  const errors = [16000, 32000].map((fs) => {
    const ours = biquadResponse(digital({ ...PROTOTYPE, fs }), 60);
    return [ours.gain - exact.gain, ours.phase - exact.phase, ours.groupDelay - exact.groupDelay];
  });
  return errors[0].map((error, i) => Math.log2(error / errors[1][i]));
}

export const CONVERGENCE: Case = {
  name: "Digital filters tend to the analogue ones",
  source: "The bilinear transform is the trapezoidal rule, of second order in the time step.",
  model:
    "Filters of f0 = 100 Hz, Q = 0.8 at 16 and 32 thousand samples a second: order of the error at 60 Hz.",
  why: "The next term of the error, of fourth order, at these rates.",
  checks: ["low-pass", "notch"].flatMap((kind) =>
    ["gain", "phase", "group delay"].map((quantity) => ({
      quantity: `${kind}, order of the ${quantity}`,
      unit: "",
      reference: "2",
      tolerance: withinAbsolute(2e-3),
    })),
  ),
  solve: () => [...orders(lowPassBiquad, secondOrderLowPass), ...orders(notchBiquad, notch)],
};
