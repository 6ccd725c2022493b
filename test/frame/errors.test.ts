import { describe, expect, test } from "vitest";
import { fileWith, linesOf, PLATE } from "./helpers.ts";

/** Each class of error with its whole message, as a user reads it. */

const ARM = {
  material: "carbon-plate-0-90",
  thickness: 5,
  root: [20, 20],
  tip: [80, 80],
  width: [17, 13],
  joint: { kind: "bolted", plates: ["base"], inserted: 20 },
};

const plateWith = (fields: object) => fileWith({ plates: { base: { ...PLATE, ...fields } } });
const armWith = (fields: object) => fileWith({ arms: { arm: { ...ARM, ...fields } } });

function without(part: Readonly<Record<string, unknown>>, key: string): object {
  return Object.fromEntries(Object.entries(part).filter(([name]) => name !== key));
}

describe("keys", () => {
  test("a typo, with the key that was meant", () => {
    expect(linesOf(plateWith({ thicknes: 3 }))).toEqual([
      'plates.base.thicknes: "thicknes" is not known for a plate. Did you mean "thickness"? Possible here: "material", "thickness", "z", "outline", "symmetry", "holes", "fill", "warp" or "note".',
    ]);
  });

  test("something that is nothing like any key", () => {
    expect(linesOf(plateWith({ colour: "black", weight: 3 }))).toEqual([
      'plates.base.colour: "colour" is not known for a plate. Possible here: "material", "thickness", "z", "outline", "symmetry", "holes", "fill", "warp" or "note".',
      'plates.base.weight: "weight" is not known for a plate. Possible here: "material", "thickness", "z", "outline", "symmetry", "holes", "fill", "warp" or "note".',
    ]);
  });

  test("missing ones", () => {
    expect(linesOf(fileWith({ plates: { base: without(PLATE, "thickness") } }))).toEqual([
      'plates.base.thickness: Missing: a length is needed here, for example "5 mm".',
    ]);
    expect(linesOf(fileWith({ plates: { base: without(PLATE, "outline") } }))).toEqual([
      "plates.base.outline: Missing: write a list of corners [x, y].",
    ]);
    expect(linesOf({ plates: { base: PLATE } })).toEqual([
      'version: Missing: write "version": 1.',
      "name: Missing: write a text in quotes.",
    ]);
  });

  test("a file of another version, and one with nothing in it", () => {
    expect(linesOf(fileWith({ version: 2 }))).toEqual([
      "version: 2 was found: write 1, the only version of the file that this program reads.",
    ]);
    expect(linesOf({ version: 1, name: "x" })).toEqual([
      "There is nothing to model: the file needs at least one of plates, arms or members.",
    ]);
  });
});

describe("values", () => {
  test("a wrong dimension", () => {
    expect(linesOf(plateWith({ thickness: "5 GPa" }))).toEqual([
      'plates.base.thickness: "5 GPa" is a pressure (GPa), a length is needed here, for example "5 mm".',
    ]);
  });

  test("a wrong type", () => {
    expect(
      linesOf(plateWith({ thickness: true, outline: 5, note: 1, material: { a: 1 } })),
    ).toEqual([
      "plates.base.material: A section in { } was found: write the name of a material in quotes.",
      'plates.base.thickness: True was found: a length is needed here, for example "5 mm".',
      "plates.base.outline: 5 was found: write a list of corners [x, y].",
      "plates.base.note: 1 was found: write a text in quotes.",
    ]);
  });

  test("a word that is not one of the choices", () => {
    expect(linesOf(plateWith({ symmetry: "left and rigt" }))).toEqual([
      'plates.base.symmetry: "left and rigt" is not one of the choices. Did you mean "left and right"? Write "none", "left and right", "front and rear" or "all four corners".',
    ]);
    expect(linesOf(fileWith({ flightMix: "cruize" }))).toEqual([
      'flightMix: "cruize" is not one of the choices. Did you mean "cruise"? Write "mostly hover", "cruise" or "hard flying".',
    ]);
    expect(linesOf(armWith({ joint: { kind: "bolt", plates: ["base"], inserted: 20 } }))).toEqual([
      'arms.arm.joint.kind: "bolt" is not one of the choices. Did you mean "bolted"? Write "bolted", "one piece" or "point".',
    ]);
    expect(linesOf(armWith({ joint: {} }))).toEqual([
      'arms.arm.joint.kind: Missing: write "bolted", "one piece" or "point".',
    ]);
    expect(linesOf(armWith({ warp: "along arm" }))).toEqual([
      'arms.arm.warp: "along arm" was found: write "along the arm" or an angle such as "45 deg".',
    ]);
  });

  test("numbers that make no sense", () => {
    expect(linesOf(plateWith({ thickness: 0, fill: "130 %" }))).toEqual([
      "plates.base.thickness: 0 (read as 0 mm) is not possible: it must be more than zero.",
      'plates.base.fill: "130 %" is not possible: it must be 100 % or less.',
    ]);
    expect(
      linesOf(fileWith({ bodies: { b: { mass: "-3 g", at: [0, 0, 0], on: "base" } } })),
    ).toEqual(['bodies.b.mass: "-3 g" is not possible: it must be zero or more.']);
    expect(linesOf(armWith({ elements: 2.5 }))).toEqual([
      "arms.arm.elements: 2.5 was found: write a whole number from 1 to 200.",
    ]);
    expect(
      linesOf(`{"version": 1, "name": "x", "meshSize": 1e999, "arms": {}, "plates": {"a": 1}}`),
    ).toEqual([
      'meshSize: This number is too large to be read: a length is needed here, for example "5 mm".',
      "plates.a: 1 was found: write a plate in { }.",
    ]);
  });
});

describe("names of other parts", () => {
  test("a material", () => {
    expect(linesOf(plateWith({ material: "carbon-plate-090" }))).toEqual([
      'plates.base.material: There is no material called "carbon-plate-090". Did you mean "carbon-plate-0-90"? Known here: "carbon-plate-0-90", "carbon-plate-quasi-isotropic", "aluminium-7075-t651", "steel" or "nylon".',
    ]);
    expect(linesOf(plateWith({ material: "carbon-ud" }))).toEqual([
      'plates.base.material: "carbon-ud" is a ply, and a material is needed here: write a laminate of it under materials.',
    ]);
  });

  test("a ply", () => {
    const materials = { m: { kind: "laminate", stack: "[0]4", ply: "carbon-fabrik" } };
    expect(linesOf(fileWith({ materials }))).toEqual([
      'materials.m.ply: There is no ply called "carbon-fabrik". Did you mean "carbon-fabric"? Known here: "carbon-fabric" or "carbon-ud".',
    ]);
  });

  test("a plate, an arm, a point", () => {
    expect(linesOf(armWith({ joint: { ...ARM.joint, plates: ["base", "bsae"] } }))).toEqual([
      'arms.arm.joint.plates#2: There is no plate called "bsae". Did you mean "base"? Known here: "base".',
    ]);
    const bodies = { b: { mass: 1, at: [0, 0, 0], on: "bottom" } };
    expect(linesOf(fileWith({ bodies }))).toEqual([
      'bodies.b.on: There is no plate, arm or point called "bottom". Known here: "base".',
    ]);
    const members = {
      m: { from: "a", to: "base", section: { shape: "rod", diameter: 2 }, material: "steel" },
    };
    expect(linesOf(fileWith({ points: { a: [0, 0, 0] }, members }))).toEqual([
      'members.m.to: "base" is a plate, and a point is needed here. Known here: "a".',
    ]);
    expect(linesOf(fileWith({ candidates: { c: { plate: "deck", at: [0, 0] } } }))).toEqual([
      'candidates.c.plate: There is no plate called "deck". Known here: "base".',
    ]);
  });

  test("copies of an arm may be named one by one", () => {
    const arms = { arm: { ...ARM, copies: "all four corners" } };
    const camera = { mass: 1, at: [50, 50, 5], on: "front left arm" };
    expect(linesOf(fileWith({ arms, bodies: { camera } }))).toEqual([]);
    expect(
      linesOf(fileWith({ arms, bodies: { camera: { ...camera, on: "front lef arm" } } })),
    ).toEqual([
      'bodies.camera.on: There is no plate, arm or point called "front lef arm". Did you mean "front left arm"? Known here: "base", "arm", "front left arm", "front right arm", "rear left arm" or "rear right arm".',
    ]);
  });

  test("a misspelt section does not make all its names unknown", () => {
    const file = { version: 1, name: "x", plats: { base: PLATE }, arms: { arm: ARM } };
    expect(linesOf(file).map((line) => line.slice(0, 62))).toEqual([
      'plats: "plats" is not known for the frame file. Did you mean "',
    ]);
  });

  test("springs end at points or the ground", () => {
    const points = { p: [0, 0, 0] };
    expect(
      linesOf(fileWith({ points, springs: { s: { between: ["ground", "p"], z: 1 } } })),
    ).toEqual(['springs.s.between: Name the point first and "ground" second.']);
    expect(linesOf(fileWith({ points, springs: { s: { between: ["p", "grund"] } } }))).toEqual([
      'springs.s: This spring has no stiffness: give at least one of x, y, z, rx, ry, rz, for example "z": "10 N/mm".',
      'springs.s.between#2: There is no point (or "ground") called "grund". Did you mean "ground"? Known here: "p" or "ground".',
    ]);
  });
});
