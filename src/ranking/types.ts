/** The answer: candidate places in order, with reasons. */

import type { Candidate } from "../model/types.ts";

export type FlagKind =
  | "cantilevered"
  | "overhanging"
  | "pattern off the plate"
  | "near an antinode"
  | "far from the centre of gravity";

export interface Flag {
  readonly kind: FlagKind;
  /** a reason to avoid the place whatever its figure */
  readonly hard: boolean;
  /** one sentence with the numbers */
  readonly text: string;
}

/** A mode and order that cause part of a candidate's gyro noise. */
export interface Cause {
  /** number among the modes with the stack at this place, 1..; 0 = the whole craft moves as one */
  readonly mode: number;
  readonly frequency: number;
  readonly modeName: string;
  /** parts that hold most of its strain energy, largest first */
  readonly parts: readonly { readonly name: string; readonly share: number }[];
  /** what would move the mode, or "" */
  readonly remedy: string;
  readonly order: string;
  /** whether the order meets the mode within the speeds considered; else it only comes near */
  readonly met: boolean;
  /** share of the gyro's noise power over the mix, 0..1 */
  readonly share: number;
  /** rpm at which the order meets the mode */
  readonly rpm: number;
}

/** How a mode moves the place: per unit of modal amplitude. */
export interface ModalMotion {
  readonly mode: number;
  readonly frequency: number;
  /** rad per sqrt(kg) m of modal amplitude, root sum square of three axes */
  readonly rotation: number;
  /** m per sqrt(kg) m, at the chip */
  readonly displacement: number;
  /** both relative to the largest over all candidates for this mode, 0..1 */
  readonly rotationShare: number;
  /** rotationShare of the candidate that turns least */
  readonly calmestShare: number;
  readonly displacementShare: number;
}

/** Levels against motor speed for one order (each size of the grid). */
export interface OrderSpectrum {
  readonly order: string;
  /** deg/s rms */
  readonly gyro: Float64Array;
  /** g rms */
  readonly accel: Float64Array;
}

export interface RankedCandidate {
  readonly candidate: Candidate;
  readonly plate: string;
  /** 1 for the best; ties share a place */
  readonly place: number;
  /** shares place 1: not surely noisier than the quietest, see Ranking.tieBand */
  readonly tied: boolean;
  /** deg/s rms over the flight mix: all axes, and roll, pitch, yaw */
  readonly gyro: number;
  readonly gyroAxes: readonly [number, number, number];
  /** g rms over the flight mix: all axes, and x, y, z */
  readonly accel: number;
  readonly accelAxes: readonly [number, number, number];
  /** deg/s rms at hover speed */
  readonly gyroAtHover: number;
  /** speeds above 1.5 times hover: their share of the flight, and of the gyro's noise power */
  readonly fast: { readonly flight: number; readonly power: number };
  /** gyro over the flight mix if all natural frequencies were up to FREQUENCY_BAND off, deg/s rms */
  readonly gyroRange: readonly [number, number];
  /** gyro against the quietest candidate without a hard flag, dB */
  readonly decibel: number;
  readonly accelDecibel: number;
  /** m, horizontal distance of the chip from the centre of gravity, and all of it */
  readonly fromCg: number;
  readonly fromCg3d: number;
  readonly flags: readonly Flag[];
  readonly causes: readonly Cause[];
  readonly motion: readonly ModalMotion[];
  readonly spectra: readonly OrderSpectrum[];
  /** all orders together (size of the grid) */
  readonly gyroTotal: Float64Array;
  readonly accelTotal: Float64Array;
}

/** A part of a plate that reaches past its last support. */
export interface Overhang {
  readonly plate: string;
  readonly direction: "front" | "rear" | "left" | "right";
  /** m */
  readonly length: number;
  readonly thickness: number;
  /** coordinate of the last support and of the free end along the direction's axis, m */
  readonly supportAt: number;
  readonly endAt: number;
  /** mass carried beyond the support, kg */
  readonly mass: number;
  /** the mode that moves mostly this part, if one was found */
  readonly mode?: number;
  readonly frequency?: number;
  /** it has a mode of its own that the motors can excite */
  readonly flagged: boolean;
  readonly text: string;
}

/** An order meeting a mode inside the working band. */
export interface Crossing {
  readonly mode: number;
  readonly frequency: number;
  readonly modeName: string;
  readonly order: string;
  /** rad/s and rpm */
  readonly speed: number;
  readonly rpm: number;
  /** distance from hover as a share of hover speed, signed */
  readonly fromHover: number;
  /** within 10 % of hover */
  readonly nearHover: boolean;
}

export interface Verdict {
  /** one sentence: where */
  readonly headline: string;
  /** further sentences: does it matter, where never, what limits the answer */
  readonly sentences: readonly string[];
}

export interface Ranking {
  readonly candidates: readonly RankedCandidate[];
  readonly overhangs: readonly Overhang[];
  readonly crossings: readonly Crossing[];
  /**
   * A candidate ties with the quietest when, for some error of the natural frequencies within
   * frequencyBand (0.07 = 7 %), it comes within tieBand dB of it. Those that tie are put in order by
   * their flags, then by the accelerometer.
   */
  readonly tieBand: number;
  readonly frequencyBand: number;
  /** what is left out or assumed, for people */
  readonly notes: readonly string[];
  readonly verdict: Verdict;
}
