import { createRequire } from "node:module";
import type { UnitCtor } from "mathjs";
import type { Dimension } from "./quantity-kinds.ts";

/** A unit: one of it is `toSI` in SI units, exactly 1 / `perSI` where that is a whole number. */
export interface KnownUnit {
  readonly toSI: number;
  readonly perSI?: number;
  readonly dimension: Dimension;
}

/** Letters, digits, powers, products and quotients; nothing that could be an expression or a call. */
const UNIT_TEXT = /^[A-Za-z%][A-Za-z0-9^/* %]{0,39}$/;

/**
 * The units nearly every frame file uses, so that reading one does not need mathjs at all: loading
 * it takes 50 ms and its first Unit 40 ms more (Node 20, 2 cores), against about 130 ms for all the
 * rest of reading a frame. A test compares every row with mathjs.
 */
// biome-ignore format: one unit, one row
const EVERYDAY: Readonly<Record<string, readonly [toSI: number, dimension: Dimension]>> = {
  mm: [1e-3, "0,1,0,0,0"], cm: [1e-2, "0,1,0,0,0"], m: [1, "0,1,0,0,0"],
  in: [0.0254, "0,1,0,0,0"], inch: [0.0254, "0,1,0,0,0"],
  g: [1e-3, "1,0,0,0,0"], kg: [1, "1,0,0,0,0"], oz: [0.028349523125, "1,0,0,0,0"],
  deg: [Math.PI / 180, "0,0,0,0,1"],
  GPa: [1e9, "1,-1,-2,0,0"], MPa: [1e6, "1,-1,-2,0,0"], "g/cm^3": [1e3, "1,-3,0,0,0"], "kg/m^3": [1, "1,-3,0,0,0"],
  "N/mm": [1e3, "1,0,-2,0,0"], "N m/rad": [1, "1,2,-2,0,-1"],
  Hz: [1, "0,0,-1,0,0"], kHz: [1e3, "0,0,-1,0,0"], ms: [1e-3, "0,0,1,0,0"], s: [1, "0,0,1,0,0"],
  rpm: [Math.PI / 30, "0,0,-1,0,1"], "deg/s": [Math.PI / 180, "0,0,-1,0,1"], "rpm/V": [Math.PI / 30, "-1,-2,2,1,1"],
  "g mm": [1e-6, "1,1,0,0,0"], "g mm^2": [1e-9, "1,2,0,0,0"], "mm^2": [1e-6, "0,2,0,0,0"], "mm^4": [1e-12, "0,4,0,0,0"],
  N: [1, "1,1,-2,0,0"], V: [1, "1,2,-3,-1,0"], "mm/s": [1e-3, "0,1,-1,0,0"],
  "N m^2": [1, "1,3,-2,0,0"], "kg/m": [1, "1,-1,0,0,0"], "kg m": [1, "1,1,0,0,0"],
  "%": [1e-2, "0,0,0,0,0"],
};

/** Texts of `EVERYDAY`, for the test that compares them with mathjs. */
export const EVERYDAY_UNITS: readonly string[] = Object.keys(EVERYDAY);

const memo = new Map<string, KnownUnit | undefined>();
for (const [text, [toSI, dimension]] of Object.entries(EVERYDAY)) {
  memo.set(text, withExactInverse(toSI, dimension));
}

/**
 * What a unit text such as "g/cm^3" means, or undefined when it is not a unit. The text only ever
 * reaches the unit reader of mathjs, never its expression parser.
 */
export function lookUpUnit(text: string): KnownUnit | undefined {
  if (memo.has(text)) return memo.get(text);
  if (!UNIT_TEXT.test(text)) return undefined;
  const found = unitFromMathjs(text);
  memo.set(text, found);
  return found;
}

/** value in SI; divides where that is exact, so that 1.1 mm is 0.0011 m and not 0.0011000000000000001. */
export function toSI(value: number, unit: KnownUnit): number {
  return unit.perSI === undefined ? value * unit.toSI : value / unit.perSI;
}

/** mathjs's own reading of a unit text, without the memo. */
export function unitFromMathjs(text: string): KnownUnit | undefined {
  const Unit = unitClass();
  try {
    const { value, dimensions } = new Unit(1, text);
    const [mass, length, time, current, temperature, light, amount, angle, bit] = dimensions;
    // temperatures, light, amounts and bits have no place in a frame file: keep them apart
    const foreign = [temperature, light, amount, bit].some((exponent) => exponent !== 0);
    const base = [mass, length, time, current, angle].join(",");
    if (!Number.isFinite(value) || value <= 0) return undefined;
    return withExactInverse(snap(value), foreign ? `${base},other` : base);
  } catch {
    return undefined; // mathjs throws a SyntaxError for every text it cannot read as a unit
  }
}

let loaded: UnitCtor | undefined;

/**
 * The Unit class of mathjs, loaded when first needed. Measured on Node 20 with 2 cores, loading and
 * first use: `import "mathjs"` 1100 ms, `import "mathjs/number"` 500 ms (and no units), the bundle
 * that mathjs also exports 53 ms + 39 ms for its `Unit` + 5 ms for the unit added here; after that
 * one unit text takes 0.1 ms.
 */
function unitClass(): UnitCtor {
  if (loaded === undefined) {
    const require = createRequire(import.meta.url);
    const { Unit } = require("mathjs/lib/browser/math.js") as { readonly Unit: UnitCtor };
    if (!Object.hasOwn(Unit.UNITS, "rpm")) {
      Unit.createUnitSingle("rpm", { definition: new Unit(Math.PI / 30, "rad/s") });
    }
    loaded = Unit;
  }
  return loaded;
}

/** mathjs gets 999.9999999999999 for g/cm^3: the nearby short number where rounding is all that differs. */
function snap(size: number): number {
  const short = Number(size.toPrecision(12));
  return Math.abs(short - size) <= 4 * Number.EPSILON * Math.abs(size) ? short : size;
}

function withExactInverse(size: number, dimension: Dimension): KnownUnit {
  const inverse = Math.round(1 / size);
  const exact = size < 1 && Math.abs(inverse * size - 1) <= 4 * Number.EPSILON;
  return exact ? { toSI: size, perSI: inverse, dimension } : { toSI: size, dimension };
}
