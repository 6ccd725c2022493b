/** What the page holds of the levels against motor speed. */

import type { Trace } from "./figure.ts";

type Scale = readonly (readonly [number, string])[];

export interface SpectraData {
  /** lowest and highest speed of the powers, rpm, evenly between */
  readonly rpm: readonly [low: number, high: number];
  /** standard deviation of the motors' speeds from each other, as a share of the speed */
  readonly spread: number;
  /** ends of the map, Hz */
  readonly frequencies: readonly [low: number, high: number];
  readonly layout: Readonly<Record<string, unknown>>;
  readonly map: Readonly<Record<string, unknown>>;
  readonly flight: Trace;
  readonly scales: { readonly light: Scale; readonly dark: Scale };
  /** from the map's top to its ground, dB */
  readonly mapDepth: number;
  readonly orders: readonly {
    readonly multiple: number;
    readonly name: string;
    readonly colour: string;
    readonly dash: string;
  }[];
  readonly places: readonly {
    readonly label: string;
    readonly name: string;
    readonly colour: string;
    readonly dash: string;
  }[];
  readonly gyro: SpectraQuantity;
  readonly accel: SpectraQuantity;
}

export interface SpectraQuantity {
  /** "deg/s rms" */
  readonly unit: string;
  readonly densityUnit: string;
  /** the largest mean square, to which the packed ones refer */
  readonly top: number;
  /** mean squares by place and order, packed (see `unitsOf`) */
  readonly powers: readonly (readonly string[])[];
  /** title, range and ticks of the axis of levels at one place */
  readonly yaxis: Readonly<Record<string, unknown>>;
  /** of the same axis where all places stand together */
  readonly together: Readonly<Record<string, unknown>>;
  /** level of the map's strongest colour, dB */
  readonly mapTop: number;
  /** of each place: its levels, and its map */
  readonly findings: readonly string[];
  readonly mapFindings: readonly string[];
  /** of all places together */
  readonly finding: string;
}
