/** The frame with one input changed, drawn and meshed like the base. */

import { changedFrame, type FrameSource } from "../frame/change.ts";
import { type Input, withInput } from "../frame/inputs.ts";
import { buildMesh } from "../mesh/build.ts";
import { buildModel } from "../model/build.ts";
import type { Drawn } from "./derivatives.ts";

/**
 * Steps of central differences. Over four samples the slopes of ln(lambda), extrapolated from a step and
 * its half, then agree with those of ten times smaller and larger steps within 1e-6 of the input's largest:
 * rounding alone shows below a tenth of these, and patches that cross cell borders above three times 1e-5 m.
 */
const RELATIVE_STEP = 3e-3;
const POSITION_STEP = 1e-5;

/** SI */
export function stepOf({ kind, value }: Pick<Input, "kind" | "value">): number {
  return kind === "position" ? POSITION_STEP : RELATIVE_STEP * Math.abs(value);
}

/**
 * Heights follow, as always.
 *
 * @param meshSize the base's, m
 * @returns the frame for a change of the input (SI), which throws InputError where there is none
 */
export function inputFrame(
  source: FrameSource,
  input: Input,
  meshSize: number,
): (change: number) => Drawn {
  return (change) => {
    const { file } = changedFrame(source, [withInput(source, input, input.value + change)]);
    const model = buildModel(file);
    return { model, mesh: buildMesh(model, meshSize) };
  };
}
