/** One number read off a shape. */

/** The sum of coefs over the unknowns dofs (6 * node + direction) of a motion of the mesh. */
export interface SamplePoint {
  /** part, place and direction: "front left arm, tip, z" */
  readonly name: string;
  readonly dofs: Int32Array;
  /** kg^(1/2) for displacements, kg^(1/2) m for rotations */
  readonly coefs: Float64Array;
}
