/**
 * Typical sizes and masses of multirotor frames by propeller size, for a new frame file. Common
 * practice, no source. Lengths in mm, masses in g, as a builder writes them.
 */

export const SIZE_CLASSES = ["3 inch", "5 inch", "7 inch", "10 inch"] as const;
export type SizeClass = (typeof SIZE_CLASSES)[number];

export interface ClassSizes {
  /** Motor axis of the front left arm: the same number for x and y. */
  readonly motorAt: number;
  /** Where the arm leaves the plates, x and y alike. */
  readonly rootAt: number;
  readonly arm: {
    readonly thickness: number;
    readonly width: readonly [root: number, tip: number];
    readonly inserted: number;
    readonly pad: number;
    readonly wheelbase: string;
  };
  /** Half length and half width of the plates; `nose` is the half width at their ends. */
  readonly bottom: { readonly thickness: number; readonly outline: Outline };
  readonly middle: { readonly thickness: number; readonly outline: Outline };
  readonly top: { readonly thickness: number; readonly outline: Outline };
  readonly post: {
    readonly at: readonly (readonly [number, number])[];
    readonly outer: number;
    readonly bore: number;
    readonly length: number;
  };
  readonly motor: {
    readonly mass: number;
    readonly screws: number;
    readonly cgHeight: number;
    readonly kv: number;
  };
  readonly propeller: {
    readonly mass: number;
    readonly nut: number;
    readonly inches: number;
    readonly planeHeight: number;
    readonly thrustCoefficient: number;
  };
  readonly cells: number;
  /** Hover speed, rpm: only an example in a comment. */
  readonly hover: number;
  readonly battery: { readonly mass: number; readonly size: readonly [number, number, number] };
  readonly camera: { readonly mass: number; readonly size: number };
  readonly transmitter: number;
  readonly wiring: number;
  readonly fasteners: number;
  readonly stack: {
    readonly mass: number;
    readonly size: readonly [number, number, number];
    readonly holes: number;
  };
}

/** The front-left quarter of a plate, from the nose to the side. */
type Outline = readonly (readonly [number, number])[];

// biome-ignore format: one class, one block
export const CLASS_SIZES: Readonly<Record<SizeClass, ClassSizes>> = {
  "3 inch": {
    motorAt: 50, rootAt: 17,
    arm: { thickness: 3.5, width: [12, 9], inserted: 14, pad: 18, wheelbase: "130 to 150 mm" },
    bottom: { thickness: 2, outline: [[30, 12], [22, 20]] },
    middle: { thickness: 1.5, outline: [[38, 10], [24, 20]] },
    top: { thickness: 1.5, outline: [[38, 10], [28, 16]] },
    post: { at: [[32, 9]], outer: 4, bore: 1.6, length: 20 },
    motor: { mass: 11, screws: 0.6, cgHeight: 6.5, kv: 3600 },
    propeller: { mass: 1.6, nut: 0.3, inches: 3, planeHeight: 14, thrustCoefficient: 0.15 },
    cells: 4, hover: 16000,
    battery: { mass: 80, size: [60, 30, 28] },
    camera: { mass: 7, size: 18 }, transmitter: 6, wiring: 9, fasteners: 7,
    stack: { mass: 10, size: [28, 28, 10], holes: 20 },
  },
  "5 inch": {
    motorAt: 79, rootAt: 21,
    arm: { thickness: 5, width: [17, 12.5], inserted: 20, pad: 28, wheelbase: "210 to 235 mm" },
    bottom: { thickness: 2.5, outline: [[36, 15], [28, 24]] },
    middle: { thickness: 2, outline: [[74, 12], [60, 16], [30, 25]] },
    top: { thickness: 2, outline: [[76, 12], [60, 16], [34, 21]] },
    post: { at: [[64, 10], [30, 18]], outer: 5, bore: 2.5, length: 25 },
    motor: { mass: 33, screws: 2.4, cgHeight: 9, kv: 1800 },
    propeller: { mass: 4.4, nut: 1.2, inches: 5, planeHeight: 19, thrustCoefficient: 0.15 },
    cells: 6, hover: 10800,
    battery: { mass: 220, size: [76, 38, 36] },
    camera: { mass: 14, size: 21 }, transmitter: 22, wiring: 30, fasteners: 30,
    stack: { mass: 25, size: [40, 40, 18], holes: 30.5 },
  },
  "7 inch": {
    motorAt: 110, rootAt: 29,
    arm: { thickness: 6, width: [20, 15], inserted: 26, pad: 34, wheelbase: "295 to 330 mm" },
    bottom: { thickness: 2.5, outline: [[50, 18], [40, 31]] },
    middle: { thickness: 2.5, outline: [[96, 12], [78, 16], [42, 32]] },
    top: { thickness: 2.5, outline: [[98, 12], [78, 16], [46, 25]] },
    post: { at: [[84, 10], [48, 20]], outer: 5, bore: 2.5, length: 30 },
    motor: { mass: 48, screws: 2.8, cgHeight: 10.5, kv: 1300 },
    propeller: { mass: 8.5, nut: 1.8, inches: 7, planeHeight: 23, thrustCoefficient: 0.145 },
    cells: 6, hover: 7600,
    battery: { mass: 460, size: [138, 44, 42] },
    camera: { mass: 14, size: 21 }, transmitter: 32, wiring: 42, fasteners: 50,
    stack: { mass: 27, size: [40, 40, 20], holes: 30.5 },
  },
  "10 inch": {
    motorAt: 154, rootAt: 46,
    arm: { thickness: 8, width: [27, 20], inserted: 38, pad: 45, wheelbase: "400 to 460 mm" },
    bottom: { thickness: 3, outline: [[80, 30], [58, 52]] },
    middle: { thickness: 3, outline: [[112, 26], [92, 40], [60, 54]] },
    top: { thickness: 2.5, outline: [[112, 26], [94, 40]] },
    post: { at: [[98, 24], [70, 34]], outer: 6, bore: 2.5, length: 35 },
    motor: { mass: 108, screws: 5, cgHeight: 16, kv: 900 },
    propeller: { mass: 24, nut: 3.5, inches: 10, planeHeight: 35, thrustCoefficient: 0.135 },
    cells: 6, hover: 6700,
    battery: { mass: 1200, size: [165, 68, 60] },
    camera: { mass: 14, size: 21 }, transmitter: 36, wiring: 100, fasteners: 110,
    stack: { mass: 25, size: [40, 40, 18], holes: 30.5 },
  },
};
