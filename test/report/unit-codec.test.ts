import fc from "fast-check";
import { expect, test } from "vitest";
import { packUnit, unpackUnit } from "../../src/report/unit-codec.ts";

test("numbers from -1 to 1 come back within half a step of 1/2047", () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: -1, max: 1, noNaN: true })), (values) => {
      const text = packUnit(values);
      expect(text).toMatch(/^[\w-]*$/);
      expect(text.length).toBe(2 * values.length);
      unpackUnit(text).forEach((v, i) => {
        expect(Math.abs(v - values[i])).toBeLessThanOrEqual(0.5 / 2047 + 1e-12);
      });
    }),
  );
});

test("every one of the 4095 steps comes back exactly", () => {
  const steps = Float64Array.from({ length: 4095 }, (_, i) => (i - 2047) / 2047);
  const back = unpackUnit(packUnit(steps));
  expect(Math.max(...back.map((v, i) => Math.abs(v - steps[i])))).toBeLessThan(1e-12);
});

test("rest is exactly zero and what is out of range is cut off", () => {
  expect(Array.from(unpackUnit(packUnit([0, -3, 3])))).toEqual([0, -1, 1]);
});
