/** What a thread does with variants: solve one exactly, take its modes for a space, or solve it in one. */

import {
  type Change,
  type ChangeOptions,
  changedFrame,
  parseFrameSource,
} from "../frame/change.ts";
import type { HeightShift } from "../frame/heights.ts";
import { LIBRARY_NAMES } from "../material/library-names.ts";
import { exactOutcome } from "../variants/exact.ts";
import { type Prepared, prepareVariant } from "../variants/prepare.ts";
import { modesOf, type ReducedVariants, variantSolver } from "../variants/reduced.ts";
import type { Outcome } from "../variants/types.ts";
import type { Work } from "./task.ts";

/** A frame file as all its variants share it. */
export interface FrameText {
  /** as the user named it */
  readonly path: string;
  readonly text: string;
  /** m; the same for all variants, so that their meshes are alike */
  readonly meshSize?: number;
  /** number of elastic modes; enough for what the motors shake where not given */
  readonly modes?: number;
  /** parts stay at the heights of the file, gaps or not */
  readonly keepHeights?: boolean;
}

export interface VariantSetup {
  readonly frames: readonly FrameText[];
  /** in which variants are solved; per space the frame whose variants these are */
  readonly spaces: readonly { readonly frame: number; readonly reduced: ReducedVariants }[];
  /** estimate of a frequency's error above which a variant is solved exactly */
  readonly tolerance?: number;
}

interface Variant {
  readonly changes: readonly Change[];
  readonly delays?: boolean;
}

export type VariantJob =
  /** exactly, with the names of its modes */
  | ({ readonly kind: "exact"; readonly frame: number } & Variant)
  /** its lowest modes alone */
  | ({ readonly kind: "modes"; readonly frame: number; readonly count: number } & Variant)
  | ({ readonly kind: "reduced"; readonly space: number } & Variant);

export type VariantAnswer = Outcome | Float64Array;

/** How the variants of a frame are changed. */
export function changeOptions({ keepHeights }: Pick<FrameText, "keepHeights">): ChangeOptions {
  return { library: LIBRARY_NAMES, ...(keepHeights !== undefined && { keepHeights }) };
}

export function setUp(setup: VariantSetup): Work<VariantJob, VariantAnswer> {
  const sources = setup.frames.map(({ path, text }) => parseFrameSource(text, path, LIBRARY_NAMES));
  const solvers = setup.spaces.map(({ reduced }) => variantSolver(reduced, setup.tolerance));
  const prepared = (frame: number, changes: readonly Change[]) => {
    const text = setup.frames[frame];
    const { file, moved } = changedFrame(sources[frame], changes, changeOptions(text));
    return { variant: prepareVariant(file, text.meshSize), moved: moved.map(shiftWords) };
  };
  return (job) => {
    if (job.kind === "reduced") {
      const { frame } = setup.spaces[job.space];
      const { variant, moved } = prepared(frame, job.changes);
      const delays = job.delays ?? false;
      return solvers[job.space].outcome(variant, { delays, moved });
    }
    const { variant, moved } = prepared(job.frame, job.changes);
    if (job.kind === "modes") return modesOf(variant, job.count);
    return exactly(variant, moved, job.delays ?? false, setup.frames[job.frame].modes);
  };
}

function exactly(variant: Prepared, moved: string[], delays: boolean, modes?: number): Outcome {
  return exactOutcome(variant, {
    delays,
    names: true,
    moved,
    ...(modes !== undefined && { modes }),
  });
}

/** "plate middle 0.5 mm up". */
function shiftWords({ name, by }: HeightShift): string {
  const mm = Number((1e3 * Math.abs(by)).toPrecision(3));
  const longer = /^(?:length|gap) /.test(name);
  const way = longer ? (by > 0 ? "longer" : "shorter") : by > 0 ? "up" : "down";
  return `${name} ${mm} mm ${way}`;
}
