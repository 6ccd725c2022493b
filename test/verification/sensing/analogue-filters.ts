/** Analogue lags, low-passes and notches: gain, phase and delays in closed form. */

import type { FrequencyResponse } from "../../../src/filter/frequency-response.ts";
import { phaseDelay } from "../../../src/filter/frequency-response.ts";
import { firstOrderLag, notch, secondOrderLowPass } from "../../../src/filter/lag.ts";
import type { Case, Family } from "../case.ts";
import {
  digits,
  inDegrees,
  type ResponseRow,
  responseChecks,
  responses,
  WHY_DIGITS,
} from "./response-checks.ts";

const SOURCE =
  "The transfer function in 30-digit arithmetic, group delay as the derivative of its phase";

interface Sample {
  readonly name: string;
  readonly at: (f: number) => FrequencyResponse;
  /** at f = 0, ms */
  readonly delay: string;
  readonly rows: readonly ResponseRow[];
}

const SAMPLES: readonly Sample[] = [
  {
    name: "Notch at 200 Hz, Q 3, analogue",
    at: (f) => notch({ f0: 200, Q: 3 }, f),
    delay: "0.2652582385",
    // Hz, gain, deg, ms
    rows: [
      ["10", "0.9998604433", "-0.95723389", "0.26718140"],
      ["20", "0.9994336459", "-1.92842231", "0.27304096"],
      ["50", "0.9960726407", "-5.07960786", "0.31815393"],
      ["100", "0.9761870602", "-12.52880771", "0.56172333"],
      ["150", "0.8682431421", "-29.74488130", "1.63235839"],
      ["190", "0.2942625781", "-72.88667640", "4.59678706"],
      ["250", "0.8035571933", "36.52885537", "1.38714317"],
      ["400", "0.9761870602", "12.52880771", "0.14043083"],
    ],
  },
  {
    name: "Notch at 150 Hz, Q 5, analogue",
    at: (f) => notch({ f0: 150, Q: 5 }, f),
    delay: "0.2122065908",
    // Hz, gain, deg, ms
    rows: [
      ["10", "0.9999103278", "-0.76730832", "0.21501853"],
      ["20", "0.9996316608", "-1.55515951", "0.22370327"],
      ["50", "0.9971993099", "-4.28915333", "0.29674632"],
      ["100", "0.9723873020", "-13.49573328", "0.93903824"],
      ["140", "0.5681907171", "-55.37584492", "7.71641816"],
      ["200", "0.9459459459", "18.92464442", "0.87192262"],
    ],
  },
  {
    name: "Low-pass at 100 Hz, Q 1/sqrt(2), analogue",
    at: (f) => secondOrderLowPass({ f0: 100, Q: Math.SQRT1_2 }, f),
    delay: "2.2507907904",
    // Hz, gain, deg, ms
    rows: [
      ["1", "0.9999999950", "-0.81031169", "2.25101585"],
      ["10", "0.9999500037", "-8.12969313", "2.27307139"],
      ["20", "0.9992009587", "-16.41644037", "2.33708309"],
      ["50", "0.9701425001", "-43.31385666", "2.64798917"],
      ["100", "0.7071067812", "-90.00000000", "2.25079079"],
      ["200", "0.2425356250", "-136.68614334", "0.66199729"],
      ["400", "0.0623782862", "-159.33735600", "0.14888499"],
    ],
  },
  {
    name: "Low-pass at 250 Hz, Q 0.5, analogue",
    at: (f) => secondOrderLowPass({ f0: 250, Q: 0.5 }, f),
    delay: "1.2732395447",
    // Hz, gain, deg, ms
    rows: [
      ["1", "0.9999840003", "-0.45836379", "1.27321917"],
      ["20", "0.9936406995", "-9.14784252", "1.26514263"],
      ["50", "0.9615384615", "-22.61986495", "1.22426879"],
      ["100", "0.8620689655", "-43.60281897", "1.09762030"],
      ["250", "0.5000000000", "-90.00000000", "0.63661977"],
      ["500", "0.2000000000", "-126.86989765", "0.25464791"],
    ],
  },
];

function response({ name, at, delay, rows }: Sample): Case {
  return {
    name,
    source: `${SOURCE}; at 0 Hz 1/(2 pi f0 Q).`,
    model: "Closed forms of gain, phase and group delay in u = f/f0.",
    why: WHY_DIGITS,
    checks: [digits("group delay at 0 Hz", "ms", delay), ...responseChecks(rows)],
    solve: () => [at(0).groupDelay * 1e3, ...responses(rows, at)],
  };
}

/** fc and f (Hz), gain, phase (deg), group delay and phase delay (ms) */
const LAGS: readonly (readonly [string, string, string, string, string, string])[] = [
  ["100", "10", "0.9950371902", "-5.71059314", "1.57579152", "1.58627587"],
  ["100", "20", "0.9805806757", "-11.30993247", "1.53033599", "1.57082395"],
  ["100", "50", "0.8944271910", "-26.56505118", "1.27323954", "1.47583618"],
  ["100", "100", "0.7071067812", "-45.00000000", "0.79577472", "1.25000000"],
  ["250", "20", "0.9968152785", "-4.57392126", "0.63257132", "0.63526684"],
  ["80", "30", "0.9363291776", "-20.55604522", "1.74416376", "1.90333752"],
];

const lag: Case = {
  name: "First-order lag, analogue",
  source: `${SOURCE}; H = 1/(1 + i f/fc).`,
  model: "Closed forms of gain, phase, group delay and phase delay at six pairs of fc and f.",
  why: WHY_DIGITS,
  checks: LAGS.flatMap(([fc, f, gain, phase, delay, late]) => {
    const where = `fc ${fc} Hz, f ${f} Hz`;
    return [
      digits(`gain, ${where}`, "", gain),
      digits(`phase, ${where}`, "deg", phase),
      digits(`group delay, ${where}`, "ms", delay),
      digits(`phase delay, ${where}`, "ms", late),
    ];
  }),
  solve: () =>
    LAGS.flatMap(([fc, f]) => {
      const at = firstOrderLag(Number(fc), Number(f));
      const late = phaseDelay(at, Number(f));
      return [at.gain, inDegrees(at.phase), at.groupDelay * 1e3, late * 1e3];
    }),
};

export const ANALOGUE_FILTERS: Family = {
  title: "Analogue lags and notches",
  source: "closed form",
  cases: [...SAMPLES.map(response), lag],
};
