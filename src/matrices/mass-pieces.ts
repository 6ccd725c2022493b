/** The pieces of a frame with their mass, centre of gravity and own inertia, from the drawing. */

import { GAUSS_4 } from "../element/quadrature.ts";
import type { Inertia } from "../element/rigid-mass.ts";
import type { BeamSection } from "../material/section.ts";
import { insertedEnd, turnedAboutZ } from "../mesh/arm.ts";
import type { Mesh } from "../mesh/types.ts";
import { armBreaks, armSection } from "../model/arm.ts";
import { sumMoments } from "../model/polygon.ts";
import type { ArmPart, Model, PlatePart, Vec3 } from "../model/types.ts";
import { vec3 } from "../model/workbench.ts";

/** One piece with its inertia about its own centre of gravity, SI. */
export interface Piece {
  readonly name: string;
  readonly kind: string;
  readonly mass: number;
  readonly cg: Vec3;
  readonly inertia: Inertia;
}

type MassPerLength = Pick<BeamSection, "rhoA" | "rhoIy" | "rhoIz" | "rhoIp">;

/** Every piece of the frame; several may share a name (an arm, its pad and its inserted end). */
export function massPieces(model: Model, mesh: Mesh): Piece[] {
  return [
    ...model.plates.map((p) => sheet(p, p.massPerArea, p.rotaryPerArea, p.name, "plate")),
    ...model.arms.flatMap((arm) => armPieces(arm, model.theory)),
    ...model.smeared.flatMap((s) => [
      ...s.perPlate.map((p) => sheet(model.plates[p.plate], p.massPerArea, 0, s.name, "body")),
      ...s.perArm.map((a) => {
        const even = { rhoA: a.massPerLength, rhoIy: 0, rhoIz: 0, rhoIp: 0 };
        return strip(model.arms[a.arm], () => even, s.name, "body");
      }),
    ]),
    ...model.bodies.map((b) => ({
      name: b.name,
      kind: b.role,
      mass: b.mass,
      cg: b.cg,
      inertia: b.inertia,
    })),
    ...uniformBeams(model, mesh),
  ];
}

/** A plate's area with an even mass per area and rotary inertia per area. */
function sheet(plate: PlatePart, m: number, rotary: number, name: string, kind: string): Piece {
  const a = sumMoments([plate.outline, ...plate.holes]);
  const [x, y] = [a.x / a.area, a.y / a.area];
  const xx = m * (a.yy - y * y * a.area);
  const yy = m * (a.xx - x * x * a.area);
  const xy = -m * (a.xy - x * y * a.area);
  const own = rotary * a.area;
  const inertia = { xx: xx + own, yy: yy + own, zz: xx + yy, xy, xz: 0, yz: 0 };
  return { name, kind, mass: m * a.area, cg: [x, y, plate.z], inertia };
}

function armPieces(arm: ArmPart, theory: Model["theory"]): Piece[] {
  const bending = theory === "euler-bernoulli" ? 0 : 1;
  const section = (s: number) => {
    const c = armSection(arm, s);
    return { ...c, rhoIy: bending * c.rhoIy, rhoIz: bending * c.rhoIz };
  };
  const out = [strip(arm, section, arm.name, "arm")];
  if (arm.pad) out.push({ name: arm.name, kind: "arm", ...arm.pad });
  if (arm.held.kind === "bolted") {
    const axis = Float64Array.from(vec3((i) => (arm.tip[i] - arm.root[i]) / arm.length));
    const { mass, inertia, offset } = insertedEnd(arm, arm.held.inserted, axis);
    const cg = vec3((i) => arm.root[i] + offset[i]);
    out.push({ name: arm.name, kind: "arm", mass, cg, inertia });
  }
  return out;
}

/** Mass along an arm's free length, integrated between the corners of its profile. */
function strip(
  arm: ArmPart,
  perLength: (s: number) => MassPerLength,
  name: string,
  kind: string,
): Piece {
  const breaks = [...new Set(armBreaks(arm))].sort((a, b) => a - b);
  const sum = { m: 0, ms: 0, mss: 0, y: 0, z: 0, p: 0 };
  for (let i = 1; i < breaks.length; i++) {
    const ds = breaks[i] - breaks[i - 1];
    for (let g = 0; g < 4; g++) {
      const s = breaks[i - 1] + ds * GAUSS_4.x[g];
      const c = perLength(s);
      const dx = GAUSS_4.w[g] * ds * arm.length;
      sum.m += c.rhoA * dx;
      sum.ms += c.rhoA * dx * s;
      sum.mss += c.rhoA * dx * s * s;
      sum.y += c.rhoIy * dx;
      sum.z += c.rhoIz * dx;
      sum.p += c.rhoIp * dx;
    }
  }
  const s = sum.ms / sum.m;
  const along = (sum.mss - s * s * sum.m) * arm.length ** 2;
  const own = { xx: sum.p, yy: along + sum.y, zz: along + sum.z, xy: 0, xz: 0, yz: 0 };
  const d = vec3((i) => arm.tip[i] - arm.root[i]);
  return {
    name,
    kind,
    mass: sum.m,
    cg: vec3((i) => arm.root[i] + s * d[i]),
    inertia: turnedAboutZ(own, d[0] / arm.length, d[1] / arm.length),
  };
}

/** Standoffs and members: uniform beams, taken from the mesh. */
function uniformBeams(model: Model, mesh: Mesh): Piece[] {
  const bending = model.theory === "euler-bernoulli" ? 0 : 1;
  return mesh.beams.flatMap((e) => {
    const part = mesh.parts[e.part];
    if (part.kind === "arm") return [];
    const c = e.sections[0];
    const L = e.length;
    const mass = c.rhoA * L;
    const [p, q] = e.nodes.map((n) => vec3((i) => mesh.xyz[3 * n + i]));
    const swing = (mass * L * L) / 12;
    const own = [c.rhoIp * L, swing + bending * c.rhoIy * L, swing + bending * c.rhoIz * L];
    const R = e.axes; // I = R' diag(own) R
    const I = (i: number, j: number) =>
      [0, 1, 2].reduce((sum, k) => sum + own[k] * R[3 * k + i] * R[3 * k + j], 0);
    const inertia = {
      xx: I(0, 0),
      yy: I(1, 1),
      zz: I(2, 2),
      xy: I(0, 1),
      xz: I(0, 2),
      yz: I(1, 2),
    };
    return [
      { name: part.name, kind: part.kind, mass, cg: vec3((i) => (p[i] + q[i]) / 2), inertia },
    ];
  });
}
