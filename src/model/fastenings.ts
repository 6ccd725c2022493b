/** Standoffs, joints, members, links, springs and supports of the file as parts of the model. */

import type { SectionDef } from "../frame/types.ts";
import type { DofName, Stiffness } from "../frame/types-basic.ts";
import { type BeamSection, beamSection } from "../material/section.ts";
import type { SectionShape } from "../material/section-shape.ts";
import { copiesOf, copyName } from "./copies.ts";
import type {
  JointPart,
  LinkPart,
  MemberPart,
  SixStiffness,
  SpringPart,
  StandoffPart,
  SupportPart,
  Vec3,
} from "./types.ts";
import {
  checkCopies,
  materialOf,
  mm,
  mmAt,
  onPlate,
  plateNumber,
  type Workbench,
} from "./workbench.ts";

const DOFS: readonly DofName[] = ["x", "y", "z", "rx", "ry", "rz"];

/** Motion numbers 0..5 of their names. */
export function motionNumbers(names: readonly DofName[]): number[] {
  return names.map((n) => DOFS.indexOf(n)).sort((a, b) => a - b);
}

function six(s: Stiffness, absent: number): SixStiffness {
  const [x, y, z, rx, ry, rz] = DOFS.map((d) => s[d] ?? absent);
  return [x, y, z, rx, ry, rz];
}

function shapeOf(def: SectionDef): SectionShape | undefined {
  switch (def.shape) {
    case "rectangle":
      return { shape: "bar", width: def.width, height: def.height };
    case "tube":
    case "rod":
    case "hexagon":
      return def;
    case "constants": {
      const { A, Iy, Iz, J, Ip, shearAreaY: Ay, shearAreaZ: Az } = def;
      const optional = {
        ...(Ip !== undefined && { Ip }),
        ...(Ay !== undefined && { Ay }),
        ...(Az !== undefined && { Az }),
      };
      return { shape: "given", A, Iy, Iz, J, ...optional };
    }
    case "stiffness":
      return undefined;
  }
}

/** Beam constants of a section; given stiffness needs no material. */
export function sectionOf(
  bench: Workbench,
  def: SectionDef,
  material: string | undefined,
  path: string,
): BeamSection {
  const shape = shapeOf(def);
  if (shape && material !== undefined) {
    return beamSection(shape, materialOf(bench, material), 0, `${path}.section`);
  }
  if (def.shape !== "stiffness") throw new Error(`${path}: a drawn section without a material`);
  return {
    EA: def.EA,
    EIy: def.EIy,
    EIz: def.EIz,
    GJ: def.GJ,
    kGAy: def.kGAy ?? Number.POSITIVE_INFINITY,
    kGAz: def.kGAz ?? Number.POSITIVE_INFINITY,
    rhoA: def.massPerLength,
    rhoIy: 0,
    rhoIz: 0,
    rhoIp: def.inertiaPerLength,
    lossFactor: 0,
  };
}

function outerSize(def: SectionDef): number {
  switch (def.shape) {
    case "tube":
      return def.outer;
    case "rod":
      return def.diameter;
    case "hexagon":
      return def.acrossFlats;
    case "rectangle":
      return Math.min(def.width, def.height);
    default:
      return 5e-3;
  }
}

/** Places of a list with copies, each with the name of its copy; numbered when there are several. */
function places(
  name: string,
  at: readonly (readonly [number, number])[],
  copies: Parameters<typeof copiesOf>[0],
) {
  return at.flatMap(([x, y], i) =>
    copiesOf(copies).map(({ sx, sy }) => {
      const numbered = at.length > 1 ? `${name} ${i + 1}` : name;
      return { x: sx * x, y: sy * y, name: copyName(numbered, copies, sx * x, sy * y) };
    }),
  );
}

/** A finding where a place is off a plate; false when it is. */
function checkOn(
  bench: Workbench,
  path: string,
  plate: number,
  x: number,
  y: number,
  foot: number,
) {
  const p = bench.plates[plate];
  if (p.outline.length === 0 || onPlate(p, x, y, foot)) return true;
  bench.findings.push({
    path,
    message: `${mmAt(x, y)} lies off the plate "${p.name}"; move it onto the plate or name another plate`,
  });
  return false;
}

export function buildStandoffs(bench: Workbench): StandoffPart[] {
  return Object.entries(bench.file.standoffs).flatMap(([group, def]) => {
    const path = `standoffs.${group}`;
    const section = sectionOf(bench, def.section, def.material, path);
    const numbers = def.between.map((p) => plateNumber(bench, p));
    const [low, high] = numbers.sort((a, b) => bench.plates[a].z - bench.plates[b].z);
    const from = bench.plates[low].z + bench.plates[low].thickness / 2;
    const to = bench.plates[high].z - bench.plates[high].thickness / 2;
    if (!(to - from > 1e-4)) {
      bench.findings.push({
        path: `${path}.between`,
        message: `there is no room for a standoff: the faces of "${bench.plates[low].name}" and "${bench.plates[high].name}" are ${mm(to - from)} apart; check both z values, or join the plates with "joints"`,
      });
      return [];
    }
    const footprint = def.footprint ?? outerSize(def.section);
    if (!checkCopies(bench, path, def.copies, def.at)) return [];
    return places(group, def.at, def.copies).flatMap(({ x, y, name }) => {
      const ok = [low, high].map((p) => checkOn(bench, `${path}.at`, p, x, y, footprint));
      if (ok.includes(false)) return [];
      const material = def.material;
      return [{ name, group, x, y, plates: [low, high], from, to, section, footprint, material }];
    });
  });
}

export function buildJoints(bench: Workbench): JointPart[] {
  return Object.entries(bench.file.joints).flatMap(([group, def]) => {
    const plates = def.plates.map((p) => plateNumber(bench, p)) as [number, number];
    if (!checkCopies(bench, `joints.${group}`, def.copies, def.at)) return [];
    return places(group, def.at, def.copies).flatMap(({ x, y, name }) => {
      const ok = plates.map((p) => checkOn(bench, `joints.${group}.at`, p, x, y, def.footprint));
      if (ok.includes(false)) return [];
      const stiffness = def.stiffness && six(def.stiffness, Number.POSITIVE_INFINITY);
      const { footprint, lossFactor } = def;
      return [{ name, plates, x, y, footprint, lossFactor, ...(stiffness && { stiffness }) }];
    });
  });
}

export function buildMembers(bench: Workbench): MemberPart[] {
  return Object.entries(bench.file.members).flatMap(([name, def]) => {
    const path = `members.${name}`;
    const [p, q] = [bench.file.points[def.from], bench.file.points[def.to]];
    const d: Vec3 = [q[0] - p[0], q[1] - p[1], q[2] - p[2]];
    const L = Math.hypot(...d);
    if (!(L > 1e-9)) {
      bench.findings.push({
        path,
        message: `"${def.from}" and "${def.to}" are the same place; a member needs a length`,
      });
      return [];
    }
    const upright = Math.hypot(d[0], d[1]) < 1e-6 * L;
    const up: Vec3 = def.up ?? (upright ? [1, 0, 0] : [0, 0, 1]);
    const across = Math.hypot(
      up[1] * d[2] - up[2] * d[1],
      up[2] * d[0] - up[0] * d[2],
      up[0] * d[1] - up[1] * d[0],
    );
    if (!(across > 1e-6 * L * Math.hypot(...up))) {
      bench.findings.push({
        path: `${path}.up`,
        message: `"up" runs along the member; give a direction across it`,
      });
      return [];
    }
    const section = sectionOf(bench, def.section, def.material, path);
    const elements = def.elements !== undefined && { elements: def.elements };
    return [{ name, from: def.from, to: def.to, section, up, ...elements }];
  });
}

export function buildLinks(bench: Workbench): LinkPart[] {
  return Object.entries(bench.file.links).map(([name, def]) => {
    const ties = motionNumbers(def.ties);
    if (def.kind === "points")
      return { name, point: def.points[1], to: { point: def.points[0] }, ties };
    const plate = plateNumber(bench, def.plate);
    const [x, y] = bench.file.points[def.point];
    checkOn(bench, `links.${name}`, plate, x, y, def.footprint);
    return { name, point: def.point, to: { plate, footprint: def.footprint }, ties };
  });
}

export function buildSprings(bench: Workbench): SpringPart[] {
  return Object.entries(bench.file.springs).map(([name, def]) => {
    const [point, other] = def.between;
    const stiffness = six(def.stiffness, 0);
    return {
      name,
      point,
      ...(other !== "ground" && { other }),
      stiffness,
      lossFactor: def.lossFactor,
    };
  });
}

export function buildSupports(bench: Workbench): SupportPart[] {
  return Object.entries(bench.file.supports).map(([name, def]) => {
    const fix = motionNumbers(def.fix);
    if (def.kind === "point") return { name, fix, where: { point: def.point } };
    const plate = plateNumber(bench, def.plate);
    const within = def.within && Float64Array.from(def.within.flat());
    return {
      name,
      fix,
      where: { plate, ...(def.along && { along: def.along }), ...(within && { within }) },
    };
  });
}
