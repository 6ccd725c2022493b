/** Noise and filter delay at every spot, variant beside variant. */

import { type SpotRow, spotsAcross } from "../../study/across.ts";
import type { ComparisonStudy } from "../../study/results.ts";
import { percentOf } from "../../study/share-words.ts";
import { chartBox } from "../figure.ts";
import { type Html, html, named, type Part } from "../html.ts";
import { decibels, degreesPerSecond, milliseconds, signed, three } from "../numbers.ts";
import { type Column, section, table } from "../section.ts";
import { marksLegend } from "../series-marks.ts";
import { rowsHeight } from "./frequencies-section.ts";
import { levelOf, spotsFinding, zeroLevel } from "./spots-figure.ts";
import { delayWords } from "./variants-section.ts";

export function noiseSection(study: ComparisonStudy): Html {
  const rows = spotsAcross(study);
  const finding = spotsFinding(study);
  if (rows.length === 0) return section("noise", "Noise at every spot", { finding });
  const { variants, sure } = study;
  const names = variants.map((v) => v.name);
  const zero = zeroLevel(study);
  const together =
    variants.length > 1
      ? " What scatters alike in all variants moves all bars together: bars that overlap may still differ in every frame, which the first chart of this page shows."
      : "";
  const bars = sure
    ? ` Nine of ten frames lie within the bar, half of them on either side of the mark.${together}`
    : "";
  const picture =
    variants.length > 1 &&
    html`<figure>${chartBox("noise-chart", "bars", finding, rowsHeight(rows.length, names.length))}
<figcaption>${marksLegend(names)}</figcaption></figure>`;
  return section(
    "noise",
    "Noise at every spot",
    {
      finding,
      how: `All as the gyro passes it on, over the flight mix. 0 dB stands for ${zero.words}, ${degreesPerSecond(zero.gyro)} rms; every 6 dB is a factor of two.${bars}`,
    },
    picture,
    variants.length > 1 ? levelsTable(study, rows) : spotsTable(study, rows),
  );
}

function levelsTable({ variants }: ComparisonStudy, rows: readonly SpotRow[]): Html {
  const columns = variants.map(
    (v, n): Column<SpotRow> => ({
      head: html`${named(v.name)}<br><small>deg/s rms</small>`,
      label: `${v.name}, deg/s rms`,
      number: true,
      cell: (r) => levelCell(r, n),
    }),
  );
  return table(
    "Gyro noise at every spot, with nine of ten frames and the change against the first variant",
    [{ head: "spot", names: true, cell: spotName }, ...columns],
    rows,
    { cards: true },
  );
}

function spotName({ name, plate }: SpotRow): Part {
  return html`<strong>${named(name)}</strong> <small>on ${named(plate)}</small>`;
}

function levelCell({ cells }: SpotRow, n: number): Part {
  const c = cells[n];
  if (!c) return html`<span class="quiet">not there</span>`;
  const first = cells[0];
  const change = n > 0 && first && decibels(levelOf(c.spot.gyro, first.spot.gyro));
  const band = c.noise?.perSecond;
  return html`<strong>${three(c.spot.gyro)}</strong>${change && html` <small class="axis">${change}</small>`}${band && html` <small class="axis">${three(band.low.value)} to ${three(band.high.value)}</small>`}${ruledOut(c.spot.ruledOut)}${c.best && html` <small class="axis">best</small>`}`;
}

function ruledOut(why: string | undefined): Part {
  return why !== undefined && html` <small class="axis hard">avoid: ${why}</small>`;
}

/** Of one variant alone: with the chances of every spot. */
function spotsTable({ variants }: ComparisonStudy, rows: readonly SpotRow[]): Html {
  const [{ sampled }] = variants;
  const rival = ({ name }: SpotRow) => sampled?.chances.rivals.find((r) => r.name === name);
  const sorted = rows.toSorted((a, b) => (rival(b)?.best.share ?? 0) - (rival(a)?.best.share ?? 0));
  const share = (head: string, of: (r: NonNullable<ReturnType<typeof rival>>) => number) => ({
    head: html`${head}<br><small>of frames</small>`,
    label: `${head}, of frames`,
    number: true,
    cell: (row: SpotRow): Part => {
      const r = rival(row);
      return r ? percentOf(of(r)) : "–";
    },
  });
  return table(
    "Spots, most often the best first",
    [
      { head: "spot", names: true, cell: spotName },
      {
        head: html`gyro<br><small>deg/s rms</small>`,
        label: "gyro, deg/s rms",
        number: true,
        cell: (r) => levelCell(r, 0),
      },
      ...(rows.some((r) => r.cells[0]?.spot.delay !== undefined)
        ? [
            {
              head: html`delay<br><small>low-pass, ms</small>`,
              label: "delay of the low-pass, ms",
              number: true,
              cell: (r: SpotRow) => delayWords(r.cells[0]?.spot.delay),
            },
          ]
        : []),
      ...(sampled
        ? [
            share("best", (r) => r.best.share),
            share("within 1 dB of the best", (r) => r.near.share),
            share("to be avoided", (r) => r.out.share),
          ]
        : []),
    ],
    sorted,
    { cards: true },
  );
}

/** undefined where delays were not asked for, or there is one variant, whose delays stand with its noise. */
export function delaySection(study: ComparisonStudy): Html | undefined {
  const { variants } = study;
  const rows = spotsAcross(study);
  const known = rows.some((r) => r.cells.some((c) => c?.spot.delay !== undefined));
  if (!known || variants.length === 1) return undefined;
  const finding = delayFinding(study);
  const columns = variants.map(
    (v, n): Column<SpotRow> => ({
      head: html`${named(v.name)}<br><small>ms</small>`,
      label: `${v.name}, ms`,
      number: true,
      cell: ({ cells }) => {
        const [first, c] = [cells[0]?.spot.delay, cells[n]?.spot];
        if (!c) return html`<span class="quiet">not there</span>`;
        const change =
          n > 0 && Number.isFinite(c.delay) && Number.isFinite(first)
            ? signed(1e3 * ((c.delay ?? 0) - (first ?? 0)), 2)
            : undefined;
        return html`<strong>${delayWords(c.delay)}</strong>${change !== undefined && html` <small class="axis">${change}\u00a0ms</small>`} <small class="axis">with notches: ${delayWords(c.delayWithNotches)}</small>`;
      },
    }),
  );
  const names = variants.map((v) => v.name);
  return section(
    "delay",
    "What filtering costs",
    {
      finding,
      how: `The louder the noise and the lower its frequencies, the lower the low-pass has to cut, and the later the rate loop learns what the craft does. The least delay that leaves what is wanted, as drawn; with notches that follow the motors it is shorter.`,
    },
    html`<figure>${chartBox("delay-chart", "bars", finding, rowsHeight(rows.length, names.length))}
<figcaption>${marksLegend(names)}</figcaption></figure>`,
    table(
      "Least delay of the filters at every spot, with the change against the first variant",
      [{ head: "spot", names: true, cell: spotName }, ...columns],
      rows,
      { cards: true },
    ),
  );
}

/** Where the delay is least, in words. */
function delayFinding({ variants }: ComparisonStudy): string {
  const all = variants.flatMap((v) =>
    v.outcome.spots.flatMap(({ name, delay, ruledOut }) =>
      delay !== undefined && Number.isFinite(delay) && ruledOut === undefined
        ? [{ name, delay, variant: v.name }]
        : [],
    ),
  );
  if (all.length === 0) return "At no spot does a low-pass bring the noise to what is wanted.";
  const [least] = all.toSorted((a, b) => a.delay - b.delay);
  return `Filtering costs least at “${least.name}” with “${least.variant}”: ${milliseconds(least.delay)} of delay.`;
}
