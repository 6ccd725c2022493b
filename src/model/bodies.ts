/** Bodies of the file as bodies of the model: copies, what carries them, how they are held. */

import { boxInertia, type Inertia } from "../element/rigid-mass.ts";
import type { BodyDef } from "../frame/types.ts";
import { type Copy, copiesOf, copyName } from "./copies.ts";
import { rectangle, sumMoments } from "./polygon.ts";
import type { ArmPart, BodyPart, Hold, Host, PlatePart, SmearedMass, Vec3 } from "./types.ts";
import { checkCopies, mm, mmAt, onPlate, plateNumber, type Workbench } from "./workbench.ts";

/** Footprint of a body without a size, m. */
const SMALL = 6e-3;
/** A rigid body without screws is held near the corners of its footprint, at this share of it. */
const CORNER = 0.8;
/** A corner counts as a dot of this diameter, m: rounding must not decide how a body is held. */
const HAIR = 2e-6;
/** A gap between a body's box and its plate above this is worth a word, m. */
const IN_THE_AIR = 10e-3;
/** How far beyond an arm's end a body may sit, as a share of the arm's length. */
const BEYOND = 0.1;

export function buildBodies(bench: Workbench): BodyPart[] {
  return Object.entries(bench.file.bodies).flatMap(([name, def]) => {
    if (def.mass === 0 && def.hold !== "rigid") {
      bench.findings.push({
        path: `bodies.${name}.mass`,
        message: `a body held "${def.hold}" needs a mass above zero; only a rigid one may be pure inertia`,
      });
      return [];
    }
    if (def.hold === "smeared") return [];
    if (def.at && !checkCopies(bench, `bodies.${name}`, def.copies, [def.at])) return [];
    return copiesOf(def.copies).flatMap((copy) => {
      const body = bodyPart(bench, name, def, copy);
      return body ? [body] : [];
    });
  });
}

function bodyPart(bench: Workbench, group: string, def: BodyDef, copy: Copy): BodyPart | undefined {
  const path = `bodies.${group}`;
  const at = def.at ?? bench.file.points[def.on[0]];
  if (!at) throw new Error(`${path}: neither a place nor a point`);
  const cg: Vec3 = [copy.sx * at[0], copy.sy * at[1], at[2]];
  const host = hostOf(bench, path, def.on[0], cg);
  if (!host) return undefined;
  const foot =
    def.footprint ?? (def.size ? ([def.size[0], def.size[1]] as const) : ([SMALL, SMALL] as const));
  const hold = holdOf(bench, path, def, copy, cg, foot, host);
  if (!hold) return undefined;
  if (host.kind === "plate") warnOfGap(bench, group, def, cg, bench.plates[host.plate]);
  return {
    name: copyName(group, def.copies, cg[0], cg[1]),
    role: "body",
    mass: def.mass,
    cg,
    inertia: inertiaOf(def, copy),
    ...(def.size && { size: def.size }),
    host,
    hold,
    note: def.note,
  };
}

/** A body's box should lie on a face of its plate; one that hangs in the air is a slip of the pen. */
function warnOfGap(bench: Workbench, name: string, { size }: BodyDef, cg: Vec3, plate: PlatePart) {
  if (!size) return;
  const gap = Math.abs(cg[2] - plate.z) - (size[2] + plate.thickness) / 2;
  if (gap <= IN_THE_AIR) return;
  bench.warnings.push(
    `"${name}" hangs ${mm(gap)} away from the plate "${plate.name}" that carries it; check the height of its centre of gravity and its size`,
  );
}

function inertiaOf(def: BodyDef, { sx, sy }: Copy): Inertia {
  if (def.inertia) {
    const I = def.inertia;
    return { ...I, xy: sx * sy * I.xy, xz: sx * I.xz, yz: sy * I.yz };
  }
  const [lx, ly, lz] = def.size ?? [0, 0, 0];
  return boxInertia(def.mass, lx, ly, lz);
}

function hostOf(bench: Workbench, path: string, name: string, cg: Vec3): Host | undefined {
  const plate = plateNumber(bench, name);
  if (plate >= 0) {
    const p = bench.plates[plate];
    if (p.outline.length > 0 && !onPlate(p, cg[0], cg[1], SMALL)) {
      bench.findings.push({
        path: `${path}.at`,
        message: `its centre of gravity ${mmAt(cg[0], cg[1])} lies off the plate "${p.name}" that carries it; move it, or carry it by a point and a link`,
      });
      return undefined;
    }
    return { kind: "plate", plate };
  }
  if (bench.file.points[name]) return { kind: "point", point: name };
  const arms = bench.arms
    .map((arm, i) => ({ arm, i }))
    .filter(({ arm }) => arm.name === name || arm.group === name);
  if (arms.length === 0) return undefined; // the arm itself is at fault and reported
  const { arm, i } = arms.reduce((a, b) => (distance(b.arm, cg) < distance(a.arm, cg) ? b : a));
  const s = along(arm, cg);
  if (s < -BEYOND || s > 1 + BEYOND) {
    bench.findings.push({
      path: `${path}.at`,
      message: `${mmAt(cg[0], cg[1])} lies beyond the free length of "${arm.name}" (${mm(arm.length)} from root to tip)`,
    });
    return undefined;
  }
  return { kind: "arm", arm: i, s: Math.min(1, Math.max(0, s)) };
}

/** Fraction of the free length at the foot of the point on the arm's axis. */
function along(arm: ArmPart, p: Vec3): number {
  return (
    [0, 1].reduce((t, i) => t + (p[i] - arm.root[i]) * (arm.tip[i] - arm.root[i]), 0) /
    arm.length ** 2
  );
}

function distance(arm: ArmPart, p: Vec3): number {
  const s = Math.min(1, Math.max(0, along(arm, p)));
  return Math.hypot(...[0, 1].map((i) => p[i] - arm.root[i] - s * (arm.tip[i] - arm.root[i])));
}

function holdOf(
  bench: Workbench,
  path: string,
  def: BodyDef,
  copy: Copy,
  cg: Vec3,
  foot: readonly [number, number],
  host: Host,
): Hold | undefined {
  if (host.kind !== "plate") {
    if (def.hold === "rigid") return { kind: "direct" };
    bench.findings.push({
      path: `${path}.hold`,
      message: `"${def.hold}" needs a plate; on an arm or a point a body is held "rigid"`,
    });
    return undefined;
  }
  const area = rectangle(
    cg[0] - foot[0] / 2,
    cg[1] - foot[1] / 2,
    cg[0] + foot[0] / 2,
    cg[1] + foot[1] / 2,
  );
  if (def.hold === "spread") return { kind: "spread", area };
  if (def.soft) {
    const { bounce, sway, lossFactor } = def.soft;
    const stiffness = padStiffness(def.mass, bounce, sway);
    return { kind: "soft", area, stiffness, lossFactor };
  }
  const plate = bench.plates[host.plate];
  if (def.screws) {
    const screws = def.screws.map(([x, y]) => [copy.sx * x, copy.sy * y] as const);
    const off = screws.find(([x, y]) => !onPlate(plate, x, y, SMALL));
    if (off && plate.outline.length > 0) {
      bench.findings.push({
        path: `${path}.screws`,
        message: `the screw at ${mmAt(...off)} lies off the plate "${plate.name}"`,
      });
      return undefined;
    }
    return { kind: "rigid", screws, footprint: SMALL };
  }
  const corners = [1, -1].flatMap((sx) =>
    [1, -1].map(
      (sy) => [cg[0] + (sx * CORNER * foot[0]) / 2, cg[1] + (sy * CORNER * foot[1]) / 2] as const,
    ),
  );
  const held = corners.filter(([x, y]) => onPlate(plate, x, y, HAIR));
  return held.length >= 3
    ? { kind: "rigid", screws: held, footprint: Math.min(SMALL, ...foot) }
    : { kind: "spread", area };
}

/** kx ky kz of an even pad that lets the mass bounce and sway at these frequencies (Hz) on a rigid base. */
export function padStiffness(
  m: number,
  bounce: number,
  sway: number,
): readonly [number, number, number] {
  const kz = m * (2 * Math.PI * bounce) ** 2;
  const kx = m * (2 * Math.PI * sway) ** 2;
  return [kx, kx, kz];
}

/** Screws, wires and prints spread over whole plates and arms, in proportion to their area. */
export function buildSmeared(bench: Workbench): SmearedMass[] {
  return Object.entries(bench.file.bodies).flatMap(([name, def]) => {
    if (def.hold !== "smeared" || def.mass === 0) return [];
    const plates = def.on.map((n) => plateNumber(bench, n)).filter((p) => p >= 0);
    const arms = bench.arms.flatMap((a, i) =>
      def.on.includes(a.name) || def.on.includes(a.group) ? [i] : [],
    );
    const plateArea = (p: number) =>
      sumMoments([bench.plates[p].outline, ...bench.plates[p].holes]).area;
    const armArea = (a: number) => bench.arms[a].length * meanWidth(bench.arms[a]);
    const area =
      plates.reduce((s, p) => s + plateArea(p), 0) + arms.reduce((s, a) => s + armArea(a), 0);
    const massPerArea = def.mass / area;
    return [
      {
        name,
        mass: def.mass,
        perPlate: plates.map((plate) => ({ plate, massPerArea })),
        perArm: arms.map((arm) => ({
          arm,
          massPerLength: massPerArea * meanWidth(bench.arms[arm]),
        })),
      },
    ];
  });
}

function meanWidth(arm: ArmPart): number {
  const p = arm.profile;
  let area = 0;
  for (let i = 1; i < p.length; i++)
    area += ((p[i].s - p[i - 1].s) * (p[i].width + p[i - 1].width)) / 2;
  return area;
}
