/** Free beams that carry masses: dumb-bells, and a hub with a motor at each tip. */

import type { Family } from "../case.ts";
import { onePerPair, solveFrame } from "../frequencies.ts";
import {
  aboveBeam,
  angular,
  ELEMENTS,
  squares,
  UNIT_SECTION,
  unitBeam,
  WHY_ABOVE,
} from "../unit-beam.ts";
import { table } from "./rows.ts";

interface EndMasses {
  /** masses at the ends, in masses of the beam */
  readonly mu: readonly [number, number];
  /** inertia of each, in rho A L^3 */
  readonly j?: number;
  readonly values: string;
}

const DUMB_BELLS: readonly EndMasses[] = [
  { mu: [0, 0], values: "22.3732854481 61.6728228679 120.903391727" },
  { mu: [0.1, 0.1], values: "17.2695451982 49.9601489278 101.317895578" },
  { mu: [0.5, 0.5], values: "12.7937136057 42.8576063711 92.4036042552" },
  { mu: [1, 1], values: "11.5518369193 41.3096591955 90.7151889274" },
  { mu: [2, 2], values: "10.7819006209 40.4342876226 89.7978835203" },
  { mu: [5, 5], values: "10.2546092837 39.8711555161 89.2217964846" },
  { mu: [10, 10], values: "10.0657663542 39.6765846208 89.0252725293" },
  { mu: [1, 0], values: "16.3364070181 50.8916714330 105.198464288" },
  { mu: [1, 0.5], values: "12.1711606450 42.0855415392 91.5606899700" },
  { mu: [1, 1], j: 0.01, values: "9.17894176044 21.7525355858 38.0169440926" },
  { mu: [0.5, 0.5], j: 0.05, values: "5.76682625614 11.6039112108 30.1088338053" },
];

function dumbBell({ mu, j = 0 }: EndMasses): object {
  const inertia = { xx: 0, yy: `${j} kg m^2`, zz: `${j} kg m^2` };
  const body = (on: string, mass: number) => ({ mass: `${mass} kg`, inertia, on });
  const bodies = { first: body("left", mu[0]), second: body("right", mu[1]) };
  return unitBeam("free", "free", ELEMENTS, { bodies });
}

/** Masses in units of one half of the beam. */
interface HubAndTips {
  readonly hub: number;
  readonly tip: number;
  readonly values: string;
}

const HUBS: readonly HubAndTips[] = [
  { hub: 0, tip: 1, values: "3.19842840143 23.1009010638 62.6209695585" },
  { hub: 2, tip: 0.5, values: "2.64231018894 18.4432207167 53.4119828267" },
  { hub: 10, tip: 1, values: "1.76215804485 16.6248214175 51.2807524776" },
  { hub: 5, tip: 2, values: "1.57445663424 16.5751902016 51.1982303399" },
];

/** Two unit beams end to end, from the right tip (y = -1 m) to the left one. */
function hubAndTips({ hub, tip }: HubAndTips): object {
  const half = { section: UNIT_SECTION, elements: ELEMENTS };
  const body = (on: string, mass: number) => ({ mass: `${mass} kg`, on });
  return {
    beamTheory: "euler-bernoulli",
    points: { right: [0, "-1 m", 0], middle: [0, 0, 0], left: [0, "1 m", 0] },
    members: {
      "right half": { from: "right", to: "middle", ...half },
      "left half": { from: "middle", to: "left", ...half },
    },
    bodies: {
      hub: body("middle", hub),
      "right tip": body("right", tip),
      "left tip": body("left", tip),
    },
  };
}

/** x^2 of the modes that the program calls symmetric, one for each pair of planes. */
function symmetricSquares(frame: object, count: number): number[] {
  const { described } = solveFrame(frame, { modes: 4 * count }).modes;
  const symmetric = described.filter((mode) => mode.symmetry === "symmetric left to right");
  return onePerPair(angular(symmetric.map((mode) => mode.frequency)));
}

export const END_MASSES: Family = {
  title: "Free beam with masses at its ends and middle",
  source: "frequency equations",
  cases: [
    {
      name: "Free beam with a mass at each end",
      source:
        "Roots of the 4 x 4 boundary determinant in 30-digit arithmetic. A. Erturk & D. J. Inman, J. Vibration " +
        "and Acoustics, DOI 10.1115/1.2776341 (abstract), show that the handbook formula for equal masses is wrong.",
      model:
        "Free Euler-Bernoulli beam of unit length, mass and stiffness, 64 elements, with masses mu (and inertia j, " +
        "in rho A L^3) at both ends. x^2 of three modes.",
      why: WHY_ABOVE,
      ...table({
        rows: DUMB_BELLS,
        name: ({ mu, j }) => `mu = ${mu.join(" and ")}${j ? `, j = ${j}` : ""}`,
        solve: (row, count) => squares(dumbBell(row), count),
        tolerance: (reference) => aboveBeam(reference),
      }),
    },
    {
      name: "Free beam with hub and tips, symmetric modes",
      source:
        "Roots of the boundary determinant of one half, without slope and with half the hub at its inner end, in " +
        "30-digit arithmetic.",
      model:
        "The whole free beam, 64 elements in each half, hub in the middle and a mass at each tip, all in units of " +
        "one half. x^2 of the three lowest modes that the program calls symmetric left to right.",
      why: WHY_ABOVE,
      ...table({
        rows: HUBS,
        name: ({ hub, tip }) => `hub = ${hub}, tip = ${tip}`,
        solve: (row, count) => symmetricSquares(hubAndTips(row), count),
        tolerance: (reference) => aboveBeam(reference),
      }),
    },
  ],
};
