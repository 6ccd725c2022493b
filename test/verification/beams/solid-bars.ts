/** Twist of solid bars: in all but round ones the torsion constant and the polar moment are different things. */

import type { Family } from "../case.ts";
import { solveFrame } from "../frequencies.ts";
import { frequenciesMoving } from "./moving.ts";
import { table } from "./rows.ts";
import { aboveRod, ROD_ELEMENTS } from "./unit-rod.ts";

const G = 26e9;
const RHO = 2700;
/** m */
const L = 0.2;

/** Clamped at the root; the tip can only turn about the axis. */
function bar(section: object): object {
  return {
    materials: { metal: { kind: "isotropic", E: "67.6 GPa", nu: 0.3, density: "2700 kg/m^3" } },
    points: { root: [0, 0, 0], tip: [`${L} m`, 0, 0] },
    members: {
      bar: {
        from: "root",
        to: "tip",
        section,
        material: "metal",
        elements: ROD_ELEMENTS,
      },
    },
    supports: {
      root: { point: "root", fix: "all" },
      guide: { point: "tip", fix: ["x", "y", "z", "ry", "rz"] },
    },
  };
}

/** omega L sqrt(rho/G) of the modes that turn the tip, without the quarter wave's pi/2. */
function twistSpeeds(section: object): number[] {
  const solved = solveFrame(bar(section), { modes: 12 });
  const quarterWave = (Math.PI / 2) * Math.sqrt(G / RHO);
  return frequenciesMoving(solved, "tip", "rx").map((f) => (2 * Math.PI * f * L) / quarterWave);
}

const rectangle = (ratio: number) => ({ shape: "rectangle", width: 10 * ratio, height: 10 });

export const SOLID_BARS: Family = {
  title: "Twist of solid bars",
  source: "Saint-Venant",
  cases: [
    {
      name: "Solid bars, first twist",
      source:
        "sqrt(J/Ip) = sqrt(12 beta/(r^2 + 1)) for the side ratio r, beta by the series of S. P. Timoshenko & J. N. " +
        "Goodier, Theory of Elasticity (section from memory), in 25 digits.",
      model:
        "Isotropic bar, 200 mm long and 10 mm thick, clamped at one end and free to turn at the other, 100 elements: " +
        "2 omega L/pi over sqrt(G/rho), which is 1 for a round bar. With Ip for J it would always be 1.",
      why: "Linear elements lie (pi/200)^2/24 above the shaft.",
      ...table({
        rows: [
          { name: "round", section: { shape: "rod", diameter: 10 }, values: "1" },
          { name: "square", section: rectangle(1), values: "0.918401921672" },
          { name: "2 to 1", section: rectangle(2), values: "0.740834681347" },
          { name: "10 to 1", section: rectangle(10), values: "0.192634174648" },
        ],
        name: ({ name }) => name,
        solve: ({ section }) => twistSpeeds(section),
        tolerance: () => aboveRod("1.5708"),
      }),
    },
  ],
};
