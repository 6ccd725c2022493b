/**
 * Random small multirotors as frame files with bare numbers: a deck of any outline, a smaller one on
 * standoffs above it, three or four arms as mirrored copies, motors, a battery, an eye on a plate.
 */

import fc from "fast-check";
import { index, whole } from "./runs.ts";
import { type Inertia, inertiaOfPairs, type Vec3 } from "./space.ts";

export type Vec2 = readonly [number, number];
export type Copies = "none" | "left and right" | "front and rear" | "all four corners";

export interface Sheet {
  /** degrees from the bottom ply up; undefined where the material has no plies */
  readonly angles?: readonly number[];
  readonly constants: Readonly<Record<string, number | string>>;
}

export interface Plate {
  readonly material: string;
  readonly thickness: number;
  readonly z: number;
  readonly warp: number;
  readonly outline: readonly Vec2[];
  readonly holes: readonly { readonly at: Vec2; readonly diameter: number }[];
}

export interface Arm {
  readonly material: string;
  readonly thickness: number;
  readonly z: number;
  readonly root: Vec2;
  readonly tip: Vec2;
  readonly width: readonly [number, number];
  readonly warp: number | "along the arm";
  readonly copies: Copies;
  readonly elements: number;
  readonly joint: Readonly<Record<string, number | string>>;
}

export interface PlateBody {
  readonly mass: number;
  readonly at: Vec3;
  readonly size?: Vec3;
  readonly inertia?: Inertia;
  readonly on: string;
  readonly hold?: "rigid" | "spread" | "soft";
  readonly soft?: { readonly bounce: number };
  readonly copies: Copies;
}

export interface Multirotor {
  readonly meshSize: number;
  readonly sheets: Readonly<Record<string, Sheet>>;
  readonly plates: Readonly<Record<string, Plate>>;
  readonly arms: Readonly<Record<string, Arm>>;
  readonly posts: Readonly<Record<string, { at: Vec2; copies: Copies }>>;
  readonly points: Readonly<Record<string, Vec3>>;
  readonly bodies: Readonly<Record<string, PlateBody>>;
}

/** The frame file; `more` adds sections or replaces them. */
export function fileOf(m: Multirotor, more: object = {}): object {
  const materials = Object.entries(m.sheets).map(([name, { angles, constants }]) => [
    name,
    angles ? { kind: "laminate", stack: `[${angles.join("/")}]`, ply: `${name} ply` } : constants,
  ]);
  const plies = Object.entries(m.sheets).flatMap(([name, { angles, constants }]) =>
    angles ? [[`${name} ply`, constants]] : [],
  );
  const posts = Object.entries(m.posts).map(([name, at]) => [
    name,
    { ...at, between: ["base", "top"], section: { shape: "rod", diameter: 5 }, material: "metal" },
  ]);
  return {
    meshSize: m.meshSize,
    plies: Object.fromEntries(plies),
    materials: { ...Object.fromEntries(materials), metal: METAL },
    plates: m.plates,
    arms: m.arms,
    standoffs: Object.fromEntries(posts),
    points: m.points,
    links: { eye: { point: "eye", plate: "base", footprint: 7 } },
    bodies: m.bodies,
    ...more,
  };
}

const METAL = { kind: "isotropic", E: 70, nu: 0.33, density: 2.7 };

const cloth = fc
  .record({
    E1: whole(40, 140),
    E2: whole(8, 40),
    G12: whole(3, 8),
    nu12: whole(0, 30).map((v) => v / 100),
  })
  .map((c) => ({ ...c, G13: 3, density: 1.5, thickness: 0.25 }));

const sheet: fc.Arbitrary<Sheet> = fc.oneof(
  fc.record({
    angles: fc.array(whole(-90, 90), { minLength: 1, maxLength: 5 }),
    constants: cloth,
  }),
  cloth.map(({ thickness: _, ...c }) => ({ constants: { kind: "measured", ...c } })),
);

/** Eight corners around the middle, in order; the sides pass it at 0.7 of `least` or more. */
function outline(least: number, most: number): fc.Arbitrary<Vec2[]> {
  const corner = fc.tuple(whole(least, most), whole(-8, 8));
  return fc.array(corner, { minLength: 8, maxLength: 8 }).map((corners) =>
    corners.map(([radius, off], i): Vec2 => {
      const a = ((45 * i + 20 + off) * Math.PI) / 180;
      return [
        Math.round(10 * radius * Math.cos(a)) / 10,
        Math.round(10 * radius * Math.sin(a)) / 10,
      ];
    }),
  );
}

const away = fc.tuple(whole(-15, 15), whole(-15, 15), whole(-15, 15));

interface Drawn {
  readonly thickness: readonly [number, number, number];
  readonly jointKind: "bolted" | "one piece";
  readonly warps: readonly [number, number];
  readonly armWarp: number | "along the arm";
  readonly root: Vec2;
  readonly tip: Vec2;
  readonly width: readonly [number, number];
}

/** Arms at all four corners, as two pairs, or as a pair and one behind. */
function armsOf(layout: number, d: Drawn): Record<string, Arm> {
  const [base, , arm] = d.thickness;
  const bolted = d.jointKind === "bolted";
  const each = {
    material: "arm",
    thickness: bolted ? arm : base,
    z: bolted ? (base + arm) / 2 : 0,
    width: d.width,
    warp: d.armWarp,
    elements: 2,
    joint: bolted
      ? { kind: "bolted", plates: "base", inserted: 12 }
      : { kind: "one piece", plate: "base" },
  };
  const [[rx, ry], [tx, ty]] = [d.root, d.tip];
  if (layout === 0) {
    return { arm: { ...each, root: [rx, ry], tip: [tx, ty], copies: "all four corners" } };
  }
  const front: Arm = { ...each, root: [rx, ry], tip: [tx, ty], copies: "left and right" };
  if (layout === 1) {
    return {
      front,
      rear: { ...each, root: [-rx, ry], tip: [-tx - 7, ty - 5], copies: "left and right" },
    };
  }
  return { front, tail: { ...each, root: [-20, 0], tip: [-80, 3], copies: "none" } };
}

export interface MultirotorChoice {
  /** no part whose patch or pieces have a size of the program's own (they do not scale) */
  readonly scalable?: boolean;
}

export function multirotor({ scalable = false }: MultirotorChoice = {}): fc.Arbitrary<Multirotor> {
  const drawn = fc.record<Drawn>({
    thickness: fc.tuple(whole(2, 4), whole(1, 3), whole(3, 6)),
    jointKind: scalable ? fc.constant("one piece") : fc.constantFrom("one piece", "bolted"),
    warps: fc.tuple(whole(-90, 90), whole(-90, 90)),
    armWarp: fc.oneof(fc.constant<"along the arm">("along the arm"), whole(-90, 90)),
    root: fc.tuple(whole(13, 17), whole(10, 14)),
    tip: fc.tuple(whole(40, 70), whole(35, 65)),
    width: fc.tuple(whole(8, 14), whole(6, 12)),
  });
  return fc
    .record({
      drawn,
      layout: index(3),
      sheets: fc.record({ base: sheet, top: sheet, arm: sheet }),
      outlines: fc.tuple(outline(34, 45), outline(28, 33)),
      hole: fc.option(fc.tuple(whole(-6, 6), whole(-6, 6), whole(4, 9)), { nil: undefined }),
      posts: fc.constantFrom<Copies>("all four corners", "left and right"),
      motor: fc.record({ mass: whole(5, 30), spread: fc.array(away, { maxLength: 2 }) }),
      battery: fc.record({
        mass: whole(30, 150),
        at: fc.tuple(whole(-5, 5), whole(-5, 5)),
        size: fc.tuple(whole(20, 32), whole(10, 24), whole(8, 20)),
        hold: scalable ? fc.constant<"soft">("soft") : fc.constantFrom("rigid", "spread", "soft"),
        bounce: whole(40, 120),
      }),
      eye: fc.record({
        at: fc.tuple(whole(-9, 9), whole(-9, 9)),
        spread: fc.array(away, { maxLength: 3 }),
      }),
    })
    .map((p): Multirotor => {
      const { drawn: d, battery, eye, motor } = p;
      const topZ = 20;
      const arms = armsOf(p.layout, d);
      const motors = Object.entries(arms).map(([name, arm]): [string, PlateBody] => [
        `${name} motor`,
        {
          mass: motor.mass,
          at: [arm.tip[0], arm.tip[1], arm.z + 8],
          ...(motor.spread.length > 0 && { inertia: inertiaOfPairs(motor.mass, motor.spread) }),
          on: name,
          copies: arm.copies,
        },
      ]);
      const [base, top] = d.thickness;
      const face = topZ + top / 2 + battery.size[2] / 2;
      return {
        meshSize: 12,
        sheets: p.sheets,
        plates: {
          base: {
            material: "base",
            thickness: base,
            z: 0,
            warp: d.warps[0],
            outline: p.outlines[0],
            holes: p.hole ? [{ at: [p.hole[0], p.hole[1]], diameter: p.hole[2] }] : [],
          },
          top: {
            material: "top",
            thickness: top,
            z: topZ,
            warp: d.warps[1],
            outline: p.outlines[1],
            holes: [],
          },
        },
        arms,
        posts: {
          post: { at: [14, 11], copies: p.posts },
          ...(p.posts === "left and right" && { back: { at: [-16, 2], copies: "none" as const } }),
        },
        points: { eye: [eye.at[0], eye.at[1], 0] },
        bodies: {
          ...Object.fromEntries(motors),
          battery: {
            mass: battery.mass,
            at: [battery.at[0], battery.at[1], face],
            size: battery.size,
            on: "top",
            hold: battery.hold,
            ...(battery.hold === "soft" && { soft: { bounce: battery.bounce } }),
            copies: "none",
          },
          camera: {
            mass: 9,
            at: [eye.at[0] + 4, eye.at[1] - 3, 5],
            ...(eye.spread.length > 0 && { inertia: inertiaOfPairs(9, eye.spread) }),
            on: "eye",
            copies: "none",
          },
        },
      };
    });
}
