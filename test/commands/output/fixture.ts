/** A small analysis written by hand, with names as hostile as a file could hold. Invented numbers. */

import type { ToldAnalysis } from "../../../src/commands/output/modes-text.ts";
import type { Excitation } from "../../../src/excitation/types.ts";
import type { ModeDescription, Modes } from "../../../src/modes/types.ts";

export const HOSTILE = "\u001b[2J\u202eמאוד 前腕 very long name of a part \u{1f681}";

export const RPM = Math.PI / 30;

function mode(number: number, frequency: number, name: string): ModeDescription {
  return {
    number,
    frequency,
    name,
    symmetry: "",
    shares: [
      { part: HOSTILE, kind: "arm", strain: 0.6, kinetic: 0.1 },
      { part: "top", kind: "plate", strain: 0.38, kinetic: 0.1 },
      { part: "post", kind: "standoff", strain: 0.02, kinetic: 0.1 },
    ],
    motion: {
      armFlat: 0.6,
      armEdge: 0,
      armTorsion: 0,
      plateBending: 0.38,
      plateInPlane: 0,
      standoff: 0.02,
      member: 0,
      joint: 0,
      softMount: 0,
      other: 0,
    },
    lossFactor: 0.03,
    damping: 0.015,
    shearEffect: 0,
  };
}

const modes: Modes = {
  lambda: Float64Array.of(1, 2),
  phi: new Float64Array(0),
  rigid: Array.from({ length: 6 }, () => new Float64Array(0)),
  shapes: [],
  described: [mode(1, 131.4, "arms flap, all together"), mode(2, 1234.5, `"${HOSTILE}" bends`)],
  evidence: {
    maxResidual: 3.2e-10,
    orthogonality: 1e-13,
    operatorCalls: 90,
    factorisations: 2,
    counted: 8,
    found: 8,
    checkFrequency: 1250,
    unknowns: 4321,
    factorEntries: 1e6,
  },
};

export const excitation: Excitation = {
  speeds: {
    low: 8000 * RPM,
    hover: 10843 * RPM,
    full: 29600 * RPM,
    hoverThrust: 1.8,
    fullThrust: 13.4,
    thrustFactor: 1.4e-6,
    thrustToWeight: 7.42,
    notes: ["hover speed: from weight"],
    warnings: [],
  },
  orders: [
    { name: "unbalance", order: 1, kind: "side force", coefficient: 1e-7, source: "a standard" },
    { name: "torque ripple", order: 3, kind: "torque", coefficient: 1e-9, source: "" },
  ],
  mixName: "mostly hover",
  mix: [{ name: "around hover", speed: 10843 * RPM, spread: 800 * RPM, share: 1 }],
  grid: Float64Array.of(8000 * RPM, 10000 * RPM, 29600 * RPM),
  weights: Float64Array.of(0.2, 0.5, 0.3),
  nominalWeights: Float64Array.of(0.2, 0.5, 0.3),
  motorSpread: 0.03,
  cases: [],
  bladePass: 3,
  warnings: [],
};

export const analysis: ToldAnalysis = {
  model: { name: HOSTILE, arms: [], standoffs: [] },
  modes,
  mass: {
    mass: 0.6123,
    cg: [-0.00001, 0, 0.0243],
    inertia: { xx: 0.00158, yy: 0.0019, zz: 0.00284, xy: 0, xz: 0, yz: 0 },
    parts: [{ name: HOSTILE, kind: "plate", mass: 0.6123, cg: [0, 0, 0.0243] }],
  },
  warnings: [`shear in "${HOSTILE}" would matter`],
};
