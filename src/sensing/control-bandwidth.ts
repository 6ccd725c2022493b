/** How fast the rate loop works. */

import { inputError } from "../errors.ts";
import type { ControlDef } from "../frame/types-sensors.ts";

/** Rate loops of craft with propellers up to this diameter (m), and above; common practice, no source. */
const SMALL = 6 * 0.0254;
const SMALL_BANDWIDTH = 40;
const LARGE_BANDWIDTH = 20;

/**
 * Bandwidth of the rate loop, Hz: as the file says, or by the propeller's diameter 40 Hz up to 6 inch
 * and 20 Hz above (common practice, no source: 20 to 60 Hz with 5 inch, 10 to 30 Hz with 7 to 10 inch).
 *
 * @param diameter of the propellers, m
 * @throws InputError where the default is not below the frequency that coupling is looked for at
 */
export function controlBandwidth(
  { bandwidth, couplingBelow }: Pick<ControlDef, "bandwidth" | "couplingBelow">,
  diameter: number,
): number {
  if (bandwidth !== undefined) return bandwidth;
  const usual = diameter <= SMALL * (1 + 1e-9) ? SMALL_BANDWIDTH : LARGE_BANDWIDTH;
  if (usual < couplingBelow) return usual;
  throw inputError(
    "control.couplingBelow",
    `coupling is looked for below ${couplingBelow} Hz only, but rate loops with such propellers usually work up to ${usual} Hz: raise couplingBelow, or give the "bandwidth" of the loop.`,
  );
}
