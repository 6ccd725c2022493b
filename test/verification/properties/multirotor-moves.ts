/** The same multirotor turned by quarters, mirrored, moved, or written in other words. */

import type { Arm, Copies, Multirotor, Plate, PlateBody, Sheet, Vec2 } from "./multirotors.ts";
import { mapValues } from "./runs.ts";
import { apply, determinant, type Orthogonal, plus, turnInertia, type Vec3 } from "./space.ts";

export const QUARTER: Orthogonal = [
  [0, -1, 0],
  [1, 0, 0],
  [0, 0, 1],
];
export const HALF: Orthogonal = [
  [-1, 0, 0],
  [0, -1, 0],
  [0, 0, 1],
];
export const DIAGONAL: Orthogonal = [
  [0, 1, 0],
  [1, 0, 0],
  [0, 0, 1],
];

const SWAPPED: Record<Copies, Copies> = {
  none: "none",
  "left and right": "front and rear",
  "front and rear": "left and right",
  "all four corners": "all four corners",
};

/**
 * Turned by quarters about z or mirrored across an axis or a diagonal of the plan; the grids of the
 * plates go along. Where left and right change places, so do the signs of the plies' angles.
 */
export function turnedMultirotor(m: Multirotor, Q: Orthogonal): Multirotor {
  const swaps = Q[0][0] === 0;
  const copies = (c: Copies) => (swaps ? SWAPPED[c] : c);
  const plan = ([x, y]: Vec2): Vec2 => {
    const [u, v] = apply(Q, [x, y, 0]);
    return [u, v];
  };
  const angle = (degrees: number) => {
    const a = (degrees * Math.PI) / 180;
    const [x, y] = plan([Math.cos(a), Math.sin(a)]);
    return (Math.atan2(y, x) * 180) / Math.PI;
  };
  const size = ([x, y, z]: Vec3): Vec3 => (swaps ? [y, x, z] : [x, y, z]);
  return {
    ...m,
    sheets: mapValues(m.sheets, (s): Sheet => {
      if (determinant(Q) > 0 || !s.angles) return s;
      return { ...s, angles: s.angles.map((a) => 0 - a) };
    }),
    plates: mapValues(
      m.plates,
      (p): Plate => ({
        ...p,
        warp: angle(p.warp),
        outline: p.outline.map(plan),
        holes: p.holes.map((h) => ({ ...h, at: plan(h.at) })),
      }),
    ),
    arms: mapValues(
      m.arms,
      (a): Arm => ({
        ...a,
        root: plan(a.root),
        tip: plan(a.tip),
        warp: a.warp === "along the arm" ? a.warp : angle(a.warp),
        copies: copies(a.copies),
      }),
    ),
    posts: mapValues(m.posts, (p) => ({ at: plan(p.at), copies: copies(p.copies) })),
    points: mapValues(m.points, (p) => apply(Q, p)),
    bodies: mapValues(
      m.bodies,
      (b): PlateBody => ({
        ...b,
        at: apply(Q, b.at),
        ...(b.size && { size: size(b.size) }),
        ...(b.inertia && { inertia: turnInertia(Q, b.inertia) }),
        copies: copies(b.copies),
      }),
    ),
  };
}

const SIGNS: Record<Copies, readonly (readonly [number, number])[]> = {
  none: [[1, 1]],
  "left and right": [
    [1, 1],
    [1, -1],
  ],
  "front and rear": [
    [1, 1],
    [-1, 1],
  ],
  "all four corners": [
    [1, 1],
    [1, -1],
    [-1, 1],
    [-1, -1],
  ],
};

/** No mirrored copies: each part written out with places, products of inertia and host of its own. */
export function writtenOut(m: Multirotor): Multirotor {
  const each = <T extends { readonly copies: Copies }>(
    record: Readonly<Record<string, T>>,
    copy: (part: T, Q: Orthogonal, suffix: string) => T,
  ): Record<string, T> =>
    Object.fromEntries(
      Object.entries(record).flatMap(([name, part]) =>
        SIGNS[part.copies].map(([sx, sy], i) => {
          const Q: Orthogonal = [
            [sx, 0, 0],
            [0, sy, 0],
            [0, 0, 1],
          ];
          const suffix = part.copies === "none" ? "" : ` ${i + 1}`;
          return [name + suffix, { ...copy(part, Q, suffix), copies: "none" as const }];
        }),
      ),
    );
  const plan = (Q: Orthogonal, [x, y]: Vec2): Vec2 => [Q[0][0] * x, Q[1][1] * y];
  return {
    ...m,
    arms: each(m.arms, (a, Q) => ({ ...a, root: plan(Q, a.root), tip: plan(Q, a.tip) })),
    posts: each(m.posts, (p, Q) => ({ ...p, at: plan(Q, p.at) })),
    bodies: each(m.bodies, (b, Q, suffix) => ({
      ...b,
      at: apply(Q, b.at),
      ...(b.inertia && { inertia: turnInertia(Q, b.inertia) }),
      on: b.on + suffix,
    })),
  };
}

/** Moved in space; copies must be written out, for they are mirrored in the axes. */
export function movedMultirotor(m: Multirotor, by: Vec3): Multirotor {
  const plan = ([x, y]: Vec2): Vec2 => [x + by[0], y + by[1]];
  return {
    ...m,
    plates: mapValues(
      m.plates,
      (p): Plate => ({
        ...p,
        z: p.z + by[2],
        outline: p.outline.map(plan),
        holes: p.holes.map((h) => ({ ...h, at: plan(h.at) })),
      }),
    ),
    arms: mapValues(
      m.arms,
      (a): Arm => ({
        ...a,
        z: a.z + by[2],
        root: plan(a.root),
        tip: plan(a.tip),
      }),
    ),
    posts: mapValues(m.posts, (p) => ({ ...p, at: plan(p.at) })),
    points: mapValues(m.points, (p) => plus(p, by)),
    bodies: mapValues(m.bodies, (b): PlateBody => ({ ...b, at: plus(b.at, by) })),
  };
}

/** Outlines from another corner and the other way round. */
export function outlinesFrom(m: Multirotor, corner: number, reversed: boolean): Multirotor {
  return {
    ...m,
    plates: mapValues(m.plates, (p): Plate => {
      const outline = [...p.outline.slice(corner), ...p.outline.slice(0, corner)];
      return { ...p, outline: reversed ? outline.reverse() : outline };
    }),
  };
}
