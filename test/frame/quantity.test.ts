import { describe, expect, test } from "vitest";
import { QUANTITY_PATTERN, readQuantity } from "../../src/frame/quantity.ts";
import { KINDS, type QuantityKind } from "../../src/frame/quantity-kinds.ts";

function siOf(written: number | string, kind: QuantityKind): number {
  const reading = readQuantity(written, kind);
  if ("problem" in reading) throw new Error(reading.problem);
  return reading.value;
}

function problemOf(written: number | string, kind: QuantityKind, range = {}): string {
  const reading = readQuantity(written, kind, range);
  if ("value" in reading) throw new Error(`${written} was read as ${reading.value}`);
  return reading.problem;
}

describe("a quantity that can be read", () => {
  const { length, mass, angle, modulus, density, speed, kv, unbalance, fraction } = KINDS;
  test.each<[number | string, QuantityKind, number]>([
    [5, length, 0.005],
    ["5 mm", length, 0.005],
    ["5mm", length, 0.005],
    ["  -.5  mm ", length, -0.0005],
    ["5.1 in", length, 0.12954],
    ["1e-3 m", length, 0.001],
    ["5\u00a0mm", length, 0.005],
    ["0 mm", length, 0],
    ["-0 mm", length, 0],
    [33, mass, 0.033],
    ["1.04 kg", mass, 1.04],
    ["0.3 oz", mass, 0.3 * 0.028349523125],
    [45, angle, Math.PI / 4],
    ["70 GPa", modulus, 70e9],
    [1.55, density, 1550],
    ["1550 kg/m^3", density, 1550],
    [600, speed, 20 * Math.PI],
    ["1800 rpm/V", kv, 60 * Math.PI],
    ["0.12 g mm", unbalance, 1.2e-7],
    ["3 %", fraction, 0.03],
    [0.03, fraction, 0.03],
    ["100 N m/rad", KINDS.rotationalStiffness, 100],
    ["10 N/mm", KINDS.stiffness, 10000],
    ["180 mm^4", KINDS.secondMoment, 1.8e-10],
  ])("%s", (written, kind, si) => {
    expect(siOf(written, kind)).toBeCloseTo(si, 12);
    expect(siOf(written, kind) / (si || 1)).toBeCloseTo(si === 0 ? 0 : 1, 13);
    if (typeof written === "string") expect(written).toMatch(new RegExp(QUANTITY_PATTERN));
  });

  test("has no negative zero", () => {
    expect(Object.is(siOf(-0, length), 0)).toBe(true);
  });
});

describe("a quantity that cannot be read says so in words", () => {
  const { length, mass, density, fraction, kv, rotationalStiffness, speed } = KINDS;
  test.each<[number | string, QuantityKind, string]>([
    ["5 GPa", length, '"5 GPa" is a pressure (GPa), a length is needed here, for example "5 mm".'],
    ["5 mm", mass, '"5 mm" is a length (mm), a mass is needed here, for example "33 g".'],
    [
      "180 Hz",
      speed,
      '"180 Hz" is a frequency (Hz), a rotational speed is needed here, for example "10800 rpm".',
    ],
    [
      "12 V",
      kv,
      '"12 V" is a voltage (V), a motor speed per volt is needed here, for example "1800 rpm/V".',
    ],
    [
      "5 N m",
      rotationalStiffness,
      '"5 N m" is a torque or an energy (N m), a rotational stiffness is needed here, for example "100 N m/rad".',
    ],
    ["5 K", length, '"5 K" has the unit K, a length is needed here, for example "5 mm".'],
    ["5 %", length, '"5 %" is a fraction (%), a length is needed here, for example "5 mm".'],
    ["2,5 mm", length, '"2,5 mm" has a decimal comma. Write it with a point: "2.5 mm".'],
    [
      "1,000 mm",
      length,
      '"1,000 mm" has a comma in the number. Write "1000 mm" for thousands or "1.000 mm" for decimals.',
    ],
    [
      "1,000,000 mm",
      length,
      '"1,000,000 mm" has commas in the number. Write it without them, with a point before decimals.',
    ],
    ["5", length, '"5" has no unit. Write "5 mm", or 5 without the quotes, which is read in mm.'],
    [
      "0.5",
      fraction,
      '"0.5" has no unit. Write 0.5 without the quotes, or "0.5 %" if you mean per cent.',
    ],
    [
      "5 mmm",
      length,
      '"5 mmm": the unit "mmm" is not known. Did you mean "5 mm"? A length is needed here, for example "5 mm".',
    ],
    [
      "70 gpa",
      KINDS.modulus,
      '"70 gpa": the unit "gpa" is not known. Did you mean "70 GPa"? A modulus is needed here, for example "70 GPa".',
    ],
    ["1800 KV", kv, '"1800 KV": write the speed per volt as "1800 rpm/V".'],
    [
      "1550 kg/m³",
      density,
      '"1550 kg/m³" has a sign that cannot be read. Write it in plain letters: "1550 kg/m^3".',
    ],
    [
      "45°",
      KINDS.angle,
      '"45°" has a sign that cannot be read. Write it in plain letters: "45 deg".',
    ],
    [
      "−3 mm",
      length,
      '"−3 mm" has a sign that cannot be read. Write it in plain letters: "-3 mm".',
    ],
    [
      "about 5 mm",
      length,
      '"about 5 mm" is not a number with a unit: a length is needed here, for example "5 mm".',
    ],
    ["", length, 'An empty text cannot be read: a length is needed here, for example "5 mm".'],
    [
      "NaN mm",
      length,
      '"NaN mm" is not a number with a unit: a length is needed here, for example "5 mm".',
    ],
    ["1e999 mm", length, '"1e999 mm" is too large: at most 1000 m can be right here.'],
    ["5 Mm", length, '"5 Mm" is too large: at most 1000 m can be right here.'],
    [
      1550,
      density,
      "1550 (read as 1550 g/cm^3) is too large: at most 100 g/cm^3 can be right here.",
    ],
  ])("%s", (written, kind, message) => {
    expect(problemOf(written, kind)).toBe(message);
  });

  test.each([
    [0, { above: 0 }, "0 (read as 0 mm) is not possible: it must be more than zero."],
    ["-2 mm", { least: 0 }, '"-2 mm" is not possible: it must be zero or more.'],
  ])("%s outside its range", (written, range, message) => {
    expect(problemOf(written, length, range)).toBe(message);
  });

  test("a fraction outside 0 to 1", () => {
    const range = { above: 0, most: 1 };
    expect(problemOf("120 %", fraction, range)).toBe(
      '"120 %" is not possible: it must be 100 % or less.',
    );
    expect(problemOf(85, fraction, range)).toBe("85 is not possible: it must be 1 or less.");
  });
});

describe("nothing in a quantity is evaluated", () => {
  test.each([
    "1+1 mm",
    "(2) mm",
    "2*3 mm",
    'import("fs") mm',
    "5 cos(mm)",
    "5 mm; 3 g",
    "5 m.toString",
    "5 mm # 3",
  ])("%s", (written) => {
    expect("problem" in readQuantity(written, KINDS.length)).toBe(true);
  });

  test("a very long text is refused at once", () => {
    const message = problemOf(`1 ${"m*".repeat(5000)}m`, KINDS.length);
    expect(message.length).toBeLessThan(200);
  });
});
