/** What the modes of a cantilever look like, and how hard a moving wall drives each of them. */

import type { Analysis } from "../../../src/analyse.ts";
import { type Family, modes, within, withinAbsolute } from "../case.ts";
import { solveFrame } from "../frequencies.ts";
import { ELEMENTS, meshError, unitBeam } from "../unit-beam.ts";

/** Roots of cos x cosh x + 1 = 0. */
const ROOTS = [1.87510406871, 4.69409113297, 7.85475743824, 10.9955407349, 14.137168391];

/** One bending mode along the beam, measured in the plane in which its tip moves. */
interface Bending {
  readonly position: readonly number[];
  readonly deflection: readonly number[];
  readonly slope: readonly number[];
}

/** The lowest, one of each pair of bending planes. */
function bendingModes(count = ROOTS.length, elements = ELEMENTS): Bending[] {
  const solved = solveFrame(unitBeam("clamped", "free", elements), { modes: 2 * count });
  return Array.from({ length: count }, (_, i) => bendingMode(solved, solved.modes.shapes[2 * i]));
}

/** The share of the beam's mass in each mode when the wall shakes. */
export function effectiveMasses(count?: number, elements?: number): number[] {
  return bendingModes(count, elements).map((mode) => area(mode) ** 2);
}

function bendingMode({ mesh }: Analysis, shape: Float64Array): Bending {
  const nodes = [mesh.beams[0].nodes[0], ...mesh.beams.map((beam) => beam.nodes[1])];
  const tip = 6 * nodes[nodes.length - 1];
  const size = Math.hypot(shape[tip + 1], shape[tip + 2]);
  const [y, z] = [shape[tip + 1] / size, shape[tip + 2] / size];
  return {
    position: nodes.map((node) => mesh.xyz[3 * node]),
    deflection: nodes.map((node) => y * shape[6 * node + 1] + z * shape[6 * node + 2]),
    // duy/dx = rz, duz/dx = -ry
    slope: nodes.map((node) => y * shape[6 * node + 5] - z * shape[6 * node + 4]),
  };
}

/** The integral of the deflection along the beam, exact for the cubics of the elements. */
function area({ position, deflection: w, slope }: Bending): number {
  return position.slice(1).reduce((sum, x, i) => {
    const h = x - position[i];
    return sum + (h / 2) * (w[i] + w[i + 1]) + (h ** 2 / 12) * (slope[i] - slope[i + 1]);
  }, 0);
}

/** Largest distance from w = cosh kx - cos kx - sigma (sinh kx - sin kx), whose tip has +2 or -2. */
function departure({ position, deflection }: Bending, i: number): number {
  const k = ROOTS[i];
  const sigma = (Math.cos(k) + Math.cosh(k)) / (Math.sin(k) + Math.sinh(k));
  const exact = (x: number) =>
    Math.cosh(k * x) - Math.cos(k * x) - sigma * (Math.sinh(k * x) - Math.sin(k * x));
  const sign = Math.sign(exact(1));
  return Math.max(...position.map((x, n) => Math.abs(deflection[n] - sign * exact(x))));
}

const BEAM = "Clamped-free Euler-Bernoulli beam of unit length, mass and stiffness, 64 elements";
const SHAPE = "w = cosh kx - cos kx - sigma (sinh kx - sin kx), k the wave number";

export const MODE_SHAPES: Family = {
  title: "Mode shapes of the cantilever",
  source: "closed form",
  cases: [
    {
      name: "Cantilever, effective masses",
      source: "(int w)^2/(L int w^2) of the exact shapes, by quadrature in 30 digits.",
      model: `${BEAM}: the share of its mass that each mode takes of a shake of the wall, from the mass-normalised shapes.`,
      why: "Mesh and rounding, measured: 1e-8 in mode 5, less than 3e-9 in the others.",
      checks: modes(
        ["0.6130760900", "0.1883003611", "0.06473223169", "0.03308689028", "0.02001399882"],
        "",
        within(2e-8),
      ),
      solve: () => effectiveMasses(),
    },
    {
      name: "Cantilever, sigma",
      source:
        "sigma = (cos x + cosh x)/(sin x + sinh x), x the root of cos x cosh x + 1 = 0, in 30 digits.",
      model: `${BEAM}. In the shape ${SHAPE}, int w = 2 sigma/k.`,
      why: "Mesh and rounding, measured: 5e-9 in mode 5, less than 1e-9 in the others.",
      checks: modes(
        ["0.7340955138", "1.018467319", "0.9992244965", "1.000033553", "0.9999985501"],
        "",
        within(1e-8),
      ),
      solve: () => bendingModes().map((mode, i) => (Math.abs(area(mode)) * ROOTS[i]) / 2),
    },
    {
      name: "Cantilever, shapes",
      source: `The solution of the beam equation between a clamped and a free end: ${SHAPE}.`,
      model: `${BEAM}: the largest distance of a node of the mass-normalised mode from the exact shape, whose tip moves 2.`,
      why: "Ten times the mesh error of the frequency, (x/64)^4/1440 (and 1e-9 for rounding); four times is found.",
      checks: modes(["0", "0", "0", "0", "0"], "", (_, i) =>
        withinAbsolute(10 * meshError(ROOTS[i], ELEMENTS) + 1e-9),
      ),
      solve: () => bendingModes().map(departure),
    },
  ],
};
