import { describe, expect, test } from "vitest";
import {
  combinationName,
  combinations,
  readVaried,
  toldChanges,
} from "../../../src/commands/input/changes.ts";
import { readFrameSource } from "../../../src/frame/change.ts";
import { LIBRARY_NAMES } from "../../../src/material/library-names.ts";

const source = readFrameSource("frames/five-inch.jsonc", LIBRARY_NAMES);
const read = (text: string) => readVaried("--set", text, source);

describe("a place and its values", () => {
  test("make a change each, with the text a person wrote", () => {
    const { path, short, values } = read("arms.arm.thickness = 4 mm, 5 mm");
    expect({ path, short }).toEqual({ path: "arms.arm.thickness", short: "thickness" });
    expect(values.map((v) => v.text)).toEqual(["4 mm", "5 mm"]);
    expect(values[1].changes).toEqual([{ path: ["arms", "arm", "thickness"], written: "5 mm" }]);
  });

  test("hold for every name that a star stands for", () => {
    const { values } = read("plates.*.thickness=2 mm");
    expect(values[0].changes.map((c) => c.path[1])).toEqual(["bottom", "middle", "top"]);
  });

  test.each([
    ["bodies.battery.at#1=-40 mm", "battery at x"],
    ["arms.arm.width#1=15 mm", "width entry 1"],
    ["arms.arm.joint.kappa=20", "joint kappa"],
    ["arms.arm.tip#2=80", "tip y"],
    ["stack.isolators=none", "isolators"],
    ['bodies."action camera".soft.bounce=60 Hz', "action camera soft bounce"],
    ["dampingFactor=2", "dampingFactor"],
  ])("%s is called %s", (text, short) => {
    expect(read(text).short).toBe(short);
  });

  test("may have an equals sign in a quoted name before that of the values", () => {
    expect(() => read('bodies."a=b".mass=5 g')).toThrow(/bodies/);
  });

  test.each([
    ["arms.arm.thickness", /names no values/],
    ["arms.arm.thickness=", /--set: /],
    ["arms.leg.thickness=4 mm", /--set: .*leg/],
    ["arms.arm.thicknes=4 mm", /--set: .*thickness/],
    ["arms.arm.thickness=8 mm..3 mm step 1 mm", /--set: /],
  ])("%s is refused with the option's name", (text, message) => {
    expect(() => read(text)).toThrow(message);
  });
});

describe("several places", () => {
  const varied = [
    read("arms.arm.thickness=4 mm, 5 mm"),
    read("stack.isolators=none, soft gel pads"),
  ];
  const all = combinations(varied);

  test("are combined, the last changing fastest", () => {
    expect(all.map((v) => combinationName(varied, v))).toEqual([
      "4 mm thickness, isolators none",
      "4 mm thickness, isolators soft gel pads",
      "5 mm thickness, isolators none",
      "5 mm thickness, isolators soft gel pads",
    ]);
  });

  test("are told as they were written", () => {
    expect(toldChanges(varied, all[1])).toEqual([
      "arms.arm.thickness = 4 mm",
      "stack.isolators = soft gel pads",
    ]);
  });
});
