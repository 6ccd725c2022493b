import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { burdenTable } from "../../src/filter/burden-table.ts";
import type { BurdenSetup, Line } from "../../src/filter/burden-types.ts";
import { filterBurden } from "../../src/filter/filter-burden.ts";
import { lineOf, PLAIN } from "./burden-setups.ts";

const nan = Number.NaN;
const two: Partial<BurdenSetup> = {
  speeds: Float64Array.of(100, 200),
  weights: Float64Array.of(0.5, 0.5),
};

describe("a setup is refused for", () => {
  test.each<readonly [string, Partial<BurdenSetup>, string]>([
    ["no rate", { fs: 0 }, "fs: the sampling rate must be above 0, but is 0 Hz."],
    ["no target", { target: 0 }, "target: the target must be above 0, but is 0 deg/s."],
    [
      "no hover",
      { hover: nan },
      "hover: the motor speed in hover must be above 0, but is NaN rev/s.",
    ],
    [
      "no band",
      { controlBandwidth: -5 },
      "controlBandwidth: the control bandwidth must be above 0",
    ],
    [
      "a loop faster than the filters",
      { controlBandwidth: 500, fs: 1000 },
      "controlBandwidth: the control bandwidth must lie below 0.45 of the sampling rate, 450 Hz, but is 500 Hz: no low-pass fits above it. Sample faster or give a lower control bandwidth.",
    ],
    ["negative noise", { noiseDensity: -1 }, "noiseDensity: the noise density must be 0 or more"],
    [
      "half a motor",
      { rotors: 3.5 },
      "rotors: the number of motors must be a whole number from 1 to 100, but is 3.5.",
    ],
    [
      "a wide spread",
      { motorSpread: 0.6 },
      "motorSpread: the spread of the motors' speeds must lie below 0.5 of the speed, but is 0.6.",
    ],
    [
      "a negative spread",
      { motorSpread: -0.1 },
      "motorSpread: the spread of the motors' speeds must be 0 or more, but is -0.1.",
    ],
    [
      "no Q",
      { notch: { quality: 0, trackingError: 0 } },
      "notch.quality: the quality factor must be above 0, but is 0.",
    ],
    [
      "a blind notch",
      { notch: { quality: 1, trackingError: 1 } },
      "notch.trackingError: the notches' tracking error must lie below 0.5 of the speed, but is 1.",
    ],
    [
      "four multiples",
      { notch: { quality: 1, trackingError: 0, most: 4 } },
      "notch.most: the number of multiples to follow must be a whole number from 0 to 3, but is 4.",
    ],
    [
      "no speeds",
      { speeds: new Float64Array(0), weights: new Float64Array(0) },
      "speeds: there must be at least one motor speed.",
    ],
    [
      "a motor at rest",
      { ...two, speeds: Float64Array.of(0, 200) },
      "speeds[0]: the motor speed must be above 0, but is 0 rev/s.",
    ],
    [
      "one weight for two",
      { ...two, weights: Float64Array.of(1) },
      "weights: there must be 2 shares of the flight, but there are 1.",
    ],
    [
      "a negative weight",
      { ...two, weights: Float64Array.of(1.5, -0.5) },
      "weights[1]: the share of the flight must be 0 or more, but is -0.5.",
    ],
    [
      "90 %",
      { ...two, weights: Float64Array.of(0.5, 0.4) },
      "weights: the shares of the flight must sum to 1, but sum to 0.9.",
    ],
    [
      "a sensor's filter with negative power",
      { noiseGain: () => -1 },
      "noiseGain: the share of the noise's power at 0 Hz must be 0 or more, but is -1.",
    ],
    [
      "all at once",
      { fs: nan, target: -1 },
      "fs: the sampling rate must be above 0, but is NaN Hz.\ntarget: the target must be above 0, but is -1 deg/s.",
    ],
  ])("%s", (_, change, message) => {
    const make = () => burdenTable({ ...PLAIN, ...change }, []);
    expect(make).toThrow(InputError);
    expect(make).toThrow(message);
  });
});

describe("a line is refused for", () => {
  const setup = { ...PLAIN, ...two, fs: 1000 };
  const good = lineOf(setup, 3);
  test.each<readonly [string, Partial<Line>, string]>([
    [
      "no multiple",
      { order: 0 },
      "lines[1].order: the multiple of the motor speed must be above 0, but is 0.",
    ],
    [
      "one frequency for two speeds",
      { frequency: Float64Array.of(300) },
      "lines[1].frequency: there must be 2 frequencies, but there are 1.",
    ],
    [
      "one mark",
      { folded: Uint8Array.of(1) },
      "lines[1].folded: there must be 2 marks, but there are 1.",
    ],
    [
      "a folded frequency above fs/2",
      { frequency: Float64Array.of(300, 600) },
      "lines[1].frequency[1]: the frequency must not lie above half the sampling rate, 500 Hz, but is 600 Hz: give the frequency it folds back to.",
    ],
    [
      "a negative frequency",
      { frequency: Float64Array.of(300, -400) },
      "lines[1].frequency[1]: the frequency must be 0 or more, but is -400 Hz.",
    ],
    [
      "rad/s",
      { frequency: Float64Array.of(48, 400) },
      "lines[1].frequency[0]: the frequency must be order x speed, 300 Hz, where the line is not marked as folded, but is 48 Hz: speeds are in rev/s.",
    ],
    [
      "no mark of folding",
      { folded: Uint8Array.of(0, 0) },
      "lines[1].frequency[1]: the frequency must be order x speed, 600 Hz",
    ],
  ])("%s", (_, change, message) => {
    const make = () => burdenTable(setup, [good, { ...good, ...change }]);
    expect(make).toThrow(InputError);
    expect(make).toThrow(message);
  });

  test("none, without any marks where nothing folds", () => {
    const { folded: _, ...line } = lineOf(setup, 2);
    expect(burdenTable(setup, [line]).followed).toEqual([2]);
  });
});

describe("powers are refused for", () => {
  const setup = { ...PLAIN, ...two };
  const table = burdenTable(setup, [lineOf(setup, 1, "unbalance"), lineOf(setup, 3)]);
  const good = Float64Array.of(1, 1);
  test.each<readonly [string, readonly Float64Array[], string]>([
    ["one of two", [good], "powers: there must be 2 spectra, one for each line, but there are 1."],
    [
      "one too many",
      [good, good, good],
      "powers: there must be 2 spectra, one for each line, but there are 3.",
    ],
    [
      "one speed of two",
      [good, Float64Array.of(1)],
      "powers[1]: there must be 2 mean squares, but there are 1.",
    ],
    [
      "a negative one",
      [Float64Array.of(1, -2), good],
      "powers[0][1]: the mean square of unbalance must be 0 or more, but is -2 (deg/s)^2.",
    ],
    [
      "no number",
      [good, Float64Array.of(nan, 1)],
      "powers[1][0]: the mean square of order 3 must be 0 or more, but is NaN (deg/s)^2.",
    ],
    [
      "no end",
      [good, Float64Array.of(1, Number.POSITIVE_INFINITY)],
      "powers[1][1]: the mean square of order 3 must be a finite number",
    ],
  ])("%s", (_, powers, message) => {
    const make = () => filterBurden(table, powers);
    expect(make).toThrow(InputError);
    expect(make).toThrow(message);
  });
});
