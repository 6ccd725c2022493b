/** What is wrong with the soft mounts under a stack, with numbers and what to do. */

import type { MountMode } from "./mount-frequencies.ts";
import {
  bounceLimits,
  CLOSE,
  CONTROL_MARGIN,
  clearStiffness,
  IN_RESONANCE,
  ISOLATES_BELOW,
  type IsolatorLimits,
} from "./suitable-stiffness.ts";
import { transmissibility } from "./transmissibility.ts";

export type IsolatorFlagKind =
  | "isolators too soft"
  | "isolators in resonance at hover"
  | "isolators close to resonance at hover"
  | "isolators do not isolate";

export interface IsolatorFlag {
  readonly kind: IsolatorFlagKind;
  /** what is wrong, with its numbers: one sentence without a stop */
  readonly text: string;
  /** its numbers alone */
  readonly brief: string;
  /** what to do: the same for all flags of one set of mounts */
  readonly advice: string;
}

/** A stack on mounts of known frequencies. */
export interface MountedStack extends IsolatorLimits {
  /** all six */
  readonly modes: readonly MountMode[];
  /** of one mount along its screw, N/m */
  readonly axial: number;
  readonly lossFactor: number;
}

/** A range of stiffness narrower than this ratio is told by its middle. */
const NARROW = 1.25;

/** At most one flag of a kind; none where the mounts suit. */
export function isolatorFlags(stack: MountedStack): IsolatorFlag[] {
  const { modes, hover, controlBandwidth, lossFactor } = stack;
  const [lowest, highest] = bounceLimits(stack);
  const found: Omit<IsolatorFlag, "advice">[] = [];
  const slow = modes.filter((m) => m.frequency < lowest);
  if (slow.length > 0) {
    found.push({
      kind: "isolators too soft",
      brief: `${slow.length} of ${modes.length} motions below ${hz(lowest)}, ${CONTROL_MARGIN} times the bandwidth of the rate loop; the lowest: ${listed(slow.slice(0, 1))}`,
      text: `${listed(slow)} ${lie(slow)} below ${CONTROL_MARGIN} times the control bandwidth of ${hz(controlBandwidth)} (${hz(lowest)}): the stack moves on its mounts where the control loop works`,
    });
  }
  const off = (m: MountMode) => Math.abs(m.frequency / hover - 1);
  const met = modes.filter((m) => off(m) <= IN_RESONANCE);
  if (met.length > 0) {
    found.push({
      kind: "isolators in resonance at hover",
      brief: `${listed(met)}; hover turns at ${hz(hover)}`,
      text: `${listed(met)} ${lie(met)} within ${percent(IN_RESONANCE)} of hover (${hz(hover)}, once per turn): where the two meet, the mounts magnify ${times(transmissibility(1, 1, lossFactor))}`,
    });
  }
  const near = modes.filter((m) => off(m) > IN_RESONANCE && off(m) <= CLOSE);
  if (near.length > 0) {
    found.push({
      kind: "isolators close to resonance at hover",
      brief: `${listed(near)}; hover turns at ${hz(hover)}`,
      text: `${listed(near)} ${lie(near)} within ${percent(CLOSE)} of hover (${hz(hover)}, once per turn), which differs by a few per cent from motor to motor and with the battery`,
    });
  }
  const bounce = modes.find((m) => m.motion === "bounce") as MountMode;
  if (bounce.frequency > highest) {
    found.push({
      kind: "isolators do not isolate",
      brief: `bounce ${hz(bounce.frequency)}, should be below ${hz(highest)}: at hover they pass on ${times(transmissibility(hover, bounce.frequency, lossFactor))} what screws do`,
      text: `the bounce at ${hz(bounce.frequency)} lies above ${ISOLATES_BELOW} of hover (${hz(highest)} of ${hz(hover)}): at hover the mounts pass ${times(transmissibility(hover, bounce.frequency, lossFactor))} the vibration on, where screws pass it on as it is`,
    });
  }
  if (found.length === 0) return [];
  const advice = adviceFor(stack);
  return found.map((flag) => ({ ...flag, advice }));
}

function adviceFor(stack: MountedStack): string {
  const { modes, axial } = stack;
  const [lowest, highest] = bounceLimits(stack);
  const clear = clearStiffness(modes, axial, stack);
  if ("window" in clear) {
    const { low, high } = clear.window;
    const range =
      high / low < NARROW
        ? `${kN(Math.sqrt(low * high))} kN/m each, no more than ${(50 * (high / low - 1)).toPrecision(2)} % off,`
        : `${kN(low)} to ${kN(high)} kN/m each`;
    return `take mounts of ${range} along the screw (now ${kN(axial)}), with the same proportion across`;
  }
  const screws = "or screw the stack down";
  const bounce = modes.find((m) => m.motion === "bounce") as MountMode;
  const least = Math.min(...modes.map((m) => m.frequency));
  // of two that coincide but for rounding always the first
  const slowest = modes.find((m) => m.frequency <= least * (1 + 1e-9)) as MountMode;
  const share = slowest.frequency / bounce.frequency;
  const slower = `lower the control bandwidth to less than ${hz((share * highest) / CONTROL_MARGIN)}`;
  if (clear.none === "rules exclude each other") {
    return `no mounts suit: the bounce would have to lie above ${hz(lowest)} for the control loop and below ${hz(highest)} to isolate at hover; ${slower}, ${screws}`;
  }
  if (clear.none === "one motion too slow") {
    return `no stiffness suits mounts of these proportions: with the bounce at ${hz(highest)}, low enough to isolate at hover, ${slowest.motion} is at ${share.toFixed(2)} of that, and the control loop needs ${hz(lowest)}; ${bringUp(slowest)}, ${slower}, ${screws}`;
  }
  return `no stiffness suits mounts of these proportions: with the bounce between the control loop and hover, another motion is close to hover; take mounts that are softer across the screw, set them closer together or lower the stack, ${screws}`;
}

function bringUp({ motion }: MountMode): string {
  return motion.endsWith("rocking")
    ? "set the mounts further apart"
    : "take mounts that are stiffer across the screw";
}

/** "sway fore-aft (58 Hz) and bounce (92 Hz)" */
function listed(modes: readonly MountMode[]): string {
  const each = modes.map((m) => `${m.motion} (${hz(m.frequency)})`);
  return each.length < 2
    ? each.join("")
    : `${each.slice(0, -1).join(", ")} and ${each[each.length - 1]}`;
}

function lie(modes: readonly MountMode[]): string {
  return modes.length === 1 ? "lies" : "lie";
}

function hz(f: number): string {
  return `${Number(f.toPrecision(3))} Hz`;
}

function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}

function times(factor: number): string {
  return `${Number(factor.toPrecision(3))} times`;
}

function kN(k: number): string {
  return String(Number((k / 1e3).toPrecision(2)));
}
