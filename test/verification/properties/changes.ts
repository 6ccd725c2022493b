/** Ways to make a frame heavier or stiffer whose rank is known. */

import fc from "fast-check";
import { DOFS, type Dof } from "./member-frames.ts";
import { whole } from "./runs.ts";
import { inertiaOfPairs, plus, type Vec3 } from "./space.ts";

/** What all frame files with named points have. */
export interface Pointed {
  readonly points: Readonly<Record<string, Vec3>>;
  readonly members?: object;
  readonly bodies?: object;
  readonly links?: object;
  readonly springs?: object;
  readonly supports?: object;
}

export interface Change {
  readonly rank: number;
  readonly apply: <F extends Pointed>(frame: F) => F;
}

const offset = fc.tuple(whole(-20, 20), whole(-20, 20), whole(-20, 20));

/** A name among the frame's points, whatever their number. */
function pointOf(frame: Pointed, number: number): string {
  const names = Object.keys(frame.points);
  return names[number % names.length];
}

/**
 * A body at a point, off it: three translations of its centre of gravity; with inertia as many
 * rotations more as there are principal moments. Pure inertia about one axis has rank 1.
 */
export const heavier: fc.Arbitrary<Change> = fc
  .record({
    at: fc.nat(99),
    offset,
    mass: whole(1, 200),
    inertia: fc.constantFrom("none", "one axis", "all axes"),
  })
  .map(({ at, offset: r, mass, inertia }) => ({
    rank: { none: 3, "one axis": 1, "all axes": 6 }[inertia],
    apply: (frame) => {
      const on = pointOf(frame, at);
      const full = inertiaOfPairs(mass, [[12, 3, 0], [-2, 9, 5], r]);
      const alone = { xx: 0, yy: 0, zz: 100 * mass };
      const lump = {
        on,
        at: plus(frame.points[on], r),
        mass: inertia === "one axis" ? 0 : mass,
        ...(inertia !== "none" && { inertia: inertia === "one axis" ? alone : full }),
      };
      return { ...frame, bodies: { ...frame.bodies, lump } };
    },
  }));

const someDofs: fc.Arbitrary<readonly Dof[]> = fc.subarray([...DOFS], { minLength: 1 });

/** Springs of one point to the ground, one for each direction. */
export const springToGround: fc.Arbitrary<Change> = fc
  .record({ at: fc.nat(99), dofs: someDofs, k: whole(1, 200) })
  .map(({ at, dofs, k }) => ({
    rank: dofs.length,
    apply: (frame) => {
      const stiffness = Object.fromEntries(dofs.map((dof) => [dof, k]));
      const tether = { between: [pointOf(frame, at), "ground"], ...stiffness };
      return { ...frame, springs: { ...frame.springs, tether } };
    },
  }));

/** One point held in some directions. */
export const support: fc.Arbitrary<Change> = fc
  .record({ at: fc.nat(99), fix: someDofs })
  .map(({ at, fix }) => ({
    rank: fix.length,
    apply: (frame) => ({
      ...frame,
      supports: { ...frame.supports, pin: { point: pointOf(frame, at), fix } },
    }),
  }));

/** Two points joined: by springs, by a member without mass (rank 6), or by a rigid link. */
export const joinedPoints: fc.Arbitrary<Change> = fc
  .record({
    ends: fc.uniqueArray(whole(0, 1), { minLength: 2, maxLength: 2 }),
    dofs: someDofs,
    by: fc.constantFrom("spring", "member", "link"),
    k: whole(1, 200),
  })
  .map(({ ends, dofs, by, k }) => ({
    rank: by === "member" ? 6 : dofs.length,
    apply: (frame) => {
      const [from, to] = ends.map((end) => pointOf(frame, end));
      const between: [string, string] = [from, to];
      if (by === "link") {
        return { ...frame, links: { ...frame.links, bridge: { points: between, ties: dofs } } };
      }
      if (by === "spring") {
        const stiffness = Object.fromEntries(dofs.map((dof) => [dof, k]));
        return { ...frame, springs: { ...frame.springs, bridge: { between, ...stiffness } } };
      }
      const section = {
        ...{ shape: "stiffness", EA: 1e4 * k, EIy: k / 10, EIz: k / 20, GJ: k / 30 },
        massPerLength: 0,
      };
      // Along no member, for its coordinates have nothing in common with theirs.
      const bridge = { from, to, section, elements: 1, up: [0.31, 0.47, -0.83] };
      return { ...frame, members: { ...frame.members, bridge } };
    },
  }));
