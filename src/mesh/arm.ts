/** Arms: beam elements from the root to the motor, and how the root is held. */

import { GAUSS_4 } from "../element/quadrature.ts";
import { boxInertia, type Inertia } from "../element/rigid-mass.ts";
import { memberAxes, type Rotation } from "../element/rotation.ts";
import { inputError } from "../errors.ts";
import { armBreaks, armSection, widthAt } from "../model/arm.ts";
import { strip } from "../model/polygon.ts";
import type { ArmPart, Model } from "../model/types.ts";
import { ALL_MOTIONS, addNode, addPart, type Draft } from "./draft.ts";
import { patchOn } from "./patch.ts";
import type { PlateGrid } from "./types.ts";

/** Elements per arm never fall below this, whatever the mesh size, unless the file gives a number. */
const LEAST_ELEMENTS = 6;

/**
 * Adds one arm.
 *
 * @param stations fractions of the free length that must be nodes (where bodies hang)
 * @param massPerLength smeared mass, kg/m
 * @returns the arm's nodes from root to tip and their fractions
 */
export function meshArm(
  draft: Draft,
  model: Model,
  arm: ArmPart,
  grids: readonly PlateGrid[],
  pointNode: (name: string) => number,
  size: number,
  stations: readonly number[],
  massPerLength: number,
) {
  const d = [0, 1, 2].map((i) => arm.tip[i] - arm.root[i]);
  const axes = memberAxes(d, [0, 0, 1]);
  const part = addPart(draft, {
    name: arm.name,
    kind: "arm",
    lossFactor: armSection(arm, 0).lossFactor,
  });
  const s = divisions(arm, size, stations);
  const nodes = s.map((f, i) =>
    i === 0 && arm.held.kind === "point"
      ? pointNode(arm.held.point)
      : addNode(draft, arm.root[0] + f * d[0], arm.root[1] + f * d[1], arm.root[2] + f * d[2]),
  );
  for (let i = 1; i < s.length; i++) {
    const sections = Array.from(GAUSS_4.x, (g) => {
      const c = armSection(arm, s[i - 1] + g * (s[i] - s[i - 1]));
      return massPerLength > 0 ? { ...c, rhoA: c.rhoA + massPerLength } : c;
    });
    const length = (s[i] - s[i - 1]) * arm.length;
    draft.beams.push({ nodes: [nodes[i - 1], nodes[i]], length, axes, sections, part });
  }
  if (arm.pad) {
    const node = nodes[nodes.length - 1];
    const { mass, inertia, cg } = arm.pad;
    const offset = [0, 1, 2].map((i) => cg[i] - arm.tip[i]) as [number, number, number];
    draft.masses.push({ node, mass, inertia, offset, part });
  }
  holdRoot(draft, model, arm, axes, nodes[0], grids, part);
  return { nodes, s };
}

function divisions(arm: ArmPart, size: number, stations: readonly number[]): number[] {
  const breaks = [...armBreaks(arm), ...stations].sort((a, b) => a - b);
  const unique = breaks.filter((v, i) => i === 0 || v - breaks[i - 1] > 1e-6);
  const n = arm.elements ?? Math.max(LEAST_ELEMENTS, Math.ceil(arm.length / size - 1e-6));
  const out = [0];
  for (let i = 1; i < unique.length; i++) {
    const span = unique[i] - unique[i - 1];
    const k = Math.max(1, Math.ceil(n * span - 1e-9));
    for (let j = 1; j <= k; j++) out.push(unique[i - 1] + (span * j) / k);
  }
  return out;
}

function holdRoot(
  draft: Draft,
  model: Model,
  arm: ArmPart,
  axes: Rotation,
  first: number,
  grids: readonly PlateGrid[],
  armPart: number,
) {
  const held = arm.held;
  if (held.kind === "point") return;
  const inward = Math.atan2(-axes[1], -axes[0]);
  const width = widthAt(arm, 0);
  const patch = (plate: number) => {
    const found = patchOn(
      grids[plate],
      strip(arm.root[0], arm.root[1], inward, held.inserted, width),
    );
    if (found) return found;
    throw inputError(
      `arms.${arm.group}`,
      `the inserted end of "${arm.name}" misses the plate "${model.plates[plate].name}"; move its root onto the plate or make it longer`,
    );
  };
  if (held.kind === "one piece") {
    const to = { patch: patch(held.plate) };
    draft.rigidTies.push({ node: first, to, motions: ALL_MOTIONS });
    return;
  }
  // The clamped end is a rigid block, screwed face to face with the plates. Between block and arm sits
  // the bolted joint: free in bending but for k = kappa E I / L.
  const block = addNode(draft, arm.root[0], arm.root[1], arm.root[2]);
  const part = addPart(draft, {
    name: `${arm.name} root`,
    kind: "arm root",
    lossFactor: held.lossFactor,
  });
  for (const plate of held.plates) {
    const under = patch(plate);
    const { thickness, z } = model.plates[plate];
    const k = faceStiffness(arm.strip.Gxz, under.area, (arm.thickness + thickness) / 2);
    const face = (Math.sign(arm.root[2] - z) * thickness) / 2;
    draft.pads.push({ node: block, patch: under, face, k, part });
  }
  draft.masses.push({ node: block, part: armPart, ...insertedEnd(arm, held.inserted, axes) });
  const root = armSection(arm, 0);
  const rigid = !Number.isFinite(held.kappa);
  const motions = rigid ? ALL_MOTIONS : [0, 1, 2, 3];
  draft.rigidTies.push({ node: first, to: { node: block }, motions, axes });
  if (rigid) return;
  const flat = (held.kappa * root.EIy) / arm.length;
  const edge = (held.kappa * root.EIz) / arm.length;
  const k = Float64Array.of(0, 0, 0, 0, flat, edge);
  draft.springs.push({ nodes: [block, first], axes, k, part });
}

/** Modulus of a carbon laminate through its thickness, Pa; 8 to 10 GPa, from memory. */
const E_THROUGH = 8e9;

/**
 * Two laminates screwed face to face: the layer from mid-plane to mid-plane shears and stretches
 * through its thickness. kx ky kz of the whole face, N/m. (Rigid ties instead would make the plate
 * nodes under an arm one dense block, and lose six digits of the lowest frequencies to rounding.)
 */
function faceStiffness(G: number, area: number, thickness: number): [number, number, number] {
  const shear = (G * area) / thickness;
  return [shear, shear, (E_THROUGH * area) / thickness];
}

/** The part of the arm between the plates, as a rigid box on the block. */
export function insertedEnd(arm: ArmPart, inserted: number, axes: Rotation) {
  const mass = armSection(arm, 0).rhoA * inserted;
  const box = boxInertia(mass, inserted, widthAt(arm, 0), arm.thickness);
  const offset = [0, 1, 2].map((i) => (-axes[i] * inserted) / 2) as [number, number, number];
  return { mass, offset, inertia: turnedAboutZ(box, axes[0], axes[1]) };
}

/** Inertia of a body whose own x axis points along (c, s, 0). */
export function turnedAboutZ(I: Inertia, c: number, s: number): Inertia {
  return {
    xx: c * c * I.xx + s * s * I.yy,
    yy: s * s * I.xx + c * c * I.yy,
    zz: I.zz,
    xy: c * s * (I.xx - I.yy),
    xz: 0,
    yz: 0,
  };
}
