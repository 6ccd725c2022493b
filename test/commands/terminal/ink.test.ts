import { expect, test } from "vitest";
import { inkFor, NO_INK } from "../../../src/commands/terminal/ink.ts";

test("colours only on a terminal", () => {
  expect(inkFor(true, {}).alarm("x")).toBe("\u001b[33mx\u001b[39m");
  expect(inkFor(false, {})).toBe(NO_INK);
});

test("does as NO_COLOR says, which is unset when empty", () => {
  expect(inkFor(true, { NO_COLOR: "1" })).toBe(NO_INK);
  expect(inkFor(true, { NO_COLOR: "" })).not.toBe(NO_INK);
});

test("spares terminals that cannot", () => {
  expect(inkFor(true, { TERM: "dumb" })).toBe(NO_INK);
});

test("without ink the text stays as it is", () => {
  expect(Object.values(NO_INK).map((paint) => paint("x"))).toEqual(["x", "x", "x", "x"]);
});
