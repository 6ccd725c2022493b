/**
 * Which coordinate of the sample points each input takes. Common random numbers: the same input of two
 * variants takes the same coordinate, so sample i of both is the same frame but for what was changed,
 * and their differences are far better known than either.
 */

import { inputError } from "../errors.ts";
import { type SpreadInput, spreadValue, varies } from "./spread-value.ts";

/** Coordinate of each input that is sampled, by name. */
export type Dimensions = ReadonlyMap<string, number>;

/**
 * Sorted by name over the inputs of all variants; those that are exact in all of them are left out.
 * Sorting by code units, so that no machine's language changes the samples.
 */
export function dimensionsOf(variants: readonly (readonly SpreadInput[])[]): Dimensions {
  const names = new Set(variants.flatMap((inputs) => inputs.filter(varies).map((i) => i.name)));
  return new Map([...names].sort().map((name, coordinate) => [name, coordinate]));
}

/** An input with its value in one sample, SI. */
export interface SampledValue<I extends SpreadInput> {
  readonly input: I;
  readonly value: number;
}

/**
 * The values of one variant's inputs at a sample point, those that vary only.
 *
 * @param point coordinates from 0 to 1 (size of `dimensions`)
 * @throws InputError for a spread that cannot be, or an input that has no coordinate
 */
export function sampledValues<I extends SpreadInput>(
  inputs: readonly I[],
  dimensions: Dimensions,
  point: Float64Array,
): SampledValue<I>[] {
  return inputs.filter(varies).map((input) => {
    const coordinate = dimensions.get(input.name);
    if (coordinate === undefined || coordinate >= point.length) {
      throw inputError(
        input.name,
        `The sample point of ${point.length} coordinates has none for this input. Make the dimensions from the inputs of all variants.`,
      );
    }
    return { input, value: spreadValue(input, point[coordinate]) };
  });
}
