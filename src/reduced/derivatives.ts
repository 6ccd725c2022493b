/**
 * How fast a frame's stiffness and mass change with one input, as its modes see it: central differences of
 * the element matrices that change, ties included, at fixed unknowns. That makes Phi'(dK/dp)Phi and
 * Phi'(dM/dp)Phi exact derivatives of the matrices of the mesh but for the step, and with them the
 * derivatives of the eigenvalues (`slopes.ts`), with no other eigen-solution.
 */

import { InputError } from "../errors.ts";
import { matricesOf } from "../matrices/elements.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Model } from "../model/types.ts";
import { allDifferent, differences, type Unlike } from "./differences.ts";
import type { Meshed } from "./meshed.ts";
import { addProjected, type ModeRows } from "./projected.ts";
import { ownSlopes, type Pair } from "./slopes.ts";

/** A variant of the frame, drawn and meshed. */
export interface Drawn {
  readonly model: Model;
  /** of the base's mesh size */
  readonly mesh: Mesh;
}

export interface MatrixDerivatives extends Pair {
  /** how far half the step moved the slope of any ln(lambda), per SI unit, before the extrapolation */
  readonly doubt: number;
  /** the step that was used, SI */
  readonly step: number;
}

/** The frame changes by jumps when the input moves: it has no derivative there. */
export interface NotSmooth {
  readonly notSmooth: string;
}

/** Smaller steps that are tried where the first one leads to another mesh. */
const TRIES = 3;
const SMALLER = 10;

/**
 * @param base the frame, meshed
 * @param modes its modes on the unknowns that remain
 * @param lambda of them, rad^2/s^2
 * @param at the frame with the input changed by so much (SI); may throw InputError
 * @param step SI
 */
export function matrixDerivatives(
  base: Meshed,
  modes: ModeRows,
  lambda: Float64Array,
  at: (change: number) => Drawn,
  step: number,
): MatrixDerivatives | NotSmooth {
  let why = "";
  for (let k = 0, h = step; k < TRIES; k++, h /= SMALLER) {
    const whole = difference(base, modes, at, h);
    const half = "unlike" in whole ? whole : difference(base, modes, at, h / 2);
    if ("unlike" in whole || "unlike" in half) {
      why = "unlike" in whole ? whole.unlike : (half as Unlike).unlike;
      continue;
    }
    // the error of a central difference is as the square of the step (L. F. Richardson 1911)
    const better = (key: "K" | "M") => half[key].map((v, i) => v + (v - whole[key][i]) / 3);
    const [K, M] = [better("K"), better("M")];
    return { K, M, doubt: doubtOf(lambda, { K, M }, half), step: h };
  }
  return { notSmooth: why };
}

function doubtOf(lambda: Float64Array, found: Pair, half: Pair): number {
  const [a, b] = [ownSlopes(lambda, found), ownSlopes(lambda, half)];
  return lambda.reduce((most, l, i) => Math.max(most, Math.abs(a[i] - b[i]) / l), 0);
}

function difference(
  base: Meshed,
  modes: ModeRows,
  at: (change: number) => Drawn,
  h: number,
): Pair | Unlike {
  const sides = [];
  for (const sign of [1, -1]) {
    const found = changed(base, at, sign * h);
    if ("unlike" in found) return found;
    sides.push(found);
  }
  const elements = new Set(sides.flatMap((side) => side.elements));
  const size = modes.count * modes.count;
  const pair = { K: new Float64Array(size), M: new Float64Array(size) };
  sides.forEach(({ meshed: { mesh, model, massPerArea, reduction } }, k) => {
    const weight = (k === 0 ? 1 : -1) / (2 * h);
    for (const index of elements) {
      for (const e of matricesOf(mesh, model, massPerArea, index)) {
        addProjected(pair, e, reduction, modes, weight);
      }
    }
  });
  return pair;
}

/** Every element that differs, in itself or by its ties. */
function changed(
  base: Meshed,
  at: (change: number) => Drawn,
  change: number,
): { readonly meshed: Meshed; readonly elements: readonly number[] } | Unlike {
  let drawn: Drawn;
  try {
    drawn = at(change);
  } catch (error) {
    if (error instanceof InputError) return { unlike: error.findings[0].message };
    throw error;
  }
  const found = differences(base, drawn.model, drawn.mesh);
  if ("unlike" in found) return found;
  return { meshed: found.meshed, elements: allDifferent(found) };
}
