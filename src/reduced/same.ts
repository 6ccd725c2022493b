/** Whether two pieces of a mesh are the same but for rounding. */

/** Sizes of a frame are metres and its sections' constants relative: rounding is far below, changes far above. */
const ROUNDING = 1e-12;

/** Two numbers. */
export function sameNumber(a: number, b: number): boolean {
  return a === b || Math.abs(a - b) <= ROUNDING * Math.max(1e-3, Math.abs(a), Math.abs(b));
}

function isList(v: unknown): v is ArrayLike<unknown> {
  return Array.isArray(v) || ArrayBuffer.isView(v);
}

/** Plain data: numbers, texts, lists, typed arrays and records of these. */
export function same(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a === "number" && typeof b === "number") return sameNumber(a, b);
  if (isList(a) && isList(b)) {
    if (a.length !== b.length) return false;
    for (let i = 0; i < a.length; i++) if (!same(a[i], b[i])) return false;
    return true;
  }
  if (typeof a !== "object" || typeof b !== "object" || !a || !b || isList(a) || isList(b)) {
    return false;
  }
  const [p, q] = [a as Record<string, unknown>, b as Record<string, unknown>];
  const keys = Object.keys(p);
  return keys.length === Object.keys(q).length && keys.every((k) => same(p[k], q[k]));
}
