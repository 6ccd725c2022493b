/** What a part can be made of, and the stiffness of a sheet of it. */

import { inputError } from "../errors.ts";
import { plateLossFactor } from "./laminate-loss.ts";
import {
  type LaminateStiffness,
  type Layer,
  laminateDensity,
  laminateLossStiffness,
  laminateStiffness,
} from "./lamination.ts";
import type { InPlaneConstants, Ply } from "./ply.ts";
import { parseStack } from "./stack.ts";

/** Metal, plastic. */
export interface Isotropic {
  readonly kind: "isotropic";
  /** Pa. */
  readonly E: number;
  /** Pa. */
  readonly G: number;
  readonly nu: number;
  /** kg/m3. */
  readonly density: number;
  /** eta = 2 zeta. */
  readonly lossFactor: number;
}

/** A stack of plies; the thickness of the part decides, the plies are scaled to fill it. */
export interface Laminate {
  readonly kind: "laminate";
  /** One ply used throughout, or one per angle, from the bottom to the top. */
  readonly plies: readonly Ply[];
  /** From the laminate's warp direction to each ply's axis 1, rad, counter-clockwise from above. */
  readonly angles: readonly number[];
}

/** Constants measured on the finished sheet, taken as homogeneous through its thickness. */
export interface Measured extends InPlaneConstants {
  /** E1 and E2 are the flexural moduli along warp and weft. */
  readonly kind: "measured";
  /** Transverse shear moduli, Pa. */
  readonly G13: number;
  readonly G23: number;
  /** kg/m3. */
  readonly density: number;
  /** eta = 2 zeta. */
  readonly lossFactor: number;
}

export type Material = Isotropic | Laminate | Measured;

/** How a laminate's plies fit a part's thickness. */
export interface PlyFit {
  readonly count: number;
  /** Mean thickness of a ply: as the material gives it, and as the part implies it, m. */
  readonly nominal: number;
  readonly implied: number;
  /** implied / nominal; far from 1 the stack does not belong to this thickness. */
  readonly scale: number;
}

/** A sheet in plate axes x, y. A, B, D as in `LaminateStiffness`. */
export interface PlateStiffness extends LaminateStiffness {
  /** kg/m3. */
  readonly density: number;
  readonly lossFactor: number;
  /** Undefined when the material has no plies. */
  readonly plyFit: PlyFit | undefined;
}

/** An isotropic material from E, nu: G = E / (2 (1 + nu)). Units Pa, kg/m3. */
export function isotropic(E: number, nu: number, density: number, lossFactor: number): Isotropic {
  return { kind: "isotropic", E, G: E / (2 * (1 + nu)), nu, density, lossFactor };
}

/**
 * A laminate from the usual notation, see `parseStack`. `plies` is one ply, or one per ply of the
 * stack from the bottom to the top. Throws InputError for a stack that cannot be read and for a
 * wrong number of plies.
 */
export function laminateFromStack(plies: Ply | readonly Ply[], stack: string, path = ""): Laminate {
  const angles = parseStack(stack, path).map((degrees) => (degrees * Math.PI) / 180);
  const list = "E1" in plies ? [plies] : plies;
  if (list.length !== 1 && list.length !== angles.length) {
    throw inputError(
      path,
      `The stack "${stack}" has ${angles.length} plies, but ${list.length} ply kinds are given; give one for all, or one per ply from the bottom to the top.`,
    );
  }
  return { kind: "laminate", plies: list, angles };
}

/** Thickness of a laminate as its plies give it, m; undefined for a material without plies. */
export function nominalThickness(material: Material): number | undefined {
  if (material.kind !== "laminate") return undefined;
  return material.angles.reduce((sum, _, i) => sum + plyAt(material, i).thickness, 0);
}

/** The fit of a laminate's plies to a thickness (m); undefined for a material without plies. */
export function plyFit(material: Material, thickness: number): PlyFit | undefined {
  const stack = nominalThickness(material);
  if (material.kind !== "laminate" || stack === undefined) return undefined;
  const count = material.angles.length;
  const scale = thickness / stack;
  return { count, nominal: stack / count, implied: thickness / count, scale };
}

/**
 * The sheet as layers that fill `thickness` (m), its warp pointing `warpAngle` (rad,
 * counter-clockwise from above) away from x. A material without plies is one layer.
 */
export function layersOf(material: Material, thickness: number, warpAngle = 0): readonly Layer[] {
  switch (material.kind) {
    case "isotropic": {
      const { E, G, nu, density, lossFactor } = material;
      const ply = {
        E1: E,
        E2: E,
        G12: G,
        nu12: nu,
        G13: G,
        G23: G,
        density,
        thickness,
        lossFactor,
      };
      return [{ ply, angle: 0, thickness }];
    }
    case "measured":
      return [{ ply: { ...material, thickness }, angle: warpAngle, thickness }];
    case "laminate": {
      const scale = thickness / nominalThickness(material)!;
      return material.angles.map((angle, i) => {
        const ply = plyAt(material, i);
        return { ply, angle: angle + warpAngle, thickness: ply.thickness * scale };
      });
    }
  }
}

/**
 * A sheet `thickness` (m) thick in plate axes x, y, its warp pointing `warpAngle` (rad,
 * counter-clockwise from above) away from x.
 */
export function plateStiffness(
  material: Material,
  thickness: number,
  warpAngle = 0,
): PlateStiffness {
  const layers = layersOf(material, thickness, warpAngle);
  const stiffness = laminateStiffness(layers);
  return {
    ...stiffness,
    density: laminateDensity(layers),
    lossFactor: plateLossFactor(stiffness, laminateLossStiffness(layers)),
    plyFit: plyFit(material, thickness),
  };
}

function plyAt(material: Laminate, i: number): Ply {
  return material.plies.length === 1 ? material.plies[0] : material.plies[i];
}
