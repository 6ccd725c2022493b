/** The answer: candidate places in order, with reasons. */

import type { LeverArm } from "../attitude/lever-arm.ts";
import type { FilterBurden } from "../filter/burden-types.ts";
import type { Candidate } from "../model/types.ts";
import type { IsolatorFlagKind } from "../response/isolator-flags.ts";
import type { MountMode } from "../response/mount-frequencies.ts";
import type { Clipping } from "../sensing/clipping.ts";
import type { LoopCoupling } from "./control-band.ts";
import type { Foldings } from "./notes.ts";
import type { ScoreParts, Use, UseWeights } from "./use.ts";

export type FlagKind =
  | "cantilevered"
  | "overhanging"
  | "pattern off the plate"
  | "in the control band"
  | "accelerometer clips"
  | "gyro clips"
  | "no room"
  | "near an antinode"
  | "far from the centre of gravity"
  | IsolatorFlagKind;

export interface Flag {
  readonly kind: FlagKind;
  /** a reason to avoid the place whatever its figure */
  readonly hard: boolean;
  /** one sentence with the numbers */
  readonly text: string;
  /** the numbers alone, where the sentence says more */
  readonly brief?: string;
  /** what to do about it, where the sentence ends with it */
  readonly advice?: string;
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
  /** share of the gyro's noise power over the mix, as the chip passes it on, 0..1 */
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

/**
 * What the chips pass on of the lines at one multiple of the motors' speed while all motors turn at
 * exactly the grid's speeds: mean squares, before any filter (each size of the grid).
 */
export interface PassedOrder {
  readonly multiple: number;
  /** (deg/s)^2 */
  readonly gyro: Float64Array;
  /** g^2, without the chip's own noise */
  readonly accel: Float64Array;
}

/** A place while one propeller is worse than the others. */
export interface CaseReading {
  readonly name: string;
  /** what the case is and where its numbers come from */
  readonly text: string;
  /** the motor at which it is worst here, of all it may happen to or the one the file names */
  readonly motor: string;
  readonly anywhere: boolean;
  /** as the chip passes it on, deg/s rms over the flight mix */
  readonly gyro: number;
}

/**
 * Offsets that vibration leaves behind in the chips: the gyro's largest over the speeds that are flown,
 * the accelerometer's over those of self-level flight.
 */
export interface Rectified {
  /** deg/s */
  readonly gyro: number;
  /** g, and the tilt it means at worst, rad */
  readonly accelerometer: number;
  readonly tilt: number;
}

/** One place on one kind of mount. */
export interface MountRow {
  readonly name: string;
  /** absent: screwed down */
  readonly modes?: readonly MountMode[];
  /** as the chips pass it on, over the flight mix: deg/s rms and g rms */
  readonly gyro: number;
  readonly accel: number;
  readonly filter: FilterBurden;
  readonly flags: readonly Flag[];
}

export interface RankedCandidate {
  readonly candidate: Candidate;
  readonly plate: string;
  /** 1 for the best; ties share a place */
  readonly place: number;
  /** shares place 1: not surely worse than the best, see Ranking.tieBand */
  readonly tied: boolean;
  /** found by the program's search, not named in the file and not where the file puts the stack */
  readonly found: boolean;
  /** as the chips pass it on, before filters, over the flight mix: deg/s rms and g rms */
  readonly sensed: { readonly gyro: number; readonly accel: number; readonly gyroAtHover: number };
  /** dB against the best figures of all places that are not to be avoided, weighed by use; less is better */
  readonly score: number;
  readonly scoreParts: ScoreParts;
  /** the least delay that brings the gyro below the wanted residual */
  readonly filter: FilterBurden;
  /** s, more than the least of all places that are not to be avoided, with and without notches */
  readonly delayOver: { readonly without: number; readonly with: number };
  readonly leverArm: LeverArm;
  /** modes that the rate loop can drive, most dangerous first */
  readonly couplings: readonly LoopCoupling[];
  readonly rectified: Rectified;
  /** nearest to the ends of the ranges: at all speeds, and the accelerometer at those of self-level flight */
  readonly clipping: {
    readonly gyro?: Clipping;
    readonly accelerometer?: Clipping;
    readonly levelling?: Clipping;
  };
  readonly cases: readonly CaseReading[];
  /** six motions on the isolators; absent where it is screwed down */
  readonly mountModes?: readonly MountMode[];
  /** true motion, deg/s rms over the flight mix: all axes, and roll, pitch, yaw */
  readonly gyro: number;
  readonly gyroAxes: readonly [number, number, number];
  /** g rms over the flight mix: all axes, and x, y, z */
  readonly accel: number;
  readonly accelAxes: readonly [number, number, number];
  /** true motion, deg/s rms at hover speed */
  readonly gyroAtHover: number;
  /** speeds above 1.5 times hover: their share of the flight, and of the gyro's noise power */
  readonly fast: { readonly flight: number; readonly power: number };
  /** sensed gyro over the flight mix if all natural frequencies were up to FREQUENCY_BAND off, deg/s rms */
  readonly gyroRange: readonly [number, number];
  /** sensed gyro against the quietest candidate without a hard flag, dB */
  readonly decibel: number;
  readonly accelDecibel: number;
  /** m, horizontal distance of the chip from the centre of gravity, and all of it */
  readonly fromCg: number;
  readonly fromCg3d: number;
  readonly flags: readonly Flag[];
  readonly causes: readonly Cause[];
  readonly motion: readonly ModalMotion[];
  readonly spectra: readonly OrderSpectrum[];
  /** one for each multiple, ascending */
  readonly passed: readonly PassedOrder[];
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
  /** of the motors' speed */
  readonly multiple: number;
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
  /** at most three more that belong to it: whether it matters, false tilt elsewhere, and where never */
  readonly sentences: readonly string[];
  /** what else is worth knowing, one sentence each: ties, causes, cases, mounts, what the search found */
  readonly remarks: readonly string[];
}

export interface Ranking {
  readonly candidates: readonly RankedCandidate[];
  readonly use: Use;
  readonly weights: UseWeights;
  /** of the rate loop, Hz, and what is wanted behind the filters, deg/s rms */
  readonly controlBandwidth: number;
  readonly residual: number;
  /** the first place on other mounts */
  readonly mounts: readonly MountRow[];
  readonly map: QuietMap;
  /** where lines fold at the chips' sampling rates */
  readonly foldings: Foldings;
  readonly overhangs: readonly Overhang[];
  readonly crossings: readonly Crossing[];
  /**
   * A candidate ties with the best when, for some error of the natural frequencies within
   * frequencyBand (0.07 = 7 %), its score comes within tieBand dB of it. Those that tie are put in order:
   * named in the file first, then by the number of flags, then by score.
   */
  readonly tieBand: number;
  readonly frequencyBand: number;
  /** what is left out or assumed, for people */
  readonly notes: readonly string[];
  readonly verdict: Verdict;
}

/** Figures at one place of the map; see RankedCandidate for their meaning. */
export interface MapPlace {
  readonly plate: string;
  readonly side: 1 | -1;
  /** m */
  readonly x: number;
  readonly y: number;
  readonly gyro: number;
  readonly accel: number;
  /** s */
  readonly delayWithout: number;
  readonly delayWith: number;
  /** whether the wanted residual can be reached by a low-pass alone */
  readonly attainable: boolean;
  /** rad */
  readonly tilt: number;
  readonly score: number;
  /** on an overhang that is flagged */
  readonly avoid: boolean;
  /** what the stack's box would cut there, in words such as `the plate "top"`; absent where it has room */
  readonly inTheWay?: string;
  /**
   * Absent where the stack's screw pattern fits. Else the place is read as if the pattern, heads and all,
   * were drawn together to this share of its size, 0..1, with which it fits.
   */
  readonly patternShare?: number;
}

/** Figures all over the plates. */
export interface QuietMap {
  /** m, between places where the stack can sit; the rest of the plates may be covered more widely */
  readonly pitch: number;
  /** those where the stack can sit first */
  readonly places: readonly MapPlace[];
}

/** Whether the stack as it is could sit there: its screws fit and its box has room. */
export function canSit({ inTheWay, patternShare }: MapPlace): boolean {
  return inTheWay === undefined && patternShare === undefined;
}
