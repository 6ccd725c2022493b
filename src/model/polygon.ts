/** Plane polygons: vertex lists x0, y0, x1, y1, ... in metres, closed by themselves. */

export type Polygon = Float64Array;

/** Area moments: integrals of 1, x, y, x^2, y^2, xy; clockwise polygons give negative values. */
export interface Moments {
  readonly area: number;
  readonly x: number;
  readonly y: number;
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
}

/** Green's theorem, edge by edge (exact). */
export function moments(p: Polygon): Moments {
  let area = 0;
  let x = 0;
  let y = 0;
  let xx = 0;
  let yy = 0;
  let xy = 0;
  for (let i = 0; i < p.length; i += 2) {
    const j = (i + 2) % p.length;
    const [x1, y1, x2, y2] = [p[i], p[i + 1], p[j], p[j + 1]];
    const c = x1 * y2 - x2 * y1;
    area += c / 2;
    x += (c * (x1 + x2)) / 6;
    y += (c * (y1 + y2)) / 6;
    xx += (c * (x1 * x1 + x1 * x2 + x2 * x2)) / 12;
    yy += (c * (y1 * y1 + y1 * y2 + y2 * y2)) / 12;
    xy += (c * (x1 * y2 + 2 * x1 * y1 + 2 * x2 * y2 + x2 * y1)) / 24;
  }
  return { area, x, y, xx, yy, xy };
}

/** The moments of a plate: its outline less its holes. */
export function sumMoments(polygons: readonly Polygon[]): Moments {
  const total = { area: 0, x: 0, y: 0, xx: 0, yy: 0, xy: 0 };
  for (const p of polygons) {
    const m = moments(p);
    for (const k of Object.keys(total) as (keyof Moments)[]) total[k] += m[k];
  }
  return total;
}

/** The same polygon with positive (anticlockwise) or negative area. */
export function oriented(p: Polygon, sign: 1 | -1): Polygon {
  if (Math.sign(moments(p).area) === sign) return p;
  const out = new Float64Array(p.length);
  for (let i = 0; i < p.length; i += 2) {
    out[i] = p[p.length - 2 - i];
    out[i + 1] = p[p.length - 1 - i];
  }
  return out;
}

/** Even-odd rule; points on the border may fall either way. */
export function contains(p: Polygon, x: number, y: number): boolean {
  let inside = false;
  for (let i = 0, j = p.length - 2; i < p.length; j = i, i += 2) {
    if (p[i + 1] > y !== p[j + 1] > y) {
      const cross = p[i] + ((y - p[i + 1]) / (p[j + 1] - p[i + 1])) * (p[j] - p[i]);
      if (x < cross) inside = !inside;
    }
  }
  return inside;
}

/** Distance from a point to the polygon's border, m. */
export function borderDistance(p: Polygon, x: number, y: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < p.length; i += 2) {
    const j = (i + 2) % p.length;
    const dx = p[j] - p[i];
    const dy = p[j + 1] - p[i + 1];
    const t = ((x - p[i]) * dx + (y - p[i + 1]) * dy) / (dx * dx + dy * dy || 1);
    const s = Math.min(1, Math.max(0, t));
    best = Math.min(best, Math.hypot(x - p[i] - s * dx, y - p[i + 1] - s * dy));
  }
  return best;
}

const turn = (ax: number, ay: number, bx: number, by: number, cx: number, cy: number) =>
  (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);

/** Whether the sides a-b and c-d have a point in common. */
function sidesMeet(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
): boolean {
  const apart =
    Math.max(ax, bx) < Math.min(cx, dx) ||
    Math.max(cx, dx) < Math.min(ax, bx) ||
    Math.max(ay, by) < Math.min(cy, dy) ||
    Math.max(cy, dy) < Math.min(ay, by);
  if (apart) return false;
  const one = turn(ax, ay, bx, by, cx, cy) * turn(ax, ay, bx, by, dx, dy);
  const two = turn(cx, cy, dx, dy, ax, ay) * turn(cx, cy, dx, dy, bx, by);
  return one <= 0 && two <= 0;
}

/** The numbers (from 0) of two sides that cross or touch though they are not neighbours. */
export function crossingSides(p: Polygon): readonly [number, number] | undefined {
  const n = p.length / 2;
  const at = (i: number) => [p[2 * (i % n)], p[2 * (i % n) + 1]] as const;
  for (let i = 0; i < n; i++) {
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      if (sidesMeet(...at(i), ...at(i + 1), ...at(j), ...at(j + 1))) return [i, j];
    }
  }
  return undefined;
}

/** Whether two polygons have any point in common: borders that meet, or one inside the other. */
export function overlap(p: Polygon, q: Polygon): boolean {
  return bordersMeet(p, q) || contains(p, q[0], q[1]) || contains(q, p[0], p[1]);
}

/** Whether the borders of two polygons meet. */
export function bordersMeet(p: Polygon, q: Polygon): boolean {
  const side = (r: Polygon, i: number) => {
    const j = (i + 2) % r.length;
    return [r[i], r[i + 1], r[j], r[j + 1]] as const;
  };
  for (let i = 0; i < p.length; i += 2) {
    for (let j = 0; j < q.length; j += 2) if (sidesMeet(...side(p, i), ...side(q, j))) return true;
  }
  return false;
}

/**
 * The part of a polygon inside a convex one (I. E. Sutherland & G. W. Hodgman, Comm. ACM 17, 1974).
 * A subject that is not convex may come back with bridges of no width, which integrate to nothing.
 *
 * @param clip anticlockwise and convex
 */
export function clipToConvex(subject: Polygon, clip: Polygon): Polygon {
  let points = Array.from(subject);
  for (let e = 0; e < clip.length && points.length > 0; e += 2) {
    const f = (e + 2) % clip.length;
    const side = (x: number, y: number) => turn(clip[e], clip[e + 1], clip[f], clip[f + 1], x, y);
    const kept: number[] = [];
    for (let i = 0; i < points.length; i += 2) {
      const j = (i + 2) % points.length;
      const [x1, y1, x2, y2] = [points[i], points[i + 1], points[j], points[j + 1]];
      const s1 = side(x1, y1);
      const s2 = side(x2, y2);
      if (s1 >= 0) kept.push(x1, y1);
      if ((s1 > 0 && s2 < 0) || (s1 < 0 && s2 > 0)) {
        const t = s1 / (s1 - s2);
        kept.push(x1 + t * (x2 - x1), y1 + t * (y2 - y1));
      }
    }
    points = kept;
  }
  return Float64Array.from(points);
}

/** A rectangle, anticlockwise. */
export function rectangle(x0: number, y0: number, x1: number, y1: number): Polygon {
  return Float64Array.of(x0, y0, x1, y0, x1, y1, x0, y1);
}

/** A rectangle of given length and width from `start` in direction (cos a, sin a), centred across. */
export function strip(
  startX: number,
  startY: number,
  angle: number,
  length: number,
  width: number,
): Polygon {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const at = (u: number, v: number) => [startX + u * c - v * s, startY + u * s + v * c];
  const w = width / 2;
  return Float64Array.from([...at(0, -w), ...at(length, -w), ...at(length, w), ...at(0, w)]);
}

/** A regular polygon of the same area as the circle, anticlockwise. */
export function disc(x: number, y: number, diameter: number, sides = 24): Polygon {
  const r = (diameter / 2) * Math.sqrt((2 * Math.PI) / sides / Math.sin((2 * Math.PI) / sides));
  const p = new Float64Array(2 * sides);
  for (let i = 0; i < sides; i++) {
    const a = (2 * Math.PI * (i + 0.5)) / sides;
    p[2 * i] = x + r * Math.cos(a);
    p[2 * i + 1] = y + r * Math.sin(a);
  }
  return p;
}

/** Smallest box around the polygon: x0, y0, x1, y1. */
export function bounds(p: Polygon): readonly [number, number, number, number] {
  let [x0, y0, x1, y1] = [p[0], p[1], p[0], p[1]];
  for (let i = 2; i < p.length; i += 2) {
    x0 = Math.min(x0, p[i]);
    x1 = Math.max(x1, p[i]);
    y0 = Math.min(y0, p[i + 1]);
    y1 = Math.max(y1, p[i + 1]);
  }
  return [x0, y0, x1, y1];
}
