/** The chips and the control loops, as read: defaults filled in. */

/**
 * Gyro and accelerometer. Their figures stay as datasheets give them: rotation rates in deg/s,
 * accelerations in g (standard gravity), frequencies in Hz.
 */
export interface SensorsDef {
  readonly gyro: GyroDef;
  readonly accelerometer: ChipDef;
}

/** One sensor of three axes; "reading" is deg/s for a gyro, g for an accelerometer. */
export interface ChipDef {
  /** reading per sqrt(Hz), each axis */
  readonly noiseDensity: number;
  /** offset of the reading per mean-square acceleration: reading per g^2 */
  readonly rectification: number;
  /** largest reading of either sign */
  readonly range: number;
  /** samples per second, Hz */
  readonly sampling: number;
  /** of the chip's own low-pass, -3 dB, Hz */
  readonly bandwidth: number;
}

export interface GyroDef extends ChipDef {
  /** deg/s per g */
  readonly accelerationSensitivity: number;
}

export interface ControlDef {
  /** What is flown: on rates alone, levelling itself, or both. */
  readonly use: "rate" | "self-level" | "both";
  /** of the rate loop, Hz; absent: by the propeller's diameter */
  readonly bandwidth?: number;
  /** gyro noise wanted behind the filters, deg/s rms of the three axes together */
  readonly residual: number;
  /** Hz; structural modes below it are looked at for coupling with the rate loop */
  readonly couplingBelow: number;
  /** time constant with which the attitude follows the accelerometer, s */
  readonly attitudeTime: number;
  /** Notches that follow the motors. */
  readonly notches: {
    readonly quality: number;
    /** share of the speed by which they miss it */
    readonly trackingError: number;
  };
  /** of the example of a chip away from the centre of gravity, rad/s */
  readonly yawRate: number;
  /** false tilt that does not matter, rad */
  readonly attitudeError: number;
}
