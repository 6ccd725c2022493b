/** The frame as it was read and built, for people and for other programs. */

import type { Prepared } from "../../analyse.ts";
import type { Ink } from "../terminal/ink.ts";
import { count, shortest } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { wrap } from "../terminal/wrap.ts";
import { documentText, type FrameIdentity, frameFields } from "./document.ts";
import { massFields, massLine, massTable, partFields } from "./mass.ts";
import { warningsText } from "./modes-text.ts";
import { speedFields, speedsText } from "./speeds.ts";

export function checkText(prepared: Prepared, { path }: FrameIdentity, ink: Ink): string {
  const { model, mesh, mass, excitation, warnings } = prepared;
  const parts = [
    count(model.plates.length, "plate"),
    count(model.arms.length, "arm"),
    count(model.standoffs.length, "standoff"),
    count(model.members.length, "member"),
    count(model.bodies.length, "mass", "masses"),
  ].filter((text) => !text.startsWith("0 "));
  return [
    `${ink.heading(wrap(printable(model.name)).trimEnd())}\n`,
    wrap(
      `${printable(path)} is complete and everything hangs together: ${parts.join(", ")}; ${heldWords(prepared)}.`,
    ),
    "\n",
    massTable(mass, ink),
    "\n",
    massLine(mass),
    excitation === undefined ? "" : speedsText(excitation.speeds),
    wrap(`Mesh: ${shortest(mesh.size * 1e3)} mm, ${count(mesh.xyz.length / 3, "node")}.`),
    warningsText(warnings, ink),
  ].join("");
}

function heldWords({ held, model }: Prepared): string {
  if (!held) return "free, as in flight";
  return model.supports.length > 0 ? "held by its supports" : "held by springs to the ground";
}

export function checkJson(
  { held, mesh, mass, excitation, warnings }: Prepared,
  frame: FrameIdentity,
): string {
  return documentText("check", {
    ...frameFields(frame),
    mass: { ...massFields(mass), parts: partFields(mass.parts) },
    speeds: excitation === undefined ? null : speedFields(excitation.speeds),
    held,
    mesh: { sizeM: mesh.size, nodes: mesh.xyz.length / 3 },
    warnings,
  });
}
