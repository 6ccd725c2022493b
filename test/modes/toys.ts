/** Small frames of one metal for tests, written as frame files. All invented. */

import { parseFrame } from "../../src/frame/read.ts";
import type { FrameFile } from "../../src/frame/types.ts";

type Sections = Record<string, unknown>;

export function frameOf(sections: Sections): FrameFile {
  return parseFrame(JSON.stringify({ version: 1, name: "toy", ...sections }), "toy.jsonc");
}

export interface CrossOptions {
  /** GPa */
  readonly E?: number;
  readonly lossFactor?: number;
  readonly armThickness?: number;
  /** a heavy body off the middle line, so that nothing is symmetric */
  readonly lopsided?: boolean;
  readonly armElements?: number;
}

/** "metal", isotropic. */
export function metal({ E = 70, lossFactor = 0.02 }: CrossOptions): Sections {
  return { kind: "isotropic", E: `${E} GPa`, nu: 0.33, density: "2.7 g/cm^3", lossFactor };
}

export const PROPULSION = {
  motor: {
    mass: "30 g",
    screwMass: "2 g",
    bellMass: "18 g",
    cgHeight: "9 mm",
    size: ["28 mm", "18 mm"],
    kv: "1800 rpm/V",
  },
  propeller: {
    mass: "4 g",
    nutMass: "1 g",
    diameter: "5 in",
    blades: 3,
    planeHeight: "20 mm",
    thrustCoefficient: 0.15,
  },
  cells: 4,
};

/**
 * A hub plate of 120 x 80 mm with four arms cut in one piece with it, all of one metal and so of one
 * loss factor; a board in the middle and three places for it.
 */
export function crossSections(options: CrossOptions = {}): Sections {
  const { armThickness = 4, lopsided = false, armElements = 3 } = options;
  return {
    meshSize: 30,
    assemblyLossFactor: 0,
    materials: { metal: metal(options) },
    plates: {
      hub: {
        material: "metal",
        thickness: 3,
        z: 0,
        outline: [
          [60, 40],
          [-60, 40],
          [-60, -40],
          [60, -40],
        ],
      },
    },
    arms: {
      arm: {
        material: "metal",
        thickness: armThickness,
        root: [45, 30],
        tip: [115, 95],
        copies: "all four corners",
        width: [16, 12],
        elements: armElements,
        joint: { kind: "one piece", plate: "hub" },
      },
    },
    bodies: lopsided
      ? { lump: { mass: "60 g", at: [40, 24, 12], size: [20, 18, 16], on: "hub" } }
      : {},
    propulsion: PROPULSION,
    stack: {
      mass: "20 g",
      size: [36, 36, 12],
      plate: "hub",
      at: [0, 0],
      height: "8 mm",
      chip: [6, -4, 2],
      holes: { spacing: "30 mm" },
    },
    candidates: {
      middle: { plate: "hub", at: [0, 0] },
      nose: { plate: "hub", at: [44, 0], holes: { spacing: "20 mm" } },
      "left edge": { plate: "hub", at: [0, 26], holes: { spacing: "20 mm" } },
    },
  };
}

export function crossFrame(options: CrossOptions = {}, more: Sections = {}): FrameFile {
  return frameOf({ ...crossSections(options), ...more });
}

/** The same frame of stiffer metal. */
export function stiffer(file: FrameFile, factor: number): FrameFile {
  const { metal: m } = file.materials;
  if (m.kind !== "isotropic") throw new Error("not a toy");
  return { ...file, materials: { metal: { ...m, E: factor * m.E, G: factor * m.G } } };
}
