/** Masses, centre of gravity and inertia, and how the matrices agree with the drawing. */

import { massDifference, type PartMass } from "../matrices/mass.ts";
import type { Vec3 } from "../model/types.ts";
import { type Html, html, named, type Part } from "./html.ts";
import { grams, inColumn, mass, percent, three, whole } from "./numbers.ts";
import { type Column, facts, folded, section, table } from "./section.ts";
import type { Analysed } from "./types.ts";
import { term } from "./words.ts";

/** kg m^2 to g mm^2 would need too many digits; kg mm^2 suits small craft. */
const KG_MM2 = 1e6;

/** Parts that are always listed: the heaviest, and all above this share of the mass. */
const LISTED = 10;
const LISTED_SHARE = 0.01;

export function massesSection(analysed: Analysed): Html {
  const report = analysed.mass;
  const { inertia: I } = report;
  const parts = report.parts.toSorted((a, b) => b.mass - a.mass);
  const trace = I.xx + I.yy + I.zz;
  const inertia = (v: number) => `${three(v * KG_MM2)}\u00a0kg\u00a0mm²`;
  const off = [I.xy, I.xz, I.yz].map((v) => (Math.abs(v) < 1e-9 * trace ? "0" : three(v * KG_MM2)));
  const shown = parts.filter((p, i) => i < LISTED || p.mass >= LISTED_SHARE * report.mass);
  return section(
    "masses",
    "Masses",
    {
      finding: finding(analysed, parts),
      how: html`Frequencies stand and fall with the masses: put the real craft on a scale, find its ${term("centre-of-gravity")}, and compare. x forward, y left, z up, from the origin of the file.`,
    },
    facts([
      ["all-up mass", mass(report.mass)],
      ["inertia, roll", inertia(I.xx)],
      ["inertia, pitch", inertia(I.yy)],
      ["inertia, yaw", inertia(I.zz)],
      ["products xy, xz, yz", `${off.join(", ")}\u00a0kg\u00a0mm²`],
    ]),
    partsTable("Mass by part, heaviest first", report.mass, shown),
    rest(report.mass, parts.slice(shown.length)),
    html`<p class="quiet">${agreement(analysed)}</p>`,
  );
}

function finding({ mass: { mass: total, cg } }: Analysed, parts: readonly PartMass[]): Part {
  const [heaviest] = parts;
  const [x, y, z] = cg.map((v) => tenth(v * 1e3));
  const most =
    heaviest &&
    html` The heaviest part is ${named(heaviest.name)}, ${percent(heaviest.mass / total, 2)} of it.`;
  return html`${mass(total)} in all, its centre of gravity at x ${x}, y ${y}, z ${z}\u00a0mm.${most}`;
}

function rest(total: number, parts: readonly PartMass[]): Part {
  if (parts.length === 0) return "";
  const sum = parts.reduce((m, p) => m + p.mass, 0);
  const words = `${whole(parts.length)} smaller ${parts.length === 1 ? "part" : "parts"}, ${grams(sum)} together (${percent(sum / total, 2)})`;
  return folded(words, partsTable("Mass by part, the smaller ones", total, parts));
}

function partsTable(caption: string, total: number, parts: readonly PartMass[]): Html {
  const columns: Column<PartMass>[] = [
    {
      head: "part",
      names: true,
      cell: (p) => html`${named(p.name)}${kindSays(p) && html` <small>${p.kind}</small>`}`,
    },
    {
      head: html`mass<br><small>g</small>`,
      label: "mass, g",
      number: true,
      cell: (p) => inColumn(p.mass * 1e3),
    },
    {
      head: html`share<br><small>%</small>`,
      label: "share, %",
      number: true,
      cell: (p) => inColumn((100 * p.mass) / total, 2),
    },
    {
      head: html`centre of gravity<br><small>x, y, z in mm</small>`,
      label: "x, y, z in mm",
      number: true,
      cell: (p) => place(p.cg),
    },
  ];
  return table(caption, columns, parts, { className: "masses" });
}

/** Whether the kind is more than the name says already. */
const kindSays = ({ name, kind }: PartMass): boolean => kind !== "body" && !name.includes(kind);

/** Coordinates in mm; a tenth is as well as parts are placed. */
function place(p: Vec3): string {
  return p.map((v) => tenth(v * 1e3)).join(", ");
}

const tenth = (x: number): string => three(Math.round(10 * x) / 10);

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
