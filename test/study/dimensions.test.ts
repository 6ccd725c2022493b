/** The same input of two variants gets the same random number. */

import { expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { dimensionsOf, sampledValues } from "../../src/study/dimensions.ts";
import type { SpreadInput } from "../../src/study/spread-value.ts";

const input = (name: string, value = 1, half = 0.1): SpreadInput => ({
  name,
  kind: "thickness",
  value,
  ...(half > 0 ? { spread: { from: value - half, to: value + half, scale: "even" } } : {}),
});

test("coordinates follow the sorted names, whatever the order they come in", () => {
  const [a, b, z] = ["arms.a", "bodies.b", "plates.z"].map((n) => input(n));
  const wanted = [
    ["arms.a", 0],
    ["bodies.b", 1],
    ["plates.z", 2],
  ];
  expect([...dimensionsOf([[z, a, b]])]).toEqual(wanted);
  expect([...dimensionsOf([[b, z], [a, b], []])]).toEqual(wanted);
});

test("names are sorted by code units", () => {
  expect([...dimensionsOf([[input("b"), input("a#10"), input("B"), input("a#2")]]).keys()]).toEqual(
    ["B", "a#10", "a#2", "b"],
  );
});

test("exact inputs take no coordinate", () => {
  const exact = input("a", 1, 0);
  expect([...dimensionsOf([[exact, input("b")]])]).toEqual([["b", 0]]);
  expect(dimensionsOf([[exact]]).size).toBe(0);
  expect(sampledValues([exact], new Map(), new Float64Array(0))).toEqual([]);
});

test("an input that two variants share moves alike in both, about its own value", () => {
  const [thin, thick] = [
    [input("arms.t", 4, 0.2), input("bodies.m", 2, 0.3)],
    [input("bodies.m", 2, 0.3), input("arms.t", 6, 0.4), input("plates.x")],
  ];
  const dimensions = dimensionsOf([thin, thick]);
  const point = Float64Array.of(0.9, 0.2, 0.7);
  const [a, b] = [thin, thick].map((inputs) => sampledValues(inputs, dimensions, point));
  expect(a.map((v) => v.input)).toEqual(thin);
  expect(b.find((v) => v.input.name === "bodies.m")?.value).toBe(a[1].value);
  const [offThin, offThick] = [a[0].value - 4, b[1].value - 6];
  expect(offThin).toBeGreaterThan(0);
  expect(offThick / offThin).toBeCloseTo(2, 12);
});

test("an input without a coordinate is told", () => {
  expect(() => sampledValues([input("a")], new Map(), Float64Array.of(0.5))).toThrow(InputError);
  expect(() => sampledValues([input("a")], new Map([["a", 1]]), Float64Array.of(0.5))).toThrow(
    /^a: The sample point of 1 coordinates has none/,
  );
});
