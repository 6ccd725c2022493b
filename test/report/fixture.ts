/**
 * A small made-up frame with names that try to break out of the page, and an analysis of it written
 * by hand: three smooth mode shapes, two orders, three places. Mesh and masses are the program's own.
 */

import type { Excitation } from "../../src/excitation/types.ts";
import { parseFrame } from "../../src/frame/read.ts";
import { massFromDrawing } from "../../src/matrices/mass.ts";
import { buildMesh } from "../../src/mesh/build.ts";
import type { Mesh } from "../../src/mesh/types.ts";
import { buildModel } from "../../src/model/build.ts";
import type { ModeDescription, Modes } from "../../src/modes/types.ts";
import type { Analysed, ReportInput } from "../../src/report/types.ts";
import { madeUpRanking } from "./fixture-ranking.ts";

/** Each would set the page's title to its own mark, or hide text, if it ever took effect. */
export const HOSTILE = {
  frame: "Trial </title><script>document.title='f'</script>",
  plate: "<img src=x onerror=document.title='p'>",
  material: "<svg onload=document.title='m'>",
  body: '" onmouseover="document.title=1" x="',
  best: "</script><b>bold</b>",
  second: "%{x} &lt;b&gt; <b>'`q</b>",
  third: "<!--<script>javascript:alert(3)",
} as const;

const FRAME = `{
  "version": 1,
  "name": ${JSON.stringify(HOSTILE.frame)},
  "notes": "made up for tests <style>main{display:none}</style>",
  "materials": { ${JSON.stringify(HOSTILE.material)}: {
    "kind": "measured", "E1": "60 GPa", "G12": "4.5 GPa", "nu12": 0.06, "density": "1.55 g/cm^3" } },
  "plates": { ${JSON.stringify(HOSTILE.plate)}: {
    "material": ${JSON.stringify(HOSTILE.material)}, "thickness": 2, "z": 3.5,
    "outline": [[50, 20], [40, 30], [-40, 30], [-90, 12]], "symmetry": "left and right",
    "holes": [{ "at": [20, 0], "diameter": 14 }] } },
  "arms": { "arm": {
    "material": ${JSON.stringify(HOSTILE.material)}, "thickness": 5, "root": [35, 25], "tip": [80, 80],
    "copies": "all four corners", "width": [17, 13],
    "joint": { "kind": "bolted", "plates": [${JSON.stringify(HOSTILE.plate)}], "inserted": 15 } } },
  "bodies": { ${JSON.stringify(HOSTILE.body)}: {
    "mass": 200, "at": [-5, 0, 25], "size": [70, 36, 34], "on": ${JSON.stringify(HOSTILE.plate)},
    "hold": "soft", "soft": { "bounce": "70 Hz" } } },
  "propulsion": {
    "motor": { "mass": 32, "cgHeight": 9, "kv": 1800 },
    "propeller": { "mass": 4, "diameter": "5 in", "blades": 3, "planeHeight": 20, "thrustCoefficient": 0.15 },
    "cells": 6 },
  "stack": { "mass": 24, "size": [36, 36, 15], "plate": ${JSON.stringify(HOSTILE.plate)}, "at": [0, 0],
    "height": 9, "holes": { "spacing": 30.5 } },
  "candidates": {
    ${JSON.stringify(HOSTILE.best)}: { "plate": ${JSON.stringify(HOSTILE.plate)}, "at": [0, 0] },
    ${JSON.stringify(HOSTILE.second)}: { "plate": ${JSON.stringify(HOSTILE.plate)}, "at": [0, 0], "side": "below" },
    ${JSON.stringify(HOSTILE.third)}: { "plate": ${JSON.stringify(HOSTILE.plate)}, "at": [-75, 0], "holes": { "spacing": 9 } } }
}`;

/** Hover 10 000 rpm, from 7 500 to 24 000. */
const RPM = Math.PI / 30;
const SPEEDS = { low: 7500 * RPM, hover: 10_000 * RPM, full: 24_000 * RPM };
const GRID = Float64Array.from({ length: 60 }, (_, i) => (7500 + (16_500 * i) / 59) * RPM);

const excitation: Excitation = {
  speeds: {
    ...SPEEDS,
    hoverThrust: 1.6,
    fullThrust: 9.2,
    thrustFactor: 1.4e-6,
    thrustToWeight: 5.8,
    notes: ["hover speed: by hand"],
    warnings: [],
  },
  orders: [
    { name: "unbalance", order: 1, kind: "side force", coefficient: 1.2e-7, source: "by hand" },
    { name: "blade pass", order: 3, kind: "thrust", coefficient: 4e-8, source: "by hand" },
    { name: "blade-pass torque", order: 3, kind: "torque", coefficient: 5e-10, source: "by hand" },
  ],
  mixName: "mostly hover",
  mix: [{ name: "around hover", speed: SPEEDS.hover, spread: 80, share: 1 }],
  grid: GRID,
  weights: GRID.map(() => 1 / 60),
  nominalWeights: GRID.map(() => 1 / 60),
  motorSpread: 0.03,
  cases: [],
  bladePass: 3,
  warnings: [],
};

/** Bending shapes w(x, y) with their slopes; x and y in metres. */
const SHAPES: readonly ((x: number, y: number) => readonly [w: number, wx: number, wy: number])[] =
  [
    (x, y) => [x * x + y * y - 0.004, 2 * x, 2 * y],
    (x, y) => [x * y, y, x],
    (x) => [x < -0.04 ? (x + 0.04) ** 2 : 0, x < -0.04 ? 2 * (x + 0.04) : 0, 0],
  ];

function described(): ModeDescription[] {
  const common = { lossFactor: 0.03, damping: 0.015, shearEffect: 0.001 };
  const still = {
    plateInPlane: 0,
    standoff: 0,
    member: 0,
    softMount: 0,
    other: 0,
    armEdge: 0,
    armTorsion: 0,
  };
  const arms = { ...still, armFlat: 0.7, joint: 0.2, plateBending: 0.1 };
  const plate = { ...still, armFlat: 0.1, joint: 0, plateBending: 0.9 };
  const armShare = { part: "front left arm", kind: "arm", strain: 0.3, kinetic: 0.2 };
  const plateShare = { part: HOSTILE.plate, kind: "plate", strain: 0.6, kinetic: 0.5 };
  return [
    {
      ...common,
      number: 1,
      frequency: 160,
      name: "arms flap, all together",
      symmetry: "symmetric left to right",
      shares: [armShare, { ...plateShare, strain: 0.1 }],
      motion: arms,
    },
    {
      ...common,
      number: 2,
      frequency: 230,
      name: `arms flap, diagonal pairs against each other; with "${HOSTILE.plate}" bending`,
      symmetry: "antisymmetric left to right",
      shares: [plateShare, armShare],
      motion: arms,
    },
    {
      ...common,
      number: 3,
      frequency: 450,
      name: `"${HOSTILE.plate}" bends`,
      symmetry: "",
      shares: [plateShare],
      motion: plate,
    },
  ];
}

function modesOf(mesh: Mesh): Modes {
  const nodes = mesh.xyz.length / 3;
  const shapes = SHAPES.map((shape) => {
    const out = new Float64Array(6 * nodes);
    for (let n = 0; n < nodes; n++) {
      const [w, wx, wy] = shape(mesh.xyz[3 * n], mesh.xyz[3 * n + 1]);
      out.set([0, 0, w, wy, -wx, 0], 6 * n);
    }
    return out;
  });
  const modes = described();
  return {
    lambda: Float64Array.from(modes, (m) => (2 * Math.PI * m.frequency) ** 2),
    phi: new Float64Array(0),
    rigid: [],
    shapes,
    described: modes,
    evidence: {
      maxResidual: 2.34e-10,
      orthogonality: 1.1e-15,
      operatorCalls: 24,
      factorisations: 2,
      counted: 9,
      found: 9,
      checkFrequency: 700,
      unknowns: 1234,
      factorEntries: 9876,
    },
  };
}

/** The whole analysis, made anew on every call. */
export function fixture(): Analysed {
  const file = parseFrame(FRAME, "trial.jsonc");
  const model = buildModel(file);
  const mesh = buildMesh(model, 0.01);
  const mass = massFromDrawing(model, mesh);
  return {
    file,
    model,
    mesh,
    mass,
    held: false,
    assembledMass: mass,
    modes: modesOf(mesh),
    excitation,
    ranking: madeUpRanking(model, described(), excitation),
    warnings: [`a warning about "${HOSTILE.plate}"`],
  };
}

/** The same without motors, and so without a ranking. */
export function withoutMotors(): Analysed {
  const { excitation: _, ranking: __, ...rest } = fixture();
  return rest;
}

export const INPUT: ReportInput = {
  fileName: "frames/<trial>.jsonc",
  fileHash: "ab".repeat(32),
  version: "1.2.3",
  options: '--modes 3 "<x>"',
  library: { kind: "inside", source: "window.Plotly = {};" },
};
