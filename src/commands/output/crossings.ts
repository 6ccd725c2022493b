/** Motor speeds near hover at which an order meets a mode. */

import type { Crossing } from "../../ranking/types.ts";
import type { Ink } from "../terminal/ink.ts";
import { digits, quantity, signedPercent } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { renderTable } from "../terminal/table.ts";
import { wrap } from "../terminal/wrap.ts";

const MOST_CROSSINGS = 10;

export function crossingsText(crossings: readonly Crossing[], ink: Ink): string {
  const away = ({ fromHover }: Crossing): number => Math.abs(fromHover);
  const near = crossings.filter(({ nearHover }) => nearHover).toSorted((a, b) => away(a) - away(b));
  if (near.length === 0) {
    const [nearest] = crossings.toSorted((a, b) => away(a) - away(b));
    if (nearest === undefined) return wrap("None between the lowest and the highest speed.");
    const { modeName, frequency, order, fromHover, rpm } = nearest;
    return wrap(
      `None. The nearest is ${signedPercent(fromHover)} from hover: ${printable(order)} meets ${quantity(frequency, "Hz")} (${printable(modeName)}) at ${quantity(rpm, "rpm")}.`,
    );
  }
  const columns = [
    { title: "Speed", unit: "rpm", align: "right" },
    { title: "From hover", align: "right" },
    { title: "Mode", align: "right" },
    { title: "Frequency", unit: "Hz", align: "right" },
    { title: "What moves", least: 16 },
    { title: "Shaken by", least: 12 },
  ] as const;
  const rows = near
    .slice(0, MOST_CROSSINGS)
    .map(({ rpm, fromHover, mode, frequency, modeName, order }) => [
      digits(rpm),
      signedPercent(fromHover),
      String(mode),
      digits(frequency),
      modeName,
      order,
    ]);
  const rest = near.length - rows.length;
  return (
    renderTable(columns, rows, { headingInk: ink.quiet }) +
    (rest > 0 ? wrap(`and ${rest} more within the same distance of hover`, "  ") : "")
  );
}
