/**
 * Patterns that have been seen, and their symbolic factorisations: variants of one structure have the same
 * pattern, and ordering its unknowns takes a tenth to a fifth of a solution.
 */

import type { SymmetricPattern } from "./sparse.ts";
import { analysePattern, type Symbolic } from "./symbolic.ts";

/** A run of variants meets one pattern, or one for each frame it compares; more are not kept. */
const KEPT = 4;

/** The last patterns met, latest first. */
const seen: SymmetricPattern[] = [];
const analysed = new WeakMap<SymmetricPattern, Symbolic>();

/** The pattern itself, or one met before that is equal to it: then the same object. */
export function knownPattern(pattern: SymmetricPattern): SymmetricPattern {
  const at = seen.findIndex((p) => isEqual(p, pattern));
  const known = at < 0 ? pattern : seen[at];
  if (at >= 0) seen.splice(at, 1);
  seen.unshift(known);
  seen.length = Math.min(seen.length, KEPT);
  return known;
}

/** The symbolic factorisation of a pattern, made once. @throws SolveError as `analysePattern` */
export function symbolicOf(pattern: SymmetricPattern): Symbolic {
  const known = analysed.get(pattern) ?? analysePattern(pattern);
  analysed.set(pattern, known);
  return known;
}

function isEqual(a: SymmetricPattern, b: SymmetricPattern): boolean {
  return a.n === b.n && areEqual(a.colPtr, b.colPtr) && areEqual(a.rowIdx, b.rowIdx);
}

function areEqual(a: Int32Array, b: Int32Array): boolean {
  return a.length === b.length && a.every((v, i) => v === b[i]);
}
