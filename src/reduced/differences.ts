/** Which elements of a frame's variant differ from those of the frame it is a variant of. */

import { padHeights } from "../matrices/elements.ts";
import { withMasters } from "../matrices/masters.ts";
import type { Reduction } from "../matrices/reduction.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Model } from "../model/types.ts";
import { type Meshed, meshed, withReduction } from "./meshed.ts";
import { same, sameNumber } from "./same.ts";

/** Numbers of elements are those of the mesh: beams first, then cells, springs, pads, masses. */
export interface Differences {
  readonly meshed: Meshed;
  /** elements that differ in themselves */
  readonly elements: readonly number[];
  /** beams that differ in their sections or loss factors alone, where all shear is left out */
  readonly beams: readonly number[];
  /** plates that differ in their constants alone: none of their cells is among the elements */
  readonly plates: readonly number[];
  /** pads that differ in their constants and heights alone, counted as pads; none is among the elements */
  readonly pads: readonly number[];
  /** further elements that hang on ties that differ */
  readonly hanging: readonly number[];
  /** by unknown of the mesh: 1 where its ties differ; undefined where all ties stay */
  readonly moved?: Uint8Array;
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
  const moved = tiesStay ? undefined : movedUnknowns(base.reduction, now.reduction);
  return { meshed: now, ...changedElements(base, now, moved), ...(moved && { moved }) };
}

/** Meshed on the unknowns that the base keeps; undefined where these do not do. */
function onMasters(base: Meshed, model: Model, mesh: Mesh): Meshed | undefined {
  const now = meshed(model, mesh);
  const reduction = withMasters(now.reduction, base.reduction.masters);
  return reduction && { ...now, reduction };
}

/** Every element that differs, in itself, by constants or by its ties. */
export function allDifferent({
  meshed,
  elements,
  beams,
  hanging,
  plates,
  pads,
}: Differences): number[] {
  const { cells, springs, beams: first } = meshed.mesh;
  const ofPlates = cells.flatMap((e, i) => (plates.includes(e.plate) ? [first.length + i] : []));
  const firstPad = first.length + cells.length + springs.length;
  return [...elements, ...beams, ...hanging, ...ofPlates, ...pads.map((p) => firstPad + p)];
}

/** Meshes must have the same nodes, parts and elements in the same order, whatever their sizes. */
function unlikeMeshes(a: Mesh, b: Mesh): string | undefined {
  if (a.xyz.length !== b.xyz.length) return "the mesh has other nodes";
  if (!same(a.fixed, b.fixed)) return "other motions are held";
  if (!alike(a.parts, b.parts, (p, q) => p.name === q.name && p.kind === q.kind)) {
    return "the parts are others";
  }
  const sameNodes = <E extends { readonly nodes: readonly number[]; readonly part: number }>(
    e: E,
    f: E,
  ) => e.part === f.part && e.nodes.every((n, i) => n === f.nodes[i]);
  const sameNode = <E extends { readonly node: number; readonly part: number }>(e: E, f: E) =>
    e.part === f.part && e.node === f.node;
  const elements =
    alike(a.beams, b.beams, (e, f) => sameNodes(e, f) && e.sections.length === f.sections.length) &&
    alike(a.cells, b.cells, sameNodes) &&
    alike(a.springs, b.springs, sameNodes) &&
    alike(a.pads, b.pads, sameNode) &&
    alike(a.masses, b.masses, sameNode);
  return elements ? undefined : "the mesh has other elements";
}

function alike<E>(a: readonly E[], b: readonly E[], same: (e: E, f: E) => boolean): boolean {
  return a.length === b.length && a.every((e, i) => same(e, b[i]));
}

/** Unknowns of the mesh whose rows of T differ (1). */
function movedUnknowns(a: Reduction, b: Reduction): Uint8Array {
  const moved = new Uint8Array(a.full);
  for (let i = 0; i < a.full; i++) if (!sameRow(a, b, i)) moved[i] = 1;
  return moved;
}

/** Coefficients that are zero but for rounding may stand in one and not in the other. */
function sameRow(a: Reduction, b: Reduction, i: number): boolean {
  if (a.ptr[i + 1] - a.ptr[i] === 1 && b.ptr[i + 1] - b.ptr[i] === 1) {
    const [k, l] = [a.ptr[i], b.ptr[i]];
    if (a.col[k] === b.col[l]) return Math.abs(a.coef[k] - b.coef[l]) < 1e-12;
  }
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
): Pick<Differences, "elements" | "beams" | "plates" | "pads" | "hanging"> {
  const [a, b] = [base.mesh, now.mesh];
  const elements: number[] = [];
  const hanging: number[] = [];
  let first = 0;
  const hasMoved = (n: number) => moved?.subarray(6 * n, 6 * n + 6).includes(1);
  const take = (stays: boolean, nodes: () => readonly number[]) => {
    if (!stays) elements.push(first);
    else if (moved && nodes().some((n) => n >= 0 && hasMoved(n))) hanging.push(first);
    first++;
  };
  const damped = (part: number) => base.lossWeights[part] !== now.lossWeights[part];
  const shears = [base, now].some(({ model }) => model.theory === "timoshenko");
  const theory = base.model.theory === now.model.theory;
  const beams: number[] = [];
  a.beams.forEach((e, i) => {
    const f = b.beams[i];
    const drawn = same(e.length, f.length) && same(e.axes, f.axes) && theory;
    const stays = drawn && same(e.sections, f.sections) && !damped(e.part);
    if (drawn && !stays && !shears) beams.push(i);
    take(stays || (drawn && !shears), () => e.nodes);
  });
  const plates = changedPlates(base, now);
  const stays = a.cells.map((e, i) => {
    const f = b.cells[i];
    return (
      same(e.cover, f.cover) &&
      same(e.points, f.points) &&
      sameNumber(e.a, f.a) &&
      sameNumber(e.b, f.b)
    );
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
  const pads: number[] = [];
  a.pads.forEach((e, i) => {
    const f = b.pads[i];
    const [p, q] = [padHeights(e, a), padHeights(f, b)];
    const drawn = same(p.body, q.body) && same(e.patch.pieces, f.patch.pieces);
    const stays = same([e.k, e.face, p.reach], [f.k, f.face, q.reach]) && !damped(e.part);
    if (drawn && !stays) pads.push(i);
    take(drawn, () => [e.node, ...e.patch.nodes]);
  });
  a.masses.forEach((e, i) => {
    take(same(e, b.masses[i]), () => [e.node]);
  });
  return { elements, hanging, beams, pads, plates: plates.filter((p) => !whole.includes(p)) };
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
