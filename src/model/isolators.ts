/** Soft mounts of the stack: the kinds known by name, and what a frame file means by its own. */

import type { IsolatorKind, IsolatorsDef } from "../frame/types-stack.ts";
import {
  commonPractice,
  derived,
  type Fact,
  fromMemory,
  published,
} from "../material/library-facts.ts";
import { PLAIN_STACK } from "./plain-stack.ts";
import type { Isolators } from "./types.ts";
import type { Workbench } from "./workbench.ts";

/** A figure that differs from maker to maker. */
export interface Band {
  readonly low: number;
  readonly usual: number;
  readonly high: number;
}

export interface IsolatorPreset {
  /** of one mount along its screw, dynamic, N/m */
  readonly axial: Band;
  /** stiffness across the screw as a share of axial */
  readonly lateralShare: number;
  readonly lossFactor: Band;
  readonly facts: readonly Fact[];
  /** what is wrong with mounts of this kind, and what to do */
  readonly warning?: string;
}

const HALF = { lateralShare: 0.5 };
const HALF_FACT = commonPractice(
  ["lateralShare"],
  "rubber is softer in shear than in compression; a body then sways at 0.7 of its bounce",
);
const SILICONE_LOSS = { low: 0.1, usual: 0.2, high: 0.3 };
const SILICONE_LOSS_FACTS = [
  fromMemory(["lossFactor"], "0.1 to 0.3 for plain silicone"),
  published(
    ["lossFactor"],
    '0.1 to 1.0 for silicone rubbers of all kinds, "Optimization of Acoustic Properties and Vibration/Damping Applications of Silicone Rubber Materials", web article',
  ),
];
const SOFT = { axial: { low: 200, usual: 450, high: 1000 } };
const SOFT_FACT = commonPractice(["axial"], "0.2 to 1 kN/m; usual: the geometric mean");

/** "usual" stiffnesses are the geometric means of low and high, rounded. */
export const ISOLATOR_PRESETS: Readonly<Record<IsolatorKind, IsolatorPreset>> = {
  "silicone grommets": {
    axial: { low: 2e3, usual: 6e3, high: 20e3 },
    ...HALF,
    lossFactor: SILICONE_LOSS,
    facts: [
      commonPractice(["axial"], "2 to 20 kN/m on M3 screws; usual: the geometric mean"),
      HALF_FACT,
      ...SILICONE_LOSS_FACTS,
    ],
  },
  "soft gel pads": {
    ...SOFT,
    ...HALF,
    lossFactor: { low: 0.1, usual: 0.3, high: 1 },
    facts: [
      SOFT_FACT,
      HALF_FACT,
      fromMemory(["lossFactor"], "from plain silicone, 0.1, to damping elastomers, 1"),
    ],
  },
  "rubber rings": {
    ...SOFT,
    ...HALF,
    lossFactor: { low: 0.05, usual: 0.1, high: 0.15 },
    facts: [SOFT_FACT, HALF_FACT, fromMemory(["lossFactor"], "natural rubber, 0.05 to 0.15")],
  },
  "over-tightened grommets": {
    axial: { low: 6e3, usual: 33e3, high: 200e3 },
    ...HALF,
    lossFactor: SILICONE_LOSS,
    facts: [
      derived(
        ["axial"],
        "silicone grommets, 3 to 10 times as stiff (common practice, no source); usual: 5.5 times",
      ),
      HALF_FACT,
      ...SILICONE_LOSS_FACTS,
    ],
    warning:
      "squeezed grommets are 3 to 10 times as stiff and isolate little; loosen the screws until the rubber is just held",
  },
};

/**
 * The mounts a file means; undefined for a stack that is screwed down.
 *
 * @param z height of the face they bear on, m
 * @param level which end of the band of a kind known by name
 */
export function resolveIsolators(
  def: IsolatorsDef | undefined,
  z: number,
  level: keyof Band = "usual",
): Isolators | undefined {
  if (def === undefined || def === "none") return undefined;
  if (typeof def !== "string") {
    return { name: `mounts of ${kNperM(def.axial)} each`, ...def, z };
  }
  const { axial, lateralShare, lossFactor } = ISOLATOR_PRESETS[def];
  return {
    name: def,
    axial: axial[level],
    lateral: lateralShare * axial[level],
    lossFactor: lossFactor[level],
    z,
  };
}

/**
 * The same mounts with their loss factor times the file's damping factor. For candidates alone: in the mesh
 * parts keep their own loss factors, and modes take the factor as a whole (`modes/describe.ts`).
 */
export function damped(isolators: Isolators | undefined, factor: number): Isolators | undefined {
  return isolators && { ...isolators, lossFactor: factor * isolators.lossFactor };
}

/** Standard gravity, m/s^2. */
const GRAVITY = 9.80665;
/** Mounts under one stack: the pattern has four holes. */
const MOUNTS = 4;
/**
 * No mount is let down further than this by the stack's weight, m: flanges of grommets and pads are 1 to
 * 3 mm thick (common practice, no source). It goes with a bounce of sqrt(g / sag) / 2 pi = 9 Hz.
 */
const MOST_SAG = 3e-3;

/**
 * How far a mass lets its equal mounts down, m g / (n k), m. Static stiffness of rubber is 1.2 to 2 times
 * below the dynamic one (from memory); with k dynamic the true sag is more by that much.
 *
 * @param k of one mount, N/m
 */
export function staticSag(mass: number, k: number, mounts: number): number {
  return (mass * GRAVITY) / (mounts * k);
}

/** Findings about mounts that cannot carry the stack, and a word about those that should not be. */
export function checkIsolators({ file, findings, warnings }: Workbench): void {
  const { mass } = file.stack ?? PLAIN_STACK;
  const users = [
    { path: "stack", def: file.stack?.isolators },
    ...Object.entries(file.candidates).map(([name, { isolators }]) => ({
      path: `candidates.${name}`,
      def: isolators,
    })),
  ];
  for (const { path, def } of users) {
    const fault = sagFault(def, mass);
    if (fault) findings.push({ path: `${path}.isolators${fault.key}`, message: fault.message });
    const warning = typeof def === "string" && def !== "none" && ISOLATOR_PRESETS[def].warning;
    if (warning) warnings.push(`${path}.isolators: ${warning}`);
  }
}

function sagFault(def: IsolatorsDef | undefined, mass: number) {
  const mounts = resolveIsolators(def, 0);
  if (!mounts) return undefined;
  // mounts may be half as stiff across as along, so a craft on its side may sag twice as far
  const [down, aside] = [mounts.axial, mounts.lateral].map((k) => staticSag(mass, k, MOUNTS));
  const sideways = down <= MOST_SAG && aside > 2 * MOST_SAG;
  if (down <= MOST_SAG && !sideways) return undefined;
  const [key, sag, most] = sideways
    ? (["lateral", aside, 2 * MOST_SAG] as const)
    : (["axial", down, MOST_SAG] as const);
  const posture = sideways ? " when the craft lies on its side" : "";
  const least = (mass * GRAVITY) / (MOUNTS * most);
  return {
    key: typeof def === "string" ? "" : `.${key}`,
    message: `the stack of ${Number((mass * 1e3).toPrecision(3))} g would sag ${(sag * 1e3).toPrecision(2)} mm on ${MOUNTS} mounts of ${kNperM(mounts[key])}${posture}, and ${most * 1e3} mm is the most that is let pass; give at least ${kNperM(least, Math.ceil)} each`,
  };
}

/** "8 kN/m", with two digits. */
function kNperM(k: number, round: (v: number) => number = Math.round): string {
  const unit = 10 ** (Math.floor(Math.log10(k)) - 1);
  return `${Number(((round(k / unit) * unit) / 1e3).toPrecision(2))} kN/m`;
}
