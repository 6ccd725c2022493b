/** Plates whose laminates couple bending with twist, and stretching with both. */

import { type Family, modes, within } from "../case.ts";
import { frequencies } from "../frequencies.ts";
import { sheetFrame } from "../sheet.ts";
import { T300_5208_IN_FILE } from "./t300.ts";

/** Free square of a side (m), plies and stack; thickness as the plies give it. */
function freeSquare(a: number, stack: string, ply: string, thickness: string) {
  const material = { kind: "laminate", ply: "tape", stack };
  const plies = { tape: { ...T300_5208_IN_FILE, thickness: ply } };
  return sheetFrame({ a, b: a, thickness, material, plies }, CELLS, {});
}

const CELLS = 24;

const SOURCE =
  "Ritz solution (laminates/ritz.py): Legendre polynomials up to degree 17 in x and y for u, v and w, with " +
  "the rotary inertia of the thickness; all digits shown are the same up to degree 14.";

/** The cells' error, relative, with about a factor two: it grows with the waves across the plate. */
const meshTolerance = (_: string, i: number) => within(i < 2 ? 0.003 : 0.01);

export const COUPLED_PLATES: Family = {
  title: "Free square plates of coupled laminates",
  source: "thin laminated plate, Ritz",
  cases: [
    {
      name: "Bend-twist coupling, [45/-45/0/90]s",
      source: SOURCE,
      model:
        "200 x 200 x 2 mm, free, eight plies of T300/5208 (the D of its table: D16 = D26 = 8.04 N m beside " +
        "D11 = 46.4); 1600 kg/m^3, invented. 24 cells a side.",
      why: "24 cells a side: up to 0.12 % above, nearly four times less with half the cell size.",
      checks: modes(
        ["213.78", "248.90", "373.16", "552.96", "584.92", "804.18"],
        "Hz",
        within(0.003),
      ),
      solve: () => frequencies(freeSquare(0.2, "[45/-45/0/90]s", "0.25 mm", "2 mm"), { modes: 6 }),
    },
    {
      name: "All couplings, [0/30/-45]",
      source: SOURCE,
      model:
        "1.5 m x 1.5 m x 15 mm, free, three plies of T300/5208 of 5 mm (the A, B, D of its table); " +
        "1600 kg/m^3, invented. 24 cells a side.",
      why:
        "24 cells a side: up to 0.14 % above in modes 1 and 2, 0.53 % in the others, nearly four times less " +
        "with half the cell size.",
      checks: modes(
        ["17.382", "22.518", "41.414", "46.259", "54.916", "66.973"],
        "Hz",
        meshTolerance,
      ),
      solve: () => frequencies(freeSquare(1.5, "[0/30/-45]", "5 mm", "15 mm"), { modes: 6 }),
    },
  ],
};
