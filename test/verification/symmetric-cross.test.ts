/**
 * Four equal arms at right angles on a rigid hub, a point mass at each tip, free in space: a whole toy
 * airframe in closed form. Symmetry splits the spectrum into scalar equations:
 *
 *   saddle    arms up, down, up, down: the hub rests, each arm is a cantilever with a tip mass
 *   scissor   the same in the plane, with the in-plane second moment of area
 *   umbrella  root slope zero, a quarter of the hub's mass per arm
 *   pinwheel  root displacement zero, a quarter of the hub's yaw inertia per arm
 *   rock      -omega^2 Jxx + 2 K_bend(root rotation) - 2 G J k tan(k L) = 0, k = omega sqrt(rho Ip/GJ)
 *   sway      -omega^2 m_hub + 2 K_bend(root translation) + 2 K_axial = 0; rock and sway in pairs
 *
 * Solved with 16 digits from these equations. Arms of 110 mm, 12 mm wide and 5 mm high, E = 60 GPa,
 * G = 5 GPa, rho = 1550 kg/m^3; 32 g at each tip; hub 300 g with Jxx = Jyy = 200 000 and
 * Jzz = 350 000 g mm^2. Written twice: with arms, and with points and members.
 */

import { describe, expect, test } from "vitest";
import { expectClose } from "./compare.ts";
import { frequencies, solveFrame } from "./frequencies.ts";

const HUB = {
  mass: "300 g",
  inertia: { xx: 200e3, yy: 200e3, zz: 350e3 }, // g mm^2
  on: "hub",
};

const SHEET = {
  kind: "measured",
  E1: "60 GPa",
  G12: "5 GPa",
  G13: "5 GPa",
  density: "1.55 g/cm^3",
};

function withArms(): object {
  const arm = {
    material: "sheet",
    thickness: "5 mm",
    width: "12 mm",
    root: [0, 0],
    elements: 16,
    joint: { kind: "point", point: "hub" },
  };
  const tip = { mass: "32 g", on: "ahead" };
  return {
    beamTheory: "euler-bernoulli",
    materials: { sheet: SHEET },
    points: { hub: [0, 0, 0] },
    arms: {
      ahead: { ...arm, tip: [110, 0], copies: "front and rear" },
      beside: { ...arm, tip: [0, 110], copies: "left and right" },
    },
    bodies: {
      hub: HUB,
      "tip ahead": { ...tip, at: [110, 0, 0], copies: "front and rear" },
      "tip beside": { ...tip, on: "beside", at: [0, 110, 0], copies: "left and right" },
    },
  };
}

function withMembers(): object {
  const tips = { front: [110, 0, 0], rear: [-110, 0, 0], left: [0, 110, 0], right: [0, -110, 0] };
  const section = { shape: "rectangle", width: "12 mm", height: "5 mm" };
  const each = (make: (tip: string) => object) =>
    Object.fromEntries(Object.keys(tips).map((tip) => [`to ${tip}`, make(tip)]));
  return {
    beamTheory: "euler-bernoulli",
    materials: { sheet: SHEET },
    points: { hub: [0, 0, 0], ...tips },
    members: each((to) => ({ from: "hub", to, section, material: "sheet", elements: 16 })),
    bodies: { hub: HUB, ...each((on) => ({ mass: "32 g", on })) },
  };
}

const SADDLE = [111.5425549, 1855.423412];
const UMBRELLA = [135.1089341, 1886.336021];
const ROCK = [253.3842955, 1873.962883];
const SCISSOR = [267.7021319];
const SWAY = [291.9353928];
const PINWHEEL = [641.701024];

const FIRST = [SADDLE[0], UMBRELLA[0], ROCK[0], ROCK[0], ...SCISSOR, ...SWAY, ...SWAY, ...PINWHEEL];
const SECOND = [SADDLE[1], ROCK[1], ROCK[1], UMBRELLA[1]];

describe.each([
  { written: "arms", frame: withArms() },
  { written: "points and members", frame: withMembers() },
])("free symmetric cross, written with $written", ({ frame }) => {
  test("the elastic spectrum, pairs included", () => {
    const found = frequencies(frame, { modes: 12 });
    // 16 elements per arm lie (x/16)^4/1440 above: 1e-9 for the first modes, 1e-7 for the sway
    // (stretching, (k h)^2/24), 2.6e-6 for second bending.
    expectClose(found, FIRST, 2e-7);
    expectClose(found.slice(FIRST.length), SECOND, 3e-6);
  });

  test("six rigid-body motions, total mass 468.92 g, and the proof that no mode is missing", () => {
    const { modes, mass } = solveFrame(frame, { modes: 8 });
    expect(modes.rigid.length).toBe(6);
    // 4 (32 g + 1.55 g/cm^3 0.12 cm 0.5 cm 11 cm) + 300 g
    expectClose([mass.mass], [0.46892], 1e-12);
    expect(modes.evidence.counted).toBe(modes.evidence.found);
  });
});
