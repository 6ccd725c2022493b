/** Random frames of points and members in space, as frame files with bare numbers. */

import fc from "fast-check";
import { index, numbered, whole } from "./runs.ts";
import { type Inertia, inertiaOfPairs, minus, plus, type Vec3 } from "./space.ts";

export const DOFS = ["x", "y", "z", "rx", "ry", "rz"] as const;
export type Dof = (typeof DOFS)[number];

export interface Member {
  readonly from: string;
  readonly to: string;
  readonly section: Readonly<Record<string, number | string>>;
  readonly material?: string;
  readonly up: Vec3;
  readonly elements: number;
}

export interface Body {
  readonly mass: number;
  readonly at: Vec3;
  readonly inertia?: Inertia;
  readonly on: string;
}

export type Spring = { readonly between: readonly [string, string] } & {
  readonly [dof in Dof]?: number;
};

export interface MemberFrame {
  readonly beamTheory: "euler-bernoulli" | "rayleigh" | "timoshenko";
  readonly materials: Readonly<Record<string, object>>;
  readonly points: Readonly<Record<string, Vec3>>;
  readonly members: Readonly<Record<string, Member>>;
  readonly links: Readonly<Record<string, { points: readonly [string, string]; ties: "all" }>>;
  readonly bodies: Readonly<Record<string, Body>>;
  readonly springs: Readonly<Record<string, Spring>>;
  readonly supports: Readonly<Record<string, { point: string; fix: readonly Dof[] }>>;
}

export interface Choice {
  /** springs alike in every direction, and held points held in all translations, rotations or both */
  readonly isotropic?: boolean;
  /** "free" has neither supports nor springs to the ground; "held" leaves no rigid-body motion */
  readonly holding?: "free" | "held" | "any";
  readonly theory?: MemberFrame["beamTheory"];
  /** sections of all shapes, or given by their stiffness alone */
  readonly sections?: "any" | "stiffness";
}

/** Points on a lattice of 25 mm, moved by less than half of that: never closer than 9 mm. */
const place = fc.tuple(whole(-4, 4), whole(-4, 4), whole(-4, 4));
const shift = fc.tuple(whole(-8, 8), whole(-8, 8), whole(-8, 8));
const places = (count: number) =>
  fc
    .tuple(
      fc.uniqueArray(place, { minLength: count, maxLength: count, selector: String }),
      fc.array(shift, { minLength: count, maxLength: count }),
    )
    .map(([lattice, shifts]) =>
      lattice.map((p, i): Vec3 => plus([25 * p[0], 25 * p[1], 25 * p[2]], shifts[i])),
    );

const byStiffness: fc.Arbitrary<Member["section"]> = fc.record({
  shape: fc.constant("stiffness"),
  EA: whole(1, 4).map((v) => 1e6 * v),
  EIy: whole(2, 40),
  EIz: whole(2, 40),
  GJ: whole(1, 20),
  massPerLength: whole(2, 20).map((v) => v / 100),
  inertiaPerLength: whole(1, 20).map((v) => v / 1e6),
});

const anySection: fc.Arbitrary<Member["section"]> = fc.oneof(
  fc.record({ shape: fc.constant("rectangle"), width: whole(4, 12), height: whole(3, 9) }),
  fc.record({ shape: fc.constant("tube"), outer: whole(6, 12), bore: whole(2, 5) }),
  fc.record({ shape: fc.constant("rod"), diameter: whole(3, 9) }),
  fc.record({ shape: fc.constant("hexagon"), acrossFlats: whole(5, 9), bore: whole(0, 3) }),
  fc.record({
    shape: fc.constant("constants"),
    A: whole(10, 60),
    Iy: whole(40, 400),
    Iz: whole(40, 400),
    J: whole(40, 400),
    Ip: whole(80, 800),
  }),
  byStiffness,
);

const material = fc
  .record({ E: whole(3, 200), nu: whole(0, 40), density: whole(1, 8) })
  .map(({ E, nu, density }) => ({ kind: "isotropic", E, nu: nu / 100, density }));

/** A direction across the member: the one drawn, or an axis where that runs along it. */
function across(along: Vec3, drawn: Vec3): Vec3 {
  const cross = (u: Vec3) =>
    Math.hypot(
      u[1] * along[2] - u[2] * along[1],
      u[2] * along[0] - u[0] * along[2],
      u[0] * along[1] - u[1] * along[0],
    ) / Math.hypot(...along);
  if (cross(drawn) > 0.3 * Math.hypot(...drawn)) return drawn;
  return cross([0, 0, 1]) > 0.5 ? [0, 0, 1] : [1, 0, 0];
}

const someDofs = fc.subarray([...DOFS], { minLength: 1 });
const evenDofs = fc.constantFrom<readonly Dof[]>(DOFS, ["x", "y", "z"], ["rx", "ry", "rz"]);
const size = whole(1, 60);

/** Stiffness in N/mm along and N m/rad about. */
function springs(count: number, { isotropic, holding }: Choice) {
  const stiffness = isotropic
    ? fc.tuple(size, size).map(([k, r]) => ({ x: k, y: k, z: k, rx: r, ry: r, rz: r }))
    : fc
        .tuple(someDofs, fc.array(size, { minLength: 6, maxLength: 6 }))
        .map(([dofs, k]) => Object.fromEntries(dofs.map((d) => [d, k[DOFS.indexOf(d)]])));
  const ends = fc.tuple(index(count), index(count)).map(([a, b]): [string, string] | undefined => {
    if (a !== b) return [`p${a}`, `p${b}`];
    return holding === "free" ? undefined : [`p${a}`, "ground"];
  });
  return fc
    .array(fc.tuple(ends, stiffness), { maxLength: 2 })
    .map((list): Spring[] =>
      list.flatMap(([between, k]) => (between === undefined ? [] : [{ between, ...k }])),
    );
}

function supports(count: number, { isotropic, holding = "any" }: Choice) {
  const one = fc.record({
    point: index(count).map((i) => `p${i}`),
    fix: isotropic ? evenDofs : someDofs,
  });
  const clamp = fc.record({
    point: index(count).map((i) => `p${i}`),
    fix: fc.constant<readonly Dof[]>(DOFS),
  });
  if (holding === "free") return fc.constant([]);
  const further = fc.array(one, { maxLength: 2 });
  if (holding === "any") return further;
  return fc.tuple(clamp, further).map(([first, more]) => [first, ...more]);
}

/** A connected frame of two to five points, a member to each point from an earlier one, and a few more. */
export function memberFrame(choice: Choice = {}): fc.Arbitrary<MemberFrame> {
  return whole(2, 5).chain((count) => {
    const drawn = fc
      .tuple(whole(-2, 2), whole(-2, 2), whole(-2, 2))
      .map((v): Vec3 => (v.every((c) => c === 0) ? [0, 0, 1] : v));
    const section = choice.sections === "stiffness" ? byStiffness : anySection;
    const member = fc.record({ section, up: drawn, elements: whole(1, 2), material: index(2) });
    return fc
      .record({
        beamTheory: choice.theory
          ? fc.constant(choice.theory)
          : fc.constantFrom("rayleigh", "euler-bernoulli", "timoshenko"),
        materials: fc.tuple(material, material),
        places: places(count),
        parents: fc.tuple(...Array.from({ length: count - 1 }, (_, i) => index(i + 1))),
        closing: fc.array(fc.tuple(index(count), index(count)), { maxLength: 2 }),
        members: fc.array(member, { minLength: count + 1, maxLength: count + 1 }),
        outrigger: fc.option(fc.tuple(index(count), shift), { nil: undefined }),
        bodies: fc.array(body(count), { maxLength: 2 }),
        springs: springs(count, choice),
        supports: supports(count, choice),
      })
      .map((parts) => put(parts));
  });
}

interface DrawnBody {
  readonly mass: number;
  readonly on: number;
  readonly offset: Vec3;
  readonly spread: readonly Vec3[];
}

function body(count: number): fc.Arbitrary<DrawnBody> {
  const offset = fc.tuple(whole(-15, 15), whole(-15, 15), whole(-15, 15));
  return fc.record({
    mass: whole(1, 80),
    on: index(count),
    offset,
    spread: fc.array(offset, { maxLength: 3 }),
  });
}

interface Parts {
  readonly beamTheory: MemberFrame["beamTheory"];
  readonly materials: readonly object[];
  readonly places: readonly Vec3[];
  readonly parents: readonly number[];
  readonly closing: readonly (readonly [number, number])[];
  readonly members: readonly {
    readonly section: Member["section"];
    readonly up: Vec3;
    readonly elements: number;
    readonly material: number;
  }[];
  readonly outrigger?: readonly [number, Vec3] | undefined;
  readonly bodies: readonly DrawnBody[];
  readonly springs: readonly Spring[];
  readonly supports: readonly { readonly point: string; readonly fix: readonly Dof[] }[];
}

function put(parts: Parts): MemberFrame {
  const pairs = [
    ...parts.parents.map((parent, i): [number, number] => [parent, i + 1]),
    ...parts.closing.filter(([a, b]) => a !== b),
  ];
  const members = pairs.map(([a, b], i): Member => {
    const { section: shape, up, elements, material: m } = parts.members[i];
    return {
      from: `p${a}`,
      to: `p${b}`,
      section: shape,
      ...(shape.shape !== "stiffness" && { material: `m${m}` }),
      up: across(minus(parts.places[b], parts.places[a]), up),
      // A node between the points, so that something can move whatever is held.
      elements: i === 0 ? 2 : elements,
    };
  });
  const bodies = parts.bodies.map(
    ({ mass, on, offset, spread }): Body => ({
      mass,
      at: plus(parts.places[on], offset),
      ...(spread.length > 0 && { inertia: inertiaOfPairs(mass, spread) }),
      on: `p${on}`,
    }),
  );
  const points = numbered("p", parts.places);
  const frame = {
    beamTheory: parts.beamTheory,
    materials: numbered("m", parts.materials),
    points,
    members: numbered("beam", members),
    links: {},
    bodies: numbered("body", bodies),
    springs: numbered("spring", parts.springs),
    supports: numbered("support", parts.supports),
  };
  if (!parts.outrigger) return frame;
  // A point held rigidly beside another one, with a weight at its end.
  const [from, away] = parts.outrigger;
  const far = plus(parts.places[from], away);
  return {
    ...frame,
    points: { ...points, far },
    links: { outrigger: { points: [`p${from}`, "far"], ties: "all" } },
    bodies: { ...frame.bodies, far: { mass: 12, at: far, on: "far" } },
  };
}
