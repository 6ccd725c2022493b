/** Every element of a mesh with its matrices in global axes, one after the other. */

import { type BeamTheory, beamMatrices } from "../element/beam.ts";
import { cellMass } from "../element/cell-mass.ts";
import { padMatrix } from "../element/pad.ts";
import { cellStiffness, type PlateConstants } from "../element/plate-cell.ts";
import { polygonPoints } from "../element/quadrature.ts";
import { rigidMass } from "../element/rigid-mass.ts";
import { toGlobal } from "../element/rotation.ts";
import { groundSpringMatrix, springMatrix } from "../element/spring.ts";
import type {
  BeamElement,
  CellElement,
  MassElement,
  Mesh,
  PadElement,
  SpringElement,
} from "../mesh/types.ts";
import { rectangle } from "../model/polygon.ts";
import type { Model, PlatePart } from "../model/types.ts";

export interface ElementMatrices {
  /** nodes; 6 unknowns each, in this order */
  readonly nodes: readonly number[];
  /** row-major, order 6 * nodes.length; undefined = none */
  readonly K?: Float64Array;
  readonly M?: Float64Array;
  /** number of the mesh part that owns the energy */
  readonly part: number;
}

/** Mass per area of a plate with what is smeared over it, kg/m^2. */
export function plateMassPerArea(model: Model, plate: number): number {
  return model.smeared.reduce(
    (sum, s) => sum + s.perPlate.reduce((t, p) => (p.plate === plate ? t + p.massPerArea : t), 0),
    model.plates[plate].massPerArea,
  );
}

export function* elementMatrices(
  mesh: Mesh,
  model: Model,
  theory: BeamTheory = model.theory,
): Generator<ElementMatrices> {
  for (const e of mesh.beams) yield beamOf(e, theory);
  const massPerArea = model.plates.map((_, i) => plateMassPerArea(model, i));
  const whole: WholeCells = new Map();
  for (const e of mesh.cells) yield cellOf(e, model, massPerArea, whole);
  for (const e of mesh.springs) yield springOf(e);
  for (const e of mesh.pads) for (const piece of padOf(e, mesh)) yield piece;
  for (const e of mesh.masses) yield massOf(e);
}

/**
 * The matrices of one element of the mesh, counted as beams, cells, springs, pads, masses; a pad comes in
 * pieces.
 *
 * @param massPerArea of each plate, see `plateMassPerArea`
 * @param whole what is known of the same frame's cells from before
 */
export function matricesOf(
  mesh: Mesh,
  model: Model,
  massPerArea: readonly number[],
  index: number,
  whole: WholeCells = new Map(),
): ElementMatrices[] {
  let i = index;
  if (i < mesh.beams.length) return [beamOf(mesh.beams[i], model.theory)];
  i -= mesh.beams.length;
  if (i < mesh.cells.length) {
    return [cellOf(mesh.cells[i], model, massPerArea, whole)];
  }
  i -= mesh.cells.length;
  if (i < mesh.springs.length) return [springOf(mesh.springs[i])];
  i -= mesh.springs.length;
  if (i < mesh.pads.length) return padOf(mesh.pads[i], mesh);
  return [massOf(mesh.masses[i - mesh.pads.length])];
}

export function beamOf(e: BeamElement, theory: BeamTheory): ElementMatrices {
  const { K, M } = beamMatrices(e.length, e.sections, theory);
  return { nodes: e.nodes, K: toGlobal(K, 12, e.axes), M: toGlobal(M, 12, e.axes), part: e.part };
}

/** Matrices of the cells that are covered wholly, by plate. */
export type WholeCells = Map<number, ReturnType<typeof cellMatrices>>;

function cellOf(
  e: CellElement,
  model: Model,
  massPerArea: readonly number[],
  whole: WholeCells,
): ElementMatrices {
  const known = e.points ? undefined : whole.get(e.plate);
  const matrices = known ?? cellMatrices(model.plates[e.plate], massPerArea[e.plate], e);
  if (!e.points) whole.set(e.plate, matrices);
  return { nodes: e.nodes, ...matrices, part: e.part };
}

function springOf(e: SpringElement): ElementMatrices {
  const [a, b] = e.nodes;
  return b < 0
    ? { nodes: [a], K: toGlobal(groundSpringMatrix(e.k), 6, e.axes), part: e.part }
    : { nodes: [a, b], K: toGlobal(springMatrix(e.k), 12, e.axes), part: e.part };
}

function padOf(e: PadElement, mesh: Mesh): ElementMatrices[] {
  const body = mesh.xyz.subarray(3 * e.node, 3 * e.node + 3);
  const contact = e.patch.centre[2] + e.face;
  return e.patch.pieces.map(({ nodes, points }) => ({
    nodes: [...nodes, e.node],
    K: padMatrix(e.k, points, body, contact, e.face),
    part: e.part,
  }));
}

/** The place of a pad's body in the plan, and how far the pad's face lies above the body's node, m. */
export function padHeights(e: PadElement, { xyz }: Mesh) {
  const body = xyz.subarray(3 * e.node, 3 * e.node + 2);
  return { body, reach: e.patch.centre[2] + e.face - xyz[3 * e.node + 2] };
}

function massOf(e: MassElement): ElementMatrices {
  return { nodes: [e.node], M: rigidMass(e.mass, e.inertia, e.offset), part: e.part };
}

/** Stiffness and mass of a plate cell; linear in the plate's constants. */
export function cellMatrices(
  plate: PlateConstants & Pick<PlatePart, "rotaryPerArea">,
  massPerArea: number,
  e: CellElement,
) {
  const points = e.points ?? polygonPoints([rectangle(0, 0, e.a, e.b)], e.a / 2, e.b / 2);
  return {
    K: cellStiffness(plate, e.a, e.b, e.cover),
    M: cellMass(massPerArea, plate.rotaryPerArea, e.a, e.b, points),
  };
}
