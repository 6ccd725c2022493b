/** The modes of a frame for people. */

import type { Analysis } from "../../analyse.ts";
import type { Model } from "../../model/types.ts";
import type { Evidence, ModeDescription } from "../../modes/types.ts";
import type { Ink } from "../terminal/ink.ts";
import { count, digits, quantity, wholePercent } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { fittedList, renderTable } from "../terminal/table.ts";
import { bullets, wrap } from "../terminal/wrap.ts";
import { massLine } from "./mass.ts";
import { mainParts, poolNames } from "./pooled-shares.ts";

/** What is told of an analysis beside its ranking. */
export interface ToldAnalysis extends Pick<Analysis, "modes" | "mass" | "warnings"> {
  readonly model: Pick<Model, "name" | "arms" | "standoffs">;
}

/** What `modes` prints. */
export function modesText(analysis: ToldAnalysis, ink: Ink): string {
  const { model, modes, mass, warnings } = analysis;
  const highest = modes.described.at(-1);
  const upTo = highest === undefined ? "" : ` up to ${quantity(highest.frequency, "Hz")}`;
  return [
    `${ink.heading(wrap(printable(model.name)).trimEnd())}\n`,
    wrap(`${count(modes.described.length, "mode")}${upTo}, lowest first.`),
    "\n",
    modesTable(modes.described, poolNames(model), ink),
    "\n",
    wrap(
      "Damping: share of critical. Main parts: those that hold most of the energy of deformation, copies taken together.",
    ),
    evidenceLine(modes.evidence, modes.rigid.length),
    massLine(mass),
    warningsText(warnings, ink),
  ].join("");
}

function modesTable(
  described: readonly ModeDescription[],
  pools: ReadonlyMap<string, string>,
  ink: Ink,
): string {
  const columns = [
    { title: "Mode", align: "right" },
    { title: "Freq.", unit: "Hz", align: "right" },
    { title: "Damp.", unit: "%", align: "right" },
    { title: "What moves", least: 40 },
    { title: "Main parts", least: 16 },
  ] as const;
  const rows = described.map(({ number, frequency, damping, name, shares }) => [
    String(number),
    digits(frequency),
    digits(100 * damping),
    name,
    fittedList(
      mainParts(shares, pools).map((part) => ({
        name: part.name,
        number: wholePercent(part.strain),
      })),
    ),
  ]);
  return renderTable(columns, rows, { headingInk: ink.quiet });
}

/** How it is known that the modes are right and that none is missing. */
export function evidenceLine(evidence: Evidence, rigid: number): string {
  const { counted, checkFrequency, maxResidual, unknowns } = evidence;
  const free = rigid > 0 ? `, ${rigid} of them the whole frame moving without bending` : "";
  return wrap(
    `Checked: an independent count gives ${counted} modes below ${quantity(checkFrequency, "Hz")}${free}; as many were found, so none is missing. Largest residual ${digits(maxResidual)}, ${unknowns} unknowns.`,
  );
}

export function warningsText(warnings: readonly string[], ink: Ink): string {
  if (warnings.length === 0) return "";
  return `\n${ink.alarm("Warnings")}\n${bullets(warnings.map(printable))}`;
}
