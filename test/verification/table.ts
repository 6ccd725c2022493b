/**
 * The verification table in Markdown: a long one, every check of every case with its source and its
 * model, and a short one, the worst check of each family. Both are made from the cases and from the
 * cells of a run, and the cells can be read back from the long one.
 */

import type { Case, Check, Family } from "./case.ts";
import { type Cells, relativeErrorOf, toleranceCell } from "./cells.ts";

/** The cells of a check; nothing where the table has no such row. */
export type CellsOf = (of: Case, check: Check) => Cells | undefined;

export interface Area {
  readonly title: string;
  readonly families: readonly Family[];
}

const UNKNOWN: Cells = { ours: "?", error: "?" };

const HEAD = `# Verification: every case, every number

Written by \`npm run verify -- --write\` from the actual run; \`npm test\` fails when a number here differs
from the run by more than one unit of the last digit shown. An error is (ours - reference) / reference,
or, with a unit or "(abs)", ours - reference. One far below the tolerance, or below rounding, is given
as "<". Values whose source was not seen in print say so.

Tolerances are of three kinds: what theory and mesh explain, on the side they say; the printed digits or
the known error of a published value; and, where no theory gives the error (plates cut or turned against
the grid, plates with holes), half as much again as was measured, which guards against changes and bounds
nothing.
`;

/** Every case of the areas, in the order of the table. */
export function casesOf(areas: readonly Area[]): Case[] {
  return areas.flatMap(({ families }) => families.flatMap((family) => family.cases));
}

export function longTable(areas: readonly Area[], cellsOf: CellsOf): string {
  const areaText = ({ title, families }: Area) =>
    [`## ${title}`, ...families.flatMap((family) => familyText(family, cellsOf))].join("\n\n");
  return `${[HEAD.trim(), ...areas.map(areaText)].join("\n\n")}\n`;
}

function familyText(family: Family, cellsOf: CellsOf): string[] {
  return [`### ${family.title}`, ...family.cases.map((c) => caseText(c, cellsOf))];
}

function caseText(of: Case, cellsOf: CellsOf): string {
  const rows = of.checks.map((check) => {
    const cells = cellsOf(of, check) ?? UNKNOWN;
    return row([check.quantity, withUnit(check), cells.ours, cells.error, toleranceCell(check)]);
  });
  return [
    `#### ${of.name}`,
    "",
    `- Source: ${of.source}`,
    `- Model: ${of.model}`,
    `- Tolerance: ${of.why}`,
    "",
    row(["quantity", "reference", "ours", "error", "tolerance"]),
    row(["---", "---:", "---:", "---:", "---:"]),
    ...rows,
  ].join("\n");
}

/** One line for each family: the value farthest from its reference, of its headline cases if it has any. */
export function shortTable(areas: readonly Area[], cellsOf: CellsOf): string {
  const cases = casesOf(areas);
  const values = cases.reduce((sum, { checks }) => sum + checks.length, 0);
  return [
    `${values} values in ${cases.length} cases. Of each family the value farthest from its reference; where it has published or measured cases, of these:`,
    "",
    row(["case", "source", "values", "quantity", "reference", "ours", "error", "tolerance"]),
    row(["---", "---", "---:", "---", "---:", "---:", "---:", "---:"]),
    ...areas.flatMap(({ families }) => families.map((f) => shortRow(f, cellsOf))),
  ].join("\n");
}

function shortRow(family: Family, cellsOf: CellsOf): string {
  const headlines = family.cases.filter(({ headline }) => headline);
  const shown = headlines.length > 0 ? headlines : family.cases;
  const all = shown.flatMap((of) =>
    of.checks.map((check) => ({ of, check, cells: cellsOf(of, check) ?? UNKNOWN })),
  );
  const distance = ({ check, cells }: (typeof all)[number]) =>
    Math.abs(relativeErrorOf(check, cells));
  const { of, check, cells } = all.reduce((a, b) => (distance(b) > distance(a) ? b : a));
  const count = family.cases.reduce((sum, { checks }) => sum + checks.length, 0);
  const quantity = `${of.name}: ${check.quantity}`;
  const numbers = [withUnit(check), cells.ours, cells.error, toleranceCell(check)];
  return row([family.title, family.source, String(count), quantity, ...numbers]);
}

/** The cells of a long table, by the name of the case and the quantity. */
export function readLongTable(text: string): CellsOf {
  const found = new Map<string, Cells>();
  let name = "";
  for (const line of text.split("\n")) {
    if (line.startsWith("#### ")) name = line.slice(5);
    else if (line.startsWith("| ")) {
      const [quantity, , ours, error] = line.slice(2, -2).split(" | ");
      found.set(`${name}\n${quantity}`, { ours, error });
    }
  }
  return (of, check) => found.get(`${of.name}\n${check.quantity}`);
}

const row = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
const withUnit = ({ reference, unit }: Check) => (unit ? `${reference} ${unit}` : reference);
