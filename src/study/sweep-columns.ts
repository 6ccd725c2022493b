/** The figures of one variant of a sweep as the columns of a table. */

import type { Outcome } from "../variants/types.ts";

/** Lowest frequencies that have columns. */
const FREQUENCIES = 12;

/** One column: its title with the unit, and its figure. */
interface Column {
  readonly title: string;
  readonly of: (outcome: Outcome) => number | string | undefined;
}

const DEGREE = Math.PI / 180;

/** Six digits: more than the model is good for, and enough to tell neighbours apart. */
const six = (v: number) => Number(v.toPrecision(6));

function columnsOf(spots: readonly string[], delays: boolean): Column[] {
  const whole: Column[] = [
    { title: "mass_g", of: (o) => six(1e3 * o.mass) },
    ...["x", "y", "z"].map((axis, i): Column => {
      return { title: `cg_${axis}_mm`, of: (o) => six(1e3 * o.cg[i]) };
    }),
    { title: "hover_rpm", of: (o) => six((o.hover * 60) / (2 * Math.PI)) },
    { title: "best_spot", of: (o) => (o.best === undefined ? "" : o.spots[o.best].name) },
    {
      title: "best_gyro_deg_per_s",
      of: (o) => (o.best === undefined ? undefined : six(o.spots[o.best].gyro)),
    },
  ];
  const perSpot = spots.flatMap((name): Column[] => {
    const at = (o: Outcome) => o.spots.find((s) => s.name === name);
    const figure = (
      title: string,
      of: (s: NonNullable<ReturnType<typeof at>>) => number,
    ): Column => ({
      title: `${title} ${name}`,
      of: (o) => {
        const spot = at(o);
        const value = spot && of(spot);
        return value === undefined || !Number.isFinite(value) ? undefined : six(value);
      },
    });
    return [
      figure("gyro_deg_per_s", (s) => s.gyro),
      figure("accel_g", (s) => s.accel),
      figure("score_dB", (s) => s.score),
      figure("tilt_deg", (s) => s.tilt / DEGREE),
      ...(delays
        ? [
            figure("delay_ms", (s) => 1e3 * (s.delay ?? Number.NaN)),
            figure("delay_with_notches_ms", (s) => 1e3 * (s.delayWithNotches ?? Number.NaN)),
          ]
        : []),
      { title: `ruled_out ${name}`, of: (o) => at(o)?.ruledOut ?? "" },
    ];
  });
  const modes = Array.from({ length: FREQUENCIES }, (_, k): Column => {
    return {
      title: `f${k + 1}_Hz`,
      of: (o) => (k < o.frequencies.length ? six(o.frequencies[k]) : undefined),
    };
  });
  return [
    ...whole,
    ...perSpot,
    ...modes,
    { title: "solution", of: (o) => o.solution.method },
    { title: "estimated_error_percent", of: (o) => six(100 * o.solution.error) },
  ];
}

export interface SweepColumns {
  readonly titles: readonly string[];
  /** one for each title */
  readonly cells: (outcome: Outcome) => (number | string | undefined)[];
}

/**
 * @param spots their names; all variants of one file have the same
 * @param delays whether filter delays have columns
 */
export function sweepColumns(spots: readonly string[], delays: boolean): SweepColumns {
  const columns = columnsOf(spots, delays);
  return {
    titles: columns.map((c) => c.title),
    cells: (outcome) => columns.map((c) => c.of(outcome)),
  };
}
