/** Frames reduced from themselves and a few of their variants, on coarse meshes. */

import { changedFrame, type FrameSource } from "../../src/frame/change.ts";
import { parsePath } from "../../src/frame/parse-path.ts";
import { type Prepared, prepareVariant } from "../../src/variants/prepare.ts";
import {
  isAlike,
  modesOf,
  type ReducedBase,
  type ReducedVariants,
  reduceVariants,
  solveBase,
} from "../../src/variants/reduced.ts";

/** What stands at which place of the file: { "arms.arm.thickness": "6 mm" }. */
export type Changes = Readonly<Record<string, unknown>>;

export interface Reduced {
  readonly base: ReducedBase;
  readonly reduced: ReducedVariants;
  readonly variant: (changes: Changes) => Prepared;
}

/** @param training variants whose modes the space is made of, besides the base's */
export function reduce(
  source: FrameSource,
  meshSize: number,
  training: readonly Changes[],
): Reduced {
  const base = solveBase(prepareVariant(source.file, meshSize));
  const variant = (changes: Changes) => {
    const list = Object.entries(changes).map(([path, written]) => ({
      path: parsePath(path),
      written,
    }));
    return prepareVariant(changedFrame(source, list).file, meshSize);
  };
  const count = base.all.modes.lambda.length;
  const snapshots = training.map((changes) => {
    const prepared = variant(changes);
    if (isAlike(base, prepared)) return modesOf(prepared, count);
    throw new Error(`the mesh of ${JSON.stringify(changes)} is unlike the base's`);
  });
  return { base, reduced: reduceVariants(base, snapshots), variant };
}
