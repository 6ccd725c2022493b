/** How stiff mounts may be: stiff enough for the control loop, soft enough to isolate at hover. */

import type { MountMode } from "./mount-frequencies.ts";

/** What the frequencies of a stack on its mounts are judged by, Hz. */
export interface IsolatorLimits {
  /** once per turn of the motors in hover */
  readonly hover: number;
  /** of the rate loop */
  readonly controlBandwidth: number;
}

/**
 * Motions on the mounts should lie this many times above the control bandwidth; 2 to 3 times. Derived: at
 * 1/2.5 of a frequency with loss factor 0.2 the mount passes 1.18 times the motion, 2 degrees late.
 */
export const CONTROL_MARGIN = 2.5;
/** A bounce above this share of hover isolates nothing there: |T| = 1 at f = sqrt 2 fn (derived). */
export const ISOLATES_BELOW = 0.7;
/** Closer to hover than this is in resonance, or close to it; common practice, no source. */
export const IN_RESONANCE = 0.1;
export const CLOSE = 0.2;

/** Stiffness of one mount along its screw, N/m. */
export interface StiffnessWindow {
  readonly low: number;
  readonly high: number;
}

/**
 * Stiffness of one mount for which the bounce lies between 2.5 times the control bandwidth and 0.7 times
 * hover, k = m (2 pi f)^2 / n; undefined where the two rules leave nothing between them.
 *
 * @param mass kg
 * @param mounts how many carry it
 */
export function suitableStiffness(
  mass: number,
  mounts: number,
  limits: IsolatorLimits,
): StiffnessWindow | undefined {
  const k = (f: number) => (mass * (2 * Math.PI * f) ** 2) / mounts;
  const [low, high] = bounceLimits(limits).map(k);
  return low < high ? { low, high } : undefined;
}

/** Lowest and highest bounce, Hz; the lowest may lie above the highest. */
export function bounceLimits({ hover, controlBandwidth }: IsolatorLimits): [number, number] {
  return [CONTROL_MARGIN * controlBandwidth, ISOLATES_BELOW * hover];
}

/** A window for mounts of given proportions, or why there is none. */
export type ClearStiffness =
  | { readonly window: StiffnessWindow }
  | {
      readonly none: "rules exclude each other" | "one motion too slow" | "one motion meets hover";
    };

/**
 * The widest range of stiffness for which all six motions keep clear of the control loop, the bounce
 * isolates, and nothing is close to hover. Mounts keep their proportions: with lateral and axial stiffness
 * s times as much, every frequency is sqrt(s) times as high.
 *
 * @param modes on mounts of the stiffness `axial` (N/m, one mount along its screw)
 */
export function clearStiffness(
  modes: readonly MountMode[],
  axial: number,
  limits: IsolatorLimits,
): ClearStiffness {
  const [lowest, highest] = bounceLimits(limits);
  if (!(lowest < highest)) return { none: "rules exclude each other" };
  const bounce = modes.find((m) => m.motion === "bounce") as MountMode;
  const slowest = Math.min(...modes.map((m) => m.frequency));
  // factors on all frequencies
  const [from, to] = [lowest / slowest, highest / bounce.frequency];
  if (!(from < to)) return { none: "one motion too slow" };
  let clear: (readonly [number, number])[] = [[from, to]];
  for (const { frequency } of modes) {
    const [a, b] = [1 - CLOSE, 1 + CLOSE].map((share) => (share * limits.hover) / frequency);
    clear = clear.flatMap(([p, q]) => [[p, Math.min(q, a)] as const, [Math.max(p, b), q] as const]);
    clear = clear.filter(([p, q]) => p < q);
  }
  if (clear.length === 0) return { none: "one motion meets hover" };
  const [p, q] = clear.reduce((best, one) => (one[1] / one[0] > best[1] / best[0] ? one : best));
  return { window: { low: axial * p * p, high: axial * q * q } };
}
