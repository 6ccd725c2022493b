/** Built-in materials and plies for other programs. */

import { describeMaterial } from "../../material/describe.ts";
import type { LibraryMaterial } from "../../material/library-materials.ts";
import type { LibraryPly } from "../../material/library-plies.ts";
import { documentText } from "./document.ts";
import { fieldsOf, type LibraryEntry, noteOf } from "./library-fields.ts";

export function libraryJson(
  materials: readonly LibraryMaterial[],
  plies: readonly LibraryPly[],
): string {
  return documentText("materials", {
    materials: materials.map(entryFields),
    plies: plies.map(entryFields),
  });
}

export function entryJson(entry: LibraryEntry): string {
  return documentText("material", entryFields(entry));
}

function entryFields(entry: LibraryEntry): Record<string, unknown> {
  const constants = fieldsOf(entry).map(({ field, value }) => [field.jsonName, value]);
  return {
    id: entry.id,
    name: entry.name,
    note: noteOf(entry),
    type: "ply" in entry ? "ply" : entry.material.kind,
    ...Object.fromEntries(constants),
    ...("ply" in entry ? {} : plateFields(entry)),
    sources: entry.facts,
  };
}

/** What follows from the constants for a sheet: E and G cut at 0, 45 and 90 degrees to the warp. */
function plateFields({ material, stack }: LibraryMaterial): Record<string, unknown> {
  const { flexuralE, E, G, nu, density, lossFactor, thickness } = describeMaterial(material);
  return {
    ...(stack !== undefined && { stack, stackThicknessM: thickness }),
    sheet: {
      flexuralModulusAt0And45And90Pa: [flexuralE.at0, flexuralE.at45, flexuralE.at90],
      youngsModulusAt0And45And90Pa: [E.at0, E.at45, E.at90],
      shearModulusAt0And45And90Pa: [G.at0, G.at45, G.at90],
      poissonsRatio: nu,
      densityKgPerM3: density,
      lossFactor,
    },
  };
}
