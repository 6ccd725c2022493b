/** One frame over its samples: spots and modes with where nine of ten frames lie. */

import { spotsAcross } from "../../study/across.ts";
import type { ComparisonStudy, VariantResult } from "../../study/results.ts";
import { percentOf } from "../../study/share-words.ts";
import type { BarSigns } from "../terminal/bar-signs.ts";
import type { Ink } from "../terminal/ink.ts";
import { count, digits } from "../terminal/numbers.ts";
import { renderTable } from "../terminal/table.ts";
import { wrap } from "../terminal/wrap.ts";
import { bandPlot, bandRow } from "./band-plot.ts";

const RIGHT = { align: "right" } as const;
const NOTHING = "-";
/** Modes told; the report and the JSON document have more. */
const MODES = 10;

export function sampledSpotsText(study: ComparisonStudy, ink: Ink, signs: BarSigns): string {
  const chances = study.variants[0].sampled?.chances.rivals ?? [];
  const spots = spotsAcross(study)
    .flatMap(({ name, cells: [cell] }) => (cell ? [{ name, cell }] : []))
    .map((s) => ({ ...s, chance: chances.find((r) => r.name === s.name) }))
    .sort((a, b) => (b.chance?.best.share ?? 0) - (a.chance?.best.share ?? 0));
  if (spots.length === 0) return "";
  const share = (v: number | undefined) => (v === undefined ? NOTHING : percentOf(v));
  const columns = [
    { title: "Spot", least: 12 },
    { title: "Plate", least: 6 },
    { title: "Gyro", unit: "deg/s", ...RIGHT },
    { title: "Best", ...RIGHT },
    { title: "Within 1 dB", ...RIGHT },
    { title: "Ruled out", ...RIGHT },
  ];
  const rows = spots.map(({ name, cell: { spot }, chance }) => [
    name,
    spot.plate,
    digits(spot.gyro),
    share(chance?.best.share),
    share(chance?.near.share),
    share(chance?.out.share),
  ]);
  const plot = bandPlot(
    spots.map(({ name, cell }) => ({ name, ...bandRow(cell.noise?.perSecond) })),
    "deg/s",
    signs,
  );
  return (
    renderTable(columns, rows, {
      headingInk: ink.quiet,
      ink: (r, text) => (spots[r].cell.best ? ink.best(text) : text),
    }) +
    wrap(
      "Gyro: rms as drawn, as the chip passes it on. Best, within 1 dB of it by score, ruled out: in so many of the frames tried.",
    ) +
    (plot === ""
      ? ""
      : `\n${wrap("Bar: nine of ten frames; mark: half of them on either side; gyro noise, rms.")}${plot}`)
  );
}

export function sampledModesText({ sampled, outcome }: VariantResult, ink: Ink): string {
  if (!sampled) {
    const text = Array.from(outcome.frequencies.slice(0, MODES), digits).join(", ");
    return text === "" ? "" : wrap(`${text} Hz as drawn.`);
  }
  const modes = sampled.modes.slice(0, MODES);
  const columns = [
    { title: "Mode", ...RIGHT },
    { title: "As drawn", unit: "Hz", ...RIGHT },
    { title: "Nine of ten", unit: "Hz", ...RIGHT },
    { title: "What moves", least: 20 },
  ];
  const rows = modes.map(({ number, name, nominal, band }) => [
    String(number),
    digits(nominal),
    band ? `${digits(band.low.value)} to ${digits(band.high.value)}` : NOTHING,
    name,
  ]);
  const found = modes.filter(({ band }) => band && band.found < band.of);
  const rest = outcome.frequencies.length - modes.length;
  return (
    renderTable(columns, rows, { headingInk: ink.quiet }) +
    (found.length === 0
      ? ""
      : wrap(
          `Not found again by its shape in every frame tried: ${found.map((m) => `mode ${m.number} (${percentOf(1 - (m.band?.found ?? 0) / (m.band?.of ?? 1))} missing)`).join(", ")}.`,
        )) +
    (rest > 0 ? wrap(`${count(rest, "more mode")} above these.`) : "")
  );
}
