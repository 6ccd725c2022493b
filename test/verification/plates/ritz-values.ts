/** The plates of ritz/shapes.json, and their frequencies as ritz/ritz.py found them. */

import { readFileSync } from "node:fs";

type Point = readonly [number, number];

/** A hole of a frame file in mm: a cut-out or round holes. */
export type Hole =
  | { readonly outline: readonly Point[] }
  | { readonly at: Point | readonly Point[]; readonly diameter: number };

/** A plate and its material as a frame file gives them, in its bare units (mm, GPa, g/cm^3, degrees). */
export interface Shape {
  readonly note: string;
  /** whether the edge at x = 0 is held fast */
  readonly clamped?: boolean;
  readonly material: object;
  readonly plate: {
    readonly thickness: number;
    readonly outline: readonly Point[];
    readonly holes?: readonly Hole[];
    readonly warp?: number;
  };
}

interface RitzValues {
  readonly plates: Readonly<
    Record<string, { readonly frequencies: readonly number[]; readonly change: number }>
  >;
  readonly rectangles: readonly {
    readonly ratio: number;
    readonly nu: number;
    readonly clamped: boolean;
    readonly lambda: readonly number[];
  }[];
}

const read = (name: string) =>
  JSON.parse(readFileSync(new URL(`ritz/${name}`, import.meta.url), "utf8"));

export const SHAPES: Readonly<Record<string, Shape>> = read("shapes.json");
export const RITZ: RitzValues = read("ritz.json");

/** Where the values come from, as the verification table says it. */
export const RITZ_SOURCE =
  "Ritz with C1 splines of degree 6 and 7, crowded towards inward corners: an independent computation of " +
  "this project (test/verification/plates/ritz), upper bounds";

/** The first eight frequencies of a plate of shapes.json, Hz. */
export function ritzFrequencies(name: string): readonly number[] {
  return RITZ.plates[name].frequencies;
}

/** The first eight lambda = omega a^2 sqrt(rho h/D) of a thin rectangle, free or clamped at x = 0. */
export function ritzParameters(ratio: number, nu: number, clamped: boolean): readonly number[] {
  const found = RITZ.rectangles.find(
    (r) => Math.abs(r.ratio - ratio) < 1e-5 && r.nu === nu && r.clamped === clamped,
  );
  if (!found) throw new Error(`ritz.json has no rectangle a/b = ${ratio}, nu = ${nu}`);
  return found.lambda;
}
