import { describe, expect, test } from "vitest";
import { fileWith, linesOf, read } from "./helpers.ts";

/** The sections "sensors" and "control". */

describe("sensors", () => {
  test("where nothing is said", () => {
    const sensors = {
      gyro: {
        noiseDensity: 0.005,
        accelerationSensitivity: 0.1,
        rectification: 0.0004,
        range: 2000,
        sampling: 8000,
        bandwidth: 500,
      },
      accelerometer: {
        noiseDensity: 0.0002,
        rectification: 0.0018,
        range: 16,
        sampling: 1000,
        bandwidth: 250,
      },
    };
    expect(read(fileWith({})).sensors).toEqual(sensors);
    expect(read(fileWith({ sensors: { gyro: {} } })).sensors).toEqual(sensors);
  });

  test("come out as chips are read: deg/s, g and Hz", () => {
    const { gyro, accelerometer } = read(
      fileWith({
        sensors: {
          gyro: { range: "10 rad/s", sampling: "3.2 kHz", bandwidth: 258, noiseDensity: 0 },
          accelerometer: { range: 32, sampling: 4000, noiseDensity: 0.000065 },
        },
      }),
    ).sensors;
    expect(gyro.range).toBeCloseTo(1800 / Math.PI, 8);
    expect(gyro).toMatchObject({ sampling: 3200, bandwidth: 258, noiseDensity: 0 });
    expect(accelerometer).toMatchObject({ range: 32, sampling: 4000, noiseDensity: 0.000065 });
    const named = read(fileWith({ sensors: { gyro: { range: "4000 deg/s" } } })).sensors.gyro;
    expect(named.range).toBe(4000);
  });

  const SLIP = "Datasheets often give thousandths (m) or millionths (u) of the unit.";
  test.each<[string, object, string]>([
    [
      "g as a unit",
      { accelerometer: { range: "16 g" } },
      'sensors.accelerometer.range: "16 g" was found: write a number without a unit, for example 16, which is read in g (standard gravity).',
    ],
    [
      "g of a gyro",
      { gyro: { range: "16 g" } },
      'sensors.gyro.range: "16 g" is a mass (g), a rotation rate is needed here, for example "200 deg/s".',
    ],
    [
      "a unit that no reader knows",
      { gyro: { noiseDensity: "0.005 deg/s/rtHz" } },
      'sensors.gyro.noiseDensity: "0.005 deg/s/rtHz" was found: write a number without a unit, for example 0.005, which is read in deg/s per sqrt(Hz).',
    ],
    [
      "thousandths of deg/s",
      { gyro: { noiseDensity: 2.8 } },
      `sensors.gyro.noiseDensity: 2.8 deg/s per sqrt(Hz) is too large: at most 0.5 can be right here. ${SLIP}`,
    ],
    [
      "mg",
      { accelerometer: { noiseDensity: 0.2 } },
      `sensors.accelerometer.noiseDensity: 0.2 g per sqrt(Hz) is too large: at most 0.01 can be right here. ${SLIP}`,
    ],
    [
      "kHz without its unit",
      { gyro: { sampling: 8, bandwidth: 0.5 } },
      "sensors.gyro.sampling: 8 (read as 8 Hz) is not possible: it must be 500 or more.\nsensors.gyro.bandwidth: 0.5 (read as 0.5 Hz) is not possible: it must be 5 or more.",
    ],
    [
      "less than nothing",
      { gyro: { rectification: -1 }, accelerometer: { range: 0 } },
      "sensors.gyro.rectification: -1 is not possible: it must be 0 or more.\nsensors.accelerometer.range: 0 is not possible: it must be more than 0.",
    ],
    [
      "a figure that accelerometers do not have",
      { accelerometer: { accelerationSensitivity: 1 } },
      'sensors.accelerometer.accelerationSensitivity: "accelerationSensitivity" is not known for the accelerometer. Possible here: "noiseDensity", "rectification", "range", "sampling" or "bandwidth".',
    ],
  ])("%s", (_name, sensors, lines) => {
    expect(linesOf(fileWith({ sensors }))).toEqual(lines.split("\n"));
  });
});

describe("control", () => {
  test("where nothing is said", () => {
    const { control } = read(fileWith({}));
    expect(control).toEqual({
      use: "both",
      residual: 1,
      couplingBelow: 80,
      attitudeTime: 2,
      notches: { quality: 3, trackingError: 0.01 },
      yawRate: expect.closeTo((200 * Math.PI) / 180, 14),
      attitudeError: expect.closeTo(Math.PI / 180, 16),
    });
    expect(Object.keys(control)).not.toContain("bandwidth");
  });

  test("bare numbers are Hz, deg/s, ms and deg", () => {
    const control = {
      use: "self-level",
      bandwidth: 30,
      residual: 2,
      couplingBelow: 90,
      attitudeTime: 1500,
      notches: { quality: 4, trackingError: "2 %" },
      yawRate: 360,
      attitudeError: 2,
    };
    expect(read(fileWith({ control })).control).toEqual({
      ...control,
      attitudeTime: 1.5,
      notches: { quality: 4, trackingError: 0.02 },
      yawRate: expect.closeTo(2 * Math.PI, 13),
      attitudeError: expect.closeTo(Math.PI / 90, 16),
    });
  });

  test.each<[string, object, string]>([
    [
      "seconds taken for the bare unit",
      { attitudeTime: 2 },
      'control.attitudeTime: 2 ms is not possible: the time of an attitude filter is 50 to 100000 ms. A number without a unit is read in ms; write "2 s" for two seconds.',
    ],
    [
      "a time in Hz",
      { attitudeTime: "50 Hz" },
      'control.attitudeTime: "50 Hz" is a frequency (Hz), a time is needed here, for example "20 ms".',
    ],
    [
      "a frequency in ms",
      { bandwidth: "20 ms" },
      'control.bandwidth: "20 ms" is a time (ms), a frequency is needed here, for example "75 Hz".',
    ],
    [
      "a yaw in Hz",
      { yawRate: "1 Hz" },
      'control.yawRate: "1 Hz" is a frequency (Hz), a rotation rate is needed here, for example "200 deg/s".',
    ],
    [
      "no noise at all",
      { residual: 0 },
      "control.residual: 0 (read as 0 deg/s) is not possible: it must be more than zero.",
    ],
    [
      "a loop faster than any",
      { bandwidth: 300, couplingBelow: 400 },
      "control.bandwidth: 300 (read as 300 Hz) is not possible: it must be 200 or less.",
    ],
    [
      "coupling looked for inside the loop's band",
      { bandwidth: 90 },
      "control.couplingBelow: Coupling is looked for below 80 Hz only, but the rate loop works up to 90 Hz: raise couplingBelow, for example to 180 Hz.",
    ],
    [
      "another use",
      { use: "rates" },
      'control.use: "rates" is not one of the choices. Did you mean "rate"? Write "rate", "self-level" or "both".',
    ],
    [
      "per cent without the sign",
      { notches: { trackingError: 1, quality: 0 } },
      "control.notches.quality: 0 is not possible: it must be 0.5 or more.\ncontrol.notches.trackingError: 1 is not possible: it must be 0.2 or less.",
    ],
  ])("%s", (_name, control, lines) => {
    expect(linesOf(fileWith({ control })).sort()).toEqual(lines.split("\n"));
  });
});
