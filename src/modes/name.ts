/** Short names for modes, from the motion of arms, plates and soft-mounted bodies. */

import type { BeamEnergy } from "../element/beam.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Model } from "../model/types.ts";
import type { MotionShares, Share } from "./types.ts";

/** A kind of motion that holds this share of the strain energy names the mode. */
const MAIN = 0.5;

const armShare = (m: MotionShares) => m.armFlat + m.armEdge + m.armTorsion + m.joint;

export function modeName(
  model: Model,
  mesh: Mesh,
  shape: Float64Array,
  motion: MotionShares,
  shares: readonly Share[],
  members: BeamEnergy,
): string {
  if (motion.softMount > MAIN) return softMountName(model, mesh, shape, shares);
  if (motion.member > MAIN) return memberName(shares, members);
  const arms = armShare(motion);
  const plates = motion.plateBending + motion.plateInPlane + motion.standoff;
  if (model.arms.length > 0 && arms >= plates && arms > MAIN / 2) {
    const name = armName(model, mesh, shape, motion);
    return plates > MAIN / 2 ? `${name}; ${plateName(shares, "with")}` : name;
  }
  if (plates > MAIN / 2) return plateName(shares, "");
  const first = shares[0];
  return first ? `${first.part} moves most` : "no strain";
}

function armName(model: Model, mesh: Mesh, shape: Float64Array, motion: MotionShares): string {
  const tips = model.arms.map((arm, i) => {
    const node = mesh.armTips[i];
    const [x, y] = [arm.tip[0] - model.centre[0], arm.tip[1] - model.centre[1]];
    const r = Math.hypot(x, y) || 1;
    const c = [0, 1].map((k) => (arm.tip[k] - arm.root[k]) / arm.length);
    const u = (d: number) => shape[6 * node + d];
    return {
      x,
      y,
      flat: u(2),
      // sideways, positive anticlockwise seen from above
      edge: (x * u(1) - y * u(0)) / r,
      // about the arm's own axis, so positive lifts the edge on its left
      twist: c[0] * u(3) + c[1] * u(4),
    };
  });
  const most = Math.max(motion.armFlat, motion.armEdge, motion.armTorsion);
  const of = (v: (t: (typeof tips)[number]) => number) =>
    pattern(tips.map((t) => ({ x: t.x, y: t.y, v: v(t) })));
  if (most === motion.armTorsion) return `arms twist, ${of((t) => t.twist)}`;
  if (most === motion.armFlat) return `arms flap, ${of((t) => t.flat)}`;
  return `arms swing in plane, ${of((t) => t.edge)}`;
}

/** Words for how the arms move with or against each other. */
function pattern(tips: readonly { x: number; y: number; v: number }[]): string {
  const norm = Math.hypot(...tips.map((t) => t.v)) || 1;
  const likeness = (w: (t: { x: number; y: number }) => number) => {
    const weights = tips.map(w);
    const length = Math.hypot(...weights) || 1;
    return Math.abs(tips.reduce((s, t, i) => s + t.v * weights[i], 0)) / (norm * length);
  };
  const kinds: [string, number][] = [
    ["all together", likeness(() => 1)],
    ["front against rear", likeness((t) => Math.sign(t.x))],
    ["left against right", likeness((t) => Math.sign(t.y))],
    ["diagonal pairs against each other", likeness((t) => Math.sign(t.x) * Math.sign(t.y))],
    [
      "front and rear against left and right",
      likeness((t) => Math.sign(Math.abs(t.x) - Math.abs(t.y))),
    ],
    ["front ones only", likeness((t) => (t.x > 0 ? 1 : 0))],
    ["rear ones only", likeness((t) => (t.x < 0 ? 1 : 0))],
  ];
  const best = kinds.reduce((a, b) => (b[1] > a[1] + 1e-9 ? b : a));
  return best[1] > 0.8 ? best[0] : "unevenly";
}

function memberName(shares: readonly Share[], energy: BeamEnergy): string {
  const kinds: [string, string, number][] = [
    ["bends flatwise", "bend flatwise", energy.flat],
    ["bends edgewise", "bend edgewise", energy.edge],
    ["twists", "twist", energy.torsion],
    ["stretches", "stretch", energy.axial],
  ];
  const [one, several] = kinds.reduce((a, b) => (b[2] > a[2] ? b : a));
  const moving = shares.filter((s) => s.kind === "member");
  return moving.length === 1 ? `"${moving[0].part}" ${one}` : `members ${several}`;
}

function plateName(shares: readonly Share[], before: "" | "with"): string {
  const part = shares.find((s) => s.kind === "plate" || s.kind === "standoff");
  const what = part?.kind === "plate" ? `"${part.part}"` : "standoffs";
  if (before === "with") return `with ${what} bending`;
  return part?.kind === "plate" ? `${what} bends` : `${what} bend`;
}

function softMountName(
  model: Model,
  mesh: Mesh,
  shape: Float64Array,
  shares: readonly Share[],
): string {
  const mount = shares.find((s) => s.kind === "mount");
  const name = mount?.part.replace(/ mount$/, "") ?? "";
  const index = model.bodies.findIndex((b) => b.name === name);
  if (index < 0) return "a soft-mounted body moves";
  const body = model.bodies[index];
  const node = mesh.bodyNodes[index];
  const u = (d: number) => shape[6 * node + d];
  // At the centre of gravity, u = u_node + theta x r.
  const r = body.cg.map((c, i) => c - mesh.xyz[3 * node + i]);
  const at = [
    u(0) + u(4) * r[2] - u(5) * r[1],
    u(1) + u(5) * r[0] - u(3) * r[2],
    u(2) + u(3) * r[1] - u(4) * r[0],
  ];
  const I = body.inertia;
  const energies: [string, number][] = [
    ["sways fore and aft", body.mass * at[0] ** 2],
    ["sways sideways", body.mass * at[1] ** 2],
    ["bounces", body.mass * at[2] ** 2],
    ["rocks sideways", I.xx * u(3) ** 2],
    ["rocks fore and aft", I.yy * u(4) ** 2],
    ["twists", I.zz * u(5) ** 2],
  ];
  const [verb] = energies.reduce((a, b) => (b[1] > a[1] ? b : a));
  return `"${name}" ${verb} on its mount`;
}
