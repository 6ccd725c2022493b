import { describe, expect, test } from "vitest";
import {
  type ChangeOptions,
  changedFrame,
  changedSource,
  type FrameSource,
  parseFrameSource,
  readFrameSource,
} from "../../src/frame/change.ts";
import { followHeights } from "../../src/frame/heights.ts";
import { parsePath } from "../../src/frame/parse-path.ts";
import { readWritten } from "../../src/frame/written.ts";
import { LIBRARY_MATERIALS } from "../../src/material/library-materials.ts";
import { LIBRARY_PLIES } from "../../src/material/library-plies.ts";
import { buildModel } from "../../src/model/build.ts";
import { fileWith, PLATE } from "./helpers.ts";
import { weigh } from "./weigh.ts";

const SAMPLES = ["three-inch", "five-inch", "seven-inch", "ten-inch"];

const sample = (name: string) => readFrameSource(`frames/${name}.jsonc`);
const five = sample("five-inch");

function change(source: FrameSource, typed: readonly string[], options?: ChangeOptions) {
  const changes = typed.map((text) => {
    const [path, value] = text.split(/=(.*)/s);
    return { path: parsePath(path), written: readWritten(value) };
  });
  return changedFrame(source, changes, options);
}

function shifts(source: FrameSource, ...typed: string[]): Record<string, number> {
  const { moved } = change(source, typed);
  expect(new Set(moved.map(({ name }) => name)).size).toBe(moved.length);
  return Object.fromEntries(moved.map(({ name, by }) => [name, Number((by * 1e3).toFixed(9))]));
}

/** Lengths of the standoffs, m. */
function lengths(source: FrameSource["file"]): number[] {
  return buildModel(source).standoffs.map(({ from, to }) => to - from);
}

describe.each(SAMPLES)("%s", (name) => {
  const source = sample(name);

  test("with nothing changed it is the same file", () => {
    const again = sample(name).file;
    expect(followHeights(source.file, again).file).toBe(again);
    expect(followHeights(source.file, again).moved).toEqual([]);
    const { file, moved } = change(source, ["name=other", "stack.mass=30 g"]);
    expect(moved).toEqual([]);
    expect(JSON.stringify(file)).toBe(
      JSON.stringify(change(source, ["name=other", "stack.mass=30 g"], { keepHeights: true }).file),
    );
  });

  test("thicker plates and arms: no gap opens, standoffs keep their length", () => {
    // posts on a deck that is screwed to another plate give way to its thickness: see below
    const plates = Object.keys(source.file.plates).filter((plate) => plate !== "rear deck");
    const thicknesses = plates.map((plate, i) => `plates.${plate}.thickness=${3.1 + i}`);
    // arms cut from a plate have its thickness
    const arms = name === "three-inch" ? "arms.arm.thickness=3.1" : "arms.arm.thickness=6.6";
    const { file } = change(source, [...thicknesses, arms]);
    const model = buildModel(file);
    expect(model.warnings).toEqual(buildModel(source.file).warnings);
    lengths(file).forEach((length, i) => {
      expect(length).toBeCloseTo(lengths(source.file)[i], 12);
    });
    // the bodies on plates, too: what is between their middle and the face they are on
    const gap = (frame: typeof file, body: string) => {
      const { at, on } = frame.bodies[body];
      const plate = frame.plates[on[0]] ?? frame.arms[on[0]];
      return Math.abs(at![2] - plate.z) - plate.thickness / 2;
    };
    for (const [body, { at }] of Object.entries(file.bodies)) {
      if (at !== undefined) expect(gap(file, body)).toBeCloseTo(gap(source.file, body), 12);
    }
  });
});

describe("five-inch: arms between two plates, posts to a top plate", () => {
  test.each([3, 4, 5, 6, 7, 8])("arms of %d mm build, without a word about gaps", (t) => {
    const { file } = change(five, [`arms.arm.thickness=${t} mm`]);
    const { warnings } = buildModel(file);
    expect(warnings.filter((one) => /apart|into each other|hangs/.test(one))).toEqual([]);
    // by hand: the middle plate lies on the arms, the top plate on posts of 25 mm
    expect(file.plates.middle.z).toBeCloseTo((t / 2 + 1) / 1e3, 12);
    expect(file.plates.bottom.z).toBeCloseTo(-(t / 2 + 1.25) / 1e3, 12);
    expect(file.plates.top.z).toBeCloseTo((t / 2 + 2 + 25 + 1) / 1e3, 12);
    expect(file.bodies.battery.at![2]).toBeCloseTo((50.5 + (t - 5) / 2) / 1e3, 12);
    for (const length of lengths(file)) expect(length).toBeCloseTo(0.025, 12);
  });

  test("without following, the same change leaves a gap that the model refuses", () => {
    const { file, moved } = change(five, ["arms.arm.thickness=8"], { keepHeights: true });
    expect(moved).toEqual([]);
    expect(() => buildModel(file)).toThrow("run 1.5 mm into each other");
  });

  test("the mass of all but the arms stays", () => {
    const density = (material: string) => {
      const found = LIBRARY_MATERIALS.find(({ id }) => id === material)?.material;
      if (found === undefined || found.kind === "laminate") throw new Error("not expected here");
      return found.density;
    };
    const light = (file: typeof five.file) => weigh(file, density).mass;
    expect(LIBRARY_PLIES.length).toBeGreaterThan(0);
    const [thin, drawn, thick] = [4, 5, 6].map((t) =>
      light(change(five, [`arms.arm.thickness=${t}`]).file),
    );
    expect(drawn).toBeCloseTo(light(five.file), 12);
    // the arms' mass is proportional to their thickness, all else constant
    expect(thick - drawn).toBeCloseTo(drawn - thin, 12);
    expect(thick - drawn).toBeGreaterThan(0.01);
  });

  test("says what moved, and how far", () => {
    expect(shifts(five, "arms.arm.thickness=6 mm")).toEqual({
      "plate bottom": -0.5,
      "plate middle": 0.5,
      "plate top": 0.5,
      "body camera": 0.5,
      "body video transmitter": 0.5,
      "body receiver": 0.5,
      "body action camera": 0.5,
      "body action camera mount": 0.5,
      "body battery": 0.5,
      "body wiring and capacitor": 0.5,
      "body satellite receiver": 0.5,
      "motors over the arms' middle": 0.5,
    });
  });

  test("a thicker middle plate: its upper face rises by all of it", () => {
    const moved = shifts(five, "plates.middle.thickness=3 mm");
    expect(moved).toMatchObject({
      "plate middle": 0.5,
      "plate top": 1,
      "body camera": 1,
      "body battery": 1,
    });
    expect(moved).not.toHaveProperty("plate bottom");
  });

  test("a body below a plate goes down with its lower face", () => {
    const ten = sample("ten-inch");
    expect(shifts(ten, "plates.bottom.thickness=4 mm")).toEqual({
      "plate bottom": -0.5,
      "body payload": -1,
    });
    expect(shifts(ten, "arms.arm.thickness=10 mm")).toMatchObject({
      "body payload": -1,
      "body landing leg": -1,
      "motors over the arms' middle": 1,
    });
  });

  test("a plate that the user moves stays there, and the posts give way", () => {
    const { file } = change(five, ["plates.top.z=35.5", "arms.arm.thickness=6"]);
    expect(file.plates.top.z).toBe(0.0355);
    expect(shifts(five, "plates.top.z=35.5", "arms.arm.thickness=6")).toMatchObject({
      "plate middle": 0.5,
      "length of standoff post": 4.5,
      "body battery": 5,
    });
    expect(buildModel(file).warnings).toEqual([]);
  });

  test("a plate that holds the arms takes them along", () => {
    const moved = shifts(five, "plates.bottom.z=-4.75");
    expect(moved).toMatchObject({
      "arm arm": -1,
      "plate middle": -1,
      "plate top": -1,
      "body battery": -1,
    });
    expect(moved).not.toHaveProperty("plate bottom");
  });

  test("arms that the user moves take their plates along", () => {
    expect(shifts(five, "arms.arm.z=2")).toMatchObject({
      "plate bottom": 2,
      "plate middle": 2,
      "plate top": 2,
    });
  });

  test("heights that the user sets right are left alone", () => {
    const byHand = [
      "arms.arm.thickness=6",
      "plates.bottom.z=-4.25",
      "plates.middle.z=4",
      "plates.top.z=31",
    ];
    const { file } = change(five, byHand);
    expect(file.arms.arm.z).toBe(0);
    expect(file.plates).toEqual(change(five, byHand, { keepHeights: true }).file.plates);
  });

  test("a body and motors that the user sets stay where he put them", () => {
    const moved = shifts(
      five,
      "arms.arm.thickness=6",
      "bodies.battery.at#3=60",
      "propulsion.motor.cgHeight=12",
    );
    expect(moved).not.toHaveProperty("body battery");
    const { file } = change(five, ["arms.arm.thickness=6", "propulsion.motor.cgHeight=12"]);
    expect(file.propulsion!.motor.cgHeight).toBe(0.012);
    expect(file.propulsion!.propeller.planeHeight).toBeCloseTo(0.0195, 12);
  });
});

describe("other frames", () => {
  test("one piece: arms and plate keep one middle", () => {
    const three = sample("three-inch");
    const both = ["plates.base.thickness=4", "arms.arm.thickness=4"];
    expect(change(three, both).file.arms.arm.z).toBe(0);
    expect(shifts(three, ...both)).toMatchObject({ "plate top": 0.5, "body battery": 0.5 });
    expect(shifts(three, "plates.base.z=2")).toMatchObject({ "arm arm": 2, "plate top": 2 });
  });

  test("screwed plates lie on each other before standoffs are looked at", () => {
    const seven = sample("seven-inch");
    // the deck lies on the middle plate: the rear posts, from the deck to the top plate, must give way
    expect(shifts(seven, 'plates."rear deck".thickness=3')).toEqual({
      "plate rear deck": 0.5,
      "body video transmitter": 1,
      "body satellite receiver": 1,
      "length of standoff rear post": -1,
    });
  });

  const stacked = (more: object = {}) =>
    parseFrameSource(
      JSON.stringify(
        fileWith({
          plates: { base: PLATE, deck: { ...PLATE, z: 22 }, ...more },
          standoffs: {
            post: {
              at: [20, 10],
              copies: "all four corners",
              between: ["base", "deck"],
              section: { shape: "rod", diameter: 5 },
              material: "nylon",
            },
          },
        }),
      ),
      "stacked",
    );

  test("without arms the first plate stays", () => {
    expect(shifts(stacked(), "plates.base.thickness=4")).toEqual({ "plate deck": 1 });
    expect(shifts(stacked(), "plates.deck.thickness=4")).toEqual({ "plate deck": 1 });
    expect(shifts(stacked(), "plates.base.z=5")).toEqual({ "plate deck": 5 });
  });

  test("plates without any contact stay", () => {
    const source = stacked({ loose: { ...PLATE, z: 60 } });
    expect(shifts(source, "plates.base.thickness=4")).toEqual({ "plate deck": 1 });
  });

  test("parts that a change adds or takes into other hands stay where it puts them", () => {
    const added = change(stacked(), [
      `plates.roof=${JSON.stringify({ ...PLATE, z: 40 })}`,
      "plates.base.thickness=4",
    ]);
    expect(added.file.plates.roof.z).toBe(0.04);
    expect(added.moved).toEqual([{ name: "plate deck", by: expect.closeTo(0.001, 12) }]);
  });
});

test("a changed source can be changed further, and back", () => {
  const thickness = (written: unknown) => ({ path: ["arms", "arm", "thickness"], written });
  const { source } = changedSource(five, [thickness("7 mm")]);
  expect(source.file).toEqual(change(five, ["arms.arm.thickness=7"]).file);
  const { file } = changedFrame(source, [thickness("5 mm")]);
  expect(file.plates.top.z).toBeCloseTo(five.file.plates.top.z, 12);
  expect(file.bodies.battery.at![2]).toBeCloseTo(five.file.bodies.battery.at![2], 12);
  expect(file.propulsion!.motor.cgHeight).toBeCloseTo(five.file.propulsion!.motor.cgHeight, 12);
  expect(changedFrame(source, [{ path: ["name"], written: "same" }]).moved).toEqual([]);
});
