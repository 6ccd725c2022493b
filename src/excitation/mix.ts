/** How much of the flight is spent at which motor speed. */

import type { FlightMix } from "../frame/types-flight.ts";
import type { MixRow, Speeds } from "./types.ts";

/** Speeds at which the response is computed, evenly from the lowest to full speed. */
export const GRID_SPEEDS = 300;

/** Rows of the named mixes: speed as a multiple of hover (or "full"), spread, share. Common practice, no source. */
const NAMED: Record<
  Extract<FlightMix, string>,
  readonly (readonly [string, number | "full", number, number])[]
> = {
  "mostly hover": [
    ["around hover", 1, 0.08, 0.7],
    ["cruise", 1.25, 0.1, 0.25],
    ["full throttle", "full", 0.08, 0.05],
  ],
  cruise: [
    ["around hover", 1, 0.08, 0.25],
    ["cruise", 1.25, 0.1, 0.65],
    ["full throttle", "full", 0.08, 0.1],
  ],
  "hard flying": [
    ["around hover", 1, 0.15, 0.3],
    ["fast", 1.6, 0.3, 0.4],
    ["full throttle", "full", 0.15, 0.3],
  ],
};

/** The mix in rad/s and shares. Rows of a table may come in any order, and those of one speed add up. */
export function mixRows(mix: FlightMix, speeds: Speeds): { name: string; rows: MixRow[] } {
  if (typeof mix === "string") {
    const rows = NAMED[mix].map(([name, at, spread, share]) => {
      const speed = at === "full" ? speeds.full : Math.min(at * speeds.hover, speeds.full);
      return { name, speed, spread: spread * speed, share };
    });
    return { name: mix, rows };
  }
  const total = mix.reduce((sum, r) => sum + r.weight, 0);
  const rows = mix.map((r, i) => ({
    name: r.name ?? `row ${i + 1} of the table`,
    speed: r.speed,
    spread: r.spread * r.speed,
    share: r.weight / total,
  }));
  return { name: "table in the file", rows };
}

export function speedGrid(speeds: Speeds): Float64Array {
  const step = (speeds.full - speeds.low) / (GRID_SPEEDS - 1);
  return Float64Array.from({ length: GRID_SPEEDS }, (_, i) => speeds.low + i * step);
}

/**
 * Weight of every speed of the grid: each row is a normal distribution cut off at the ends of the
 * grid and brought back to its share; the weights sum to 1. No row is narrower than a step of the
 * grid, where it could fall between two of its speeds.
 */
export function mixWeights(rows: readonly MixRow[], grid: Float64Array): Float64Array {
  const weights = new Float64Array(grid.length);
  const step = grid[1] - grid[0];
  for (const row of rows) {
    const spread = Math.max(row.spread, step);
    const bell = grid.map((w) => Math.exp(-0.5 * ((w - row.speed) / spread) ** 2));
    const sum = bell.reduce((a, b) => a + b, 0);
    // A row far outside the band puts its whole share at the nearer end (see outsideBand).
    if (sum > 1e-12)
      for (let i = 0; i < grid.length; i++) weights[i] += (row.share * bell[i]) / sum;
    else weights[row.speed < grid[0] ? 0 : grid.length - 1] += row.share;
  }
  return weights;
}

/** Rows whose speed lies outside the band considered, for a warning. */
export function outsideBand(rows: readonly MixRow[], grid: Float64Array): string[] {
  const rpm = (omega: number) => Math.round((omega * 60) / (2 * Math.PI));
  const [low, full] = [grid[0], grid[grid.length - 1]];
  return rows
    .filter((r) => r.speed < low * (1 - 1e-9) || r.speed > full * (1 + 1e-9))
    .map(
      (r) =>
        `the flight mix asks for ${rpm(r.speed)} rpm (${r.name}), outside the speeds considered (${rpm(low)} to ${rpm(full)} rpm); that share counts at the nearer end`,
    );
}
