/** Parts that move up or down when a thickness or a height is changed, so that what touched still touches. */

/** A part whose height followed. */
export interface HeightShift {
  /** As users read it: "plate middle", "body battery". */
  readonly name: string;
  /** m, up */
  readonly by: number;
}
