import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { controlBandwidth } from "../../src/sensing/control-bandwidth.ts";
import { samplingWarnings } from "../../src/sensing/warnings.ts";
import { fileWith, read } from "../frame/helpers.ts";

/** As a file says it, so that the defaults are those of the reader. */
const controlOf = (control: object) => read(fileWith({ control })).control;
const sensorsOf = (sensors: object) => read(fileWith({ sensors })).sensors;

describe("the rate loop's bandwidth", () => {
  test.each([
    [3, 40],
    [5.1, 40],
    [6, 40],
    [7, 20],
    [10, 20],
  ])("%d inch: %i Hz", (inches, bandwidth) => {
    expect(controlBandwidth(controlOf({}), inches * 0.0254)).toBe(bandwidth);
  });

  test("6 inch is small in millimetres as well", () => {
    expect(controlBandwidth(controlOf({}), 0.1524)).toBe(40);
  });

  test("as the file says", () => {
    expect(controlBandwidth(controlOf({ bandwidth: "33 Hz" }), 0.254)).toBe(33);
  });

  test("the default must lie below where coupling is looked for", () => {
    const control = controlOf({ couplingBelow: "30 Hz" });
    expect(controlBandwidth(control, 0.254)).toBe(20);
    expect(() => controlBandwidth(control, 0.127)).toThrow(InputError);
    expect(() => controlBandwidth(control, 0.127)).toThrow(
      'control.couplingBelow: coupling is looked for below 30 Hz only, but rate loops with such propellers usually work up to 40 Hz: raise couplingBelow, or give the "bandwidth" of the loop.',
    );
    expect(controlBandwidth(controlOf({ couplingBelow: 30, bandwidth: 25 }), 0.127)).toBe(25);
  });
});

describe("figures that do not go together", () => {
  test("the defaults do", () => {
    expect(samplingWarnings(sensorsOf({}), 40)).toEqual([]);
    expect(samplingWarnings(sensorsOf({}))).toEqual([]);
  });

  test("a low-pass above half the sampling rate, one below the loop", () => {
    const sensors = sensorsOf({
      gyro: { sampling: "1 kHz", bandwidth: "501 Hz" },
      accelerometer: { bandwidth: 600 },
    });
    expect(samplingWarnings(sensors, 40)).toEqual([
      "the gyro's own low-pass (501 Hz) lies above half its sampling rate (500 Hz): lines between the two fold back with less than 3 dB taken off",
      "the accelerometer's own low-pass (600 Hz) lies above half its sampling rate (500 Hz): lines between the two fold back with less than 3 dB taken off",
    ]);
    const slow = sensorsOf({ gyro: { bandwidth: 40 }, accelerometer: { bandwidth: 500 } });
    expect(samplingWarnings(slow, 40)).toEqual([
      "the gyro's own low-pass (40 Hz) does not lie above the bandwidth of the rate loop (40 Hz): such a loop could not fly; check both",
    ]);
    expect(samplingWarnings(slow)).toEqual([]);
  });
});
