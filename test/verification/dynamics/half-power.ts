/** Peaks and half-power points found by sweeping our own response, as one reads them off a plot. */

import { harmonics } from "../../../src/response/harmonic.ts";
import { readSensor, shake } from "../../response/pipeline.ts";
import { type Check, type Family, within } from "../case.ts";
import { TEN_HERTZ } from "./block.ts";
import { undampedBlock } from "./oscillator.ts";

const G = 9.80665;

/** k X/F of the block at any r and loss factor; the modes are found once. */
function blockResponse(): (r: number, lossFactor: number) => number {
  const { file, forcePerSpeedSquared } = undampedBlock(TEN_HERTZ);
  const { mesh, model, solved, residuals, excitation, sensors } = shake(file, { modes: 3 });
  const omegaN = Math.sqrt(TEN_HERTZ.k / TEN_HERTZ.m);
  return (r, lossFactor) => {
    const omega = r * omegaN;
    const described = solved.modes.described.map((m) => ({ ...m, lossFactor }));
    const grid = Float64Array.of(omega);
    const h = harmonics(
      mesh,
      { ...solved.modes, described },
      solved.rigidShapes,
      model.rotors,
      residuals,
      { ...excitation, grid, weights: Float64Array.of(1) },
    );
    const { accelPower } = readSensor(h, sensors[0]);
    const X = (Math.sqrt(2 * accelPower[0][0]) * G) / omega ** 2;
    return (TEN_HERTZ.k * X) / (forcePerSpeedSquared * omega ** 2);
  };
}

interface Peak {
  readonly r1: number;
  readonly r2: number;
  readonly height: number;
  readonly at: number;
}

/** The largest value between 0.8 and 1.2 and the points 3 dB (a factor of sqrt 2) below it. */
function sweep(response: (r: number) => number): Peak {
  const at = highest(response, 0.8, 1.2);
  const height = response(at);
  const level = height / Math.SQRT2;
  const r1 = crossing((r) => response(r) - level, 0.5, at);
  const r2 = crossing((r) => level - response(r), at, 1.5);
  return { r1, r2, height, at };
}

/** The maximum of a function with one peak, by golden section. */
function highest(f: (x: number) => number, low: number, high: number): number {
  const share = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  while (b - a > 1e-9) {
    const [c, d] = [b - share * (b - a), a + share * (b - a)];
    if (f(c) > f(d)) b = d;
    else a = c;
  }
  return (a + b) / 2;
}

/** Where a rising function passes zero, by bisection. */
function crossing(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  while (b - a > 1e-13) {
    const middle = (a + b) / 2;
    if (f(middle) < 0) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

const QUANTITIES = ["r1", "r2", "peak", "r at the peak", "(r2 - r1)/2"] as const;

const valuesOf = ({ r1, r2, height, at }: Peak) => [r1, r2, height, at, (r2 - r1) / 2];

/** zeta, then the quantities in their order. */
type Row = readonly [zeta: number, r1: string, r2: string, peak: string, at: string, half: string];

// biome-ignore format: one damping ratio, one row
const VISCOUS: readonly Row[] = [
  [0.005, "0.9949623737", "1.0049626237", "100.00125002", "0.9999749997", "0.0050001250"],
  [0.01, "0.9898489784", "1.0098509791", "50.00250019", "0.9998999950", "0.0100010004"],
  [0.02, "0.9793916483", "1.0194076708", "25.00500150", "0.9995999200", "0.0200080112"],
  [0.05, "0.9461105000", "1.0463627104", "10.01252349", "0.9974968672", "0.0501261052"],
  [0.1, "0.8837434654", "1.0858165073", "5.02518908", "0.9899494937", "0.1010365209"],
];

/** sqrt(1 - 2 zeta), sqrt(1 + 2 zeta), 1/(2 zeta), 1 and half the difference of the first two. */
// biome-ignore format: one damping ratio, one row
const STRUCTURAL: readonly Row[] = [
  [0.005, "0.9949874371", "1.0049875621", "100.00000000", "1.0000000000", "0.0050000625"],
  [0.01, "0.9899494937", "1.0099504938", "50.00000000", "1.0000000000", "0.0100005001"],
  [0.02, "0.9797958971", "1.0198039027", "25.00000000", "1.0000000000", "0.0200040028"],
  [0.05, "0.9486832981", "1.0488088482", "10.00000000", "1.0000000000", "0.0500627751"],
  [0.1, "0.8944271910", "1.0954451150", "5.00000000", "1.0000000000", "0.1005089620"],
];

function checksOf(rows: readonly Row[]): Check[] {
  return rows.flatMap(([zeta, ...values]) =>
    QUANTITIES.map((quantity, i) => ({
      quantity: `zeta ${zeta}, ${quantity}`,
      unit: "",
      reference: values[i],
      tolerance: within(5e-8),
    })),
  );
}

/** @param lossFactor at the frequency ratio r for a damping ratio */
function solve(rows: readonly Row[], lossFactor: (zeta: number, r: number) => number): number[] {
  const response = blockResponse();
  return rows.flatMap(([zeta]) => valuesOf(sweep((r) => response(r, lossFactor(zeta, r)))));
}

const SWEPT =
  "A block of 1 kg on a spring, 10 Hz, shaken along x at any frequency; the peak of k X/F and the " +
  "points 3 dB below it are searched for in the readings.";
const WHY =
  "Rounding in a block a million times stiffer than its spring moves the natural frequency by 1.3e-8.";

export const HALF_POWER: Family = {
  title: "Half-power bandwidth",
  source: "closed form",
  cases: [
    {
      name: "Half-power points, viscous damping",
      source:
        "Roots of H^2 = peak^2/2 in closed form, to ten decimals. The bandwidth over-estimates the damping ratio, by 0.0025 % to 1.04 %.",
      model: `${SWEPT} At each r the loss factor is 2 zeta r, which is a viscous damper.`,
      why: WHY,
      checks: checksOf(VISCOUS),
      solve: () => solve(VISCOUS, (zeta, r) => 2 * zeta * r),
    },
    {
      name: "Half-power points, constant loss factor",
      source:
        "The program's own damping: r = sqrt(1 -+ eta) about a peak of 1/eta at r = 1, eta = 2 zeta; from H = 1/sqrt((1 - r^2)^2 + eta^2).",
      model: `${SWEPT} The loss factor is 2 zeta at every r.`,
      why: WHY,
      checks: checksOf(STRUCTURAL),
      solve: () => solve(STRUCTURAL, (zeta) => 2 * zeta),
    },
  ],
};
