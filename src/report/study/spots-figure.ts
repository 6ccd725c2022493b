/** Noise and filter delay at every spot, variant beside variant. */

import { bestSpot, type SpotCell, type SpotRow, spotsAcross } from "../../study/across.ts";
import type { ComparisonStudy } from "../../study/results.ts";
import { type BandMark, bandFigure, placeInRow, uprightLine } from "../band-figure.ts";
import type { Figure } from "../figure.ts";
import { decibels, degreesPerSecond, milliseconds, three } from "../numbers.ts";
import { signedTicks } from "../ticks.ts";

/** What 0 dB stands for: the best spot of the reference as drawn, deg/s rms; any spot where it has none. */
export function zeroLevel({ variants }: Pick<ComparisonStudy, "variants">): {
  readonly gyro: number;
  readonly words: string;
} {
  const [reference] = variants;
  const best = bestSpot(reference)?.spot;
  const all = variants.flatMap((v) => v.outcome.spots.map((s) => s.gyro));
  const gyro = best?.gyro ?? Math.min(...all);
  const whose = variants.length > 1 ? ` of “${reference.name}”` : "";
  return { gyro, words: best ? `the best spot${whose} as drawn` : "the quietest spot" };
}

export const levelOf = (gyro: number, zero: number) => 20 * Math.log10(gyro / zero);

export function spotsFigure(study: ComparisonStudy): Figure {
  const rows = spotsAcross(study);
  const zero = zeroLevel(study);
  const names = study.variants.map((v) => v.name);
  const marks = rows.flatMap((row, i) =>
    row.cells.flatMap((cell, n): BandMark[] => {
      if (!cell) return [];
      const at = placeInRow(i, n, names.length);
      return [mark(row, cell, names, n, at, zero.gyro)];
    }),
  );
  const ends = marks.flatMap((m) => [m.low ?? m.middle, m.high ?? m.middle]);
  const [low, high] = [Math.min(0, ...ends), Math.max(1, ...ends)];
  const room = 0.06 * (high - low);
  return bandFigure({
    rows: rows.map((r) => ({ name: r.name })),
    series: names,
    marks,
    xaxis: {
      title: { text: `gyro noise, dB (0 dB: ${three(zero.gyro)} deg/s rms)`, standoff: 8 },
      range: [low - room, high + (marks.some((m) => m.note) ? 4 : 1) * room],
      ...signedTicks(low - room, high + room),
    },
    shapes: [uprightLine(0, "solid")],
  });
}

function mark(
  { name }: SpotRow,
  { spot, noise }: SpotCell,
  names: readonly string[],
  series: number,
  at: number,
  zero: number,
): BandMark {
  const band = noise?.perSecond;
  const middle = levelOf(band?.median.value ?? spot.gyro, zero);
  const words = [
    `${names.length > 1 ? `${names[series]}, ` : ""}${name}: ${degreesPerSecond(spot.gyro)} rms as drawn`,
    band && `nine of ten frames ${three(band.low.value)} to ${degreesPerSecond(band.high.value)}`,
    spot.ruledOut !== undefined && `avoid: ${spot.ruledOut}`,
  ];
  return {
    at,
    series,
    middle,
    ...(band && { low: levelOf(band.low.value, zero), high: levelOf(band.high.value, zero) }),
    words: words.filter((w) => typeof w === "string").join("; "),
    ...(spot.ruledOut !== undefined && { note: "avoid" }),
  };
}

/** What the chart shows, in words. */
export function spotsFinding(study: ComparisonStudy): string {
  const all = study.variants.flatMap((v) => v.outcome.spots.map((spot) => ({ v, spot })));
  if (all.length === 0) return "No spot for a sensor stack is named, so there is no noise to show.";
  const sorted = all.toSorted((a, b) => a.spot.gyro - b.spot.gyro);
  const [least, most] = [sorted[0], sorted[sorted.length - 1]];
  const where = ({ v, spot }: (typeof all)[number]) =>
    study.variants.length > 1 ? `at “${spot.name}” of “${v.name}”` : `at “${spot.name}”`;
  const span = decibels(levelOf(most.spot.gyro, least.spot.gyro));
  return `As drawn, gyro noise is least ${where(least)}, ${degreesPerSecond(least.spot.gyro)} rms, and most ${where(most)}, ${span}.`;
}

/** undefined where delays were not asked for. */
export function delayFigure(study: ComparisonStudy): Figure | undefined {
  const rows = spotsAcross(study);
  const names = study.variants.map((v) => v.name);
  const known = rows.flatMap((r) => r.cells.flatMap((c) => c?.spot.delay ?? []));
  if (known.length === 0) return undefined;
  const finite = known.filter(Number.isFinite);
  const most = 1e3 * Math.max(1e-4, ...finite);
  const marks = rows.flatMap(({ name, cells }, i) =>
    cells.flatMap((cell, n): BandMark[] => {
      const delay = cell?.spot.delay;
      if (delay === undefined) return [];
      const reached = Number.isFinite(delay);
      const words = reached ? milliseconds(delay) : "no low-pass leaves so little";
      return [
        {
          at: placeInRow(i, n, names.length),
          series: n,
          middle: reached ? 1e3 * delay : 1.12 * most,
          words: `${names[n]}, ${name}: ${words}`,
          ...(!reached && { note: "out of reach", noteBefore: true }),
        },
      ];
    }),
  );
  return bandFigure({
    rows: rows.map((r) => ({ name: r.name })),
    series: names,
    marks,
    xaxis: {
      title: { text: "delay of the low-pass alone, ms", standoff: 8 },
      range: [0, 1.16 * most],
      nticks: 7,
    },
  });
}
