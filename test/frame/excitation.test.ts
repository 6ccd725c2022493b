import { describe, expect, test } from "vitest";
import { frameJsonSchema } from "../../src/frame/json-schema.ts";
import { fileWith, linesOf, read } from "./helpers.ts";
import { misfits } from "./json-schema-check.ts";

/** What shakes the frame and how it is flown, as a file says it. */

const excitation = (fields: object) => fileWith({ excitation: fields });
const mix = (flightMix: unknown) => fileWith({ flightMix });
const row = { speed: "12000 rpm", weight: 1 };

describe("fields of the excitation", () => {
  const file = excitation({
    bladeDifference: "5 %",
    thrustRippleDouble: 0.02,
    torqueRippleDouble: 0,
    motorSpread: "5 %",
    badPropeller: { motor: "front left motor", grade: "100 mm/s" },
    lostTip: { massShare: "4 %" },
    orders: [{ order: 1, of: "rotating moment", fraction: "3 %" }],
  });

  test("come out as fractions and mm/s, the others as they are by default", () => {
    expect(read(file).excitation).toEqual({
      balanceGrade: 16,
      bladeDifference: 0.05,
      thrustRipple: 0.03,
      torqueRipple: 0.03,
      thrustRippleDouble: 0.02,
      torqueRippleDouble: 0,
      orders: [{ order: 1, of: "rotating moment", fraction: 0.03 }],
      motorSpread: 0.05,
      badPropeller: { motor: "front left motor", grade: 100 },
      lostTip: { massShare: 0.04 },
    });
  });

  test("are known to editors too", () => {
    expect(misfits(file, frameJsonSchema())).toEqual([]);
    const table = mix([{ ...row, spread: "8 %", name: "cruise" }]);
    expect(misfits(table, frameJsonSchema())).toEqual([]);
  });

  test("the help of each names its default", () => {
    const { excitation: section } = frameJsonSchema().properties as unknown as {
      excitation: { properties: Record<string, { description: string }> };
    };
    const { bladeDifference, motorSpread, thrustRippleDouble } = section.properties;
    for (const [field, preset] of [
      [bladeDifference, "0.02"],
      [motorSpread, "0.03"],
      [thrustRippleDouble, "0.01"],
    ] as const) {
      expect(field.description).toContain(`Default: ${preset}`);
      expect(field.description).toContain("common practice, no source");
    }
  });
});

describe("values that cannot be", () => {
  test.each([
    ["bladeDifference", -0.01, "zero or more"],
    ["bladeDifference", 2, "1 or less"],
    ["thrustRippleDouble", "-1 %", "zero or more"],
    ["torqueRippleDouble", "150 %", "100 % or less"],
    ["motorSpread", -0.03, "zero or more"],
    ["motorSpread", 0.21, "0.2 or less"],
    ["motorSpread", 3, "0.2 or less"],
    ["motorSpread", "25 %", "20 % or less"],
  ])("%s: %o", (field, value, limit) => {
    expect(linesOf(excitation({ [field]: value }))).toEqual([
      `excitation.${field}: ${JSON.stringify(value)} is not possible: it must be ${limit}.`,
    ]);
  });

  test.each([
    ["badPropeller", { grade: 0 }, "grade"],
    ["badPropeller", { grade: -40 }, "grade"],
    ["badPropeller", { grade: "40 g" }, "grade"],
    ["badPropeller", { motor: 3 }, "motor"],
    ["lostTip", { massShare: 0 }, "massShare"],
    ["lostTip", { massShare: "30 %" }, "massShare"],
    ["lostTip", { massShare: -0.1 }, "massShare"],
  ])("%s %o", (section, value, field) => {
    const lines = linesOf(excitation({ [section]: value }));
    expect(lines.length).toBe(1);
    expect(lines[0].startsWith(`excitation.${section}.${field}: `)).toBe(true);
  });

  test("a misspelt field is met with the right one", () => {
    expect(linesOf(excitation({ badPropellor: {} }))[0]).toContain('Did you mean "badPropeller"?');
    expect(linesOf(excitation({ lostTip: { share: 0.1 } }))[0]).toContain('"massShare"');
    expect(linesOf(excitation({ orders: [{ order: 1, of: "moment", fraction: 0.1 }] }))[0]).toMatch(
      /^excitation\.orders#1\.of: .*"rotating moment"/,
    );
    expect(
      linesOf(excitation({ orders: [{ order: 1e300, of: "thrust", fraction: 0.1 }] }))[0],
    ).toContain("1000 or less");
  });
});

describe("rows of the flight mix", () => {
  test("need a weight above zero, on any scale up to a million", () => {
    for (const weight of [0, -1, 1e7, 1e308, "1"]) {
      const lines = linesOf(mix([row, { ...row, weight }]));
      expect(lines.length).toBe(1);
      expect(lines[0].startsWith("flightMix#2.weight: ")).toBe(true);
    }
  });

  test("have a spread from 0 to half the speed and a name that is not empty", () => {
    for (const spread of [-0.01, 0.6, "60 %", "200 rpm"]) {
      const [line] = linesOf(mix([{ ...row, spread }]));
      expect(line.startsWith("flightMix#1.spread: ")).toBe(true);
    }
    expect(linesOf(mix([{ ...row, name: "" }]))).toEqual([
      "flightMix#1.name: A name cannot be empty: leave it out.",
    ]);
    expect(linesOf(mix([{ ...row, name: "x".repeat(41) }]))[0]).toContain("at most 40");
    expect(read(mix([{ ...row, spread: 0 }])).flightMix).toEqual([
      { speed: expect.closeTo(400 * Math.PI, 9), weight: 1, spread: 0 },
    ]);
  });

  test("need a speed above zero", () => {
    for (const speed of [0, -3000, "12000 Hz m"]) {
      expect(linesOf(mix([{ ...row, speed }]))[0].startsWith("flightMix#1.speed: ")).toBe(true);
    }
    expect(linesOf(mix([]))).toEqual(["flightMix: Write at least one speed with its weight."]);
  });
});
