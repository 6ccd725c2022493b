/** Second-order digital filters: coefficients and response. */

import { type Biquad, lowPassBiquad, notchBiquad } from "../../../src/filter/biquad.ts";
import { biquadResponse } from "../../../src/filter/biquad-response.ts";
import type { Case, Family } from "../case.ts";
import { BANDWIDTH, CONVERGENCE, SMOOTHER } from "./digital-design.ts";
import {
  digits,
  NOTE,
  type ResponseRow,
  responseChecks,
  responses,
  WHY_DIGITS,
} from "./response-checks.ts";

interface Sample {
  readonly name: string;
  readonly filter: Biquad;
  /** b0 b1 b2 a1 a2 */
  readonly coefficients: readonly string[];
  /** at f = 0, ms */
  readonly delay: string;
  readonly rows: readonly ResponseRow[];
}

const SAMPLES: readonly Sample[] = [
  {
    name: "Notch at 200 Hz, Q 3, at 4000 samples a second",
    filter: notchBiquad({ f0: 200, Q: 3, fs: 4000 }),
    coefficients: [
      "0.951019787290086",
      "-1.808947131655734",
      "0.951019787290086",
      "-1.808947131655734",
      "0.902039574580172",
    ],
    delay: "0.2630729798",
    // Hz, gain, deg, ms
    rows: [
      ["10", "0.9998627383", "-0.94933001", "0.26496531"],
      ["20", "0.9994430223", "-1.91239096", "0.27073105"],
      ["50", "0.9961406388", "-5.03541321", "0.31512964"],
      ["100", "0.9766566802", "-12.40416122", "0.55512025"],
      ["150", "0.8709758176", "-29.42776545", "1.61740295"],
      ["190", "0.2985061829", "-72.63209692", "4.65309036"],
      ["250", "0.8095259641", "35.95035735", "1.38620756"],
      ["400", "0.9780337863", "12.03132441", "0.14076037"],
    ],
  },
  {
    name: "Notch at 150 Hz, Q 5, at 8000 samples a second",
    filter: notchBiquad({ f0: 150, Q: 5, fs: 8000 }),
    coefficients: [
      "0.988382805732216",
      "-1.963063575538545",
      "0.988382805732216",
      "-1.963063575538545",
      "0.976765611464432",
    ],
    delay: "0.2119610971",
    // Hz, gain, deg, ms
    rows: [
      ["10", "0.9999105360", "-0.76641681", "0.21476659"],
      ["20", "0.9996325272", "-1.55332938", "0.22343141"],
      ["50", "0.9972064737", "-4.28366171", "0.29630831"],
      ["100", "0.9724756821", "-13.47401778", "0.93726970"],
      ["140", "0.5690237656", "-55.31782202", "7.72125138"],
      ["200", "0.9462649984", "18.86819887", "0.87071370"],
    ],
  },
  {
    name: "Low-pass at 100 Hz, Q 1/sqrt(2), at 4000 samples a second",
    filter: lowPassBiquad({ f0: 100, Q: Math.SQRT1_2, fs: 4000 }),
    coefficients: [
      "0.005542717210281",
      "0.011085434420561",
      "0.005542717210281",
      "-1.778631777824585",
      "0.800802646665708",
    ],
    delay: "2.2461608830",
    // Hz, gain, deg, ms
    rows: [
      ["1", "0.9999999950", "-0.80864493", "2.24638594"],
      ["10", "0.9999504097", "-8.11302871", "2.26844604"],
      ["20", "0.9992072448", "-16.38321058", "2.33252653"],
      ["50", "0.9703183311", "-43.24028681", "2.64594741"],
      ["100", "0.7071067812", "-90.00000000", "2.26007351"],
      ["200", "0.2397135445", "-136.98121967", "0.66815758"],
      ["400", "0.0585693023", "-160.00358893", "0.15371374"],
    ],
  },
  {
    name: "Low-pass at 250 Hz, Q 0.5, at 8000 samples a second",
    filter: lowPassBiquad({ f0: 250, Q: 0.5, fs: 8000 }),
    coefficients: [
      "0.008039024014668",
      "0.016078048029336",
      "0.008039024014668",
      "-1.641357581657321",
      "0.673513677715992",
    ],
    delay: "1.2691462985",
    // Hz, gain, deg, ms
    rows: [
      ["1", "0.9999841030", "-0.45689027", "1.26912632"],
      ["20", "0.9936810058", "-9.11874467", "1.26120437"],
      ["50", "0.9617664703", "-22.55183553", "1.22109306"],
      ["100", "0.8627111729", "-43.49600663", "1.09659691"],
      ["250", "0.5000000000", "-90.00000000", "0.64072886"],
      ["500", "0.1968989035", "-127.31540049", "0.25978083"],
    ],
  },
];

const NAMES = ["b0", "b1", "b2", "a1", "a2"];

function coefficients({ name, filter, coefficients, delay }: Sample): Case {
  return {
    name: `${name}: coefficients`,
    source: `${NOTE}; its formulas evaluated in 30-digit arithmetic.`,
    model: "Coefficients divided by a0, and what they do to a constant.",
    why: WHY_DIGITS,
    checks: [
      ...coefficients.map((reference, i) => digits(NAMES[i], "", reference)),
      digits("gain at 0 Hz", "", "1.000000000000"),
      digits("group delay at 0 Hz", "ms", delay),
    ],
    solve: () => {
      const { gain, groupDelay } = biquadResponse(filter, 0);
      return [...filter.b, filter.a[1], filter.a[2], gain, groupDelay * 1e3];
    },
  };
}

function response({ name, filter, rows }: Sample): Case {
  return {
    name: `${name}: response`,
    source: `${NOTE}; H(z) on the unit circle in 30-digit arithmetic, group delay as the derivative of its phase.`,
    model: "Gain, phase and group delay of the coefficients above, by the sums over them.",
    why: WHY_DIGITS,
    checks: responseChecks(rows),
    solve: () => responses(rows, (f) => biquadResponse(filter, f)),
  };
}

export const DIGITAL_FILTERS: Family = {
  title: "Digital low-pass and notch filters",
  source: "W3C Note of 8 June 2021",
  cases: [
    ...SAMPLES.flatMap((sample) => [coefficients(sample), response(sample)]),
    SMOOTHER,
    BANDWIDTH,
    CONVERGENCE,
  ],
};
