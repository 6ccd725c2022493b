import { describe, expect, test } from "vitest";
import { changedFrame, parseFrameSource, readFrameSource } from "../../src/frame/change.ts";
import { type Input, inputsOf, withInput } from "../../src/frame/inputs.ts";
import { valueAt } from "../../src/frame/place.ts";
import { fileWith, LIBRARY, PLATE } from "./helpers.ts";

const SAMPLES = ["three-inch", "five-inch", "seven-inch", "ten-inch"];
const five = readFrameSource("frames/five-inch.jsonc");

function source(sections: object) {
  return parseFrameSource(JSON.stringify(fileWith(sections)), "test.jsonc", LIBRARY);
}

function input(of: { raw: unknown; file: typeof five.file }, name: string): Input {
  const found = inputsOf(of).find((one) => one.name === name);
  if (found === undefined) throw new Error(`no input ${name}`);
  return found;
}

const namesOf = (of: typeof five, kind?: string) =>
  inputsOf(of)
    .filter((one) => kind === undefined || one.kind === kind)
    .map(({ name }) => name);

describe("inputs of the five-inch sample", () => {
  test("by kind", () => {
    expect(namesOf(five, "thickness")).toEqual([
      "plates.bottom.thickness",
      "plates.middle.thickness",
      "plates.top.thickness",
      "arms.arm.thickness",
    ]);
    expect(namesOf(five, "width")).toEqual(["arms.arm.width#1", "arms.arm.width#2"]);
    expect(namesOf(five, "modulus")).toEqual([
      "modulusFactors.carbon-plate-0-90",
      "modulusFactors.carbon-plate-quasi-isotropic",
      "modulusFactors.aluminium-7075-t651",
    ]);
    expect(namesOf(five, "joint")).toEqual(["arms.arm.joint.kappa"]);
    expect(namesOf(five, "density")).toEqual([]);
    expect(namesOf(five, "mount")).toEqual([
      'bodies."action camera".soft.bounce',
      "bodies.battery.soft.bounce",
    ]);
    expect(namesOf(five, "damping")).toEqual([
      "assemblyLossFactor",
      "dampingFactor",
      "arms.arm.joint.lossFactor",
      'bodies."action camera".soft.lossFactor',
      "bodies.battery.soft.lossFactor",
    ]);
    expect(namesOf(five, "mass")).toContain("propulsion.propeller.nutMass");
    expect(namesOf(five, "position")).toEqual(
      expect.arrayContaining([
        "bodies.battery.at#3",
        "standoffs.post.at#4#2",
        "arms.arm.tip#1",
        "stack.at#2",
        'candidates."rear bay".at#1',
      ]),
    );
  });

  test("values in SI, with the unit of a bare number", () => {
    expect(input(five, "arms.arm.thickness")).toMatchObject({
      value: 0.005,
      perSI: 1000,
      unit: "mm",
    });
    expect(input(five, "bodies.battery.mass")).toMatchObject({
      value: 0.188,
      perSI: 1000,
      unit: "g",
    });
    expect(input(five, "bodies.battery.soft.bounce")).toMatchObject({
      value: 75,
      perSI: 1,
      unit: "Hz",
    });
    expect(input(five, "arms.arm.joint.kappa")).toMatchObject({ value: 12.8, perSI: 1, unit: "" });
  });

  test("usual spreads, each marked as without source", () => {
    const source = "common practice, no source";
    const spreadOf = (name: string) => input(five, name).spread;
    expect(spreadOf("arms.arm.thickness")).toEqual({
      from: 0.00485,
      to: 0.00515,
      scale: "even",
      source,
    });
    expect(spreadOf("bodies.battery.mass")).toEqual({
      from: 0.18236,
      to: 0.19364,
      scale: "even",
      source,
    });
    expect(spreadOf("modulusFactors.carbon-plate-0-90")).toEqual({
      from: 0.9,
      to: 1.1,
      scale: "even",
      source,
    });
    expect(spreadOf("arms.arm.joint.kappa")).toEqual({ from: 5.3, to: 28, scale: "log", source });
    expect(spreadOf("bodies.battery.soft.bounce")).toEqual({
      from: 62.5,
      to: 90,
      scale: "log",
      source,
    });
    expect(spreadOf("dampingFactor")).toEqual({ from: 0.5, to: 2, scale: "log", source });
    for (const name of [
      "assemblyLossFactor",
      "arms.arm.width#1",
      "arms.arm.tip#1",
      "bodies.battery.at#3",
    ]) {
      expect(spreadOf(name)).toBeUndefined();
    }
  });
});

test("what other frames have: materials, joints, springs, mounts, points", () => {
  const all = source({
    materials: {
      tube: { kind: "isotropic", E: "70 GPa", nu: 0.3, density: "2.7 g/cm^3" },
      unused: { kind: "isotropic", E: "70 GPa", nu: 0.3, density: "2.7 g/cm^3" },
    },
    plates: { base: { ...PLATE, material: "tube" }, lid: { ...PLATE, z: 2 } },
    points: { p: [0, 0, "1 cm"] },
    joints: {
      screws: { plates: ["base", "lid"], at: [10, 5], stiffness: { z: "4 kN/mm", rx: 0 } },
    },
    springs: { s: { between: ["p", "ground"], x: 3, rz: "2 N m/rad" } },
    stack: {
      mass: 20,
      size: [36, 36, 9],
      plate: "base",
      at: [0, 0],
      height: 8,
      holes: { spacing: 30.5 },
      isolators: { axial: "8 kN/m" },
    },
    candidates: { c: { plate: "lid", at: [5, 0], isolators: { axial: 6, lateral: 2 } } },
  });
  const table = inputsOf(all).map(({ name, kind, value, unit }) => [name, kind, value, unit]);
  expect(table).toEqual([
    ["assemblyLossFactor", "damping", 0.02, ""],
    ["dampingFactor", "damping", 1, ""],
    ["modulusFactors.tube", "modulus", 1, ""],
    ["materials.tube.density", "density", 2700, "g/cm^3"],
    ["materials.tube.lossFactor", "damping", 0.002, ""],
    ["modulusFactors.carbon-plate-0-90", "modulus", 1, ""],
    ["plates.base.thickness", "thickness", 0.002, "mm"],
    ["plates.lid.thickness", "thickness", 0.002, "mm"],
    ["points.p#1", "position", 0, "mm"],
    ["points.p#2", "position", 0, "mm"],
    ["points.p#3", "position", 0.01, "mm"],
    ["joints.screws.at#1", "position", 0.01, "mm"],
    ["joints.screws.at#2", "position", 0.005, "mm"],
    ["joints.screws.stiffness.z", "joint", 4e6, "N/mm"],
    ["joints.screws.lossFactor", "damping", 0.05, ""],
    ["springs.s.x", "joint", 3000, "N/mm"],
    ["springs.s.rz", "joint", 2, "N m/rad"],
    ["stack.mass", "mass", 0.02, "g"],
    ["stack.at#1", "position", 0, "mm"],
    ["stack.at#2", "position", 0, "mm"],
    ["stack.isolators.axial", "mount", 8000, "N/mm"],
    ["stack.isolators.lossFactor", "damping", 0.2, ""],
    ["candidates.c.at#1", "position", 0.005, "mm"],
    ["candidates.c.at#2", "position", 0, "mm"],
    ["candidates.c.isolators.axial", "mount", 6000, "N/mm"],
    ["candidates.c.isolators.lateral", "mount", 2000, "N/mm"],
    ["candidates.c.isolators.lossFactor", "damping", 0.2, ""],
  ]);
});

test.each([
  ["17 mm", ["arms.arm.width"]],
  [
    [17, "1.3 cm"],
    ["arms.arm.width#1", "arms.arm.width#2"],
  ],
  [
    [
      [0, 17],
      [0.4, 15],
      [1, 13],
    ],
    ["arms.arm.width#1#2", "arms.arm.width#2#2", "arms.arm.width#3#2"],
  ],
])("widths written as %j", (width, names) => {
  const written = changedFrame(five, [{ path: ["arms", "arm", "width"], written: width }]);
  const raw = structuredClone(five.raw) as { arms: { arm: { width: unknown } } };
  raw.arms.arm.width = width;
  const made = { ...five, raw, file: written.file };
  expect(namesOf(made, "width")).toEqual(names);
  expect(input(made, names[0]).value).toBe(0.017);
});

describe.each(SAMPLES)("%s", (name) => {
  const sample = readFrameSource(`frames/${name}.jsonc`);
  const inputs = inputsOf(sample);

  /** The first of each kind, and some of the many others. */
  const some = inputs.filter(
    ({ kind }, i) => i % 9 === 0 || inputs.findIndex((one) => one.kind === kind) === i,
  );

  test("no input stands there twice", () => {
    expect(new Set(inputs.map((one) => one.name)).size).toBe(inputs.length);
    expect(inputs.length).toBeGreaterThan(30);
  });

  test("an input can be given another value, and has it then", () => {
    for (const one of some) {
      const value = one.value * 1.01 + (one.value === 0 ? 1e-3 : 0);
      const change = withInput(sample, one, value);
      const { file } = changedFrame(sample, [change]);
      expect(file).not.toEqual(sample.file);
      // read back from the changed text
      const text = JSON.stringify(put(sample.raw, change.path, change.written));
      const again = input(parseFrameSource(text, "again"), one.name);
      expect(Math.abs(again.value / value - 1)).toBeLessThan(1e-14);
    }
  });

  test("at its own value an input leaves the file as it is", () => {
    for (const one of some) {
      const change = withInput(sample, one, one.value);
      expect(changedFrame(sample, [change]).file.arms).toEqual(sample.file.arms);
      const written = valueAt(sample.raw, one.path);
      expect(change.written).toBe(written ?? one.value);
    }
  });
});

/** Sets a value in plain JSON, sections made as needed. */
function put(raw: unknown, [step, ...rest]: readonly (string | number)[], value: unknown): unknown {
  if (step === undefined) return value;
  const copy = Array.isArray(raw) ? [...raw] : { ...(raw as object | undefined) };
  const slots = copy as Record<string | number, unknown>;
  slots[step] = put(slots[step], rest, value);
  return copy;
}
