import { describe, expect, test } from "vitest";
import { negative, notFinite, notPositive, throwIfAny } from "../src/check-number.ts";
import { InputError } from "../src/errors.ts";

describe("a number that is refused", () => {
  test.each([0, -1, Number.NaN, Number.NEGATIVE_INFINITY])("not above zero: %s", (value) => {
    expect(notPositive("Q", "the quality factor", value, "")).toEqual([
      { path: "Q", message: `the quality factor must be above 0, but is ${value}.` },
    ]);
  });

  test.each([-1, Number.NaN])("below zero: %s", (value) => {
    expect(negative("f", "the frequency", value, "Hz")).toEqual([
      { path: "f", message: `the frequency must be 0 or more, but is ${value} Hz.` },
    ]);
  });

  test.each([notPositive, negative, notFinite])("infinite: %o", (check) => {
    expect(check("f", "it", Number.POSITIVE_INFINITY, "Hz")).toEqual([
      { path: "f", message: "it must be a finite number, but is Infinity Hz." },
    ]);
  });
});

test("numbers that are allowed have no findings", () => {
  expect(notPositive("f", "it", 1e-300, "Hz")).toEqual([]);
  expect(negative("f", "it", 0, "Hz")).toEqual([]);
  expect(notFinite("f", "it", -5, "Hz")).toEqual([]);
  expect(() => throwIfAny([], [])).not.toThrow();
});

test("all findings are thrown at once", () => {
  const thrown = () =>
    throwIfAny(notPositive("Q", "Q", 0, ""), notFinite("r.x", "it", Number.NaN, "m"));
  expect(thrown).toThrow(InputError);
  expect(thrown).toThrow(
    "Q: Q must be above 0, but is 0.\nr.x: it must be a finite number, but is NaN m.",
  );
});
