import { describe, expect, test } from "vitest";
import {
  decibels,
  hertz,
  inColumn,
  mass,
  millimetres,
  percent,
  rounded,
  rpm,
  signed,
  three,
  toRpm,
  whole,
} from "../../src/report/numbers.ts";

describe("numbers", () => {
  test("have at most three meaningful digits", () => {
    const shown = [0, 1, 12, 123, 1234, 12345, 123456, 0.1234, 0.0012345, 99.95, -2.5].map((x) =>
      three(x),
    );
    expect(shown).toEqual([
      "0",
      "1",
      "12",
      "123",
      "1\u202f230",
      "12\u202f300",
      "123\u202f000",
      "0.123",
      "0.00123",
      "100",
      "\u22122.5",
    ]);
  });

  test("in a column keep their last zeros", () => {
    const shown = [8.4, 11, 0.7, 123.4, 1234, 0.0004, -2, 99.96, 0].map((x) => inColumn(x));
    expect(shown).toEqual([
      ...["8.40", "11.0", "0.700", "123", "1\u202f230"],
      ...["4\u00a0×\u00a010⁻⁴", "\u22122.00", "100", "0"],
    ]);
    expect([29.3, 1.1, 0.765].map((x) => inColumn(x, 2))).toEqual(["29", "1.1", "0.77"]);
  });

  test("that are very small or large are written with a power of ten", () => {
    expect(three(2.34e-9)).toBe("2.34\u00a0×\u00a010⁻⁹");
    expect(three(-1.5e7)).toBe("\u22121.5\u00a0×\u00a010⁷");
    expect(three(2.345e-10, 2)).toBe("2.3\u00a0×\u00a010⁻¹⁰");
  });

  test("that are not numbers are still readable", () => {
    expect([three(Number.NaN), three(Number.POSITIVE_INFINITY)]).toEqual(["–", "∞"]);
    expect(rounded(Number.POSITIVE_INFINITY)).toBeNull();
  });

  test("stand with their units", () => {
    expect(hertz(126.4)).toBe("126\u00a0Hz");
    expect(rpm((10_840 * Math.PI) / 30)).toBe("10\u202f800\u00a0rpm");
    expect(toRpm(100 * Math.PI)).toBeCloseTo(3000, 9);
    expect(mass(0.7341)).toBe("734\u00a0g");
    expect(mass(3.5512)).toBe("3.55\u00a0kg");
    expect(percent(0.0712, 2)).toBe("7.1\u00a0%");
    expect(whole(1234567)).toBe("1\u202f234\u202f567");
  });

  test("of lengths below 0.05 mm are nothing", () => {
    expect([2.61e-5, -4.9e-5, 5.1e-5, -0.0123].map(millimetres)).toEqual([
      "0\u00a0mm",
      "0\u00a0mm",
      "0.051\u00a0mm",
      "\u221212.3\u00a0mm",
    ]);
  });

  test("of differences carry their sign", () => {
    expect([signed(3.04), signed(-3.06), signed(0.04)]).toEqual(["+3.0", "\u22123.1", "0.0"]);
    expect([signed(4.2, 0), signed(-0.2, 0)]).toEqual(["+4", "0"]);
    expect(decibels(0)).toBe("0.0\u00a0dB");
    expect(decibels(16.94)).toBe("+16.9\u00a0dB");
  });

  test("for embedding keep a few digits", () => {
    expect(rounded(123.456789)).toBe(123.5);
    expect(rounded(1.23456e-7, 3)).toBe(1.23e-7);
  });
});
