/** Motors, propellers, the sensor stack and the places it could sit. */

import { boxInertia, type Inertia } from "../element/rigid-mass.ts";
import type { FrameFile } from "../frame/types.ts";
import type { PropulsionDef } from "../frame/types-flight.ts";
import type { CandidateDef, HolePattern, IsolatorsDef } from "../frame/types-stack.ts";
import { centreOf } from "./arms.ts";
import { checkIsolators, damped, resolveIsolators } from "./isolators.ts";
import { PLAIN_STACK } from "./plain-stack.ts";
import type { BodyPart, Candidate, Isolators, PlatePart, Rotor, Vec3 } from "./types.ts";
import { mm, mmAt, onPlate, plateNumber, type Workbench } from "./workbench.ts";

/** Share of a motor's mass that turns, where the file does not say; common practice, no source. */
const BELL_SHARE = 0.55;
/** A motor without a size: a cylinder of this density and height/diameter; common practice, no source. */
const MOTOR_DENSITY = 3500;
const MOTOR_ASPECT = 0.7;

/** Motors and propellers as bodies on the arms' tips. */
export function buildMotors(bench: Workbench): BodyPart[] {
  const p = bench.file.propulsion;
  if (!p) return [];
  const up = p.side === "above" ? 1 : -1;
  return motorArms(bench, p).flatMap((i) => {
    const arm = bench.arms[i];
    const host = { kind: "arm", arm: i, s: 1 } as const;
    const at = (h: number): Vec3 => [arm.tip[0], arm.tip[1], arm.tip[2] + up * h];
    const mass = p.motor.mass + p.motor.screwMass;
    const motor = motorName(arm.name);
    const common = { host, hold: { kind: "direct" }, note: "" } as const;
    const propeller = p.propeller.mass + p.propeller.nutMass;
    return [
      {
        name: motor,
        role: "motor",
        mass,
        cg: at(p.motor.cgHeight),
        inertia: motorInertia(p),
        ...common,
      },
      {
        name: `${motor} propeller`,
        role: "propeller",
        mass: propeller,
        cg: at(p.propeller.planeHeight),
        inertia: propellerInertia(p),
        ...common,
      },
    ];
  });
}

function motorArms(bench: Workbench, p: PropulsionDef): number[] {
  return bench.arms.flatMap((arm, i) =>
    !p.arms || p.arms.includes(arm.name) || p.arms.includes(arm.group) ? [i] : [],
  );
}

/** "front left arm" carries the "front left motor". */
function motorName(arm: string): string {
  return /\barm\b/.test(arm) ? arm.replace(/\barm\b/, "motor") : `${arm} motor`;
}

/** An even cylinder; about the shaft only the part that does not turn, as for the propeller. */
function motorInertia(p: PropulsionDef): Inertia {
  const mass = p.motor.mass + p.motor.screwMass;
  const assumed = Math.cbrt(mass / (MOTOR_DENSITY * (Math.PI / 4) * MOTOR_ASPECT));
  const [d, h] = p.motor.size ?? [assumed, assumed * MOTOR_ASPECT];
  const tilt = mass * ((d * d) / 16 + (h * h) / 12);
  const still = Math.max(0, mass - bellMass(p));
  return { xx: tilt, yy: tilt, zz: (still * d * d) / 8, xy: 0, xz: 0, yz: 0 };
}

/** The part of a motor that turns, kg. */
function bellMass({ motor }: PropulsionDef): number {
  return motor.bellMass ?? BELL_SHARE * motor.mass;
}

/**
 * Even thin blades: R^2/6 m about a diameter. None about the shaft: the propeller turns freely on its
 * bearings, so the arm does not carry that inertia. Gyroscopic moments are left out.
 */
function propellerInertia({ propeller }: PropulsionDef): Inertia {
  const tilt = (propeller.mass * (propeller.diameter / 2) ** 2) / 6;
  return { xx: tilt, yy: tilt, zz: 0, xy: 0, xz: 0, yz: 0 };
}

/**
 * The motors as sources. The one nearest to the front left turns as the file says, neighbours around
 * the frame the other way.
 */
export function buildRotors(bench: Workbench): Rotor[] {
  const p = bench.file.propulsion;
  if (!p) return [];
  const up = p.side === "above" ? 1 : -1;
  const arms = motorArms(bench, p);
  warnOfOverlap(bench, arms, p.propeller.diameter);
  const [cx, cy] = centreOf(arms.map((a) => bench.arms[a]));
  const azimuth = (a: number) => Math.atan2(bench.arms[a].tip[1] - cy, bench.arms[a].tip[0] - cx);
  const around = [...arms].sort((a, b) => azimuth(a) - azimuth(b));
  const off = (a: number) => Math.abs(azimuth(a) - Math.PI / 4);
  const first = arms.reduce((a, b) => (off(b) < off(a) ? b : a), arms[0]);
  const sense = p.frontLeftTurns === "anticlockwise" ? 1 : -1;
  return arms.map((arm) => {
    const tip = bench.arms[arm].tip;
    const apart = Math.abs(around.indexOf(arm) - around.indexOf(first));
    return {
      name: motorName(bench.arms[arm].name),
      arm,
      position: [tip[0], tip[1], tip[2] + up * p.propeller.planeHeight],
      spin: apart % 2 === 0 ? sense : sense === 1 ? -1 : 1,
      rotatingMass: bellMass(p) + p.propeller.mass + p.propeller.nutMass,
    };
  });
}

/** Propellers on one shaft are built; on arms copied by mistake they are a slip. */
function warnOfOverlap(bench: Workbench, arms: readonly number[], diameter: number): void {
  for (let i = 0; i < arms.length; i++) {
    for (let j = 0; j < i; j++) {
      const [a, b] = [bench.arms[arms[i]], bench.arms[arms[j]]];
      const apart = Math.hypot(a.tip[0] - b.tip[0], a.tip[1] - b.tip[1]);
      if (apart >= diameter / 2) continue;
      bench.warnings.push(
        `the motors of "${b.name}" and "${a.name}" are ${mm(apart)} apart, less than a propeller's radius; is one arm there twice?`,
      );
    }
  }
}

function holesAt(h: HolePattern, x: number, y: number): [number, number][] {
  const [c, s] = [Math.cos(h.turned), Math.sin(h.turned)];
  return [1, -1].flatMap((i) =>
    [1, -1].map((j): [number, number] => {
      const [u, v] = [(i * h.spacing[0]) / 2, (j * h.spacing[1]) / 2];
      return [x + c * u - s * v, y + s * u + c * v];
    }),
  );
}

/** Height of a stack's centre of gravity on a plate. */
function stackHeight(bench: Workbench, plate: number, side: 1 | -1, height: number): number {
  const p = bench.plates[plate];
  return p.z + side * (p.thickness / 2 + height);
}

/** The stack as a body where the file puts it, screwed down through its hole pattern. */
export function buildStack(bench: Workbench): BodyPart[] {
  const def = bench.file.stack;
  if (!def) return [];
  const plate = plateNumber(bench, def.plate);
  const side = def.side === "above" ? 1 : -1;
  const [x, y] = def.at;
  const screws = holesAt(def.holes, x, y);
  const part = bench.plates[plate];
  const off = screws.find(([sx, sy]) => !onPlate(part, sx, sy, def.holes.footprint));
  if (off && part.outline.length > 0) {
    bench.findings.push({
      path: "stack",
      message: `its hole at ${mmAt(...off)} lies off the plate "${def.plate}"; move the stack, or give the hole pattern that fits`,
    });
    return [];
  }
  const isolators = resolveIsolators(def.isolators, part.z + (side * part.thickness) / 2);
  return [
    {
      name: "stack",
      role: "stack",
      mass: def.mass,
      cg: [x, y, stackHeight(bench, plate, side, def.height)],
      inertia: boxInertia(def.mass, ...(def.size as [number, number, number])),
      size: def.size,
      host: { kind: "plate", plate },
      hold: {
        kind: "seat",
        screws,
        footprint: def.holes.footprint,
        ...(isolators && { isolators }),
      },
      note: "",
    },
  ];
}

/** A candidate place, from a name or found on a plate. */
export function candidateAt(
  bench: { readonly plates: readonly PlatePart[]; readonly file: FrameFile },
  name: string,
  def: Pick<CandidateDef, "plate" | "at" | "side" | "note"> & Partial<CandidateDef>,
  named: boolean,
): Candidate {
  const stack = bench.file.stack;
  const plate = bench.plates.findIndex((p) => p.name === def.plate);
  const side = def.side === "above" ? 1 : -1;
  const holes = def.holes ?? stack?.holes ?? PLAIN_STACK.holes;
  const chip = stack?.chip ?? PLAIN_STACK.chip;
  const [x, y] = def.at;
  const p = bench.plates[plate];
  const height = def.height ?? stack?.height ?? PLAIN_STACK.height;
  const face = p.z + (side * p.thickness) / 2;
  const z = face + side * (height + chip[2]);
  const { mass, size } = stack ?? PLAIN_STACK;
  const mounts = (given: IsolatorsDef | undefined) =>
    damped(resolveIsolators(given, face), bench.file.dampingFactor);
  const isolators = mounts(def.isolators ?? stack?.isolators);
  return {
    name,
    plate,
    x,
    y,
    side,
    holes: holesAt(holes, x, y),
    footprint: holes.footprint,
    cg: [x, y, face + side * height],
    // under a plate the stack hangs turned about x
    chip: [x + chip[0], y + side * chip[1], z],
    stack: { mass, inertia: boxInertia(mass, ...size) },
    ...(isolators && { isolators }),
    designed:
      stack !== undefined &&
      sameHoles(holes, stack.holes) &&
      Math.abs(height - stack.height) < 1e-4 &&
      sameMounts(isolators, mounts(stack.isolators)) &&
      stack.plate === def.plate &&
      stack.side === def.side &&
      Math.hypot(stack.at[0] - x, stack.at[1] - y) < 1e-4,
    named,
    note: def.note,
  };
}

function sameHoles(a: HolePattern, b: HolePattern): boolean {
  const near = (p: number, q: number) => Math.abs(p - q) < 1e-6;
  return (
    near(a.turned, b.turned) && near(a.spacing[0], b.spacing[0]) && near(a.spacing[1], b.spacing[1])
  );
}

function sameMounts(a: Isolators | undefined, b: Isolators | undefined): boolean {
  return a?.axial === b?.axial && a?.lateral === b?.lateral && a?.lossFactor === b?.lossFactor;
}

export function buildCandidates(bench: Workbench): Candidate[] {
  checkIsolators(bench);
  const found: Candidate[] = [];
  for (const [name, def] of Object.entries(bench.file.candidates)) {
    const plate = bench.plates[plateNumber(bench, def.plate)];
    if (plate.outline.length === 0) continue;
    if (!onPlate(plate, def.at[0], def.at[1])) {
      bench.findings.push({
        path: `candidates.${name}.at`,
        message: `${mmAt(...def.at)} lies off the plate "${def.plate}"; a candidate's centre must be on its plate`,
      });
      continue;
    }
    found.push(candidateAt(bench, name, def, true));
  }
  return found;
}
