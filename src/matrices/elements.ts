/** Every element of a mesh with its matrices in global axes, one after the other. */

import { type BeamTheory, beamMatrices } from "../element/beam.ts";
import { cellMass } from "../element/cell-mass.ts";
import { padMatrix } from "../element/pad.ts";
import { cellStiffness } from "../element/plate-cell.ts";
import { polygonPoints } from "../element/quadrature.ts";
import { rigidMass } from "../element/rigid-mass.ts";
import { toGlobal } from "../element/rotation.ts";
import { groundSpringMatrix, springMatrix } from "../element/spring.ts";
import type { CellElement, Mesh } from "../mesh/types.ts";
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
  for (const e of mesh.beams) {
    const { K, M } = beamMatrices(e.length, e.sections, theory);
    yield {
      nodes: e.nodes,
      K: toGlobal(K, 12, e.axes),
      M: toGlobal(M, 12, e.axes),
      part: e.part,
    };
  }
  const massPerArea = model.plates.map((_, i) => plateMassPerArea(model, i));
  const whole = new Map<number, { K: Float64Array; M: Float64Array }>();
  for (const e of mesh.cells) {
    let matrices = e.points ? undefined : whole.get(e.plate);
    if (!matrices) {
      matrices = cellMatrices(model.plates[e.plate], massPerArea[e.plate], e);
      if (!e.points) whole.set(e.plate, matrices);
    }
    yield { nodes: e.nodes, ...matrices, part: e.part };
  }
  for (const e of mesh.springs) {
    const [a, b] = e.nodes;
    yield b < 0
      ? { nodes: [a], K: toGlobal(groundSpringMatrix(e.k), 6, e.axes), part: e.part }
      : { nodes: [a, b], K: toGlobal(springMatrix(e.k), 12, e.axes), part: e.part };
  }
  for (const e of mesh.pads) {
    const body = mesh.xyz.subarray(3 * e.node, 3 * e.node + 3);
    const contact = e.patch.centre[2] + e.face;
    for (const { nodes, points } of e.patch.pieces) {
      const K = padMatrix(e.k, points, body, contact, e.face);
      yield { nodes: [...nodes, e.node], K, part: e.part };
    }
  }
  for (const e of mesh.masses) {
    yield { nodes: [e.node], M: rigidMass(e.mass, e.inertia, e.offset), part: e.part };
  }
}

function cellMatrices(plate: PlatePart, massPerArea: number, e: CellElement) {
  const points = e.points ?? polygonPoints([rectangle(0, 0, e.a, e.b)], e.a / 2, e.b / 2);
  return {
    K: cellStiffness(plate, e.a, e.b, e.cover),
    M: cellMass(massPerArea, plate.rotaryPerArea, e.a, e.b, points),
  };
}
