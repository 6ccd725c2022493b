/** A few lines on how sure a ranking is, and what moves it; the report has the rest. */

import type { HowSure } from "../../study/how-sure.ts";
import { type Mover, sizeOf, spotMovers } from "../../study/movers.ts";
import type { Ink } from "../terminal/ink.ts";
import { digits, quantity } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { bullets, wrap } from "../terminal/wrap.ts";

/** Inputs told. */
const MOVERS = 3;
/** Smaller effects are none, dB. */
const NOTHING = 0.005;

export function sureText({ sampled, moved }: HowSure, ink: Ink): string {
  const section = (title: string, lines: readonly string[]): string =>
    lines.length === 0
      ? ""
      : `\n${ink.heading(wrap(title).trimEnd())}\n${bullets(lines.map(printable))}`;
  const { table, spot, suggested } = moved;
  const movers = spot === undefined ? [] : spotMovers(table, spot).slice(0, MOVERS);
  const words = sampled.variants[0]?.sampled?.words;
  return [
    section("Frames drawn from the spreads", [
      ...(words === undefined
        ? ["The file names no place for the stack, so none were drawn."]
        : [words]),
      ...(sampled.sure ? [sampled.sure.text] : []),
    ]),
    spot === undefined
      ? ""
      : section(
          `What moves the noise at "${printable(table.spots[spot].name)}" most`,
          movers.filter((m) => sizeOf(m) >= NOTHING).map(moverText),
        ),
    section(
      "What would help",
      suggested
        ? suggested.none === undefined
          ? suggested.found.map((s) => s.text)
          : [suggested.none]
        : [],
    ),
  ].join("");
}

function moverText({ input: { name, perSI, unit }, reach, from, to }: Mover): string {
  const value = (v: number) => (unit === "" ? digits(v * perSI) : quantity(v * perSI, unit));
  const effect = (v: number) => `${v < 0 ? "-" : "+"}${quantity(Math.abs(v), "dB")}`;
  return `${name}: ${effect(from)} at ${value(reach.from)}, ${effect(to)} at ${value(reach.to)}`;
}
