import { describe, expect, test } from "vitest";
import { rankingJson } from "../../../src/commands/output/ranking-json.ts";
import { MOUNT_MOTIONS } from "../../../src/response/mount-frequencies.ts";
import { analysis, excitation, HOSTILE } from "./fixture.ts";
import { MAP_PLACES, ranked, ranking } from "./ranking-fixture.ts";

const frame = { path: "frames/x.jsonc", file: { name: HOSTILE }, hash: "00ff" };
const written = { report: "x.html", map: "x.csv" };
const textOf = (one = ranking): string => rankingJson(analysis, one, excitation, frame, written);
const document = JSON.parse(textOf());
const [first, second] = document.places;

test("has a version and says what it is about", () => {
  expect(document).toMatchObject({
    version: 2,
    kind: "ranking",
    frame: { name: HOSTILE, file: "frames/x.jsonc", sha256: "00ff" },
    report: "x.html",
    mapFile: "x.csv",
    use: "both",
    scoreWeights: { gyro: 0.7, accelerometer: 0.1, falseTilt: 0.2 },
    controlBandwidthHz: 40,
    wantedResidualDegPerSecRms: 1,
  });
  expect(document.verdict.remarks).toEqual(ranking.verdict.remarks);
  const none = JSON.parse(rankingJson(analysis, ranking, excitation, frame, {}));
  expect(none).toMatchObject({ report: null, mapFile: null });
});

describe("places", () => {
  test("have the true motion under the names that it always had", () => {
    expect(second).toMatchObject({
      place: 2,
      name: HOSTILE,
      side: "below",
      gyroDegPerSecRms: 314.159,
      gyroAtHoverDegPerSecRms: 314.159 / 4,
      accelGRms: 0.5,
      fromCentreOfGravityInPlanM: 0.098,
      flags: [{ kind: "cantilevered", avoid: true }, { avoid: false }],
      aboveOneAndAHalfTimesHover: { flightShare: 0.1, gyroNoisePowerShare: 0.5 },
    });
    expect(first.gyroLevelDb).toBe(0);
    expect(second.gyroLevelDb).toBeCloseTo(20 * Math.log10(314.159 / 3.1), 12);
  });

  test("have what the chips pass on under names of its own", () => {
    expect(second).toMatchObject({
      foundBySearch: true,
      sensedGyroDegPerSecRms: 0.9 * 314.159,
      sensedGyroAtHoverDegPerSecRms: (0.9 * 314.159) / 4,
      sensedGyroRangeDegPerSecRms: ranking.candidates[1].gyroRange,
      sensedAccelGRms: 0.4,
      scoreDb: 10,
      scorePartsDb: { gyro: 1, accelerometer: 2, falseTilt: 3 },
    });
  });

  test("refer levels of the true motion to the quietest that is not to be avoided", () => {
    const quiet = { ...ranked("quiet", 2, 1), flags: ranking.candidates[1].flags };
    const candidates = [ranking.candidates[0], quiet];
    const { places } = JSON.parse(textOf({ ...ranking, candidates }));
    expect(places[0].gyroLevelDb).toBe(0);
    expect(places[1].gyroLevelDb).toBeCloseTo(-20 * Math.log10(3.1), 12);
  });

  test("have the filter's burden without and with notches", () => {
    expect(first.filter).toMatchObject({
      unfilteredDegPerSecRms: 10.6,
      lowPassAlone: {
        residualReached: true,
        lowPass: { order: 2, cutOffHz: 90.06 },
        notchedMultiples: [],
        delayS: 2.5379e-3,
        groupDelayS: 2.4981e-3,
        delayIn99PercentOfFlightS: 2.6e-3,
        leftDegPerSecRms: 0.9655,
        leftOfMultiples: [
          { multiple: 1, leftDegPerSecRms: 0.9615 },
          { multiple: 3, leftDegPerSecRms: 0.0136 },
        ],
        leftOfChipNoiseDegPerSecRms: 0.0864,
        mostLeftOf: "once per turn",
      },
      withNotches: { lowPass: null, notchedMultiples: [1, 3] },
    });
    // 0.3189 rad
    expect(first.filter.lowPassAlone.lagDeg).toBeCloseTo(18.2716, 4);
    expect(second.filter.lowPassAlone).toMatchObject({
      residualReached: false,
      leftDegPerSecRms: 1.3123,
    });
    expect(second.delayOverBest).toEqual({ lowPassAloneS: 1.1e-3, withNotchesS: 0.25e-3 });
  });

  test("have the lever arm in degrees, with every motion tried", () => {
    const { leverArm } = second;
    expect(leverArm).toMatchObject({
      fromCentreOfGravityXyzM: [-0.098, 0, 0.01],
      inPlanM: 0.098,
      side: "rear",
      lowSide: "rear",
      selfLevelLifts: "rear",
      selfLevelDriftsTo: "front",
      withinRadius: false,
    });
    // atan(omega^2 r/g) with 200 deg/s and 98 mm
    const rate = (200 * Math.PI) / 180;
    const tilt = (Math.atan((rate ** 2 * 0.098) / 9.80665) * 180) / Math.PI;
    expect(leverArm.falseTiltDeg).toBeCloseTo(tilt, 9);
    expect(leverArm.falsePitchDeg).toBeCloseTo(tilt, 9);
    expect(leverArm.falseRollDeg).toBeCloseTo(0, 9);
    expect(leverArm.yawRateDegPerSec).toBeCloseTo(200, 9);
    expect(leverArm.motions.length).toBeGreaterThan(1);
    const believed = leverArm.motions.map((m: { believed: { tiltDeg: number } }) => {
      return m.believed.tiltDeg;
    });
    expect(leverArm.worstBelievedTiltDeg).toBeCloseTo(Math.max(...believed), 2);
  });

  test("have loops, offsets, ends of the ranges and other states", () => {
    expect(first).toMatchObject({
      loopCouplings: [{ axis: "roll", frequencyHz: 47.4, modeWithStackHere: 3, loopGain: 0.9 }],
      vibrationOffsets: { gyroDegPerSec: 0.006, accelerometerG: 0.026 },
      clipping: {
        gyro: { axis: "x", peakDegPerSec: 171, rangeDegPerSec: 2000, clipped: false },
        accelerometer: null,
        accelerometerInSelfLevelFlight: { axis: "z", peakG: 4, rangeG: 16, shareOfRange: 0.25 },
      },
      otherStates: [{ name: "one bad propeller", motor: HOSTILE }, { motor: "left motor" }],
      motionsOnIsolators: null,
    });
    expect(first.clipping.gyro.speedRpm).toBeCloseTo(100, 9);
    expect(first.otherStates[1].timesNormal).toBeCloseTo(12.3, 9);
    expect(first.vibrationOffsets.tiltDeg).toBeCloseTo(1.5011, 4);
  });

  test("have causes with their parts and what would help", () => {
    expect(first.causes).toMatchObject([
      {
        modeWithStackHere: 1,
        frequencyHz: 131.4,
        speedRpm: 7884,
        met: false,
        parts: [{ name: "left arm", strainEnergyShare: 0.42 }, { name: HOSTILE }],
        remedy: "arms 20 % thicker raise that frequency by up to 24 %",
      },
      { modeWithStackHere: 2, speedRpm: 12312, met: true },
      { modeWithStackHere: 0, speedRpm: null, met: false },
    ]);
  });

  test("have typed arrays as plain ones, as long as the speeds", () => {
    expect(document.speedGridRpm).toHaveLength(3);
    const [spectrum, total] = first.spectra;
    expect(spectrum).toMatchObject({ order: "unbalance", gyroDegPerSecRms: [3.1, 6.2, 3.1] });
    expect(total.order).toBe("all together");
  });
});

test("has the mounts with all six motions", () => {
  const [screwed, soft] = document.mounts;
  expect(screwed).toMatchObject({ name: "screwed down", motionsOnIsolators: null, flags: [] });
  expect(soft).toMatchObject({
    sensedGyroDegPerSecRms: 0.123,
    sensedAccelGRms: 0.0265,
    flags: [{ kind: "isolators too soft", avoid: false }, { kind: "isolators do not isolate" }],
  });
  expect(soft.motionsOnIsolators.map(({ motion }: { motion: string }) => motion)).toEqual([
    ...MOUNT_MOTIONS,
  ]);
  expect(soft.motionsOnIsolators[1].kineticEnergyShares).toMatchObject({
    "sway fore-aft": 0,
    "sway sideways": 1,
  });
  expect(soft.filter.lowPassAlone.residualReached).toBe(false);
});

test("has the map in m and degrees", () => {
  expect(document.map.pitchM).toBe(8e-3);
  expect(document.map.places).toHaveLength(MAP_PLACES.length);
  expect(document.map.places[1]).toMatchObject({
    plate: HOSTILE,
    side: "above",
    xM: 0,
    yM: 0.008,
    sensedGyroDegPerSecRms: 4.14159265,
    sensedAccelGRms: 0.5,
    delayLowPassAloneS: 2.5e-3,
    delayWithNotchesS: 1.7e-3,
    residualReached: false,
    scoreDb: 0,
    avoid: false,
    inTheWay: "=plate",
    patternShare: 0.4,
  });
  expect(document.map.places[0]).toMatchObject({ inTheWay: null, patternShare: 1 });
  expect(document.map.places[1].falseTiltDeg).toBeCloseTo(2, 12);
});

test("has lines that sampling folds", () => {
  const { gyro, accelerometer } = document.foldings;
  expect(gyro).toEqual([]);
  expect(accelerometer).toMatchObject([{ multiple: 3, linesHz: [500, 1000], shownAtHz: [500, 0] }]);
  expect(accelerometer[0].speedsRpm[1]).toBeCloseTo(20000, 9);
});

test("has modes, speeds, mass and evidence", () => {
  expect(document.modes[1]).toMatchObject({ frequencyHz: 1234.5, dampingRatio: 0.015 });
  expect(document.speeds.hoverRpm).toBeCloseTo(10843, 9);
  expect(document.mass.massKg).toBe(0.6123);
  expect(document.evidence).toMatchObject({ modesCounted: 8, checkFrequencyHz: 1250 });
  expect(document.crossings[0]).toMatchObject({ multiple: 1, speedRpm: 10000 });
});

test("is the same from the same analysis", () => {
  expect(textOf()).toBe(textOf());
  expect(textOf().endsWith("}\n")).toBe(true);
});
