import fc from "fast-check";
import { expect, test } from "vitest";
import { packIntegers, unpackIntegers } from "../../src/report/shape-codec.ts";

const CHECK = { seed: 7, numRuns: 200 };

test("whole numbers come back as they were", () => {
  const small = fc.array(fc.integer({ min: -6, max: 6 }));
  const large = fc.array(fc.integer({ min: -(2 ** 28), max: 2 ** 28 }));
  fc.assert(
    fc.property(fc.oneof(small, large), (values) => {
      const back = unpackIntegers(packIntegers(values));
      expect(back.map((v) => v + 0)).toEqual(values.map((v) => v + 0));
    }),
    CHECK,
  );
});

test("no sign means anything in a string of JSON or to HTML", () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -3000, max: 3000 })), (values) => {
      const text = packIntegers(values);
      expect(text).not.toMatch(/["\\<>&\s]/);
      expect(JSON.stringify(text).length).toBe(text.length + 2);
    }),
    CHECK,
  );
});

test("numbers like their neighbours take half a sign, small steps one, large ones two", () => {
  expect(packIntegers([0, 1, 3, 1, 1, 2]).length).toBe(3);
  expect(packIntegers([10, 0, 15, 1]).length).toBe(4);
  expect(packIntegers([100, 0]).length).toBe(4);
});
