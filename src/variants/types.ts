/** What is found out about one variant of a frame: plain data, fit to be sent between threads. */

/** A place for the stack that the file names, on one variant. */
export interface Spot {
  readonly name: string;
  readonly plate: string;
  /** over the flight mix as the chips pass them on: deg/s rms, g rms */
  readonly gyro: number;
  readonly accel: number;
  /**
   * least filter delay at the control bandwidth, s; Infinity where no chain reaches the residual, absent
   * where it was not asked for
   */
  readonly delay?: number;
  /** the same with notches that follow the motors, s */
  readonly delayWithNotches?: number;
  /** static false tilt in steady yaw, rad */
  readonly tilt: number;
  /** by use, dB above the least figures of this variant's spots that are not ruled out; less is better */
  readonly score: number;
  /** why it must not be used ("cantilevered"); absent where nothing speaks against it */
  readonly ruledOut?: string;
}

/** Where an order of the excitation meets a mode. */
export interface MeetingPoint {
  /** 1.. */
  readonly mode: number;
  readonly order: string;
  /** times the motors' speed */
  readonly multiple: number;
  /** rad/s */
  readonly speed: number;
  /** share of hover: 0.1 = 10 % faster */
  readonly fromHover: number;
}

/** How the modes of a variant look, so that those of another can be told to be the same. */
export interface ShapeSamples {
  /** what each number is the motion of: "arm front left, tip, z"; the same name on variants alike */
  readonly names: readonly string[];
  /** kg^(1/2) m, weighed by mass so that different modes are nearly orthogonal; mode after mode (modes x names) */
  readonly values: Float64Array;
}

export interface Outcome {
  /** with the stack where the file puts it: kg, m */
  readonly mass: number;
  readonly cg: readonly [number, number, number];
  /** rad/s */
  readonly hover: number;
  /** elastic modes with the stack where the file puts it, Hz, ascending */
  readonly frequencies: Float64Array;
  readonly lossFactors: Float64Array;
  /** in words; only from exact solutions */
  readonly modeNames?: readonly string[];
  readonly shapes: ShapeSamples;
  readonly spots: readonly Spot[];
  /** of the spots; undefined where all are ruled out */
  readonly best?: number;
  readonly meetings: readonly MeetingPoint[];
  readonly solution: Solution;
  readonly warnings: readonly string[];
  /** parts whose height followed a thickness */
  readonly moved: readonly string[];
}

/** How the modes were found. */
export interface Solution {
  readonly method: "exact" | "reduced";
  /** estimate of the largest relative error of a frequency that matters; 0 for exact */
  readonly error: number;
}
