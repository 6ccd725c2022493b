import { describe, expect, test } from "vitest";
import { fileWith, PLATE, read } from "./helpers.ts";

/** As defaults.test.ts, for what holds the frame together and what it carries. */

describe("structure", () => {
  const points = { p: [0, 0, "1 cm"], q: [10, 0, 0] };

  test("points, members, links, springs, supports", () => {
    const frame = read(
      fileWith({
        points,
        members: {
          given: {
            from: "p",
            to: "q",
            section: {
              shape: "stiffness",
              EA: 9.65e6,
              EIy: 4.5,
              EIz: "3000 N m^2",
              GJ: 6.5,
              massPerLength: 0,
            },
          },
        },
        links: {
          a: { points: ["p", "q"], ties: ["rz", "x"] },
          b: { point: "p", plate: "base", footprint: 6 },
        },
        springs: { s: { between: ["p", "ground"], z: 10, rx: 5 } },
        supports: {
          root: { point: "q", fix: "all" },
          edge: {
            plate: "base",
            along: [
              [40, -20],
              [40, 20],
            ],
            fix: ["x", "z"],
          },
        },
      }),
    );
    expect(frame.points).toEqual({ p: [0, 0, 0.01], q: [0.01, 0, 0] });
    expect(frame.members.given).toEqual({
      from: "p",
      to: "q",
      section: {
        shape: "stiffness",
        EA: 9.65e6,
        EIy: 4.5,
        EIz: 3000,
        GJ: 6.5,
        massPerLength: 0,
        inertiaPerLength: 0,
      },
    });
    const all = ["x", "y", "z", "rx", "ry", "rz"];
    expect(frame.links).toEqual({
      a: { kind: "points", points: ["p", "q"], ties: ["x", "rz"] },
      b: { kind: "plate", point: "p", plate: "base", footprint: 0.006, ties: all },
    });
    expect(frame.springs.s).toEqual({
      between: ["p", "ground"],
      stiffness: { z: 10000, rx: 5 },
      lossFactor: 0,
    });
    expect(frame.supports).toEqual({
      root: { kind: "point", point: "q", fix: all },
      edge: {
        kind: "plate",
        plate: "base",
        along: [
          [0.04, -0.02],
          [0.04, 0.02],
        ],
        fix: ["x", "z"],
      },
    });
  });

  test("joints and standoffs", () => {
    const frame = read(
      fileWith({
        plates: { base: PLATE, top: { ...PLATE, z: 25 } },
        joints: { screws: { plates: ["base", "top"], at: [1, 2], stiffness: { z: "2 kN/mm" } } },
        standoffs: {
          post: {
            at: [[10, 10]],
            between: ["base", "top"],
            section: { shape: "hexagon", acrossFlats: 5 },
            material: "nylon",
          },
        },
      }),
    );
    expect(frame.joints.screws).toEqual({
      plates: ["base", "top"],
      at: [[0.001, 0.002]],
      copies: "none",
      footprint: 0.006,
      stiffness: { z: 2e6 },
      lossFactor: 0.05,
    });
    expect(frame.standoffs.post.section).toEqual({ shape: "hexagon", acrossFlats: 0.005, bore: 0 });
  });
});

describe("bodies, propulsion, stack", () => {
  test("a body in the fewest words, a soft one, one with its inertia", () => {
    const { bodies } = read(
      fileWith({
        bodies: {
          a: { mass: 10, at: [1, 2, 3], on: "base" },
          b: { mass: 200, at: [0, 0, 40], on: "base", hold: "soft", soft: { bounce: "60 Hz" } },
          c: { mass: 1, at: [0, 0, 0], on: ["base"], inertia: { xx: 10, yy: 20, zz: 25, xy: -1 } },
        },
      }),
    );
    expect(bodies.a).toEqual({
      mass: 0.01,
      at: [0.001, 0.002, 0.003],
      on: ["base"],
      hold: "rigid",
      copies: "none",
      note: "",
    });
    expect(bodies.b.soft).toEqual({ bounce: 60, sway: 42, lossFactor: 0.2 });
    const inertia = { xx: 1e-8, yy: 2e-8, zz: 2.5e-8, xy: -1e-9, xz: 0, yz: 0 };
    for (const [name, value] of Object.entries(inertia)) {
      expect(bodies.c.inertia?.[name as "xx"]).toBeCloseTo(value, 20);
    }
  });

  test("propulsion", () => {
    const propulsion = {
      motor: { mass: 33, cgHeight: 9, kv: 1800 },
      propeller: {
        mass: 4.3,
        diameter: "5.1 in",
        blades: 3,
        planeHeight: 19,
        thrustCoefficient: 0.16,
      },
      cells: 6,
      speeds: { hover: "10800 rpm" },
    };
    const frame = read(
      fileWith({
        propulsion,
        flightMix: [{ speed: "600 rpm", weight: 2 }],
        excitation: { balanceGrade: "6.3 mm/s", unbalance: "0.12 g mm" },
      }),
    );
    expect(frame.propulsion).toMatchObject({
      side: "above",
      frontLeftTurns: "anticlockwise",
      motor: { mass: 0.033, cgHeight: 0.009, screwMass: 0 },
      propeller: { nutMass: 0, blades: 3, thrustCoefficient: 0.16 },
      cellVoltage: 3.7,
      loadedSpeedFraction: 0.75,
    });
    expect(
      read(fileWith({ propulsion: { ...propulsion, frontLeftTurns: "clockwise" } })),
    ).toMatchObject({ propulsion: { frontLeftTurns: "clockwise" } });
    expect(frame.propulsion?.motor.kv).toBeCloseTo(60 * Math.PI, 10);
    expect(frame.propulsion?.speeds.hover).toBeCloseTo(360 * Math.PI, 10);
    expect(frame.propulsion?.propeller.diameter).toBeCloseTo(0.12954, 12);
    const speed = expect.closeTo(20 * Math.PI, 10);
    expect(frame.flightMix).toEqual([{ speed, weight: 2, spread: 0.03 }]);
    expect(frame.excitation).toMatchObject({ balanceGrade: 6.3, unbalance: 1.2e-7 });
  });

  test("stack and candidates", () => {
    const where = { plate: "base", at: [0, 0] };
    const frame = read(
      fileWith({
        stack: { mass: 24, size: [42, 42, 18], ...where, height: 9.5, holes: { spacing: 30.5 } },
        candidates: {
          here: where,
          there: { ...where, side: "below", holes: { spacing: [20, 16] } },
        },
      }),
    );
    expect(frame.stack).toEqual({
      mass: 0.024,
      size: [0.042, 0.042, 0.018],
      plate: "base",
      at: [0, 0],
      side: "above",
      height: 0.0095,
      chip: [0, 0, 0],
      holes: { spacing: [0.0305, 0.0305], turned: 0, footprint: 0.006 },
    });
    expect(frame.candidates.here).toEqual({ ...where, side: "above", note: "" });
    expect(frame.candidates.there.holes?.spacing).toEqual([0.02, 0.016]);
  });
});
