/** What is assumed or left out in the figures, for people. */

import { highestFrequency } from "../excitation/excite.ts";
import type { Excitation } from "../excitation/types.ts";
import type { FrameFile } from "../frame/types.ts";
import { PLAIN_STACK } from "../model/plain-stack.ts";
import { type FoldedBand, foldedBelow, foldings } from "../sensing/folding.ts";
import type { Instruments } from "./instruments.ts";
import { weightsText } from "./use.ts";

export interface Foldings {
  readonly gyro: readonly FoldedBand[];
  readonly accelerometer: readonly FoldedBand[];
}

/** Where lines of the motors' orders fold at the chips' sampling rates. */
export function foldingsOf({ sensors, groups }: Instruments, { speeds }: Excitation): Foldings {
  const orders = groups.map((g) => g.multiple);
  const at = (rate: number) => foldings(orders, speeds.low, speeds.full, rate);
  return { gyro: at(sensors.gyro.sampling), accelerometer: at(sensors.accelerometer.sampling) };
}

export function notesOf(
  file: FrameFile,
  instruments: Instruments,
  excitation: Excitation,
  folded: Foldings,
  reach: number,
): string[] {
  const { use, sensors, control, bandwidth } = instruments;
  const highest = highestFrequency(excitation);
  return [
    `Gyro noise is what the chip passes on behind its own low-pass (${sensors.gyro.bandwidth} Hz), all axes together, over the flight mix, before any filter of the flight controller; the motors never share a phase, so their powers add.`,
    `Places are ordered for ${use === "both" ? "rate and self-level flight" : `${use} flight`}: ${weightsText(use)}, noise in dB against the best, false tilt as 10 lg(1 + (tilt/allowed)^2) (weights: common practice, no source). A place to avoid comes last whatever its score.`,
    `Filter delay is the least, at ${bandwidth} Hz in hover, of a low-pass that leaves ${control.residual} deg/s rms; with notches, one for each motor and order followed.`,
    "Each candidate carries the stack's mass itself: the frame without it is solved once, and the stack joined to it at each place. The board adds mass but no stiffness.",
    ...(file.stack ? [] : [plainStack()]),
    `Motors differ by ${Math.round(1000 * excitation.motorSpread) / 10} % in speed (standard deviation), so that every order is a small band.`,
    "Comparisons between places are surer than the levels themselves, which follow the assumed unbalance and ripple in proportion.",
    ...(highest > reach
      ? [
          `The modes reach ${short(reach)} Hz; of lines above, up to ${short(highest)} Hz, only what residual flexibility gives is counted, and the gyro's low-pass takes most of it.`,
        ]
      : []),
    ...foldingNote("gyro", sensors.gyro.sampling, folded.gyro, bandwidth),
    ...foldingNote(
      "accelerometer",
      sensors.accelerometer.sampling,
      folded.accelerometer,
      bandwidth,
    ),
  ];
}

function plainStack(): string {
  const { mass, size } = PLAIN_STACK;
  const mm = size.map((v) => Math.round(v * 1e3)).join(" x ");
  return `The file describes no stack: a single board of ${Math.round(mass * 1e3)} g, ${mm} mm, is assumed.`;
}

const short = (f: number): number => Number(f.toPrecision(3));

/** "order 3 near 20000 rpm" */
function bandText({ order, speeds }: FoldedBand): string {
  const rpm = ((speeds[0] + speeds[1]) / 2) * (30 / Math.PI);
  return `order ${order} near ${Number(rpm.toPrecision(3))} rpm`;
}

/** Only what folds into the band where nothing may be filtered. */
function foldingNote(
  chip: string,
  rate: number,
  bands: readonly FoldedBand[],
  limit: number,
): string[] {
  const low = foldedBelow(bands, limit);
  if (low.length === 0) return [];
  const all = low.map(bandText).join(", ");
  return [
    `At ${rate} samples per second the ${chip} folds lines into the band of the rate loop, below ${limit} Hz: ${all}. Its own low-pass is all that weakens them there.`,
  ];
}
