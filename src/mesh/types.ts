/** The frame as nodes, elements and ties between them; plain data, no matrices. */

import type { BeamConstants } from "../element/beam.ts";
import type { PadPoints } from "../element/pad.ts";
import type { CellCover } from "../element/plate-cell.ts";
import type { PlanePoints } from "../element/quadrature.ts";
import type { Inertia } from "../element/rigid-mass.ts";
import type { Rotation } from "../element/rotation.ts";
import type { Polygon } from "../model/polygon.ts";

export type PartKind =
  | "plate"
  | "arm"
  | "arm root"
  | "standoff"
  | "member"
  | "joint"
  | "spring"
  | "mount"
  | "body";

/** Something that is named in energy shares. */
export interface MeshPart {
  readonly name: string;
  readonly kind: PartKind;
  /** loss factor of its strain energy */
  readonly lossFactor: number;
}

export interface BeamElement {
  readonly nodes: readonly [number, number];
  readonly length: number;
  readonly axes: Rotation;
  /** one section, or four at the Gauss points */
  readonly sections: readonly BeamConstants[];
  readonly part: number;
}

export interface CellElement {
  /** anticlockwise from the corner of least x and y */
  readonly nodes: readonly [number, number, number, number];
  readonly plate: number;
  readonly a: number;
  readonly b: number;
  readonly cover: CellCover;
  /** undefined: the cell is covered wholly, as all such cells of its plate */
  readonly points?: PlanePoints;
  readonly part: number;
}

export interface SpringElement {
  /** the second node is -1 for the ground */
  readonly nodes: readonly [number, number];
  readonly axes: Rotation;
  /** finite stiffnesses, local axes */
  readonly k: Float64Array;
  readonly part: number;
}

/** A pad between a patch of a plate and a rigid body: see element/pad.ts. */
export interface PadElement {
  /** the body's node */
  readonly node: number;
  readonly patch: Patch;
  /** height of the face it lies on from the plate's mid-plane, m */
  readonly face: number;
  /** kx ky kz of the whole pad, N/m */
  readonly k: ArrayLike<number>;
  readonly part: number;
}

export interface MassElement {
  readonly node: number;
  readonly mass: number;
  readonly inertia: Inertia;
  /** from the node to the centre of gravity */
  readonly offset: readonly [number, number, number];
  readonly part: number;
}

/** One linear tie between unknowns: sum of coefs * u = 0. Unknown number = 6 * node + direction. */
export interface Tie {
  readonly dofs: Int32Array;
  readonly coefs: Float64Array;
  /** the unknown to be eliminated, where it can be */
  readonly prefer: number;
}

/** Nodes and weights (summing to 1) that average a plate's motion over a patch. */
export interface Patch {
  readonly nodes: Int32Array;
  readonly weights: Float64Array;
  /** the point whose motion the average is: the patch's own centroid on the plate, m */
  readonly centre: readonly [number, number, number];
  /** area of the patch that lies on the plate, m^2 */
  readonly area: number;
  /** the parts of it in each cell; their points' weights are shares of the whole */
  readonly pieces: readonly PatchPiece[];
}

export interface PatchPiece {
  /** of the cell, anticlockwise from the corner of least x and y */
  readonly nodes: readonly [number, number, number, number];
  readonly points: PadPoints;
}

/** The grid of one plate. */
export interface PlateGrid {
  readonly x0: number;
  readonly y0: number;
  readonly z: number;
  readonly a: number;
  readonly b: number;
  readonly nx: number;
  readonly ny: number;
  /** node numbers, (nx+1) x (ny+1), x fastest; -1 where no cell touches */
  readonly nodeAt: Int32Array;
  /** the outline's part in each cell, nx x ny; empty where the cell does not exist */
  readonly covered: readonly Polygon[];
}

export interface Mesh {
  /** mesh size asked for or chosen, m */
  readonly size: number;
  /** coordinates x, y, z of each node, m (size 3 * nodes) */
  readonly xyz: Float64Array;
  readonly parts: readonly MeshPart[];
  readonly beams: readonly BeamElement[];
  readonly cells: readonly CellElement[];
  readonly springs: readonly SpringElement[];
  readonly pads: readonly PadElement[];
  readonly masses: readonly MassElement[];
  readonly ties: readonly Tie[];
  /** unknowns held at zero */
  readonly fixed: readonly number[];
  /** per plate of the model */
  readonly grids: readonly PlateGrid[];
  /** node of each arm at its tip, per arm of the model */
  readonly armTips: readonly number[];
  /** node numbers along each arm, root to tip */
  readonly armNodes: readonly (readonly number[])[];
  /** node of each body of the model */
  readonly bodyNodes: readonly number[];
  /** node of each named point that is used */
  readonly pointNodes: ReadonlyMap<string, number>;
}
