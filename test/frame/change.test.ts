import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import {
  changedFrame,
  expandPath,
  type FrameSource,
  parseFrameSource,
  readFrameSource,
} from "../../src/frame/change.ts";
import { formatPath } from "../../src/frame/file-path.ts";
import { parsePath } from "../../src/frame/parse-path.ts";
import { readFrame } from "../../src/frame/read.ts";
import type { FrameFile } from "../../src/frame/types.ts";
import { readWritten } from "../../src/frame/written.ts";
import { LIBRARY } from "./helpers.ts";

const FIVE = "frames/five-inch.jsonc";
const five = readFrameSource(FIVE, LIBRARY);

/** Changes as typed, "path=value". */
function changed(source: FrameSource, ...typed: string[]): FrameFile {
  const changes = typed.map((text) => {
    const [path, value] = text.split(/=(.*)/s);
    return { path: parsePath(path), written: readWritten(value) };
  });
  return changedFrame(source, changes, { library: LIBRARY, keepHeights: true }).file;
}

function linesOf(...typed: string[]): string[] {
  try {
    changed(five, ...typed);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    expect(error.file).toBe(FIVE);
    for (const { line, column } of error.findings)
      expect([line, column]).toEqual([undefined, undefined]);
    return error.findings.map(({ path, message }) => `${path}: ${message}`);
  }
  return [];
}

test("the source holds what the file says, and the file as it is read", () => {
  expect(five.file).toEqual(readFrame(FIVE, LIBRARY));
  expect(five.path).toBe(FIVE);
  expect((five.raw as { arms: { arm: object } }).arms.arm).toMatchObject({ thickness: "5 mm" });
});

describe("changes that can be made", () => {
  test("give the file that the changed text would give", () => {
    const text = readFileSync(FIVE, "utf8")
      .replace('"thickness": "5 mm"', '"thickness": "6 mm"')
      .replace("[34, 14]", "[34, 14.5]")
      .replace('"mass": "188 g"', '"mass": 200');
    const wanted = parseFrameSource(text, "text", LIBRARY).file;
    const made = changed(
      five,
      "arms.arm.thickness=6 mm",
      "plates.bottom.outline#1#2=14.5",
      "bodies.battery.mass=200",
    );
    expect(made).toEqual(wanted);
    expect(made).not.toEqual(five.file);
  });

  test("leave the source alone and share what did not change", () => {
    const before = JSON.stringify(five.raw);
    changed(five, "arms.arm.width#2=12", "bodies.battery.at=[0, 0, 50]");
    expect(JSON.stringify(five.raw)).toBe(before);
  });

  test("without any change it is the file itself", () => {
    expect(changedFrame(five, []).file).toBe(five.file);
  });

  test("the later of two changes of one field holds", () => {
    expect(changed(five, "arms.arm.z=1", "arms.arm.z=2").arms.arm.z).toBe(0.002);
  });

  test("fields that the text leaves to their defaults, and sections too", () => {
    const file = changed(
      five,
      "arms.arm.joint.kappa=20",
      "excitation.motorSpread=5 %",
      "stack.isolators=rubber rings",
      "control.notches.quality=4",
      "candidates.rear bay.isolators.axial=8 kN/m",
    );
    expect(file.arms.arm.joint).toMatchObject({ kind: "bolted", kappa: 20 });
    expect(file.excitation.motorSpread).toBe(0.05);
    expect(file.stack?.isolators).toBe("rubber rings");
    expect(file.control.notches).toEqual({ quality: 4, trackingError: 0.01 });
    expect(file.candidates["rear bay"].isolators).toMatchObject({ axial: 8000, lateral: 4000 });
  });

  test("whole parts can be added and replaced", () => {
    const file = changed(
      five,
      'bodies.ballast={"mass": "5 g", "at": [0, 0, 40], "on": "top"}',
      "points.eye=[1, 2, 3]",
      'arms.arm.joint={"kind": "one piece", "plate": "middle"}',
    );
    expect(file.bodies.ballast).toMatchObject({ mass: 0.005, hold: "rigid" });
    expect(file.points.eye).toEqual([0.001, 0.002, 0.003]);
    expect(file.arms.arm.joint).toEqual({ kind: "one piece", plate: "middle" });
  });
});

describe("places that do not exist", () => {
  const EXAMPLES: [string, string][] = [
    [
      "arms.arn.thickness=6",
      'arms has no "arn". Did you mean arms.arm.thickness? arms has only "arm".',
    ],
    [
      "arms.arm.thicknes=6",
      'arms.arm has no "thicknes". Did you mean arms.arm.thickness? Possible here: "material", "thickness"',
    ],
    [
      "arm.arm.z=6",
      'The file has no "arm". Did you mean arms.arm.z? Possible here: "$schema", "version"',
    ],
    [
      "arms.arm.joint.plate=top",
      'arms.arm.joint has no "plate". Did you mean arms.arm.joint.plates? Possible here: "kind", "plates", "inserted", "kappa" or "lossFactor".',
    ],
    [
      "arms.arm.width#3=6",
      "arms.arm.width has only 2, #1 to #2, so there is no #3. Lists are not extended: to have more entries, set the whole list arms.arm.width.",
    ],
    [
      "arms.arm.width.tip=6",
      'arms.arm.width is a list of 2, so "tip" is nothing in it: say which entry, for example arms.arm.width#1.',
    ],
    [
      "arms.arm.thickness.tip=6",
      'arms.arm.thickness is "5 mm", with nothing in it called tip: set arms.arm.thickness itself.',
    ],
    [
      "arms.arm.slots#1.width=6",
      "arms.arm.slots is not written in the file, so it has no entries: set the whole list arms.arm.slots.",
    ],
    [
      "arms#1.thickness=6",
      'arms is a section and no list: name a part of it. arms has only "arm".',
    ],
    [
      "joints.screw.lossFactor=6",
      'joints has no "screw". joints is empty. To add one, set joints.screw to all of it, as it would stand in the file.',
    ],
    [
      "arms.rear arm=6",
      'arms has no "rear arm". arms has only "arm". To add one, set arms."rear arm" to all of it',
    ],
    ["arms.__proto__.z=6", 'arms has no "__proto__".'],
  ];
  test.each(EXAMPLES)("%s", (typed, message) => {
    const [line, ...more] = linesOf(typed);
    expect(more).toEqual([]);
    expect(line).toContain(`: ${message}`);
    expect(line.startsWith(formatPath(parsePath(typed.split("=")[0])))).toBe(true);
  });
});

describe("values that are wrong", () => {
  test("are found like those of a text, all at once", () => {
    expect(
      linesOf("arms.arm.thickness=6 g", "arms.arm.material=carbn-plate-0-90", "stack.plate=tip"),
    ).toEqual([
      'arms.arm.thickness: "6 g" is a mass (g), a length is needed here, for example "5 mm".',
      expect.stringContaining(
        'arms.arm.material: There is no material called "carbn-plate-0-90". Did you mean',
      ),
      expect.stringContaining('stack.plate: There is no plate called "tip".'),
    ]);
  });

  test("rules between fields hold as well", () => {
    expect(linesOf("bodies.battery.hold=rigid")).toEqual([
      expect.stringContaining("bodies.battery.soft: A soft mount is given"),
    ]);
  });
});

describe("values as typed", () => {
  test.each<[string, unknown]>([
    ["6", 6],
    [" -1.5e-3 ", -0.0015],
    ["6 mm", "6 mm"],
    ["rubber rings", "rubber rings"],
    ['"6 mm"', "6 mm"],
    ["[26, 17]", [26, 17]],
    [
      '[[1, "2 mm"], [3, 4]]',
      [
        [1, "2 mm"],
        [3, 4],
      ],
    ],
    ["[0/45]7s", "[0/45]7s"],
    ["none", "none"],
    ["true", true],
    ["", ""],
  ])("%s", (text, value) => {
    expect(readWritten(text)).toEqual(value);
  });

  test("sections have no prototype", () => {
    const section = readWritten('{"__proto__": {"a": 1}}') as object;
    expect(Object.getPrototypeOf(section)).toBe(null);
    expect(Object.keys(section)).toEqual(["__proto__"]);
  });

  test("brackets beyond reason are refused", () => {
    const text = `${"[".repeat(5000)}${"]".repeat(5000)}`;
    expect(() => readWritten(text)).toThrow("nested too deep");
  });
});

describe("a path with *", () => {
  const places = (text: string) => expandPath(five, parsePath(text)).map(formatPath);

  test("means every part that has the field", () => {
    expect(places("plates.*.thickness")).toEqual([
      "plates.bottom.thickness",
      "plates.middle.thickness",
      "plates.top.thickness",
    ]);
    expect(places("bodies.*.soft.bounce")).toEqual([
      'bodies."action camera".soft.bounce',
      "bodies.battery.soft.bounce",
    ]);
    expect(places("*.*.thickness")).toHaveLength(4);
  });

  test("means fields with a default too", () => {
    expect(places("arms.*.joint.kappa")).toEqual(["arms.arm.joint.kappa"]);
  });

  test("a path without it is its own only place, where something can be set", () => {
    expect(places("arms.arm.joint.kappa")).toEqual(["arms.arm.joint.kappa"]);
    expect(places("stack.isolators.axial")).toEqual(["stack.isolators.axial"]);
    expect(() => places("arms.arm.thicknes")).toThrow("Did you mean arms.arm.thickness?");
  });

  test("says why nothing fits", () => {
    expect(() => places("plates.*.thicknes")).toThrow(
      'plates.*.thicknes fits nothing in frames/five-inch.jsonc. plates.bottom has no "thicknes". Did you mean plates.bottom.thickness?',
    );
    expect(() => places("plats.*.z")).toThrow('The file has no "plats". Did you mean plates?');
    expect(() => places("joints.*.lossFactor")).toThrow(
      /^joints\.\*\.lossFactor fits nothing in frames\/five-inch\.jsonc\.$/,
    );
  });
});
