/** Masses, centre of gravity and inertia, and how the matrices agree with the drawing. */

import { massDifference, type PartMass } from "../matrices/mass.ts";
import type { Vec3 } from "../model/types.ts";
import { type Html, html, named } from "./html.ts";
import { grams, inMillimetres, mass, percent, three } from "./numbers.ts";
import { type Column, facts, section, table } from "./section.ts";
import type { Analysed } from "./types.ts";

/** kg m^2 to g mm^2 would need too many digits; kg mm^2 suits small craft. */
const KG_MM2 = 1e6;

export function massesSection(analysed: Analysed): Html {
  const report = analysed.mass;
  const { inertia: I, cg } = report;
  const parts = report.parts.toSorted((a, b) => b.mass - a.mass);
  const trace = I.xx + I.yy + I.zz;
  const inertia = (v: number) => `${three(v * KG_MM2)}\u00a0kg\u00a0mm²`;
  return section(
    "masses",
    "Masses",
    "Frequencies stand and fall with the masses: put the real craft on a scale and compare. Axes: x forward, y left, z up, from the origin of the file.",
    facts([
      ["all-up mass", mass(report.mass)],
      ["centre of gravity", html`${place(cg)} mm <small>x, y, z</small>`],
      ["inertia, roll", inertia(I.xx)],
      ["inertia, pitch", inertia(I.yy)],
      ["inertia, yaw", inertia(I.zz)],
      [
        "products xy, xz, yz",
        `${[I.xy, I.xz, I.yz].map((v) => (Math.abs(v) < 1e-9 * trace ? "0" : three(v * KG_MM2))).join(", ")}\u00a0kg\u00a0mm²`,
      ],
    ]),
    html`<p>${agreement(analysed)}</p>`,
    table("Mass by part, heaviest first", columns(report.mass), parts, { className: "masses" }),
  );
}

function columns(total: number): Column<PartMass>[] {
  return [
    { head: "part", names: true, cell: (p) => named(p.name) },
    { head: "kind", cell: (p) => p.kind },
    { head: "mass", number: true, cell: (p) => grams(p.mass) },
    { head: "share", number: true, cell: (p) => percent(p.mass / total, 2) },
    {
      head: html`centre of gravity<br><small>x, y, z in mm</small>`,
      number: true,
      cell: (p) => place(p.cg),
    },
  ];
}

/** Coordinates in mm; what is less than 0.05 mm is written as zero. */
function place(p: Vec3): string {
  return p.map(inMillimetres).join(", ");
}

/** How the mass matrix agrees with the masses added up by hand. */
export function agreement({
  mass: drawn,
  assembledMass,
}: Pick<Analysed, "mass" | "assembledMass">): string {
  if (!assembledMass) {
    return "The frame is held by supports or springs, so the mass matrix cannot be compared with the drawing as a whole.";
  }
  const difference = massDifference(drawn, assembledMass);
  const words =
    difference < 1e-12
      ? "to the last digits of the arithmetic"
      : `within ${percent(difference, 2)}`;
  return `Check: moved as one rigid body, the mass matrix of the model gives the same mass, centre of gravity and inertia as the parts of the drawing added up, ${words}.`;
}
