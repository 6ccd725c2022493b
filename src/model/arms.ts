/** Arms of the file as arms of the model: copies, direction of the cloth, root joint. */

import { boxInertia } from "../element/rigid-mass.ts";
import type { ArmDef } from "../frame/types.ts";
import { plyFit } from "../material/material.ts";
import { stripStiffness } from "../material/strip.ts";
import { copiesOf, copyName } from "./copies.ts";
import { clipToConvex, moments, strip } from "./polygon.ts";
import type { ArmPart, ArmRoot, PlatePart, Vec3 } from "./types.ts";
import {
  checkCopies,
  materialOf,
  mm,
  plateNumber,
  vec3,
  type Workbench,
  warnOfPlies,
} from "./workbench.ts";

/** Bend-twist coupling d16/sqrt(d11 d66) above this is reported: beams here bend and twist apart. */
const COUPLING = 0.1;
/** A gap or overlap between an arm's and a plate's faces above this is an error, m. */
const FACE_GAP = 1e-3;
/** An arm held by a point must begin there to within this, m. */
const POINT_GAP = 1e-4;
/** One above this is worth a word, m. */
const FACE_DOUBT = 1e-4;
/** Least share of the inserted end that must lie under a plate: a half, or less by rounding. */
const COVERED = 0.5 - 1e-6;

export function buildArms(bench: Workbench): void {
  for (const [group, def] of Object.entries(bench.file.arms)) {
    if (!checkCopies(bench, `arms.${group}`, def.copies, [def.tip])) continue;
    for (const { sx, sy } of copiesOf(def.copies)) {
      const root: Vec3 = [sx * def.root[0], sy * def.root[1], def.z];
      const tip: Vec3 = [sx * def.tip[0], sy * def.tip[1], def.z];
      const name = copyName(group, def.copies, tip[0], tip[1]);
      const arm = armPart(bench, group, def, name, root, tip);
      if (!arm) break;
      checkRoot(bench, arm);
      bench.arms.push(arm);
    }
  }
}

function armPart(
  bench: Workbench,
  group: string,
  def: ArmDef,
  name: string,
  root: Vec3,
  tip: Vec3,
): ArmPart | undefined {
  const length = Math.hypot(tip[0] - root[0], tip[1] - root[1]);
  if (!(length > 1e-6)) {
    bench.findings.push({
      path: `arms.${group}`,
      message: `root and tip are ${mm(length)} apart; an arm needs a free length`,
    });
    return undefined;
  }
  const angle = Math.atan2(tip[1] - root[1], tip[0] - root[0]);
  const material = materialOf(bench, def.material);
  // Cloth at a fixed plan angle meets each mirrored copy at its own angle: all are cut from one sheet.
  const warp = def.warp === "along the arm" ? 0 : def.warp - angle;
  const stiffness = stripStiffness(material, def.thickness, warp);
  if (tip[0] === def.tip[0] && tip[1] === def.tip[1]) warn(bench, group, def, stiffness);
  const made: ArmPart = {
    name,
    group,
    root,
    tip,
    length,
    thickness: def.thickness,
    profile: def.width,
    slots: def.slots,
    strip: stiffness,
    material: def.material,
    held: held(bench, def),
    ...(def.elements !== undefined && { elements: def.elements }),
    note: def.note,
  };
  return def.motorPad === undefined ? made : { ...made, pad: pad(made, def, def.motorPad) };
}

function warn(
  bench: Workbench,
  group: string,
  def: ArmDef,
  stiffness: ReturnType<typeof stripStiffness>,
) {
  if (Math.abs(stiffness.bendTwist) > COUPLING) {
    bench.warnings.push(
      `arm "${group}": the laminate couples bending with twist, d16/sqrt(d11 d66) = ${stiffness.bendTwist.toFixed(2)}; the beams here bend and twist apart, so frequencies of this arm are less sure`,
    );
  }
  warnOfPlies(bench, `arm "${group}"`, plyFit(materialOf(bench, def.material), def.thickness));
}

function held(bench: Workbench, def: ArmDef): ArmRoot {
  const j = def.joint;
  if (j.kind === "point") return j;
  if (j.kind === "one piece") {
    const inserted = j.inserted ?? def.width[0].width / 2;
    return { kind: "one piece", plate: plateNumber(bench, j.plate), inserted };
  }
  return {
    kind: "bolted",
    plates: j.plates.map((p) => plateNumber(bench, p)),
    inserted: j.inserted,
    kappa: j.kappa,
    lossFactor: j.lossFactor,
  };
}

/**
 * The disc under the motor beyond the arm's strip: the circle's area less the half strip that lies in
 * it, times the share that is material (screw and shaft holes).
 */
function pad(arm: ArmPart, def: ArmDef, diameter: number): NonNullable<ArmPart["pad"]> {
  const r = diameter / 2;
  const half = Math.min(def.width[def.width.length - 1].width, diameter) / 2;
  // Half of the strip |y| <= half inside the circle: the integral of sqrt(r^2 - y^2) over y.
  const covered = half * Math.sqrt(r * r - half * half) + r * r * Math.asin(half / r);
  const area = Math.max(0, Math.PI * r * r - covered) * def.padFill;
  const mass = arm.strip.density * arm.thickness * area;
  // First moment of the whole disc is zero, so the rest balances the strip's: integral of x dx dy.
  const moment = half * r * r - half ** 3 / 3;
  const beyond = area > 0 ? (moment * def.padFill) / area : 0;
  const along = vec3((i) => (arm.tip[i] - arm.root[i]) / arm.length);
  const cg = vec3((i) => arm.tip[i] + beyond * along[i]);
  const side = Math.sqrt(area);
  return { mass, cg, inertia: boxInertia(mass, side, side, arm.thickness) };
}

function checkRoot(bench: Workbench, arm: ArmPart) {
  const h = arm.held;
  const path = `arms.${arm.group}`;
  if (h.kind === "point") {
    const p = bench.file.points[h.point];
    const apart = Math.hypot(...arm.root.map((v, i) => v - p[i]));
    if (apart > POINT_GAP) {
      bench.findings.push({
        path,
        message: `the root of "${arm.name}" is ${mm(apart)} away from the point "${h.point}" that holds it; put both at the same place, height included`,
      });
    }
    return;
  }
  const plates = h.kind === "bolted" ? h.plates : [h.plate];
  const inward = Math.atan2(arm.root[1] - arm.tip[1], arm.root[0] - arm.tip[0]);
  for (const number of plates) {
    const plate = bench.plates[number];
    if (plate.outline.length === 0) continue; // already reported
    const end = strip(arm.root[0], arm.root[1], inward, h.inserted, arm.profile[0].width);
    const share = moments(clipToConvex(plate.outline, end)).area / moments(end).area;
    if (!(share >= COVERED)) {
      bench.findings.push({
        path,
        message: `"${arm.name}" misses its plate: only ${Math.round(100 * Math.max(0, share || 0))} % of its inserted end (${mm(h.inserted)} inward from the root) lies on "${plate.name}"; move the root onto the plate or lengthen "inserted"`,
      });
    }
    const apart = Math.abs(plate.z - arm.root[2]);
    const touching = h.kind === "bolted" ? (plate.thickness + arm.thickness) / 2 : 0;
    const gap = apart - touching;
    if (Math.abs(gap) > FACE_GAP) {
      bench.findings.push({ path, message: gapMessage(arm, plate, h.kind, gap) });
    } else if (h.kind === "bolted" && Math.abs(gap) > FACE_DOUBT) {
      bench.warnings.push(
        `"${arm.group}" and the plate "${plate.name}" are ${gap > 0 ? `${mm(gap)} apart` : `drawn ${mm(-gap)} into each other`}, taken as touching; was a thickness changed without the plate's z?`,
      );
    }
  }
}

function gapMessage(arm: ArmPart, plate: PlatePart, kind: "bolted" | "one piece", gap: number) {
  const heights = `"${arm.name}" (z ${mm(arm.root[2])}) and the plate "${plate.name}" (z ${mm(plate.z)})`;
  if (kind === "one piece") {
    return `${heights} are one piece but ${mm(gap)} apart in height; give both the same z`;
  }
  const fault = gap > 0 ? `are ${mm(gap)} apart` : `run ${mm(-gap)} into each other`;
  return `${heights} ${fault}: their mid-planes should be half of both thicknesses apart; move the plate's z`;
}

/** Middle of the arms' tips in the plan, m. */
export function centreOf(arms: readonly ArmPart[]): readonly [number, number] {
  const mean = (i: 0 | 1) => arms.reduce((s, a) => s + a.tip[i], 0) / (arms.length || 1);
  return [mean(0), mean(1)];
}
