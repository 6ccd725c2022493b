import { KINDS } from "./quantity-kinds.ts";
import { finding, NOT_NEGATIVE, POSITIVE, plainNumber, quantity } from "./schema-fields.ts";
import { section } from "./schema-shapes.ts";

/** The chips. Their figures stay in the units of datasheets: deg/s, g, Hz. */

/** Rotation rates written as quantities; they come out in deg/s, as gyros are read. */
export function degreesPerSecond(meaning: string) {
  return quantity(KINDS.rate, POSITIVE, meaning).transform((radPerSecond) =>
    Number(((radPerSecond * 180) / Math.PI).toPrecision(12)),
  );
}

interface Figure {
  readonly unit: string;
  readonly example: string;
  /** More than any chip has: the figure is in another unit. */
  readonly most: number;
  /** May be zero, for a chip without this fault. */
  readonly least?: 0;
}

/**
 * A figure of a datasheet: a plain number, its unit fixed. No text with a unit, because "16 g" is a
 * mass to every unit reader and g per sqrt(Hz) is nothing to most.
 */
function figure({ unit, example, most, least }: Figure, meaning: string) {
  return plainNumber(
    `${meaning} A plain number in ${unit}.`,
    `${example}, which is read in ${unit}`,
    least === undefined ? POSITIVE : NOT_NEGATIVE,
  ).superRefine((value, context) => {
    if (value <= most) return;
    const message = `${value} ${unit} is too large: at most ${most} can be right here. Datasheets often give thousandths (m) or millionths (u) of the unit.`;
    context.addIssue(finding(message));
  });
}

/** Of its own low-pass: from 5 to about 4000 Hz in datasheets, so that less is a slip of the unit. */
const bandwidth = (meaning: string) => quantity(KINDS.frequency, { least: 5 }, meaning);

const gyro = section("the gyro", {
  noiseDensity: figure(
    { unit: "deg/s per sqrt(Hz)", example: "0.005", most: 0.5, least: 0 },
    "Noise density of each axis. Default: 0.005, datasheets of consumer 6-axis parts (0.0028 to 0.005).",
  ).default(0.005),
  accelerationSensitivity: figure(
    { unit: "deg/s per g", example: "0.1", most: 10, least: 0 },
    "What each axis reads per acceleration, in whatever direction of its own. Default: 0.1, a consumer part, static, from memory; 0.01 in the datasheet of an industrial 6-axis module.",
  ).default(0.1),
  rectification: figure(
    { unit: "deg/s per g^2", example: "0.0004", most: 0.1, least: 0 },
    "Offset that vibration leaves, per mean-square acceleration. Default: 0.0004, datasheet of an industrial 6-axis module.",
  ).default(0.0004),
  range: degreesPerSecond(
    "Largest rate it can read. Default: 2000 deg/s, common practice, no source.",
  ).prefault("2000 deg/s"),
  sampling: quantity(
    KINDS.frequency,
    { least: 500 },
    "Samples per second. Default: 8 kHz; gyros are read at 1 to 8 kHz, common practice, no source.",
  ).prefault("8 kHz"),
  bandwidth: bandwidth(
    "Its own low-pass, second order, -3 dB. Default: 500 Hz, the middle of 250 to 1000 Hz, common practice, no source; 42 to 3979 Hz in the datasheet of a consumer 6-axis part.",
  ).prefault("500 Hz"),
});

const accelerometer = section("the accelerometer", {
  noiseDensity: figure(
    { unit: "g per sqrt(Hz)", example: "0.0002", most: 0.01, least: 0 },
    "Noise density of each axis. Default: 0.0002, datasheet of an industrial 6-axis module; consumer parts 0.000065 to 0.0004.",
  ).default(0.0002),
  rectification: figure(
    { unit: "g per g^2", example: "0.0018", most: 0.1, least: 0 },
    "Offset that vibration leaves, per mean-square acceleration. Default: 0.0018, from under 0.1 g at 7.5 g rms in the datasheet of a low-noise accelerometer.",
  ).default(0.0018),
  range: figure(
    { unit: "g (standard gravity)", example: "16", most: 1000 },
    "Largest acceleration it can read. Default: 16, common practice, no source.",
  ).default(16),
  sampling: quantity(
    KINDS.frequency,
    { least: 50 },
    "Samples per second. Default: 1 kHz; accelerometers are read at 1 to 4 kHz, common practice, no source.",
  ).prefault("1 kHz"),
  bandwidth: bandwidth(
    "Its own low-pass, second order, -3 dB. Default: 250 Hz, a quarter of the sampling rate, common practice, no source; 350 Hz in the datasheet of an industrial 6-axis module.",
  ).prefault("250 Hz"),
});

export const sensors = section("the sensors", {
  gyro: gyro.prefault({}).describe("The gyro."),
  accelerometer: accelerometer.prefault({}).describe("The accelerometer."),
})
  .prefault({})
  .describe("What the chips of the sensor stack add to the true motion.");
