/** The list of built-in materials and plies for people. */

import { describeMaterial } from "../../material/describe.ts";
import type { Fact } from "../../material/library-facts.ts";
import type { LibraryMaterial } from "../../material/library-materials.ts";
import type { LibraryPly } from "../../material/library-plies.ts";
import type { Ink } from "../terminal/ink.ts";
import { shortest } from "../terminal/numbers.ts";
import { renderTable } from "../terminal/table.ts";
import { wrap } from "../terminal/wrap.ts";

const RIGHT = { align: "right" } as const;
const gpa = (modulus: number): string => shortest(modulus / 1e9);

export function libraryText(
  materials: readonly LibraryMaterial[],
  plies: readonly LibraryPly[],
  ink: Ink,
): string {
  const titles = new Map<string, number>();
  const origins = [...materials, ...plies].map(({ id, facts }) => {
    return wrap(`${id}: ${originText(facts, titles)}.`, "  ", "    ");
  });
  return [
    `${ink.heading("Materials")}\n`,
    materialsTable(materials, ink),
    wrap(
      "E: bent flat, as an arm is, cut at 0, 45 and 90 degrees to the warp. Damping: share of critical, of the bare material. All values of one: stillpoint materials <name>",
    ),
    `\n${ink.heading("Plies, for laminates of your own")}\n`,
    pliesTable(plies, ink),
    `\n${ink.heading("Where the numbers come from")}\n`,
    ...origins,
    "\n",
    ...[...titles].map(([title, n]) => wrap(title, `  [${n}] `, "      ")),
  ].join("");
}

function materialsTable(materials: readonly LibraryMaterial[], ink: Ink): string {
  const columns = [
    { title: "Name", least: 20 },
    { title: "E 0", unit: "GPa", ...RIGHT },
    { title: "E 45", unit: "GPa", ...RIGHT },
    { title: "E 90", unit: "GPa", ...RIGHT },
    { title: "Density", unit: "g/cm^3", ...RIGHT },
    { title: "Damping", unit: "%", ...RIGHT },
  ];
  const rows = materials.map(({ id, material }) => {
    const { flexuralE, density, lossFactor } = describeMaterial(material);
    const { at0, at45, at90 } = flexuralE;
    return [
      id,
      ...[at0, at45, at90].map(gpa),
      shortest(density / 1e3),
      shortest((100 * lossFactor) / 2),
    ];
  });
  return renderTable(columns, rows, { headingInk: ink.quiet });
}

function pliesTable(plies: readonly LibraryPly[], ink: Ink): string {
  const columns = [
    { title: "Name", least: 20 },
    { title: "E1", unit: "GPa", ...RIGHT },
    { title: "E2", unit: "GPa", ...RIGHT },
    { title: "G12", unit: "GPa", ...RIGHT },
    { title: "nu12", ...RIGHT },
    { title: "Thickness", unit: "mm", ...RIGHT },
    { title: "Density", unit: "g/cm^3", ...RIGHT },
  ];
  const rows = plies.map(({ id, ply }) => [
    id,
    ...[ply.E1, ply.E2, ply.G12].map(gpa),
    shortest(ply.nu12),
    shortest(ply.thickness * 1e3),
    shortest(ply.density / 1e3),
  ]);
  return renderTable(columns, rows, { headingInk: ink.quiet });
}

/** "E1, E2 published [1]; density from memory": published titles are numbered as they come up. */
function originText(facts: readonly Fact[], titles: Map<string, number>): string {
  return facts
    .map(({ fields, mark, from }) => {
      const text = `${fields.join(", ")} ${mark}`;
      if (mark !== "published") return text;
      const n = titles.get(from) ?? titles.size + 1;
      titles.set(from, n);
      return `${text} [${n}]`;
    })
    .join("; ");
}
