import { describe, expect, test } from "vitest";
import { armBreaks, armSection, slotAt, widthAt } from "../../src/model/arm.ts";
import { padStiffness } from "../../src/model/bodies.ts";
import { moments } from "../../src/model/polygon.ts";
import { arm, BASE, findingsOf, modelOf, plateAt, post } from "./frame.ts";

const mm = (v: readonly number[]) => v.map((c) => Math.round(c * 1e6) / 1e3);

describe("plates", () => {
  test("outline anticlockwise, holes clockwise, whichever way they are drawn", () => {
    const clockwise = plateAt(0).outline.toReversed();
    const hole = {
      outline: [
        [0, 1],
        [0, 5],
        [5, 5],
        [5, 1],
      ],
      copies: "left and right",
    };
    for (const outline of [plateAt(0).outline, clockwise]) {
      const { plates } = modelOf({ plates: { base: plateAt(0, { outline, holes: [hole] }) } });
      expect(moments(plates[0].outline).area).toBeCloseTo(3.2e-3, 15);
      expect(plates[0].holes.map((h) => Math.sign(moments(h).area))).toEqual([-1, -1]);
    }
  });

  test("fill takes stiffness and mass down alike", () => {
    const [whole] = modelOf(BASE).plates;
    const [half] = modelOf({ plates: { base: plateAt(0, { fill: 0.5 }) } }).plates;
    expect(half.massPerArea).toBeCloseTo(whole.massPerArea / 2, 12);
    expect(half.rotaryPerArea).toBeCloseTo(whole.rotaryPerArea / 2, 18);
    half.D.forEach((d, i) => {
      expect(d).toBeCloseTo(whole.D[i] / 2, 9);
    });
  });

  test("cloth turned by 90 degrees swaps the two directions", () => {
    const uneven = { kind: "measured", E1: 60, E2: 30, G12: 4, density: 1.5 };
    const materials = { uneven };
    const at = (warp: number) =>
      modelOf({ materials, plates: { base: plateAt(0, { material: "uneven", warp }) } }).plates[0];
    expect(at(90).D[0] / at(0).D[4]).toBeCloseTo(1, 12);
    expect(at(0).D[0] / at(0).D[4]).toBeCloseTo(2, 12);
  });
});

describe("arms", () => {
  test("four copies with names by where their tips lie, group and length shared", () => {
    const { arms } = modelOf({ ...BASE, arms: { arm: arm({ copies: "all four corners" }) } });
    expect(arms.map((a) => a.name)).toEqual([
      "front left arm",
      "front right arm",
      "rear left arm",
      "rear right arm",
    ]);
    for (const a of arms) {
      expect(a.group).toBe("arm");
      expect(a.length).toBeCloseTo(0.06, 12);
      expect(Math.sign(a.tip[0]) * Math.sign(a.root[0])).toBe(1);
    }
    expect(mm(arms[3].tip)).toEqual([-66, -63, 0]);
  });

  test("width between the profile's points, slots, and where elements must end", () => {
    const width = [
      [0, 20],
      [0.5, 12],
      [1, 10],
    ];
    const slots = [{ from: 0.2, to: 0.4, width: 4 }];
    const [a] = modelOf({ ...BASE, arms: { arm: arm({ width, slots }) } }).arms;
    expect(widthAt(a, 0.25)).toBeCloseTo(0.016, 14);
    expect(widthAt(a, 0.75)).toBeCloseTo(0.011, 14);
    expect(slotAt(a, 0.3)).toBe(0.004);
    expect(slotAt(a, 0.5)).toBe(0);
    expect(armBreaks(a).toSorted()).toEqual(expect.arrayContaining([0, 0.2, 0.4, 0.5, 1]));
    // The slot takes its width off the area; edgewise it takes away the inner cube only.
    const [full] = modelOf({ ...BASE, arms: { arm: arm({ width }) } }).arms;
    const [solid, slotted] = [full, a].map((part) => armSection(part, 0.3));
    const b = widthAt(a, 0.3);
    expect(slotted.rhoA / solid.rhoA).toBeCloseTo(1 - 0.004 / b, 12);
    expect(slotted.EIy / solid.EIy).toBeCloseTo(1 - 0.004 / b, 12);
    expect(slotted.EIz / solid.EIz).toBeCloseTo(1 - (0.004 / b) ** 3, 12);
  });

  test("motor pad: the disc less the half strip that already lies there", () => {
    const given = arm({ motorPad: 28, padFill: 0.8, width: 10 });
    const [a] = modelOf({ ...BASE, arms: { arm: given } }).arms;
    // Count squares of 0.025 mm: inside the circle, beyond the tip or beside the strip.
    const n = 1120;
    const h = 28 / n;
    let area = 0;
    let moment = 0;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        const [x, y] = [(i + 0.5) * h - 14, (j + 0.5) * h - 14];
        if (x * x + y * y > 196 || (x < 0 && Math.abs(y) < 5)) continue;
        area += h * h;
        moment += x * h * h;
      }
    }
    const perArea = a.strip.density * a.thickness;
    expect(a.pad!.mass / (0.8 * perArea * area * 1e-6)).toBeCloseTo(1, 3);
    const along = a.pad!.cg.map((c, i) => c - a.tip[i]);
    expect(Math.hypot(...along) / ((moment / area) * 1e-3)).toBeCloseTo(1, 2);
    // Beyond the tip, away from the root.
    expect(along[0] * (a.tip[0] - a.root[0])).toBeGreaterThan(0);
  });

  test("cloth at a fixed angle meets mirrored arms alike only when it is square to the frame", () => {
    const uneven = { kind: "measured", E1: 60, E2: 30, G12: 4, density: 1.5 };
    const bend = (warp: number | string) => {
      const arms = { arm: arm({ material: "uneven", warp, copies: "left and right" }) };
      const frame = { ...BASE, materials: { uneven }, arms };
      return modelOf(frame).arms.map((a) => a.strip.Efx);
    };
    const [l, r] = bend("along the arm");
    expect(l).toBeCloseTo(60e9, -3);
    expect(r).toBe(l);
    const square = bend(0);
    expect(square[0] / square[1]).toBeCloseTo(1, 12);
    const skew = bend(Math.round((Math.atan2(48, 36) * 180e6) / Math.PI) / 1e6);
    expect(skew[0] / 60e9).toBeCloseTo(1, 6);
    expect(skew[1]).toBeLessThan(0.9 * skew[0]);
  });
});

/** Of the motor below, 32 g with screws, what is not the 18 g bell, kg. */
const STILL = 0.032 - 18e-3;

describe("bodies", () => {
  const box = { mass: 30, at: [20, 10, 12], size: [20, 10, 14], on: "base" };

  test("mirrored copies: place, products of inertia, screws", () => {
    const inertia = { xx: 900, yy: 800, zz: 700, xy: 30, xz: 20, yz: 10 };
    const screws = [
      [25, 12],
      [15, 12],
      [20, 6],
    ];
    const body = { ...box, inertia, screws, copies: "all four corners" };
    const { bodies } = modelOf({ ...BASE, bodies: { body } });
    expect(bodies.map((b) => mm(b.cg))).toEqual([
      [20, 10, 12],
      [20, -10, 12],
      [-20, 10, 12],
      [-20, -10, 12],
    ]);
    const signs = bodies.map(({ inertia: I }) => [I.xy, I.xz, I.yz].map(Math.sign));
    expect(signs).toEqual([
      [1, 1, 1],
      [-1, 1, -1],
      [-1, -1, 1],
      [1, -1, -1],
    ]);
    const hold = bodies[3].hold;
    expect(hold.kind === "rigid" && hold.screws.map((s) => mm(s))).toEqual([
      [-25, -12],
      [-15, -12],
      [-20, -6],
    ]);
  });

  test("the inertia of the box where none is given", () => {
    const [b] = modelOf({ ...BASE, bodies: { box } }).bodies;
    expect(b.inertia.xx).toBeCloseTo((0.03 * (0.01 ** 2 + 0.014 ** 2)) / 12, 18);
    expect(b.inertia.zz).toBeCloseTo((0.03 * (0.02 ** 2 + 0.01 ** 2)) / 12, 18);
  });

  test("a body on a group of arms sits on the nearest of them, at the foot of its place", () => {
    const light = { mass: 2, at: [-48, 39, 4], on: "arm" };
    const arms = { arm: arm({ copies: "all four corners" }) };
    const { bodies, arms: built } = modelOf({ ...BASE, arms, bodies: { light } });
    const { host } = bodies[0];
    expect(host.kind === "arm" && built[host.arm].name).toBe("rear left arm");
    expect(host.kind === "arm" && host.s).toBeCloseTo(0.5, 12);
  });

  test("a body whose corners hang over the edge is spread instead of screwed", () => {
    const wide = { ...box, at: [0, 0, 12], size: [60, 90, 10] };
    expect(modelOf({ ...BASE, bodies: { wide } }).bodies[0].hold.kind).toBe("spread");
    expect(modelOf({ ...BASE, bodies: { box } }).bodies[0].hold.kind).toBe("rigid");
  });

  test("a soft mount's stiffness gives back the frequencies on a rigid base", () => {
    const [kx, ky, kz] = padStiffness(0.2, 80, 50);
    expect(Math.sqrt(kz / 0.2) / (2 * Math.PI)).toBeCloseTo(80, 12);
    expect(Math.sqrt(kx / 0.2) / (2 * Math.PI)).toBeCloseTo(50, 12);
    expect(ky).toBe(kx);
  });

  test("smeared mass: shares by area, holes left out, nothing lost", () => {
    const hole = { at: [0, 0], diameter: 20 };
    const frame = {
      plates: { base: plateAt(0, { holes: [hole] }), top: plateAt(20) },
      arms: { arm: arm({ width: [14, 10], copies: "left and right" }) },
      standoffs: { post: post([30, 0]) },
      bodies: { screws: { mass: 17, on: ["base", "top", "arm"], hold: "smeared" } },
    };
    const { smeared, arms } = modelOf(frame);
    const [s] = smeared;
    const plates = [3200e-6 - Math.PI * 1e-4, 3200e-6];
    const onPlates = s.perPlate.reduce((sum, p) => sum + p.massPerArea * plates[p.plate], 0);
    const onArms = s.perArm.reduce((sum, p) => sum + p.massPerLength * arms[p.arm].length, 0);
    expect(onPlates + onArms).toBeCloseTo(0.017, 12);
    expect(s.perArm.length).toBe(2);
    expect(s.perArm[0].massPerLength / s.perPlate[0].massPerArea).toBeCloseTo(0.012, 12);
  });
});

describe("standoffs", () => {
  test("stand between the faces, lower plate first, numbered and named", () => {
    const plates = { top: plateAt(20), base: plateAt(0, { thickness: 3 }) };
    const at = [
      [30, 10],
      [10, 10],
    ];
    const standoffs = { post: post(at as unknown as number[], { copies: "left and right" }) };
    const built = modelOf({ plates, standoffs }).standoffs;
    expect(built.map((s) => s.name)).toEqual([
      "left post 1",
      "right post 1",
      "left post 2",
      "right post 2",
    ]);
    expect(mm([built[0].from, built[0].to])).toEqual([1.5, 19]);
    expect(built[0].plates).toEqual([1, 0]);
    expect(built[0].footprint).toBe(0.005);
  });

  test("a copy that falls on the part itself does not stand there twice unsaid", () => {
    const plates = { base: plateAt(0), top: plateAt(20) };
    const frame = { plates, standoffs: { post: post([30, 0], { copies: "left and right" }) } };
    if (findingsOf(frame).length === 0) expect(modelOf(frame).standoffs.length).toBe(1);
  });
});

describe("propulsion", () => {
  const propulsion = {
    motor: { mass: 30, screwMass: 2, bellMass: 18, cgHeight: 9, size: [28, 20], kv: 1800 },
    propeller: {
      mass: 4,
      nutMass: 1,
      diameter: "5 in",
      blades: 3,
      planeHeight: 19,
      thrustCoefficient: 0.15,
    },
    cells: 6,
  };
  const frame = { ...BASE, arms: { arm: arm({ copies: "all four corners" }) }, propulsion };

  test("a motor and a propeller at each tip, above it or below", () => {
    const { bodies } = modelOf(frame);
    expect(bodies.map((b) => b.name).slice(0, 2)).toEqual([
      "front left motor",
      "front left motor propeller",
    ]);
    expect(bodies[0].mass).toBeCloseTo(0.032, 15);
    expect(mm(bodies[1].cg)).toEqual([66, 63, 19]);
    // m d^2/8 about the shaft of what does not turn: bell and propeller turn freely about it.
    expect(bodies[0].inertia.zz).toBeCloseTo((STILL * 0.028 ** 2) / 8, 15);
    expect(bodies[1].inertia.zz).toBe(0);
    const below = modelOf({ ...frame, propulsion: { ...propulsion, side: "below" } }).bodies;
    expect(mm(below[1].cg)).toEqual([66, 63, -19]);
  });

  test("neighbours turn opposite ways, diagonal ones alike", () => {
    const { rotors } = modelOf(frame);
    const spin = Object.fromEntries(rotors.map((r) => [r.name, r.spin]));
    expect(spin["front left motor"]).toBe(spin["rear right motor"]);
    expect(spin["front right motor"]).toBe(spin["rear left motor"]);
    expect(spin["front left motor"]).toBe(-spin["front right motor"]);
    expect(rotors[0].rotatingMass).toBeCloseTo(0.023, 15);
  });
});
