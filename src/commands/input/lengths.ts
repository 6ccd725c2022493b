/** Lengths given as options. */

import { inputError } from "../../errors.ts";

/** The length in m; a bare number is in mm. @throws InputError when it is not one above zero */
export async function readLength(option: string, text: string): Promise<number> {
  const [{ readQuantity }, { KINDS }] = await Promise.all([
    import("../../frame/quantity.ts"),
    import("../../frame/quantity-kinds.ts"),
  ]);
  const written = /^\s*[+-]?\d*\.?\d+\s*$/.test(text) ? Number(text) : text;
  const reading = readQuantity(written, KINDS.length, { above: 0 });
  if ("value" in reading) return reading.value;
  throw inputError(option, reading.problem);
}
