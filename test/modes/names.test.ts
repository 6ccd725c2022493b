/** Modes in words, on frames whose motion is known beforehand. */

import { describe, expect, test } from "vitest";
import { type Analysis, analyseModes } from "../../src/analyse.ts";
import { crossFrame, crossSections, frameOf, metal } from "./toys.ts";

const rectangle = (x: number, y: number) => [
  [x, y],
  [-x, y],
  [-x, -y],
  [x, -y],
];

/** Deflections of the four tips: front left, front right, rear left, rear right. */
function tips({ model, mesh, modes }: Analysis, mode: number, d: number): number[] {
  return [
    [1, 1],
    [1, -1],
    [-1, 1],
    [-1, -1],
  ].map(([sx, sy]) => {
    const arm = model.arms.findIndex((a) => a.tip[0] * sx > 0 && a.tip[1] * sy > 0);
    return modes.shapes[mode][6 * mesh.armTips[arm] + d];
  });
}

describe("a strip of plate clamped at one end", () => {
  const a = analyseModes(
    frameOf({
      meshSize: 10,
      materials: { metal: metal({}) },
      plates: { strip: { material: "metal", thickness: 1.5, z: 0, outline: rectangle(60, 10) } },
      supports: {
        vice: {
          plate: "strip",
          along: [
            [-60, -10],
            [-60, 10],
          ],
          fix: "all",
        },
      },
    }),
    { modes: 6 },
  );
  const [first] = a.modes.described;

  test("bends, symmetrically, at the frequency of a cantilever", () => {
    expect(first.name).toBe('"strip" bends');
    expect(first.symmetry).toBe("symmetric left to right");
    expect(first.motion.plateBending).toBeGreaterThan(0.999);
    // omega L^2 sqrt(rho A/(E I)) = 3.5160; a strip is between a beam (E) and a plate (E/(1 - nu^2))
    const f = (E: number) =>
      (3.516015 / (2 * Math.PI * 0.12 ** 2)) * Math.sqrt((E * 1.5e-3 ** 2) / 12 / 2700);
    expect(first.frequency).toBeGreaterThan(0.995 * f(70e9));
    expect(first.frequency).toBeLessThan(1.005 * f(70e9 / (1 - 0.33 ** 2)));
  });

  test("its twist is antisymmetric", () => {
    const twist = a.modes.described.find((m) => m.symmetry.startsWith("anti"));
    expect(twist?.motion.plateBending).toBeGreaterThan(0.9);
  });
});

describe("four slender arms on a stout hub", () => {
  const sections = crossSections({ armThickness: 3, armElements: 6 }) as Record<
    string,
    Record<string, Record<string, unknown>>
  >;
  const hub = { ...sections.plates.hub, thickness: 8 };
  const a = analyseModes(frameOf({ ...sections, plates: { hub } }), { modes: 24 });
  const named = (start: string) => a.modes.described.filter((m) => m.name.startsWith(start));

  test("every pattern of flapping comes once", () => {
    const four = a.modes.described.slice(0, 4).map((m) => m.name);
    expect([...four].sort()).toEqual([
      "arms flap, all together",
      "arms flap, diagonal pairs against each other",
      "arms flap, front against rear",
      "arms flap, left against right",
    ]);
  });

  test.each([
    ["all together", [1, 1, 1, 1]],
    ["front against rear", [1, 1, -1, -1]],
    ["left against right", [1, -1, 1, -1]],
    ["diagonal pairs against each other", [1, -1, -1, 1]],
  ])("flapping %s is what the tips do", (pattern, signs) => {
    const [mode] = named(`arms flap, ${pattern}`);
    const z = tips(a, mode.number - 1, 2).map((v, i) => v * signs[i]);
    expect(Math.max(...z) * Math.min(...z)).toBeGreaterThan(0);
    expect(mode.motion.armFlat).toBeGreaterThan(mode.motion.armEdge + mode.motion.armTorsion);
  });

  test("swinging all together is a turn of all arms against the hub", () => {
    const [mode] = named("arms swing in plane, all together");
    const [x, y] = [0, 1].map((d) => tips(a, mode.number - 1, d));
    const turn = [
      [1, 1],
      [1, -1],
      [-1, 1],
      [-1, -1],
    ].map(([sx, sy], i) => sx * 115 * y[i] - sy * 95 * x[i]);
    expect(Math.max(...turn) * Math.min(...turn)).toBeGreaterThan(0);
    expect(mode.motion.armEdge).toBeGreaterThan(0.3);
  });

  test("arms that twist do so by torsion", () => {
    const twists = named("arms twist");
    expect(twists.length).toBeGreaterThan(0);
    for (const m of twists) {
      expect(m.motion.armTorsion).toBeGreaterThan(Math.max(m.motion.armFlat, m.motion.armEdge));
    }
  });
});

describe("symmetry", () => {
  test("every mode of a symmetric frame has one, and the tips agree", () => {
    const a = analyseModes(crossFrame(), { modes: 20 });
    for (const m of a.modes.described) {
      expect(m.symmetry).toMatch(/^(anti)?symmetric left to right$/);
      const sign = m.symmetry.startsWith("anti") ? -1 : 1;
      const [fl, fr, rl, rr] = tips(a, m.number - 1, 2);
      const size = Math.hypot(fl, fr, rl, rr);
      expect(Math.abs(fl - sign * fr) + Math.abs(rl - sign * rr)).toBeLessThan(1e-5 * size + 1e-9);
    }
    const words = a.modes.described.map((m) => m.symmetry);
    expect(new Set(words).size).toBe(2);
  });

  test("a lump on one side takes it from most modes", () => {
    const a = analyseModes(crossFrame({ lopsided: true }), { modes: 20 });
    expect(a.modes.described.filter((m) => m.symmetry === "").length).toBeGreaterThan(10);
  });
});

describe("a flat battery on a soft mount over a plate that does not move", () => {
  const battery = {
    mass: "200 g",
    at: [0, 0, 1.6],
    size: [60, 40, 0.2],
    on: "deck",
    hold: "soft",
    soft: { bounce: "72 Hz", sway: "41 Hz", lossFactor: 0.25 },
  };
  const { described } = analyseModes(
    frameOf({
      meshSize: 4,
      assemblyLossFactor: 0.01,
      materials: { metal: metal({}) },
      plates: { deck: { material: "metal", thickness: 3, z: 0, outline: rectangle(40, 30) } },
      bodies: { battery },
      supports: { bench: { plate: "deck", within: rectangle(40, 30), fix: "all" } },
    }),
    { modes: 6 },
  ).modes;
  const find = (words: string) => described.filter((m) => m.name.startsWith(`"battery" ${words}`));
  const WORDS = [
    "bounces",
    "sways fore and aft",
    "sways sideways",
    "rocks fore and aft",
    "rocks sideways",
    "twists",
  ];

  test.each(WORDS)("%s once", (words) => {
    expect(find(words).length).toBe(1);
  });

  test("bounces and sways at the frequencies the file asks for", () => {
    const f = (words: string) => find(words)[0].frequency;
    expect(Math.abs(f("bounces") / 72 - 1)).toBeLessThan(1e-6);
    // the pad pushes at the plate's middle, 1.6 mm below the centre of gravity: it sways and rocks a little
    expect(Math.abs(f("sways fore and aft") / 41 - 1)).toBeLessThan(0.005);
    expect(Math.abs(f("sways sideways") / 41 - 1)).toBeLessThan(0.01);
    // an even pad under an even flat box: rocking has the bounce's frequency, twisting that of the sway
    for (const words of ["rocks fore and aft", "rocks sideways"]) {
      expect(Math.abs(f(words) / 72 - 1)).toBeLessThan(0.04);
    }
    expect(Math.abs(f("twists") / 41 - 1)).toBeLessThan(0.04);
  });

  test("with the mount's loss factor alone", () => {
    for (const m of described) {
      expect(m.motion.softMount).toBeCloseTo(1, 9);
      expect(m.lossFactor).toBeCloseTo(0.25, 9);
    }
  });
});
