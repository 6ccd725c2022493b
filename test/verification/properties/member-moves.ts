/** The same member frame elsewhere: turned, mirrored, moved, or written in another order. */

import fc from "fast-check";
import type { Dof, Member, MemberFrame, Spring } from "./member-frames.ts";
import { mapValues } from "./runs.ts";
import { apply, determinant, type Orthogonal, plus, turnInertia, type Vec3 } from "./space.ts";

/** Every place changed by `move`, every direction by Q. */
function placed(frame: MemberFrame, Q: Orthogonal, move: (v: Vec3) => Vec3): MemberFrame {
  return {
    ...frame,
    points: mapValues(frame.points, move),
    members: mapValues(frame.members, (m) => ({ ...m, up: apply(Q, m.up) })),
    bodies: mapValues(frame.bodies, (b) => ({
      ...b,
      at: move(b.at),
      ...(b.inertia && { inertia: turnInertia(Q, b.inertia) }),
    })),
  };
}

/**
 * Turned or mirrored by Q about the origin. Springs and supports must look alike from all sides, or Q
 * a mirror across an axis, because the file writes them along the axes.
 */
export function turnedFrame(frame: MemberFrame, Q: Orthogonal): MemberFrame {
  return placed(frame, Q, (v) => apply(Q, v));
}

export function movedFrame(frame: MemberFrame, by: Vec3): MemberFrame {
  const asItIs: Orthogonal = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  return placed(frame, asItIs, (v) => plus(v, by));
}

/**
 * Axes renamed, x to y to z to x: exact, and springs and supports in single directions go along.
 */
export function renamedAxes(frame: MemberFrame): MemberFrame {
  const Q: Orthogonal = [
    [0, 0, 1],
    [1, 0, 0],
    [0, 1, 0],
  ];
  if (determinant(Q) !== 1) throw new Error("no rotation");
  const next: Record<Dof, Dof> = { x: "y", y: "z", z: "x", rx: "ry", ry: "rz", rz: "rx" };
  const turned = turnedFrame(frame, Q);
  return {
    ...turned,
    springs: mapValues(turned.springs, ({ between, ...k }): Spring => {
      const stiffness = Object.entries(k).map(([dof, value]) => [next[dof as Dof], value]);
      return { between, ...Object.fromEntries(stiffness) };
    }),
    supports: mapValues(turned.supports, (s) => ({ ...s, fix: s.fix.map((dof) => next[dof]) })),
  };
}

/** How to write a frame in another order: numbers to sort by, and members to turn round. */
export interface Order {
  readonly keys: readonly number[];
  readonly reversed: readonly boolean[];
}

export const order: fc.Arbitrary<Order> = fc.record({
  keys: fc.array(fc.nat(), { minLength: 12, maxLength: 12 }),
  reversed: fc.array(fc.boolean(), { minLength: 12, maxLength: 12 }),
});

/** All records of a frame file in another order, those inside the records too. */
export function shuffled<T extends object>(frame: T, keys: readonly number[]): T {
  const entries = Object.entries(frame).map(([name, value], i) => ({ name, value, i }));
  entries.sort((a, b) => keys[a.i % keys.length] - keys[b.i % keys.length]);
  return Object.fromEntries(
    entries.map(({ name, value }) => [
      name,
      typeof value === "object" && value !== null && !Array.isArray(value)
        ? shuffled(value, keys)
        : value,
    ]),
  ) as T;
}

/** Another order of every list in the file, members from their other end, springs and links too. */
export function renumbered(frame: MemberFrame, { keys, reversed }: Order): MemberFrame {
  const turnRound = (m: Member): Member => ({ ...m, from: m.to, to: m.from });
  const members = Object.entries(frame.members).map(([name, m], i): [string, Member] => [
    name,
    reversed[i % reversed.length] ? turnRound(m) : m,
  ]);
  return shuffled({ ...frame, members: Object.fromEntries(members) }, keys);
}
