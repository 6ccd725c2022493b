/** Where the numbers of the library come from. */

/** How far a number can be trusted. */
export type Mark = "published" | "derived" | "from memory" | "common practice, no source";

/** The origin of some fields of a library entry. */
export interface Fact {
  /** Names of the fields, e.g. E1, E2. */
  readonly fields: readonly string[];
  readonly mark: Mark;
  /** Title of the source, or how the value was derived, or the band it was taken from. */
  readonly from: string;
}

/** The titles of the published tables, as they are read by more than one entry. */
export const TABLE_FIBRE_EPOXY =
  '"Mechanical Properties of Carbon Fibre Composite Materials, Fibre / Epoxy resin (120 C cure)", web table';
export const TABLE_CFRP_2020 =
  "Manufacturing Review 2020, article 190034, Table 2: elastic properties of the CFRP";
export const TABLE_CFRP_2025 =
  "Acta Mechanica et Automatica 2025, article ama-2025-0022, table of carbon-epoxy means";

export function published(fields: readonly string[], from: string): Fact {
  return { fields, mark: "published", from };
}

export function derived(fields: readonly string[], from: string): Fact {
  return { fields, mark: "derived", from };
}

export function fromMemory(fields: readonly string[], from: string): Fact {
  return { fields, mark: "from memory", from };
}

export function commonPractice(fields: readonly string[], from: string): Fact {
  return { fields, mark: "common practice, no source", from };
}

/** One line for people: `E1, E2: published (title); G13: from memory (band)`. */
export function sourceText(facts: readonly Fact[]): string {
  return facts
    .map(
      ({ fields, mark, from }) => `${fields.join(", ")}: ${mark}${from === "" ? "" : ` (${from})`}`,
    )
    .join("; ");
}
