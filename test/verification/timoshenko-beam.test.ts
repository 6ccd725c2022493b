/**
 * A simply supported beam with shear: omega sqrt(rho A L^4/(E I)) with k = n pi/L is the lower root of
 *
 *   (rho^2 I/(kappa G)) omega^4 - [rho A + rho I k^2 (1 + E/(kappa G))] omega^2 + E I k^4 = 0
 *
 * S. P. Timoshenko, Philosophical Magazine 41 (1921) 744-746. Shear coefficient kappa = 5/6 and
 * G. R. Cowper's 10 (1 + nu)/(12 + 11 nu), J. Applied Mechanics 33 (1966) (from memory), nu = 0.3.
 * "rayleigh" beams keep the rotary inertia alone: (n pi)^2/sqrt(1 + (n pi r/L)^2), r^2 = I/A.
 */

import { describe, expect, test } from "vitest";
import { expectClose } from "./compare.ts";
import { frequencies } from "./frequencies.ts";

const E = 70e9;
const RHO = 1600;
/** Length over height; the beam is 1 m long. */
function frame(beamTheory: string, slenderness: number, kappa: number, elements: number) {
  const h = 1000 / slenderness; // mm, and 1 mm wide
  const [A, I] = [h, h ** 3 / 12];
  const constants = { A: `${A} mm^2`, Iy: `${I} mm^4`, shearAreaZ: `${kappa * A} mm^2` };
  return {
    beamTheory,
    materials: { stuff: { kind: "isotropic", E: "70 GPa", nu: 0.3, density: "1600 kg/m^3" } },
    points: { left: [0, 0, 0], right: ["1 m", 0, 0] },
    members: {
      beam: {
        from: "left",
        to: "right",
        // Bending the other way and twisting are a thousand times stiffer, out of the way.
        section: {
          shape: "constants",
          ...constants,
          Iz: `${1e3 * I} mm^4`,
          shearAreaY: `${1e3 * A} mm^2`,
          J: `${1e3 * I} mm^4`,
          Ip: `${I} mm^4`,
        },
        material: "stuff",
        elements,
      },
    },
    supports: {
      left: { point: "left", fix: ["x", "y", "z", "rx", "rz"] },
      right: { point: "right", fix: ["x", "y", "z", "rx", "rz"] },
    },
  };
}

/** omega sqrt(rho A L^4/(E I)), L = 1 m. */
function dimensionless(
  beamTheory: string,
  slenderness: number,
  kappa: number,
  modes: number,
  elements = 40,
): number[] {
  const r = 1 / slenderness / Math.sqrt(12);
  return frequencies(frame(beamTheory, slenderness, kappa, elements), { modes }).map(
    (f) => (2 * Math.PI * f * Math.sqrt(RHO / E)) / r,
  );
}

/**
 * The element's shear strain is constant: its share of the energy is (k h)^2/12 too stiff. The worst
 * case below has 40 % of its energy in shear, n = 3: 0.4 (3 pi/40)^2/24 = 9e-4.
 */
const SHEAR_MESH = 1e-3;
/** Bending: (k h)^4/1440 = 2.2e-6 for n = 3. */
const BENDING_MESH = 2.5e-6;

const COWPER = 0.8496732026;

describe("simply supported Timoshenko beam", () => {
  test.each([
    { slenderness: 5, kappa: 5 / 6, omega: [9.274039712, 32.16650095] },
    { slenderness: 5, kappa: COWPER, omega: [9.281917107, 32.24558036] },
    { slenderness: 10, kappa: 5 / 6, omega: [9.707477235, 37.09615885, 78.15473629] },
    { slenderness: 10, kappa: COWPER, omega: [9.709777239, 37.12766843, 78.283] },
    { slenderness: 50, kappa: 5 / 6, omega: [9.862924096, 39.37193592, 88.29073588] },
  ])("length/height = $slenderness, kappa = $kappa", ({ slenderness, kappa, omega }) => {
    expectClose(dimensionless("timoshenko", slenderness, kappa, omega.length), omega, SHEAR_MESH);
  });

  test("shear converges with the square of the element length", () => {
    const error = (n: number) => dimensionless("timoshenko", 10, 5 / 6, 2, n)[1] / 37.09615885 - 1;
    const order = Math.log2(error(10) / error(20));
    expect(order).toBeGreaterThan(1.9);
    expect(order).toBeLessThan(2.2);
  });

  test.each([5, 10, 50])("length/height = %s: rotary inertia alone", (slenderness) => {
    const modes = slenderness === 5 ? 2 : 3;
    const exact = Array.from({ length: modes }, (_, i) => {
      const k = (i + 1) * Math.PI;
      return k ** 2 / Math.sqrt(1 + k ** 2 / 12 / slenderness ** 2);
    });
    expectClose(dimensionless("rayleigh", slenderness, 5 / 6, modes), exact, BENDING_MESH);
  });

  test("without either it is the plain beam, whatever the shear area", () => {
    const plain = [1, 2, 3].map((n) => (n * Math.PI) ** 2);
    expectClose(dimensionless("euler-bernoulli", 10, 5 / 6, 3), plain, BENDING_MESH);
  });
});
