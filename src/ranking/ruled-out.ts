/** Whether a place has a hard flag, without the words of it. */

import type { Model } from "../model/types.ts";
import type { ShakenFrame } from "../response/bare-frame.ts";
import type { Heard } from "./assess.ts";
import { patternFits } from "./candidates.ts";
import { mainCoupling, UNSTABLE } from "./control-band.ts";
import { clippingAt, couplingsOf } from "./detail.ts";
import { onFlaggedOverhang } from "./flags.ts";
import type { Instruments } from "./instruments.ts";
import type { FlagKind, Overhang } from "./types.ts";

/** The kind of the first hard flag; undefined where nothing rules the place out. */
export function ruledOutBy(
  model: Model,
  bare: ShakenFrame,
  instruments: Instruments,
  overhangs: readonly Pick<Overhang, "plate" | "direction" | "supportAt" | "endAt" | "flagged">[],
  place: Pick<Heard, "candidate" | "place" | "reading">,
): FlagKind | undefined {
  const { candidate } = place;
  if (onFlaggedOverhang(model, candidate, overhangs)) return "cantilevered";
  if (!patternFits(model.plates[candidate.plate], candidate)) return "pattern off the plate";
  return closelyRuledOutBy(bare, instruments, place);
}

/** Hard flags that show only when a place is looked at closely. */
export function closelyRuledOutBy(
  bare: ShakenFrame,
  instruments: Instruments,
  place: Pick<Heard, "place" | "reading">,
): FlagKind | undefined {
  const { gyro, levelling } = clippingAt(bare, instruments, place);
  if (gyro?.clipped) return "gyro clips";
  if (instruments.use !== "rate" && levelling?.clipped) return "accelerometer clips";
  const gain = mainCoupling(couplingsOf(bare, instruments, place))?.gain ?? 0;
  return gain >= UNSTABLE ? "in the control band" : undefined;
}
