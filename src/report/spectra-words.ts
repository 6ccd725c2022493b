/** What the curves of levels show, in words. */

import type { RankedCandidate } from "../ranking/types.ts";
import { perTurn } from "./campbell-words.ts";
import { drawnMode } from "./modes-that-matter.ts";
import { hertz, percent, rpm, withUnit } from "./numbers.ts";
import { type Labelled, placeText, quoted } from "./place-names.ts";
import type { Analysed } from "./types.ts";

type Excited = NonNullable<Analysed["excitation"]>;
type Quantity = "gyro" | "accel";

const level = (value: number, quantity: Quantity) =>
  `${withUnit(value, quantity === "gyro" ? "deg/s" : "g")} rms`;

/** The speed of the highest reading, rad/s, and the reading. */
export function peak({ grid }: Pick<Excited, "grid">, values: Float64Array) {
  const at = values.reduce((best, v, i) => (v > values[best] ? i : best), 0);
  return { at, speed: grid[at], value: values[at] };
}

/** "1a: bay: at most 50.7 deg/s rms, at 24 300 rpm, 99 % of its power once per turn; in hover 1.1 ..." */
export function placeFinding(
  l: Labelled,
  e: Excited,
  total: Float64Array,
  quantity: Quantity,
): string {
  const top = peak(e, total);
  const hover = nearest(e.grid, e.speeds.hover);
  const most = strongest(l.place, top.at, quantity);
  const quiet = strongest(l.place, hover, quantity);
  return `${placeText(l)}: at most ${level(top.value, quantity)}, at ${rpm(top.speed)}, ${most}; in hover ${level(total[hover], quantity)}, ${quiet}.`;
}

/** "97 % of its power once per turn": the order that holds most at a speed. */
function strongest({ passed }: RankedCandidate, at: number, quantity: Quantity): string {
  const whole = passed.reduce((sum, p) => sum + p[quantity][at], 0);
  if (!(whole > 0)) return "nothing of it by the motors";
  const most = passed.reduce((a, b) => (b[quantity][at] > a[quantity][at] ? b : a));
  const share = most[quantity][at] / whole;
  const words = share > 0.995 ? "nearly all" : percent(share, 2);
  return `${words} of its power from what pushes ${perTurn(most.multiple)}`;
}

/** Where a sweep is loudest: the order, the frequency, and the mode that is there. */
export function mapFinding(
  l: Labelled,
  { grid }: Excited,
  { modes, ranking }: Analysed,
  quantity: Quantity,
): string {
  const peaks = l.place.passed.map(({ multiple, [quantity]: power }) => ({
    multiple,
    // A density: the same power over a streak that is as much wider as its frequency is higher.
    ...peak(
      { grid },
      power.map((p, i) => p / (multiple * grid[i])),
    ),
  }));
  if (peaks.length === 0) return "";
  const { multiple, speed } = peaks.reduce((a, b) => (b.value > a.value ? b : a));
  const frequency = (multiple * speed) / (2 * Math.PI);
  const cause = l.place.causes.find((c) => Math.abs(c.frequency / frequency - 1) < 0.03);
  const mode = drawnMode(
    { frequency, modeName: cause?.modeName ?? "", mode: 1 },
    modes.described,
    ranking?.frequencyBand ?? 0,
  );
  const there = mode ? `, where mode ${mode.number} is (${mode.name})` : "";
  return `A slow sweep of the throttle at ${placeText(l)} has the highest density at ${hertz(frequency)}${there}, when ${perTurn(multiple)} gets there at ${rpm(speed)}.`;
}

/** The best and the last of the places. */
export function allFinding(
  all: readonly Labelled[],
  curves: readonly { readonly index: number }[],
  e: Excited,
  totals: readonly Float64Array[],
  quantity: Quantity,
): string {
  const words = (i: number) => {
    const p = peak(e, totals[i]);
    return `${quoted(all[curves[i].index].place.candidate.name)}, peaks with ${level(p.value, quantity)} at ${rpm(p.speed)}`;
  };
  if (curves.length === 0) return "";
  if (curves.length === 1) return `The only place, ${words(0)}.`;
  return `The best place, ${words(0)}; the last, ${words(curves.length - 1)}.`;
}

function nearest(grid: Float64Array, speed: number): number {
  return grid.reduce(
    (best, w, i) => (Math.abs(w - speed) < Math.abs(grid[best] - speed) ? i : best),
    0,
  );
}
