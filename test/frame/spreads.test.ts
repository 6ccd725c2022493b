import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { changedFrame, parseFrameSource } from "../../src/frame/change.ts";
import { inputsOf } from "../../src/frame/inputs.ts";
import { fileWith, LIBRARY, linesOf, PLATE, read } from "./helpers.ts";

const SECTIONS = {
  plates: { base: PLATE, lid: { ...PLATE, z: 20, thickness: "1.5 mm" } },
  bodies: {
    battery: { mass: 100, at: [10, 0, 30], on: "lid", hold: "soft", soft: { bounce: 70 } },
    screws: { mass: 10, on: "base", hold: "smeared" },
  },
};

const withSpreads = (spreads: object) => fileWith({ ...SECTIONS, spreads });

function spreadsOf(spreads: object): Record<string, unknown> {
  const source = parseFrameSource(JSON.stringify(withSpreads(spreads)), "test.jsonc", LIBRARY);
  return Object.fromEntries(inputsOf(source).map(({ name, spread }) => [name, spread]));
}

describe("spreads of the file", () => {
  test("a share of the value, evenly", () => {
    const found = spreadsOf({ "plates.base.thickness": "2 %", "bodies.battery.mass": 0.1 });
    expect(found["plates.base.thickness"]).toEqual({
      from: 0.00196,
      to: 0.00204,
      scale: "even",
      source: "file",
    });
    expect(found["bodies.battery.mass"]).toEqual({
      from: 0.09,
      to: 0.11,
      scale: "even",
      source: "file",
    });
    // not named: as usual
    expect(found["plates.lid.thickness"]).toMatchObject({ source: "common practice, no source" });
  });

  test("two ends in the field's unit, on the scale that is usual for the kind", () => {
    const found = spreadsOf({
      "bodies.battery.at#1": [8, "1.2 cm"],
      "bodies.battery.soft.bounce": ["60", "90 Hz"],
      dampingFactor: [0.5, 3],
    });
    expect(found["bodies.battery.at#1"]).toEqual({
      from: 0.008,
      to: 0.012,
      scale: "even",
      source: "file",
    });
    expect(found["bodies.battery.soft.bounce"]).toEqual({
      from: 60,
      to: 90,
      scale: "log",
      source: "file",
    });
    expect(found.dampingFactor).toEqual({ from: 0.5, to: 3, scale: "log", source: "file" });
  });

  test('"none" for exact, whatever is usual', () => {
    expect(spreadsOf({ "plates.base.thickness": "none" })["plates.base.thickness"]).toBeUndefined();
  });

  test("a path may mean many: * for any name, a list for its entries; the narrower goes before", () => {
    const found = spreadsOf({
      "plates.base.thickness": "1 %",
      "plates.*.thickness": "5 %",
      "bodies.*.mass": "none",
      "bodies.battery.at": "10 %",
      "bodies.battery.at#2": [-1, 1],
      "bodies.battery.at#3": "none",
    });
    expect(found["plates.base.thickness"]).toMatchObject({ from: 0.00198, to: 0.00202 });
    expect(found["plates.lid.thickness"]).toMatchObject({ from: 0.001425, to: 0.001575 });
    expect(found["bodies.battery.mass"]).toBeUndefined();
    expect(found["bodies.screws.mass"]).toBeUndefined();
    expect(found["bodies.battery.at#1"]).toMatchObject({ from: 0.009, to: 0.011 });
    expect(found["bodies.battery.at#2"]).toMatchObject({ from: -0.001, to: 0.001 });
    expect(found["bodies.battery.at#3"]).toBeUndefined();
  });

  test("negative values have their ends in order", () => {
    const source = parseFrameSource(
      JSON.stringify(fileWith({ points: { p: [-40, 0, 0] }, spreads: { "points.p#1": "5 %" } })),
      "test.jsonc",
    );
    expect(inputsOf(source).find(({ name }) => name === "points.p#1")?.spread).toMatchObject({
      from: -0.042,
      to: -0.038,
    });
  });
});

describe("spreads that are wrong", () => {
  test.each<[object, string]>([
    [
      { "plates.base.thicknes": "2 %" },
      'There is no such number. plates.base has no "thicknes". Did you mean plates.base.thickness?',
    ],
    [
      { "plates.bas.thickness": "2 %" },
      'There is no such number. plates has no "bas". Did you mean plates.base.thickness?',
    ],
    [{ "plates.base.material": "2 %" }, "No number with a spread is meant by this."],
    [{ "plates.*.material": "2 %" }, "No number with a spread is meant by this."],
    [{ "plates.base.thickness#1": "2 %" }, "There is no such number. plates.base.thickness is"],
    [
      { "modulusFactors.carbon-plate-0-9": "2 %" },
      "No number with a spread is meant by this. Did you mean modulusFactors.carbon-plate-0-90?",
    ],
    [{ "a..b": "2 %" }, 'The path "a..b" cannot be read: a name is missing'],
    [
      { "plates.base.thickness": "2 mm" },
      '"2 mm" is a length (mm), a fraction is needed here, for example 0.05 or "5 %".',
    ],
    [{ "plates.base.thickness": 2 }, "2 is not possible: it must be 0.9 or less."],
    [{ "plates.base.thickness": 0 }, "0 is not possible: it must be more than zero."],
    [
      { "plates.base.thickness": "some" },
      '"some" was found: write a share such as "2 %", both ends in a list such as ["4.8 mm", "5.1 mm"], or "none".',
    ],
    [{ "plates.base.thickness": true }, "True was found: write a share"],
    [{ "plates.base.thickness": [1] }, "A list was found: write a share"],
    [{ "plates.base.thickness": [1, null] }, "A list was found: write a share"],
    [
      { "plates.base.thickness": [2.1, 1.9] },
      'The first end must be smaller than the second; for a number taken as exact write "none".',
    ],
    [
      { "plates.base.thickness": ["2 g", "3 g"] },
      '"2 g" is a mass (g), a length is needed here, for example "5 mm".',
    ],
    [{ "plates.base.thickness": [-1, 3] }, "Both ends must be more than zero."],
    [{ "plates.base.thickness": ["1 2", 3] }, '"1 2": the unit "2" is not known.'],
    [{ "plates.base.thickness": ["", 3] }, "An empty text cannot be read"],
    [{ dampingFactor: ["1 mm", 3] }, '"1 mm" is no number, and one without a unit is needed here.'],
    [
      { "bodies.battery.at#2": "5 %" },
      "The value is zero, and so is any share of it: give both ends in a list.",
    ],
    [{ __proto__x: "5 %" }, 'There is no such number. The file has no "__proto__x".'],
  ])("%j", (spreads, message) => {
    const [line, ...more] = linesOf(withSpreads(spreads));
    expect(more).toEqual([]);
    expect(line).toContain(`: ${message}`);
    expect(line).toMatch(/^spreads\./);
  });

  test("any odd path and value: a file or findings in our own words, never another error", () => {
    const path = fc.oneof(
      fc.constantFrom("plates.base.thickness", "bodies.*.mass", "__proto__", "*.*", "constructor"),
      fc.string({ maxLength: 12 }),
    );
    const value = fc.oneof(
      fc.jsonValue({ maxDepth: 2 }),
      fc.constantFrom("none", "e", "1 e", [1, "2"]),
    );
    fc.assert(
      fc.property(path, value, (key, spread) => {
        const text = JSON.stringify(withSpreads({})).replace(
          '"spreads":{}',
          `"spreads":{${JSON.stringify(key)}:${JSON.stringify(spread)}}`,
        );
        for (const line of linesOf(text)) expect(line).toMatch(/^spreads\b.*: .{10,}[.?]$/s);
      }),
      { seed: 11, numRuns: 150 },
    );
    expect(
      linesOf(
        '{"version":1,"name":"x","plates":{"base":' +
          JSON.stringify(PLATE) +
          '},"spreads":{"__proto__":"none"}}',
      ),
    ).toEqual(["spreads.__proto__: This is no path."]);
  });

  test("not a section", () => {
    expect(linesOf(withSpreads(["2 %"]))).toEqual([
      "spreads: A list was found: write { } with spreads by path.",
    ]);
  });

  test("stand where they are in the text", () => {
    const text = JSON.stringify(withSpreads({ "plates.base.thicknes": "2 %" }), undefined, 1);
    const line = text.split("\n").findIndex((one) => one.includes('thicknes"')) + 1;
    expect(() => read(text)).toThrow(
      expect.objectContaining({ findings: [expect.objectContaining({ line })] }),
    );
  });
});

test("a change may take a number away that has a spread, and may set spreads", () => {
  const stack = {
    mass: 20,
    size: [36, 36, 9],
    plate: "base",
    at: [0, 0],
    height: 8,
    holes: { spacing: 30.5 },
  };
  const file = fileWith({
    ...SECTIONS,
    stack: { ...stack, isolators: { axial: 8 } },
    spreads: { "stack.isolators.axial": "20 %" },
  });
  const source = parseFrameSource(JSON.stringify(file), "test.jsonc", LIBRARY);
  const none = changedFrame(source, [{ path: ["stack", "isolators"], written: "none" }]);
  expect(none.file.stack?.isolators).toBe("none");
  const spread = (written: unknown) => [{ path: ["spreads", "plates.lid.thickness"], written }];
  expect(changedFrame(source, spread("none")).file.spreads).toMatchObject({
    "plates.lid.thickness": "none",
  });
  expect(() => changedFrame(source, spread([2, 1]))).toThrow("The first end must be smaller");
});

describe("factors on moduli", () => {
  test("by the name of a material of the file or the library", () => {
    expect(
      read(fileWith({ modulusFactors: { "carbon-plate-0-90": 0.92 } })).modulusFactors,
    ).toEqual({
      "carbon-plate-0-90": 0.92,
    });
    expect(read(fileWith({})).dampingFactor).toBe(1);
  });

  test("can be set by a change, where the file has none", () => {
    const source = parseFrameSource(JSON.stringify(fileWith({})), "test.jsonc", LIBRARY);
    const factor = (name: string) =>
      changedFrame(source, [{ path: ["modulusFactors", name], written: 0.9 }], { library: LIBRARY })
        .file;
    expect(factor("steel").modulusFactors).toEqual({ steel: 0.9 });
    expect(() => factor("stel")).toThrow(
      'modulusFactors.stel: There is no material called "stel". Did you mean "steel"?',
    );
  });

  test.each<[object, string]>([
    [
      { modulusFactors: { "carbon-plate-0-9": 0.9 } },
      'modulusFactors.carbon-plate-0-9: There is no material called "carbon-plate-0-9". Did you mean "carbon-plate-0-90"?',
    ],
    [
      { modulusFactors: { "carbon-ud": 0.9 } },
      'modulusFactors.carbon-ud: "carbon-ud" is a ply, and a material is needed here',
    ],
    [
      { modulusFactors: { steel: 0 } },
      "modulusFactors.steel: 0 is not possible: it must be more than 0.",
    ],
    [
      { modulusFactors: { steel: "92 %" } },
      'modulusFactors.steel: "92 %" was found: write a number without a unit, for example 0.92.',
    ],
    [
      { modulusFactors: { steel: 92 } },
      "modulusFactors.steel: 92 is not possible: it must be 10 or less.",
    ],
    [{ dampingFactor: -1 }, "dampingFactor: -1 is not possible: it must be more than 0."],
  ])("%j", (sections, message) => {
    const [line, ...more] = linesOf(fileWith(sections));
    expect(more).toEqual([]);
    expect(line).toContain(message);
  });
});
