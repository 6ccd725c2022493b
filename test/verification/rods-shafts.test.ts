/**
 * Stretching rods and twisting shafts: omega = (x/L) sqrt(E/rho), omega = (x/L) sqrt(G J/(rho Ip)).
 *
 * Fixed-free: x = (2n - 1) pi/2. With a mass M (or a disc J_d) at the end: x tan x = alpha,
 * alpha = m_rod/M (or rho Ip L/J_d). S. S. Rao, Mechanical Vibrations, chapter 8, tabulates the
 * latter (from memory); the roots here were computed to 12 digits.
 */

import { describe, expect, test } from "vitest";
import { expectClose } from "./compare.ts";
import { frequencies } from "./frequencies.ts";
import { angular } from "./unit-beam.ts";

const ELEMENTS = 40;

/** Unit rod and unit shaft in one; bending a thousand times faster, out of the way. */
function rod(more: object, EA = 1, GJ = 1): object {
  const section = { shape: "stiffness", EA, EIy: 1e6, EIz: 1e6, GJ };
  return {
    points: { root: ["0 m", 0, 0], tip: ["1 m", 0, 0] },
    members: {
      rod: {
        from: "root",
        to: "tip",
        section: { ...section, massPerLength: 1, inertiaPerLength: 1 },
        elements: ELEMENTS,
      },
    },
    supports: { wall: { point: "root", fix: "all" } },
    ...more,
  };
}

/** Linear shape functions lie (x/n)^2/24 above the rod's own frequency, relative (leading term). */
const meshError = (x: number) => (1.1 * (x / ELEMENTS) ** 2) / 24;

function expectJustAbove(found: readonly number[], roots: readonly number[]) {
  roots.forEach((x, i) => {
    expect(found[i] / x, `mode ${i + 1}`).toBeGreaterThan(1 - 1e-10);
    expect(found[i] / x, `mode ${i + 1}`).toBeLessThan(1 + meshError(x));
  });
}

describe("rods and shafts fixed at one end", () => {
  test("stretching: odd quarter waves", () => {
    // The shaft is made too stiff to twist among the first modes.
    const found = angular(frequencies(rod({}, 1, 1e4), { modes: 3 }));
    expectJustAbove(found, [Math.PI / 2, (3 * Math.PI) / 2, (5 * Math.PI) / 2]);
  });

  test("twisting: the same numbers from G J and rho Ip", () => {
    const found = angular(frequencies(rod({}, 1e4, 1), { modes: 3 }));
    expectJustAbove(found, [Math.PI / 2, (3 * Math.PI) / 2, (5 * Math.PI) / 2]);
  });

  test("stretching and twisting do not touch: each frequency twice", () => {
    const found = angular(frequencies(rod({}), { modes: 4 }));
    expectClose([found[1], found[3]], [found[0], found[2]], 1e-12);
  });

  test.each([
    { alpha: 0.1, x: [0.3110528482, 3.17309717669, 6.2990593599] },
    { alpha: 1, x: [0.860333589019, 3.42561845948, 6.43729817917] },
    { alpha: 10, x: [1.42887001121, 4.30580141312, 7.22810977163] },
  ])("x tan x = $alpha, with a mass and with a disc at the end", ({ alpha, x }) => {
    const mass = { end: { mass: `${1 / alpha} kg`, on: "tip" } };
    expectJustAbove(angular(frequencies(rod({ bodies: mass }, 1, 1e4), { modes: 3 })), x);
    const inertia = { xx: `${1 / alpha} kg m^2`, yy: 0, zz: 0 };
    const disc = { end: { mass: 0, inertia, on: "tip" } };
    expectJustAbove(angular(frequencies(rod({ bodies: disc }, 1e4, 1), { modes: 3 })), x);
  });

  test("exact finite-element frequencies: sqrt(6 n^2 (1 - cos t)/(2 + cos t)), t = (2i - 1) pi/2n", () => {
    const n = ELEMENTS;
    const exact = [1, 2, 3].map((i) => {
      const t = ((2 * i - 1) * Math.PI) / (2 * n);
      return Math.sqrt((6 * n * n * (1 - Math.cos(t))) / (2 + Math.cos(t)));
    });
    // Equal but for rounding.
    expectClose(angular(frequencies(rod({}, 1, 1e4), { modes: 3 })), exact, 1e-11);
  });
});
