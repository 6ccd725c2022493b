/** Torsion of a rectangle that shears more easily through its thickness than in its plane. */

import { orthotropicRectangleTorsion } from "../../../src/material/torsion.ts";
import { type Family, justAbove } from "../case.ts";
import { solveFrame } from "../frequencies.ts";
import { rounded } from "./entries.ts";
import { T300_5208_IN_FILE } from "./t300.ts";

/** b, t in mm; in-plane and transverse shear modulus in GPa; G J in N m^2. */
// biome-ignore format: table
const ROWS: readonly (readonly [number, number, number, number, string])[] = [
  [12, 5, 26.88, 4, "5.23314120"],
  [12, 5, 5,     5, "1.84418510"],
  [10, 4, 7.17,  4, "1.01623117"],
  [6,  6, 26.88, 4, "1.30812502"],
];

const ELEMENTS = 40;

/** 10 x 4 mm, 100 mm long; the twisting modulus of a cross-ply is the ply's G12, 7.17 GPa. */
const ARM = {
  beamTheory: "rayleigh",
  plies: {
    tape: { ...T300_5208_IN_FILE, G13: "4 GPa", G23: "4 GPa", thickness: "1 mm" },
  },
  materials: { "cross-ply": { kind: "laminate", ply: "tape", stack: "[0/90]s" } },
  points: { root: [0, 0, 0] },
  arms: {
    arm: {
      material: "cross-ply",
      thickness: "4 mm",
      width: "10 mm",
      root: [0, 0],
      tip: ["100 mm", 0],
      elements: ELEMENTS,
      joint: { kind: "point", point: "root" },
    },
  },
  supports: { wall: { point: "root", fix: "all" } },
};

export const ORTHOTROPIC_TORSION: Family = {
  title: "Torsion of an orthotropic rectangle",
  source: "Lekhnitskii, stretched series",
  cases: [
    {
      name: "Orthotropic rectangle, torsional stiffness",
      source:
        "S. G. Lekhnitskii, Theory of Elasticity of an Anisotropic Body (from memory, derived again); " +
        "the stretched series in multiple precision, checked there against a 160 x 160 finite-difference " +
        "solution of Prandtl's equation to 2e-4.",
      model:
        "G J = sqrt(Gxy/Gxz) Gxy J(B, t), B = b sqrt(Gxz/Gxy): width b, thickness t, in-plane shear " +
        "modulus Gxy, transverse shear modulus Gxz.",
      why: "Half a unit of the last digit.",
      checks: ROWS.map(([b, t, Gxy, Gxz, reference]) => ({
        quantity: `${b} x ${t} mm, Gxy ${Gxy}, Gxz ${Gxz} GPa`,
        unit: "N m^2",
        reference,
        tolerance: rounded(reference),
      })),
      solve: () =>
        ROWS.map(([b, t, Gxy, Gxz]) =>
          orthotropicRectangleTorsion(b * 1e-3, t * 1e-3, Gxy * 1e9, Gxz * 1e9),
        ),
    },
    {
      name: "Twisting modes of a cross-ply arm",
      source:
        "f = (2 n - 1)/(4 L) sqrt(G J/(rho Ip)) with the 1.01623117 N m^2 of the table above.",
      model:
        "Arm 100 x 10 x 4 mm of [0/90]s T300/5208 with transverse shear moduli of 4 GPa and 1600 kg/m^3 " +
        "(invented), clamped; Ip = b t (b^2 + t^2)/12. 40 elements; modes with most of their energy in " +
        "twisting.",
      why: "40 linear elements lie above the bar by (k h)^2/24: 6.4e-5 and 5.8e-4.",
      checks: [
        { quantity: "torsion 1", unit: "Hz", reference: "3204.1136", tolerance: justAbove(8e-5) },
        { quantity: "torsion 2", unit: "Hz", reference: "9612.3408", tolerance: justAbove(7e-4) },
      ],
      solve: () =>
        solveFrame(ARM, { modes: 12 })
          .modes.described.filter((mode) => mode.motion.armTorsion > 0.5)
          .slice(0, 2)
          .map((mode) => mode.frequency),
    },
  ],
};
