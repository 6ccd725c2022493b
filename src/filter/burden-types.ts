/**
 * What the filter burden of a gyro signal is reckoned from, and what it comes to.
 *
 * The burden is the price in delay that a place on the frame asks for: the least that a low-pass, with
 * or without notches that follow the motors, must delay the rate loop by so that what is left of the
 * vibration and the sensor's noise stays within a target. Rates are in deg/s as sensors give them; all
 * else is SI.
 */

/** One harmonic of all motors in the signal, speed by speed. What it carries is given place by place. */
export interface Line {
  readonly name: string;
  /** multiple of the motors' speed */
  readonly order: number;
  /** Hz, 0 to fs/2, as the filter sees it: folded back where sampling has folded it (size s) */
  readonly frequency: Float64Array;
  /** 1 where sampling has folded it, 0 where frequency = order x speed; left out: nowhere (size s) */
  readonly folded?: Uint8Array;
}

/** The notches that follow the motors: one for each motor and each multiple followed. */
export interface NotchSetup {
  /** quality factor: centre over width at -3 dB */
  readonly quality: number;
  /** by how much the notches miss their motors, as a share of the speed */
  readonly trackingError: number;
  /** how many multiples may be followed at once, 0 to 3; 3 where it is left out */
  readonly most?: number;
}

export interface BurdenSetup {
  /** sampling rate of the filters, Hz */
  readonly fs: number;
  /** motor speeds, rev/s (size s) */
  readonly speeds: Float64Array;
  /** share of the flight at each speed, summing to 1 (size s) */
  readonly weights: Float64Array;
  /** motor speed in hover, rev/s */
  readonly hover: number;
  /** the frequency up to which the rate loop acts, Hz; delay and lag are told there */
  readonly controlBandwidth: number;
  /** what may be left, deg/s rms, the three axes together */
  readonly target: number;
  /** of the sensor, one-sided, deg/s per sqrt(Hz) on each of the three axes */
  readonly noiseDensity: number;
  /** how much of the noise's power the sensor's own filter passes at a frequency in Hz; left out: all */
  readonly noiseGain?: (f: number) => number;
  /** number of motors */
  readonly rotors: number;
  /** standard deviation of the motors' speeds, as a share of their mean */
  readonly motorSpread: number;
  readonly notch: NotchSetup;
}

/** Butterworth low-pass. */
export interface LowPass {
  readonly order: 1 | 2 | 4;
  /** -3 dB, Hz */
  readonly cutOff: number;
}

/** The chain with the least delay, or the one that leaves least where the target is out of reach. */
export interface Burden {
  /** whether the target can be met with a cut-off above the control bandwidth */
  readonly attainable: boolean;
  /** undefined where none is needed */
  readonly lowPass: LowPass | undefined;
  /** multiples of the motor speed that are followed, ascending */
  readonly notches: readonly number[];
  /** how late a sine at the control bandwidth comes, in hover, s */
  readonly delay: number;
  /** by how much it lags there, rad: 2 pi x control bandwidth x delay */
  readonly lag: number;
  /** how late slow motions come, in hover, s */
  readonly groupDelay: number;
  /** the delay at the control bandwidth that is not exceeded in 99 % of the flight, s */
  readonly delayMostOfFlight: number;
  /** what is left, deg/s rms, the three axes together */
  readonly residual: number;
  /** deg/s rms of each line, in the order of the lines; their squares and the noise's add up */
  readonly residualOfLines: readonly number[];
  /** deg/s rms */
  readonly residualOfNoise: number;
  /** the line that leaves most, or "noise" */
  readonly mostFrom: string;
}

export interface FilterBurden {
  /** lines and noise unfiltered, deg/s rms */
  readonly raw: number;
  /** low-pass only */
  readonly without: Burden;
  /** with notches where they help */
  readonly with: Burden;
}
