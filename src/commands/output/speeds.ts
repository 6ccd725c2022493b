/** Motor speeds and the flight mix as text and as fields of a JSON document. */

import type { Excitation, Speeds } from "../../excitation/types.ts";
import { count, quantity, rpm, toRpm, wholePercent } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { wrap } from "../terminal/wrap.ts";

const MOST_ROWS = 8;

export function speedsText({
  low,
  hover,
  full,
  hoverThrust,
  thrustToWeight,
  notes,
}: Speeds): string {
  return (
    wrap(
      `Hover ${rpm(hover)}, full throttle ${rpm(full)}, lowest considered ${rpm(low)}. Each motor lifts ${quantity(hoverThrust, "N")} in hover and ${quantity(thrustToWeight, "times")} that at full throttle.`,
    ) + notes.map((note) => wrap(printable(note), "  ", "    ")).join("")
  );
}

export function mixText({ mixName, mix }: Excitation): string {
  const rows = mix.slice(0, MOST_ROWS).map(({ name, speed, spread, share }) => {
    return `${wholePercent(share)} ${printable(name)} (${rpm(speed)}, give or take ${rpm(spread)})`;
  });
  const rest = mix.length - rows.length;
  if (rest > 0) rows.push(`and ${count(rest, "more row")}`);
  return wrap(`Flight mix "${printable(mixName)}": ${rows.join(", ")}.`);
}

export function speedFields(speeds: Speeds): Record<string, unknown> {
  return {
    hoverRpm: toRpm(speeds.hover),
    fullRpm: toRpm(speeds.full),
    lowRpm: toRpm(speeds.low),
    hoverThrustPerMotorN: speeds.hoverThrust,
    fullThrustPerMotorN: speeds.fullThrust,
    thrustToWeight: speeds.thrustToWeight,
    notes: speeds.notes,
  };
}

export function excitationFields(excitation: Excitation): Record<string, unknown> {
  return {
    speeds: speedFields(excitation.speeds),
    orders: excitation.orders.map(({ name, order, kind, coefficient, source }) => ({
      name,
      order,
      kind,
      // N or N m over (rad/s)^2
      ...(kind === "torque" || kind === "rotating moment"
        ? { amplitudeNMS2: coefficient }
        : { amplitudeNS2: coefficient }),
      source,
    })),
    flightMix: {
      name: excitation.mixName,
      rows: excitation.mix.map(({ name, speed, spread, share }) => ({
        name,
        speedRpm: toRpm(speed),
        spreadRpm: toRpm(spread),
        share,
      })),
    },
  };
}
