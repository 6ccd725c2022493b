/** Which elements of a frame's variant differ from those of the frame it is a variant of. */

import { withMasters } from "../matrices/masters.ts";
import type { Reduction } from "../matrices/reduction.ts";
import type { Mesh, PadElement } from "../mesh/types.ts";
import type { Model } from "../model/types.ts";
import { type Meshed, meshed, withReduction } from "./meshed.ts";
import { same } from "./same.ts";

/** Numbers of elements are those of the mesh: beams first, then cells, springs, pads, masses. */
export interface Differences {
  readonly meshed: Meshed;
  /** elements that differ in themselves */
  readonly elements: readonly number[];
  /** plates that differ in their constants alone: none of their cells is among the elements */
  readonly plates: readonly number[];
  /** further elements that hang on ties that differ */
  readonly hanging: readonly number[];
}

/** Why a variant cannot be compared element by element. */
export interface Unlike {
  readonly unlike: string;
}

export function differences(base: Meshed, model: Model, mesh: Mesh): Differences | Unlike {
  const why = unlikeMeshes(base.mesh, mesh);
  if (why !== undefined) return { unlike: why };
  const tiesStay = same(base.mesh.ties, mesh.ties);
  const now = tiesStay ? withReduction(model, mesh, base.reduction) : onMasters(base, model, mesh);
  if (now === undefined) return { unlike: "other unknowns remain when the ties are eliminated" };
  const moved = tiesStay ? undefined : movedNodes(base.reduction, now.reduction);
  return { meshed: now, ...changedElements(base, now, moved) };
}

/** Meshed on the unknowns that the base keeps; undefined where these do not do. */
function onMasters(base: Meshed, model: Model, mesh: Mesh): Meshed | undefined {
  const now = meshed(model, mesh);
  const reduction = withMasters(now.reduction, base.reduction.masters);
  return reduction && { ...now, reduction };
}

/** Meshes must have the same nodes, parts and elements in the same order, whatever their sizes. */
function unlikeMeshes(a: Mesh, b: Mesh): string | undefined {
  if (a.xyz.length !== b.xyz.length) return "the mesh has other nodes";
  if (!same(a.fixed, b.fixed)) return "other motions are held";
  const kinds = (m: Mesh) => m.parts.map(({ name, kind }) => [name, kind]);
  if (!same(kinds(a), kinds(b))) return "the parts are others";
  const lists = (m: Mesh) => [
    m.beams.map((e) => [...e.nodes, e.part, e.sections.length]),
    m.cells.map((e) => [...e.nodes, e.part]),
    m.springs.map((e) => [...e.nodes, e.part]),
    m.pads.map((e) => [e.node, e.part]),
    m.masses.map((e) => [e.node, e.part]),
  ];
  return same(lists(a), lists(b)) ? undefined : "the mesh has other elements";
}

/** Nodes whose rows of T differ (1), size full / 6. */
function movedNodes(a: Reduction, b: Reduction): Uint8Array {
  const moved = new Uint8Array(a.full / 6);
  for (let i = 0; i < a.full; i++) if (!sameRow(a, b, i)) moved[Math.floor(i / 6)] = 1;
  return moved;
}

/** Coefficients that are zero but for rounding may stand in one and not in the other. */
function sameRow(a: Reduction, b: Reduction, i: number): boolean {
  const row = new Map<number, number>();
  for (let k = a.ptr[i]; k < a.ptr[i + 1]; k++) row.set(a.col[k], a.coef[k]);
  for (let k = b.ptr[i]; k < b.ptr[i + 1]; k++) {
    row.set(b.col[k], (row.get(b.col[k]) ?? 0) - b.coef[k]);
  }
  return [...row.values()].every((c) => Math.abs(c) < 1e-12);
}

function changedElements(
  base: Meshed,
  now: Meshed,
  moved: Uint8Array | undefined,
): Pick<Differences, "elements" | "plates" | "hanging"> {
  const [a, b] = [base.mesh, now.mesh];
  const elements: number[] = [];
  const hanging: number[] = [];
  let first = 0;
  const take = (stays: boolean, nodes: () => readonly number[]) => {
    if (!stays) elements.push(first);
    else if (moved && nodes().some((n) => n >= 0 && moved[n])) hanging.push(first);
    first++;
  };
  const damped = (part: number) => base.lossWeights[part] !== now.lossWeights[part];
  const theory = base.model.theory === now.model.theory;
  a.beams.forEach((e, i) => {
    const f = b.beams[i];
    const alike = same(e.length, f.length) && same(e.axes, f.axes) && same(e.sections, f.sections);
    take(alike && theory && !damped(e.part), () => e.nodes);
  });
  const plates = changedPlates(base, now);
  const stays = a.cells.map((e, i) => {
    const f = b.cells[i];
    return same(e.cover, f.cover) && same(e.points, f.points) && same([e.a, e.b], [f.a, f.b]);
  });
  // Where cells of a plate differ by themselves and its constants do too, all of its cells are taken.
  const whole = plates.filter((p) => a.cells.some((e, i) => e.plate === p && !stays[i]));
  a.cells.forEach((e, i) => {
    take(stays[i] && !whole.includes(e.plate), () => e.nodes);
  });
  a.springs.forEach((e, i) => {
    const f = b.springs[i];
    take(same(e.k, f.k) && same(e.axes, f.axes) && !damped(e.part), () => e.nodes);
  });
  a.pads.forEach((e, i) => {
    const f = b.pads[i];
    const alike = same(padSizes(e, a), padSizes(f, b)) && same(e.patch.pieces, f.patch.pieces);
    take(alike && !damped(e.part), () => [e.node, ...e.patch.nodes]);
  });
  a.masses.forEach((e, i) => {
    take(same(e, b.masses[i]), () => [e.node]);
  });
  return { elements, hanging, plates: plates.filter((p) => !whole.includes(p)) };
}

function padSizes(e: PadElement, mesh: Mesh) {
  const body = mesh.xyz.subarray(3 * e.node, 3 * e.node + 3);
  return [e.k, e.face, body[0], body[1], e.patch.centre[2] - body[2]];
}

function changedPlates(base: Meshed, now: Meshed): number[] {
  return base.model.plates.flatMap((p, i) => {
    const q = now.model.plates[i];
    const stays =
      same([p.A, p.B, p.D, p.rotaryPerArea], [q.A, q.B, q.D, q.rotaryPerArea]) &&
      same(base.massPerArea[i], now.massPerArea[i]) &&
      same(p.lossFactor, q.lossFactor) &&
      base.model.assemblyLossFactor === now.model.assemblyLossFactor;
    return stays ? [] : [i];
  });
}
