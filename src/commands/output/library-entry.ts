/** One built-in material or ply in full, for people. */

import { describeMaterial, type ThreeDirections } from "../../material/describe.ts";
import type { LibraryMaterial } from "../../material/library-materials.ts";
import type { Ink } from "../terminal/ink.ts";
import { shortest } from "../terminal/numbers.ts";
import { renderTable } from "../terminal/table.ts";
import { HARD_SPACE, wrap } from "../terminal/wrap.ts";
import { fieldsOf, type LibraryEntry, noteOf } from "./library-fields.ts";

export function entryText(entry: LibraryEntry, ink: Ink): string {
  const isPly = "ply" in entry;
  const note = noteOf(entry);
  const rows = fieldsOf(entry).map(({ field, value }) => [
    field.key,
    field.print(value),
    field.words,
  ]);
  const columns = [
    { title: "Value" },
    { title: "", align: "right" },
    { title: "Meaning", least: 20 },
  ] as const;
  return [
    `${ink.heading(entry.id)}\n`,
    wrap(`${entry.name}${isPly ? ", one ply" : ""}${note === "" ? "" : `; ${note}`}.`),
    "\n",
    rows.length === 0 ? "" : `${renderTable(columns, rows, { headingInk: ink.quiet })}\n`,
    isPly ? "" : asPlate(entry),
    `${ink.heading("Where the numbers come from")}\n`,
    ...entry.facts.map(({ fields, mark, from }) =>
      wrap(`${fields.join(", ")}: ${mark}${from === "" ? "" : `; ${from}`}.`, "  ", "    "),
    ),
    "\n",
    wrap(`In a frame file: ${isPly ? '"ply"' : '"material"'}:${HARD_SPACE}"${entry.id}"`),
  ].join("");
}

/** What a builder wants to know: how stiff it is, cut in which direction. */
function asPlate({ material, stack }: LibraryMaterial): string {
  const { flexuralE, E, G, density, lossFactor, thickness } = describeMaterial(material);
  const plies =
    stack === undefined || thickness === undefined
      ? ""
      : `Stack ${stack}, ${shortest(thickness * 1e3)}${HARD_SPACE}mm as its plies give it, scaled to the thickness of the part. `;
  return `${wrap(
    `${plies}Cut at 0, 45 and 90 degrees to the warp: E ${three(flexuralE)} bent flat, ${three(E)} stretched; G ${three(G)}. Density ${shortest(density / 1e3)}${HARD_SPACE}g/cm^3, damping ${shortest(50 * lossFactor)}${HARD_SPACE}% of critical.`,
  )}\n`;
}

function three({ at0, at45, at90 }: ThreeDirections): string {
  return `${[at0, at45, at90].map((modulus) => shortest(modulus / 1e9)).join(", ")}${HARD_SPACE}GPa`;
}
