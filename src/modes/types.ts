/** Modes with their proof and what people want to know of each. */

export interface Evidence {
  /** largest energy residual: an eigenvalue lies within this share of lambda - shift, see linalg/quality.ts */
  readonly maxResidual: number;
  /** largest departure of Phi'M Phi from the identity, rigid modes included */
  readonly orthogonality: number;
  readonly operatorCalls: number;
  readonly factorisations: number;
  /** modes below the check frequency: by the factorisation's inertia, and found (rigid included) */
  readonly counted: number;
  readonly found: number;
  /** Hz, just above the highest mode */
  readonly checkFrequency: number;
  readonly unknowns: number;
  readonly factorEntries: number;
}

/** A part's share of a mode's energy, 0..1. */
export interface Share {
  readonly part: string;
  readonly kind: string;
  readonly strain: number;
  readonly kinetic: number;
}

/** Shares of the strain energy by kind of motion; they sum to 1. */
export interface MotionShares {
  readonly armFlat: number;
  readonly armEdge: number;
  readonly armTorsion: number;
  readonly plateBending: number;
  readonly plateInPlane: number;
  readonly member: number;
  readonly standoff: number;
  readonly joint: number;
  readonly softMount: number;
  readonly other: number;
}

export interface ModeDescription {
  /** 1, 2, ... */
  readonly number: number;
  /** Hz */
  readonly frequency: number;
  /** short, for tables: "arms flap, all together" */
  readonly name: string;
  /** "symmetric left to right", "antisymmetric left to right" or "" */
  readonly symmetry: string;
  /** largest parts first */
  readonly shares: readonly Share[];
  readonly motion: MotionShares;
  readonly lossFactor: number;
  /** lossFactor / 2 */
  readonly damping: number;
  /** estimated fall in frequency if shear were included, 0.02 = 2 % (0 for Timoshenko beams) */
  readonly shearEffect: number;
}

export interface Modes {
  /** rad^2/s^2, ascending (size k) */
  readonly lambda: Float64Array;
  /** mass-normalised, on the unknowns that remain, column-major (size n k) */
  readonly phi: Float64Array;
  /** M-orthonormal rigid-body motions that are free (each size n) */
  readonly rigid: readonly Float64Array[];
  /** the same on all unknowns of the mesh, 6 per node (each size 6 nodes) */
  readonly shapes: readonly Float64Array[];
  readonly described: readonly ModeDescription[];
  readonly evidence: Evidence;
}
