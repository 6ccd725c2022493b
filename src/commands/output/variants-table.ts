/** Variants side by side: what each weighs, where it vibrates, what its best spot reads. */

import { bestSpot, modesAcross, tellingModes } from "../../study/across.ts";
import type { ComparisonStudy, VariantResult } from "../../study/results.ts";
import { percentOf } from "../../study/share-words.ts";
import type { BarSigns } from "../terminal/bar-signs.ts";
import type { Ink } from "../terminal/ink.ts";
import { digits } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { renderTable } from "../terminal/table.ts";
import { wrap } from "../terminal/wrap.ts";
import { bandPlot, bandRow } from "./band-plot.ts";

/** Frequencies told of each variant. */
const MODES = 2;
const RIGHT = { align: "right" } as const;
const NOTHING = "-";
const NOT_REACHED = "n/a";

export function variantsTable(study: ComparisonStudy, ink: Ink): string {
  const { variants, sure } = study;
  const modes = tellingModes(modesAcross(study), MODES);
  const delays = variants.some((v) => bestSpot(v)?.spot.delay !== undefined);
  const columns = [
    { title: "Variant", least: 10 },
    { title: "Mass", unit: "g", ...RIGHT },
    ...modes.map((m) => ({ title: `Mode ${m.cells[0]?.number}`, unit: "Hz", ...RIGHT })),
    { title: "Best spot", least: 9 },
    { title: "Gyro", unit: "deg/s", ...RIGHT },
    ...(delays ? [{ title: "Delay", unit: "ms", ...RIGHT }] : []),
    ...(sure ? [{ title: "Quietest", ...RIGHT }] : []),
  ];
  const chance = (v: VariantResult) => sure?.chances.rivals.find((r) => r.name === v.name)?.best;
  const rows = variants.map((v, i) => {
    const spot = bestSpot(v)?.spot;
    return [
      v.name,
      digits(1e3 * v.outcome.mass),
      ...modes.map(({ cells: { [i]: cell } }) => (cell ? digits(cell.frequency) : NOTHING)),
      spot?.name ?? "all are ruled out",
      spot ? digits(spot.gyro) : NOTHING,
      ...(delays ? [delayText(spot?.delay)] : []),
      ...(sure ? [percentOf(chance(v)?.share ?? 0)] : []),
    ];
  });
  const first = sure?.chances.rivals[0]?.name;
  const table = renderTable(columns, rows, {
    headingInk: ink.quiet,
    ink: (r, text) => (variants[r].name === first ? ink.best(text) : text),
  });
  const moving = modes.map((m) => `${m.cells[0]?.number}, ${printable(m.name)}`).join("; ");
  const legend = [
    modes.length > 0 ? `Modes by their number in "${printable(variants[0].name)}": ${moving}.` : "",
    "Gyro: rms at the best spot, as the chip passes it on.",
    delays ? "Delay: of the low-pass that leaves what is wanted there." : "",
    rows.some((cells) => cells.includes(NOT_REACHED))
      ? `${NOT_REACHED}: no low-pass leaves so little.`
      : "",
    sure ? "Quietest: in so many of the frames tried." : "",
  ];
  return table + wrap(legend.filter((text) => text !== "").join(" "));
}

/** s as ms; absent: not asked for. */
export function delayText(delay: number | undefined): string {
  if (delay === undefined) return NOTHING;
  return Number.isFinite(delay) ? digits(1e3 * delay) : NOT_REACHED;
}

/** Where nine of ten frames lie, at each variant's best spot; "" without samples. */
export function variantsPlot({ variants }: ComparisonStudy, signs: BarSigns): string {
  const rows = variants.map((v) => ({
    name: v.name,
    ...bandRow(bestSpot(v)?.noise?.perSecond),
  }));
  const plot = bandPlot(rows, "deg/s", signs);
  if (plot === "") return "";
  return (
    wrap(
      "Bar: nine of ten frames; mark: half of them on either side; at the spot that is best as drawn. What scatters alike in all variants moves all bars together, so overlapping bars may still differ for sure.",
    ) + plot
  );
}
