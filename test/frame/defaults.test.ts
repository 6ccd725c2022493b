import { describe, expect, test } from "vitest";
import { fileWith, PLATE, read } from "./helpers.ts";

/** What a file says in the fewest words, and what is read from it: SI, defaults filled in. */

describe("a file with one plate", () => {
  const frame = read({ version: 1, name: "x", plates: { base: PLATE } });

  test("has every section", () => {
    expect(frame).toEqual({
      version: 1,
      name: "x",
      notes: [],
      beamTheory: "rayleigh",
      assemblyLossFactor: 0.02,
      dampingFactor: 1,
      plies: {},
      materials: {},
      modulusFactors: {},
      plates: {
        base: {
          material: "carbon-plate-0-90",
          thickness: 0.002,
          z: 0,
          outline: [
            [0.04, -0.02],
            [0.04, 0.02],
            [-0.04, 0.02],
            [-0.04, -0.02],
          ],
          symmetry: "none",
          holes: [],
          fill: 1,
          warp: 0,
          note: "",
        },
      },
      arms: {},
      standoffs: {},
      points: {},
      members: {},
      joints: {},
      links: {},
      springs: {},
      supports: {},
      bodies: {},
      excitation: {
        balanceGrade: 16,
        bladeDifference: 0.02,
        thrustRipple: 0.03,
        torqueRipple: 0.03,
        thrustRippleDouble: 0.01,
        torqueRippleDouble: 0.01,
        orders: [],
        motorSpread: 0.03,
        badPropeller: { grade: 40 },
        lostTip: { massShare: 0.02 },
      },
      flightMix: "mostly hover",
      sensors: expect.any(Object), // sensors.test.ts has what is in these two
      control: expect.any(Object),
      spreads: {},
      candidates: {},
    });
  });

  test("has no keys for what was left out", () => {
    expect(Object.keys(frame)).not.toContain("meshSize");
    expect(Object.keys(frame)).not.toContain("stack");
    expect(Object.keys(frame)).not.toContain("propulsion");
  });

  test("takes $schema and a note as one text", () => {
    const other = read({
      $schema: "a.json",
      version: 1,
      name: "x",
      notes: "n",
      plates: { base: PLATE },
    });
    expect(other.notes).toEqual(["n"]);
    expect(Object.keys(other)).not.toContain("$schema");
  });
});

describe("materials", () => {
  test("plies get their transverse moduli from G12", () => {
    const ply = { E1: 135, E2: "10 GPa", G12: 5, nu12: 0.3, density: 1.6, thickness: 0.125 };
    expect(read(fileWith({ plies: { ud: ply } })).plies.ud).toEqual({
      E1: 135e9,
      E2: 10e9,
      G12: 5e9,
      nu12: 0.3,
      G13: 5e9,
      G23: 5e9,
      density: 1600,
      thickness: 0.000125,
      lossFactor: 0.006,
    });
  });

  test("isotropic: the third of E, nu, G follows", () => {
    const { materials } = read(
      fileWith({
        materials: {
          a: { kind: "isotropic", E: 70, nu: 0.25, density: 2.7 },
          b: { kind: "isotropic", E: 70, G: 28, density: 2.7 },
          c: { kind: "isotropic", E: 70, nu: 0.25, G: "27.8 GPa", density: 2.7 },
        },
      }),
    );
    expect(materials.a).toEqual({
      kind: "isotropic",
      E: 70e9,
      nu: 0.25,
      G: 28e9,
      density: 2700,
      lossFactor: 0.002,
    });
    expect(materials.b).toMatchObject({ nu: 0.25, G: 28e9 });
    expect(materials.c).toMatchObject({ nu: 0.25, G: 27.8e9 });
  });

  test("measured and laminate", () => {
    const { materials } = read(
      fileWith({
        materials: {
          m: { kind: "measured", E1: 60, G12: 4.5, density: "1550 kg/m^3" },
          l: { kind: "laminate", stack: "[0/90]2s", ply: "carbon-ud" },
        },
      }),
    );
    expect(materials.m).toEqual({
      kind: "measured",
      E1: 60e9,
      E2: 60e9,
      G12: 4.5e9,
      nu12: 0.1,
      G13: 3e9,
      G23: 3e9,
      density: 1550,
      lossFactor: 0.006,
    });
    expect(materials.l).toEqual({ kind: "laminate", stack: "[0/90]2s", ply: "carbon-ud" });
  });
});

describe("plates and arms", () => {
  test("holes: one centre, several, a polygon", () => {
    const holes = [
      { at: [1, 2], diameter: 3 },
      {
        at: [
          [1, 2],
          ["3 mm", 4],
        ],
        diameter: "4 mm",
        copies: "left and right",
      },
      {
        outline: [
          [0, 0],
          [1, 0],
          [0, 1],
        ],
      },
    ];
    expect(read(fileWith({ plates: { base: { ...PLATE, holes } } })).plates.base.holes).toEqual([
      { kind: "round", at: [[0.001, 0.002]], diameter: 0.003, copies: "none" },
      {
        kind: "round",
        at: [
          [0.001, 0.002],
          [0.003, 0.004],
        ],
        diameter: 0.004,
        copies: "left and right",
      },
      {
        kind: "polygon",
        outline: [
          [0, 0],
          [0.001, 0],
          [0, 0.001],
        ],
        copies: "none",
      },
    ]);
  });

  const arm = {
    material: "carbon-plate-quasi-isotropic",
    thickness: 5,
    root: [20, 20],
    tip: [80, 80],
    width: 16,
    joint: { kind: "bolted", plates: "base", inserted: 20 },
  };

  test("an arm in the fewest words", () => {
    expect(read(fileWith({ arms: { arm } })).arms.arm).toEqual({
      material: "carbon-plate-quasi-isotropic",
      thickness: 0.005,
      z: 0,
      root: [0.02, 0.02],
      tip: [0.08, 0.08],
      copies: "none",
      width: [
        { s: 0, width: 0.016 },
        { s: 1, width: 0.016 },
      ],
      slots: [],
      warp: "along the arm",
      padFill: 0.85,
      joint: { kind: "bolted", plates: ["base"], inserted: 0.02, kappa: 12.8, lossFactor: 0.05 },
      note: "",
    });
  });

  test.each([
    [
      "a taper",
      [17, "13 mm"],
      [
        [0, 0.017],
        [1, 0.013],
      ],
    ],
    [
      "a profile",
      [
        [0, 17],
        ["40 %", 12],
        [1, 13],
      ],
      [
        [0, 0.017],
        [0.4, 0.012],
        [1, 0.013],
      ],
    ],
  ])("width as %s", (_name, width, stations) => {
    const read1 = read(fileWith({ arms: { arm: { ...arm, width } } })).arms.arm;
    expect(read1.width.map(({ s, width }) => [s, width])).toEqual(stations);
  });

  test("an arm of one piece with its plate, its cloth at a fixed angle", () => {
    const joint = { kind: "one piece", plate: "base" };
    const read1 = read(fileWith({ arms: { arm: { ...arm, joint, warp: "90 deg" } } })).arms.arm;
    expect(read1.joint).toEqual(joint);
    expect(read1.warp).toBeCloseTo(Math.PI / 2, 15);
  });
});
