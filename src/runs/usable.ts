/** Which variants a space can be made of. */

import { InputError } from "../errors.ts";
import { type Change, changedFrame, type FrameSource } from "../frame/change.ts";
import { prepareVariant } from "../variants/prepare.ts";
import { isAlike, type ReducedBase } from "../variants/reduced.ts";
import { changeOptions, type FrameText } from "./variant-task.ts";

/** A variant at the ends of what is varied may be no frame at all, or one with another mesh. */
export function isUsable(
  source: FrameSource,
  frame: FrameText,
  base: ReducedBase,
  changes: readonly Change[],
): boolean {
  try {
    const { file } = changedFrame(source, changes, changeOptions(frame));
    return isAlike(base, prepareVariant(file, frame.meshSize));
  } catch (error) {
    if (error instanceof InputError) return false;
    throw error;
  }
}
