/** Motor speeds at which an order meets a natural frequency. */

import { multiplesOf } from "../excitation/multiples.ts";
import type { Excitation } from "../excitation/types.ts";
import type { ModeDescription } from "../modes/types.ts";
import type { Crossing } from "./types.ts";

/** Closer to hover than this share of it counts as "at hover"; 10 % is the usual margin for rotating machinery. */
export const HOVER_MARGIN = 0.1;

/** A mode as crossings need it. */
type Crossed = Pick<ModeDescription, "number" | "frequency" | "name">;

export function findCrossings(modes: readonly Crossed[], e: Excitation): Crossing[] {
  const { low, hover, full } = e.speeds;
  // Orders of the same multiple (thrust and torque at blade pass) cross together.
  const multiples = multiplesOf(e.orders).map(
    ({ multiple, orders }) => [multiple, e.orders[orders[0]].name] as const,
  );
  return modes
    .flatMap((m) =>
      multiples.flatMap(([order, name]): Crossing[] => {
        const speed = (2 * Math.PI * m.frequency) / order;
        if (speed < low || speed > full) return [];
        const fromHover = speed / hover - 1;
        return [
          {
            mode: m.number,
            frequency: m.frequency,
            modeName: m.name,
            order: name,
            multiple: order,
            speed,
            rpm: (speed * 60) / (2 * Math.PI),
            fromHover,
            nearHover: Math.abs(fromHover) <= HOVER_MARGIN,
          },
        ];
      }),
    )
    .sort((a, b) => a.speed - b.speed);
}
