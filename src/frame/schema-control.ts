import { KINDS } from "./quantity-kinds.ts";
import { finding, fraction, oneOf, POSITIVE, plainNumber, quantity } from "./schema-fields.ts";
import { degreesPerSecond } from "./schema-sensors.ts";
import { section } from "./schema-shapes.ts";

/** The control loops behind the chips. */

/**
 * A time constant within limits in ms. Bare numbers are ms for all of them, so that 2 for two seconds
 * must be caught by what is possible.
 */
function timeConstant(what: string, least: number, most: number, meaning: string) {
  return quantity(KINDS.time, POSITIVE, meaning).superRefine((seconds, context) => {
    const ms = Number((seconds * 1e3).toPrecision(12));
    if (ms >= least && ms <= most) return;
    const message = `${ms} ms is not possible: ${what} is ${least} to ${most} ms. A number without a unit is read in ms; write "2 s" for two seconds.`;
    context.addIssue(finding(message));
  });
}

/** Loops of small craft run at a few to some ten Hz; well below half of any sampling rate allowed. */
const MOST_BANDWIDTH = 200;

const notches = section("the notches", {
  quality: plainNumber(
    "Quality factor, centre over width at -3 dB. Default: 3, common practice, no source.",
    "3",
    { least: 0.5, most: 50 },
  ).default(3),
  trackingError: fraction(
    "Share of the motor's speed by which a notch misses it. Default: 0.01, common practice, no source.",
    { least: 0, most: 0.2 },
  ).default(0.01),
});

export const control = section("the control", {
  use: oneOf(
    ["rate", "self-level", "both"],
    "What is flown: rate alone needs the gyro, self-level the accelerometer as well. Default: both.",
  ).default("both"),
  bandwidth: quantity(
    KINDS.frequency,
    { least: 1, most: MOST_BANDWIDTH },
    "Bandwidth of the rate loop. Default: 40 Hz for propellers up to 6 inch, 20 Hz above, common practice, no source.",
  ).exactOptional(),
  residual: degreesPerSecond(
    "Gyro noise wanted behind the filters, rms of the three axes together. Default: 1 deg/s, common practice, no source.",
  ).prefault("1 deg/s"),
  couplingBelow: quantity(
    KINDS.frequency,
    POSITIVE,
    "Modes below this frequency are looked at for coupling with the rate loop. Default: 80 Hz, common practice, no source.",
  ).prefault("80 Hz"),
  attitudeTime: timeConstant(
    "the time of an attitude filter",
    50,
    100_000,
    "Time constant with which the attitude follows the accelerometer. Default: 2 s, common practice, no source.",
  ).prefault("2 s"),
  notches: notches.prefault({}).describe("Notch filters that follow the motors' speed."),
  yawRate: quantity(
    KINDS.rate,
    POSITIVE,
    "Yaw rate for the false tilt of a sensor away from the centre of gravity. Default: 200 deg/s.",
  ).prefault("200 deg/s"),
  attitudeError: quantity(
    KINDS.angle,
    POSITIVE,
    "False tilt that does not matter, below 90 deg. Default: 1 deg, common practice, no source.",
  )
    .superRefine((angle, context) => {
      if (angle < Math.PI / 2) return;
      const degrees = Number(((angle * 180) / Math.PI).toPrecision(6));
      const message = `${degrees} deg is not possible: it must be below 90 deg, the most that any place reads.`;
      context.addIssue(finding(message));
    })
    .prefault("1 deg"),
})
  .superRefine(({ bandwidth, couplingBelow }, context) => {
    if (bandwidth === undefined || bandwidth < couplingBelow) return;
    const message = `Coupling is looked for below ${couplingBelow} Hz only, but the rate loop works up to ${bandwidth} Hz: raise couplingBelow, for example to ${2 * bandwidth} Hz.`;
    context.addIssue(finding(message, ["couplingBelow"]));
  })
  .prefault({})
  .describe("The control loops that use the sensors.");
