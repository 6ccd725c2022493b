/** What moves a frame's modes and the noise at its spots: plain data for terminal, JSON and report. */

import type { Input } from "../frame/inputs.ts";

export interface SensitivityTable {
  /** with the stack where the file puts it, lowest first */
  readonly modes: readonly SensitiveMode[];
  /** numbers of modes that lie close together; their slopes are those of the cluster */
  readonly clusters: readonly (readonly number[])[];
  /** none where nothing shakes the frame */
  readonly spots: readonly SensitiveSpot[];
  /** of the spots, on the frame as drawn; undefined where all are ruled out */
  readonly best?: number;
  /** in the order of the file */
  readonly rows: readonly SensitivityRow[];
}

export interface SensitiveMode {
  /** 1.. */
  readonly number: number;
  /** Hz */
  readonly frequency: number;
  readonly name: string;
}

export interface SensitiveSpot {
  readonly name: string;
  readonly plate: string;
  /** deg/s rms over the flight mix as the chip passes it on */
  readonly gyro: number;
  readonly ruledOut?: string;
}

/** How far an input is moved to see what it can really do, SI. */
export interface Reach {
  readonly from: number;
  readonly to: number;
  readonly scale: "even" | "log";
  /** its own spread, or 5 % (1 mm of a position) to either side where it has none */
  readonly why: "spread" | "5 %" | "1 mm";
}

export interface SensitivityRow {
  readonly input: Input;
  readonly reach: Reach;
  /** Hz per SI unit of the input, by mode; absent where the frame changes by jumps */
  readonly slopes?: Float64Array;
  /** why there are no slopes */
  readonly notSmooth?: string;
  /** gyro noise by spot at either end of the reach, dB above that of the drawing */
  readonly noise?: {
    readonly from: Float64Array;
    readonly to: Float64Array;
    readonly method: "exact" | "reduced";
  };
  /** why there is no noise: the frame cannot be built or solved at an end of the reach */
  readonly impossible?: string;
}
