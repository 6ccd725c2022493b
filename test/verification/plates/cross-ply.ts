/**
 * Simply supported plates of T300/5208 [0_4/90_4]s, five times as stiff along x as along y, 2 mm thick.
 *
 * J. E. Ashton & J. M. Whitney, Theory of Laminated Plates (from memory), with the rotary inertia
 * rho h^3/12 that the program's plates have:
 *
 *   omega^2 rho h (1 + h^2/12 (p^2 + q^2)) = D11 p^4 + 2 (D12 + 2 D66) p^2 q^2 + D22 q^4,
 *   p = m pi/a, q = n pi/b
 */

import { type Case, type Check, type Family, within } from "../case.ts";
import { frequencies } from "../frequencies.ts";
import { outOfPlaneOnly, type Sheet, sheetFrame, simplySupported } from "../sheet.ts";

/** N m, as computed from the plies and printed by S. W. Tsai & H. T. Hahn to 0.1 %. */
const [D11, D22, D12, D66] = [106.9187, 21.1862, 1.9313, 4.78];
const RHO = 1600;
const H = 2e-3;
const CELLS = 24;
/** measured: 0.009 at most */
const C = 0.01;

export function crossPly(a: number, b: number): Sheet {
  return {
    a,
    b,
    thickness: "2 mm",
    material: { kind: "laminate", stack: "[0_4/90_4]s", ply: "tape" },
    plies: {
      tape: {
        E1: "181 GPa",
        E2: "10.3 GPa",
        G12: "7.17 GPa",
        nu12: 0.28,
        density: `${RHO} kg/m^3`,
        thickness: "0.125 mm",
      },
    },
  };
}

/** Half waves m along x, n along y, and their frequency in Hz. */
export interface Wave {
  readonly m: number;
  readonly n: number;
  readonly frequency: number;
  /** p^2 + q^2, 1/m^2 */
  readonly squares: number;
}

/** The closed form, ascending. */
export function closedForm({ a, b }: Sheet, count: number, rotary: boolean): Wave[] {
  const numbers = [1, 2, 3, 4, 5, 6, 7, 8];
  const all = numbers.flatMap((m) => numbers.map((n) => wave(m, n, a, b, rotary)));
  return all.sort((one, two) => one.frequency - two.frequency).slice(0, count);
}

function wave(m: number, n: number, a: number, b: number, rotary: boolean): Wave {
  const [p, q] = [(m * Math.PI) / a, (n * Math.PI) / b];
  const squares = p * p + q * q;
  const bending = D11 * p ** 4 + 2 * (D12 + 2 * D66) * p * p * q * q + D22 * q ** 4;
  const mass = RHO * H * (1 + (rotary ? (H * H * squares) / 12 : 0));
  return { m, n, frequency: Math.sqrt(bending / mass) / (2 * Math.PI), squares };
}

export function crossPlyFrequencies(sheet: Sheet, cells: number, count: number): number[] {
  const supports = { ...outOfPlaneOnly(sheet), ...simplySupported(sheet) };
  return frequencies(sheetFrame(sheet, cells, supports), { modes: count });
}

/** Without rotary inertia, Hz, modes (1,1), (1,2), (2,1), (1,3), (2,2), (2,3). */
export const TABULATED = [
  "269.83555",
  "509.10425",
  "937.50887",
  "989.04547",
  "1079.3422",
  "1431.83031",
];
const SQUARE = crossPly(0.2, 0.2);

/** C (p^2 + q^2) h^2 of a second-order element, and `rotary` below that. */
function checks(
  references: readonly string[],
  waves: readonly Wave[],
  cell: number,
  rotary = 0,
): Check[] {
  return waves.map(({ m, n, squares }, i) => {
    const mesh = C * squares * cell * cell;
    const { kind, low, high } = within(mesh);
    const tolerance = { kind, low: low - (rotary * H * H * squares) / 24, high };
    return { quantity: `half waves ${m} x ${n}`, unit: "Hz", reference: references[i], tolerance };
  });
}

const BOOK = "J. E. Ashton & J. M. Whitney, Theory of Laminated Plates (closed form, from memory)";
const model = ({ a, b }: Sheet) =>
  `[0_4/90_4]s of T300/5208, 16 plies of 0.125 mm, E1 = 181 GPa, E2 = 10.3 GPa, G12 = 7.17 GPa, ` +
  `nu12 = 0.28, rho = 1600 kg/m^3; ${a * 1e3} x ${b * 1e3} mm, simply supported, ${CELLS} cells along x.`;
const WHY = `C (p^2 + q^2) h^2 of a second-order element, p = m pi/a, q = n pi/b, h the cell; C = ${C}, measured 0.009 or less.`;

function withRotary(name: string, sheet: Sheet): Case {
  const waves = closedForm(sheet, 8, true);
  const references = waves.map((w) => w.frequency.toFixed(4));
  return {
    name,
    source: `${BOOK}, with rotary inertia; D11 = ${D11}, D22 = ${D22}, D12 = ${D12}, D66 = ${D66} N m.`,
    model: model(sheet),
    why: WHY,
    checks: checks(references, waves, sheet.a / CELLS),
    solve: () => crossPlyFrequencies(sheet, CELLS, waves.length),
  };
}

export const CROSS_PLY: Family = {
  title: "Simply supported cross-ply plates",
  source: "Ashton & Whitney, closed form",
  cases: [
    {
      name: "Cross-ply square, tabulated without rotary inertia",
      source: `${BOOK}; values computed from it with D11 = ${D11}, D22 = ${D22}, D12 = ${D12}, D66 = ${D66} N m.`,
      model: model(SQUARE),
      why: `${WHY} Rotary inertia takes off another (p^2 + q^2) t^2/24, t = 2 mm: 8e-5 to 5e-4.`,
      checks: checks(TABULATED, closedForm(SQUARE, 6, false), SQUARE.a / CELLS, 1),
      solve: () => crossPlyFrequencies(SQUARE, CELLS, TABULATED.length),
    },
    withRotary("Cross-ply square", SQUARE),
    withRotary("Cross-ply rectangle along the warp", crossPly(0.2, 0.13)),
    withRotary("Cross-ply rectangle across the warp", crossPly(0.13, 0.2)),
  ],
};
