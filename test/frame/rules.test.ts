import { describe, expect, test } from "vitest";
import { fileWith, linesOf, PLATE } from "./helpers.ts";

/** Rules over several fields of one part. */

const materialsWith = (m: object) => fileWith({ materials: { m } });
const bodyWith = (b: object) =>
  fileWith({ points: { p: [0, 0, 9] }, bodies: { b: { mass: 1, ...b } } });
const armWith = (fields: object) => {
  const joint = { kind: "one piece", plate: "base" };
  const arm = {
    material: "steel",
    thickness: 5,
    root: [20, 0],
    tip: [80, 0],
    width: [16, 8],
    joint,
  };
  return fileWith({ arms: { arm: { ...arm, ...fields } } });
};

describe("materials", () => {
  const metal = { kind: "isotropic", E: 70, density: 2.7 };
  test.each<[string, object, string]>([
    [
      "neither nu nor G",
      metal,
      "materials.m.nu: Missing: give Poisson's ratio nu (for example 0.33), or the shear modulus G.",
    ],
    [
      "both, and they do not fit",
      { ...metal, nu: 0.33, G: 30 },
      "materials.m.G: E, nu and G do not fit together: with this E and nu, G is 26.3 GPa. Give nu or G, not both.",
    ],
    [
      "an impossible nu",
      { ...metal, nu: 0.6 },
      "materials.m.nu: 0.6 is not possible: Poisson's ratio must be between -1 and 0.5.",
    ],
    [
      "an impossible G",
      { ...metal, G: 20 },
      "materials.m.G: This G does not go with E: Poisson's ratio would be 0.75, it must be between -1 and 0.5.",
    ],
    [
      "an impossible nu12",
      { kind: "measured", E1: 10, E2: 100, G12: 5, nu12: 0.4, density: 1.5 },
      "materials.m.nu12: This Poisson's ratio is not possible: it must be smaller than the square root of E1 / E2.",
    ],
  ])("%s", (_name, material, line) => {
    expect(linesOf(materialsWith(material))).toEqual([line]);
  });

  test("both nu and G within one per cent are fine", () => {
    expect(linesOf(materialsWith({ ...metal, nu: 0.33, G: "26.2 GPa" }))).toEqual([]);
  });
});

describe("plates", () => {
  const plateWith = (fields: object) => fileWith({ plates: { base: { ...PLATE, ...fields } } });
  test.each<[string, object, string]>([
    [
      "a left half on the right",
      { symmetry: "left and right" },
      'plates.base.outline#1: With symmetry "left and right" the outline lists the left half only, so y cannot be negative.',
    ],
    [
      "a front half at the rear",
      { symmetry: "front and rear" },
      'plates.base.outline#3: With symmetry "front and rear" the outline lists the front half only, so x cannot be negative.',
    ],
    [
      "a whole plate with two corners",
      {
        outline: [
          [0, 0],
          [1, 1],
        ],
      },
      "plates.base.outline: An outline needs at least 3 corners [x, y].",
    ],
    [
      "an outline with one corner",
      { outline: [[0, 0]] },
      "plates.base.outline: An outline needs at least 3 corners [x, y], or 2 where it is mirrored.",
    ],
    [
      "a corner with three numbers",
      {
        outline: [
          [0, 0],
          [1, 1],
          [0, 1, 2],
        ],
      },
      "plates.base.outline#3: A list was found: write a point [x, y].",
    ],
    [
      "a hole with a typo",
      { holes: [{ at: [0, 0], diametre: 3 }] },
      'plates.base.holes#1.diameter: Missing: a length is needed here, for example "5 mm".\nplates.base.holes#1.diametre: "diametre" is not known for a round hole. Did you mean "diameter"? Possible here: "at", "diameter" or "copies".',
    ],
    [
      "a hole that is a number",
      { holes: [5] },
      "plates.base.holes#1: 5 was found: write a hole in { }.",
    ],
  ])("%s", (_name, fields, lines) => {
    expect(linesOf(plateWith(fields))).toEqual(lines.split("\n"));
  });
});

describe("arms", () => {
  test.each<[string, object, string]>([
    [
      "no length",
      { tip: [20, 0] },
      "arms.arm.tip: The tip is at the same place as the root: the arm has no length.",
    ],
    [
      "a profile that does not start at the root",
      {
        width: [
          [0.1, 16],
          [1, 8],
        ],
      },
      "arms.arm.width#1: The first pair must be at the root: [0, width].",
    ],
    [
      "a profile that stops early",
      {
        width: [
          [0, 16],
          [0.9, 8],
        ],
      },
      "arms.arm.width#2: The last pair must be at the tip: [1, width].",
    ],
    [
      "a profile that runs back",
      {
        width: [
          [0, 16],
          [0.6, 12],
          [0.5, 10],
          [1, 8],
        ],
      },
      "arms.arm.width#3: The pairs must run from root to tip, each further out than the one before.",
    ],
    [
      "nothing between the plates",
      { joint: { kind: "bolted", plates: "base", inserted: 0 } },
      "arms.arm.joint.inserted: 0 (read as 0 mm) is not possible: it must be more than zero.",
    ],
    [
      "a slot that ends before it begins",
      { slots: [{ from: 0.5, to: 0.4, width: 3 }] },
      "arms.arm.slots#1.to: A slot must end further out than it begins.",
    ],
    [
      "a slot as wide as the arm",
      { slots: [{ from: 0.5, to: "75 %", width: 10 }] },
      "arms.arm.slots#1.width: This slot is as wide as the arm, which is 10 mm wide there.",
    ],
  ])("%s", (_name, fields, line) => {
    expect(linesOf(armWith(fields))).toEqual([line]);
  });
});

describe("bodies", () => {
  const at = [0, 0, 5];
  const on = "base";
  test.each<[string, object, string]>([
    [
      "a patch of no length",
      { on, at, footprint: [10, 0] },
      "bodies.b.footprint#2: 0 (read as 0 mm) is not possible: it must be more than zero.",
    ],
    [
      "no place",
      { on },
      "bodies.b.at: Missing: write the centre of gravity [x, y, z], for example [-30, 0, 50].",
    ],
    [
      "soft without its mount",
      { on, at, hold: "soft" },
      'bodies.b.soft: Missing: a soft hold needs its mount, for example { "bounce": "75 Hz" }.',
    ],
    [
      "a mount that is not used",
      { on, at, soft: { bounce: 60 } },
      'bodies.b.soft: A soft mount is given, but hold is "rigid": write "hold": "soft", or leave this out.',
    ],
    [
      "on two parts",
      { on: [on, "p"], at },
      'bodies.b.on: Only a smeared mass can be on several parts: name one, or write "hold": "smeared".',
    ],
    [
      "smeared with a place",
      { on, at, hold: "smeared" },
      'bodies.b.at: A smeared mass is shared out evenly over its parts: leave out "at".',
    ],
    [
      "smeared with copies",
      { on, hold: "smeared", copies: "left and right" },
      'bodies.b.copies: A smeared mass takes no copies: give the whole mass and leave out "copies".',
    ],
    [
      "smeared on a point",
      { on: "p", hold: "smeared" },
      'bodies.b.hold: A body on a point cannot be smeared: write "hold": "rigid".',
    ],
    [
      "spread with screws",
      { on, at, hold: "spread", screws: [0, 0] },
      'bodies.b.screws: Screws go with a rigid hold, but hold is "spread": leave out one of the two.',
    ],
    [
      "screws on a point",
      { on: "p", screws: [0, 0] },
      "bodies.b.screws: A body on a point has no screws: leave this out.",
    ],
    [
      "an impossible inertia",
      { on, at, inertia: { xx: 1, yy: 1, zz: 1, xy: 2 } },
      "bodies.b.inertia: This inertia is not possible: the products xy, xz, yz are too large for the moments xx, yy, zz.",
    ],
  ])("%s", (_name, body, line) => {
    expect(linesOf(bodyWith(body))).toEqual([line]);
  });

  test("a body on a point needs no place", () => {
    expect(linesOf(bodyWith({ on: "p" }))).toEqual([]);
  });
});

describe("structure and propulsion", () => {
  const points = { p: [0, 0, 0], q: [1, 0, 0] };
  const rod = { shape: "rod", diameter: 2 };
  const stiff = { shape: "stiffness", EA: 1, EIy: 1, EIz: 1, GJ: 1, massPerLength: 0 };
  const member = (fields: object) => ({
    points,
    members: { m: { from: "p", to: "q", ...fields } },
  });
  const speeds = (fields: object, more: object = {}) => ({
    propulsion: {
      ...more,
      motor: { mass: 33, cgHeight: 9, kv: 1800 },
      propeller: { mass: 4, diameter: 127, blades: 3, planeHeight: 19, thrustCoefficient: 0.15 },
      cells: 6,
      speeds: fields,
    },
  });
  test.each<[string, object, string]>([
    [
      "a member without material",
      member({ section: rod }),
      `members.m.material: Missing: write the name of a material, for example "aluminium-6061-t6".`,
    ],
    [
      "a material too many",
      member({ section: stiff, material: "steel" }),
      "members.m.material: A section given by its stiffness takes no material: leave this out.",
    ],
    [
      "a member from a point to itself",
      member({ to: "p", section: rod, material: "steel" }),
      "members.m.to: This member ends at the point where it begins.",
    ],
    [
      "a direction of no length",
      member({ section: stiff, up: [0, 0, 0] }),
      "members.m.up: This direction has no length.",
    ],
    [
      "a bore wider than the tube",
      member({ section: { shape: "tube", outer: 4, bore: 5 }, material: "steel" }),
      "members.m.section.bore: The bore must be smaller than the outside.",
    ],
    [
      "the same plate twice",
      { joints: { j: { plates: ["base", "base"], at: [0, 0] } } },
      'joints.j.plates: Both names are "base": two different ones are needed.',
    ],
    [
      "a support of a plate nowhere",
      { supports: { s: { plate: "base", fix: "all" } } },
      "supports.s: Say where the plate is held: along a line, or within an outline (one of the two).",
    ],
    [
      "hover slower than idle",
      speeds({ idle: 3000, hover: 2000 }),
      "propulsion.speeds.hover: The hover speed must be higher than the idle speed.",
    ],
    [
      "a propeller that turns neither way",
      speeds({}, { frontLeftTurns: "anticlockwse" }),
      'propulsion.frontLeftTurns: "anticlockwse" is not one of the choices. Did you mean "anticlockwise"? Write "clockwise" or "anticlockwise".',
    ],
    [
      "an unknown direction",
      { points, supports: { s: { point: "p", fix: ["x", "yaw"] } } },
      'supports.s.fix#2: "yaw" is not one of the choices. Write "x", "y", "z", "rx", "ry" or "rz".',
    ],
    [
      "a standoff without a face",
      {
        plates: { base: PLATE, top: { ...PLATE, z: 20 } },
        standoffs: {
          s: {
            at: [0, 0],
            between: ["base", "top"],
            material: "steel",
            section: { shape: "constants", A: 1, Iy: 1, Iz: 1, J: 1 },
          },
        },
      },
      'standoffs.s.footprint: Missing: this section has no outer size, so the diameter of the faces is needed, for example "5 mm".',
    ],
  ])("%s", (_name, sections, line) => {
    expect(linesOf(fileWith(sections))).toEqual([line]);
  });
});
