/** A small unsymmetric frame turned, mirrored and moved: the frequencies stay. */

import { describe, expect, test } from "vitest";
import { expectClose } from "../verification/compare.ts";
import { frequencies } from "../verification/frequencies.ts";

type Place = readonly [number, number];
type Move = (x: number, y: number) => Place;

/** Two plates of uneven cloth, a bolted and a one-piece arm, standoffs, a linked and a screwed body. */
function frame(move: Move, turned: number, lift = 0): object {
  const all = (...places: Place[]) => places.map(([x, y]) => move(x, y));
  const at = (x: number, y: number, z: number) => [...move(x, y), z + lift];
  const sheet = { material: "cloth", warp: `${turned} deg` };
  return {
    meshSize: 5,
    materials: {
      cloth: { kind: "measured", E1: 60, E2: 40, G12: 5, G13: 3, nu12: 0.1, density: 1.5 },
    },
    plates: {
      base: {
        ...sheet,
        thickness: 2,
        z: lift,
        outline: all([40, 20], [10, 25], [-40, 20], [-40, -20], [20, -20]),
        holes: [{ outline: all([0, 0], [12, 0], [12, 8], [0, 8]) }],
      },
      top: {
        ...sheet,
        thickness: 1.5,
        z: 20 + lift,
        outline: all([30, 18], [-30, 18], [-30, -18], [30, -18]),
      },
    },
    arms: {
      bolted: {
        material: "cloth",
        thickness: 3,
        z: 2.5 + lift,
        root: move(30, 15),
        tip: move(70, 50),
        width: [12, 9],
        joint: { kind: "bolted", plates: ["base"], inserted: 15 },
      },
      cut: {
        material: "cloth",
        thickness: 2,
        z: lift,
        root: move(-30, -12),
        tip: move(-75, -40),
        width: 10,
        joint: { kind: "one piece", plate: "base" },
      },
    },
    standoffs: {
      post: {
        at: all([-25, 12], [22, -12], [-20, -15], [25, 12]),
        between: ["base", "top"],
        section: { shape: "rod", diameter: 4 },
        material: "nylon",
      },
    },
    points: { eye: at(15, -10, 0) },
    links: { eye: { point: "eye", plate: "base", footprint: 6 } },
    bodies: {
      motor: { mass: 15, at: at(70, 50, 8), inertia: { xx: 900, yy: 900, zz: 700 }, on: "bolted" },
      eye: { mass: 8, on: "eye" },
      card: {
        mass: 12,
        at: at(-15, 5, 25),
        inertia: { xx: 800, yy: 800, zz: 900 },
        on: "top",
        screws: all([-8, 10], [-8, 0], [-22, 10], [-22, 0]),
      },
    },
  };
}

const MODES = 12;
const asDrawn = frequencies(
  frame((x, y) => [x, y], 0),
  { modes: MODES },
);

/** The same matrices but for the order of unknowns, hence for rounding. */
const ROUNDING = 1e-7;

describe("frequencies do not depend on where the frame lies", () => {
  test.each<{ how: string; move: Move; turned: number }>([
    { how: "turned by a quarter", move: (x, y) => [-y, x], turned: 90 },
    { how: "turned by a half", move: (x, y) => [-x, -y], turned: 180 },
    { how: "mirrored left to right", move: (x, y) => [x, -y], turned: 0 },
    { how: "mirrored along the diagonal", move: (x, y) => [y, x], turned: 90 },
    { how: "moved", move: (x, y) => [x + 137.3, y - 61.9], turned: 0 },
  ])("$how", ({ move, turned }) => {
    expectClose(frequencies(frame(move, turned), { modes: MODES }), asDrawn, ROUNDING);
  });

  test("lifted", () => {
    const lifted = frame((x, y) => [x, y], 0, 83.1);
    expectClose(frequencies(lifted, { modes: MODES }), asDrawn, ROUNDING);
  });

  test("turned by 30 degrees, when neither grid nor cloth fits any more, within the mesh's error", () => {
    const [c, s] = [Math.sqrt(3) / 2, 1 / 2];
    const askew = frame((x, y) => [c * x - s * y, s * x + c * y], 30);
    // Both meshes are 1 to 2 % above the converged values.
    expectClose(frequencies(askew, { modes: MODES }), asDrawn, 0.02);
  });

  test("the order of the parts in the file does not matter", () => {
    const drawn = frame((x, y) => [x, y], 0) as Record<string, Record<string, unknown>>;
    const backwards = Object.fromEntries(
      Object.entries(drawn).map(([key, section]) => [
        key,
        typeof section === "object"
          ? Object.fromEntries(Object.entries(section).reverse())
          : section,
      ]),
    );
    expectClose(frequencies(backwards, { modes: MODES }), asDrawn, ROUNDING);
    expect(Object.keys(backwards.plates as object)).toEqual(["top", "base"]);
  });
});
