import { describe, expect, test } from "vitest";
import { rankingJson } from "../../../src/commands/output/ranking-json.ts";
import { rankingText } from "../../../src/commands/output/ranking-text.ts";
import { inkFor, NO_INK } from "../../../src/commands/terminal/ink.ts";
import { columnsOf } from "../../../src/commands/terminal/printable.ts";
import { analysis, excitation, HOSTILE, ranking } from "./fixture.ts";

const text = rankingText(analysis, ranking, excitation, NO_INK);

describe("the text", () => {
  test("keeps to 80 columns and cannot act on the terminal, whatever the names", () => {
    for (const line of text.split("\n")) expect(columnsOf(line)).toBeLessThanOrEqual(80);
    expect(text.replace(/[\n\u2068\u2069]/g, "")).not.toMatch(/[\p{Cc}\p{Cf}]/u);
  });

  test("ranks with whole numbers and their units", () => {
    expect(text).toMatch(/Place +Name .* Gyro +Hover +Level +Acc\. +C\.g\. +Flags\n/);
    expect(text).toMatch(/deg\/s +deg\/s +dB +g +mm/);
    expect(text).toMatch(/\n {2}1 +centre +\S.* 3\.10 +0\.775 +0\.0 +0\.500 +12\.3\n/);
    expect(text).toMatch(/\n {2}2 .* 314 +78\.5 +\+40\.1 +0\.500 +12\.3 {2}avoid \(2\)\n/);
  });

  test("marks where the file has the stack, and undersides", () => {
    expect(text).toContain("\n         the file has the stack here\n");
    expect(text).toContain("\n         on the underside of the plate\n");
  });

  test("has everything a decision needs", () => {
    for (const part of [
      'Put the stack at "centre"',
      '(avoid): "\\u001b',
      "(mind): 98 mm away",
      "Hover 10800 rpm, full throttle 29600 rpm",
      "100 % around hover (10800 rpm, give or take 800 rpm)",
      "Mass 612 g; centre of gravity at x 0.0, y 0.0, z 24.3 mm",
      "within 1 dB of the quietest if the natural frequencies are up to 7 % off",
      "If all frequencies were up to 7 % off, the first place would read 2.48 to 4.03 deg/s.",
      "Gyro: rms over the flight mix. Hover: the gyro's rms at hover speed alone.",
      "8 modes below 1250 Hz, 6 of them the whole",
      "Warnings",
      "Take the propellers off for every bench test.",
      "tap test",
      "Follow the rules that hold where you fly.",
    ]) {
      expect(text.replace(/\s+/g, " ")).toContain(part);
    }
  });

  test("names the crossing near hover with its distance", () => {
    expect(text).toMatch(/10000 +-8 % +2 +1230 .* unbalance\n/);
  });

  test("says so when nothing is near hover", () => {
    const far = ranking.crossings.map((c) => ({ ...c, nearHover: false, fromHover: 0.4 }));
    const told = rankingText(analysis, { ...ranking, crossings: far }, excitation, NO_INK);
    expect(told.replace(/\s+/g, " ")).toContain("None. The nearest is +40 % from hover");
    const none = rankingText(analysis, { ...ranking, crossings: [] }, excitation, NO_INK);
    expect(none).toContain("None between the lowest and the highest speed.");
  });

  test("tells a tie by its sign and the flag by its word, not by colour", () => {
    const tied = ranking.candidates.map((c) => ({ ...c, place: 1 }));
    const told = rankingText(analysis, { ...ranking, candidates: tied }, excitation, NO_INK);
    expect(told.match(/\n {2}1= /g)).toHaveLength(2);
    const coloured = rankingText(analysis, ranking, excitation, inkFor(true, {}));
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the codes are what is looked for
    expect(coloured.replace(/\u001b\[\d+m/g, "")).toBe(text);
    expect(coloured).not.toBe(text);
  });

  test("of very many places prints the best and those that the file names", () => {
    const many = Array.from({ length: 40 }, (_, i) => {
      const [first] = ranking.candidates;
      const named = i === 39;
      const candidate = { ...first.candidate, name: `spot ${i + 1}`, named, designed: false };
      return { ...first, place: i + 1, candidate };
    });
    const told = rankingText(analysis, { ...ranking, candidates: many }, excitation, NO_INK);
    expect(told).toMatch(/spot 10 /);
    expect(told).not.toMatch(/spot 11 /);
    expect(told).toMatch(/spot 40 /);
    expect(told).toContain("and 29 more places; the report has them all");
  });
});

describe("the JSON document", () => {
  const frame = { path: "frames/x.jsonc", file: { name: HOSTILE }, hash: "00ff" };
  const document = JSON.parse(rankingJson(analysis, ranking, excitation, frame, "x.html"));

  test("has a version and says what it is about", () => {
    expect(document).toMatchObject({
      version: 1,
      kind: "ranking",
      frame: { name: HOSTILE, file: "frames/x.jsonc", sha256: "00ff" },
      report: "x.html",
    });
  });

  test("has unrounded numbers under names with units", () => {
    expect(document.places[1]).toMatchObject({
      place: 2,
      name: HOSTILE,
      side: "below",
      gyroDegPerSecRms: 314.159,
      gyroRangeDegPerSecRms: [0.8 * 314.159, 1.3 * 314.159],
      accelGRms: 0.5,
      fromCentreOfGravityInPlanM: 0.0123,
      flags: [{ kind: "cantilevered", avoid: true }, { avoid: false }],
      gyroAtHoverDegPerSecRms: 314.159 / 4,
      aboveOneAndAHalfTimesHover: { flightShare: 0.1, gyroNoisePowerShare: 0.5 },
      causes: [
        { mode: 1, frequencyHz: 131.4, speedRpm: 7884, met: false },
        { mode: 0, speedRpm: null, met: false },
      ],
    });
    expect(document.modes[1]).toMatchObject({ frequencyHz: 1234.5, dampingRatio: 0.015 });
    expect(document.speeds.hoverRpm).toBeCloseTo(10843, 9);
    expect(document.mass.massKg).toBe(0.6123);
    expect(document.evidence).toMatchObject({ modesCounted: 8, checkFrequencyHz: 1250 });
  });

  test("has typed arrays as plain ones, as long as the speeds", () => {
    expect(document.speedGridRpm).toHaveLength(3);
    const [spectrum, total] = document.places[0].spectra;
    expect(spectrum).toMatchObject({ order: "unbalance", gyroDegPerSecRms: [3.1, 6.2, 3.1] });
    expect(total.order).toBe("all together");
  });

  test("is the same from the same analysis", () => {
    const again = rankingJson(analysis, ranking, excitation, frame, "x.html");
    expect(again).toBe(rankingJson(analysis, ranking, excitation, frame, "x.html"));
    expect(again.endsWith("}\n")).toBe(true);
  });
});
