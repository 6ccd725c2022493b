/** The modes of a frame for people. */

import type { Analysis } from "../../analyse.ts";
import type { Evidence, ModeDescription, Share } from "../../modes/types.ts";
import type { Ink } from "../terminal/ink.ts";
import { count, digits, quantity, wholePercent } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { fittedList, renderTable } from "../terminal/table.ts";
import { bullets, wrap } from "../terminal/wrap.ts";
import { massLine } from "./mass.ts";

/** Parts below this share of a mode's strain energy are not worth a mention. */
const LEAST_SHARE = 0.05;
const MOST_PARTS = 3;

/** What `modes` prints. */
export function modesText(analysis: Analysis, ink: Ink): string {
  const { model, modes, mass, warnings } = analysis;
  const highest = modes.described.at(-1);
  const upTo = highest === undefined ? "" : ` up to ${quantity(highest.frequency, "Hz")}`;
  return [
    ink.heading(wrap(printable(model.name))),
    wrap(`${count(modes.described.length, "mode")}${upTo}, lowest first.`),
    "\n",
    modesTable(modes.described, ink),
    "\n",
    wrap(
      "Damping is the share of critical damping. Main parts: those that bend, with their share of the energy of bending.",
    ),
    evidenceLine(modes.evidence, modes.rigid.length),
    massLine(mass),
    warningsText(warnings, ink),
  ].join("");
}

export function modesTable(described: readonly ModeDescription[], ink: Ink): string {
  const columns = [
    { title: "Mode", align: "right" },
    { title: "Frequency", unit: "Hz", align: "right" },
    { title: "Damping", unit: "%", align: "right" },
    { title: "What moves", least: 20 },
    { title: "Main parts", least: 18 },
  ] as const;
  const rows = described.map((mode) => [
    String(mode.number),
    digits(mode.frequency),
    digits(100 * mode.damping),
    mode.name,
    fittedList(mainParts(mode.shares)),
  ]);
  return renderTable(columns, rows, { headingInk: ink.quiet });
}

function mainParts(shares: readonly Share[]): { name: string; number: string }[] {
  return shares
    .toSorted((a, b) => b.strain - a.strain)
    .filter(({ strain }, i) => i === 0 || strain >= LEAST_SHARE)
    .slice(0, MOST_PARTS)
    .map(({ part, strain }) => ({ name: part, number: wholePercent(strain) }));
}

/** How it is known that the modes are right and that none is missing. */
export function evidenceLine(evidence: Evidence, rigid: number): string {
  const { counted, found, checkFrequency, maxResidual, unknowns } = evidence;
  const complete = counted === found;
  const free = rigid > 0 ? `, ${rigid} of them the whole frame moving without bending` : "";
  return wrap(
    `Checked: an independent count gives ${counted} modes below ${quantity(checkFrequency, "Hz")}${free}; ${
      complete ? "as many were found, so none is missing" : `${found} were found`
    }. Largest residual ${digits(maxResidual)}, ${unknowns} unknowns.`,
  );
}

export function warningsText(warnings: readonly string[], ink: Ink): string {
  if (warnings.length === 0) return "";
  return `\n${ink.alarm("Warnings")}\n${bullets(warnings.map(printable))}`;
}
