/** Modes followed over a grid of several parameters. */

import type { Outcome } from "../variants/types.ts";
import { assign } from "./assignment.ts";
import { matchModes } from "./match-modes.ts";
import { type Tracking, type TrackOptions, track } from "./track.ts";

/** One mode over the grid. */
export interface Sheet {
  /** its number at each outcome, from 1; undefined where it is not among those computed */
  readonly modes: readonly (number | undefined)[];
  /** Hz */
  readonly frequencies: readonly (number | undefined)[];
}

export interface GridTracking {
  readonly sheets: readonly Sheet[];
  /** along the last parameter, one for each combination of the others; their branches count on their own */
  readonly lines: readonly Tracking[];
}

export interface GridOptions {
  readonly count?: number;
  /** of the last parameter, rising; 0, 1, 2 ... where not given */
  readonly values?: readonly number[];
}

/** Likeness that a neighbour must add for two sheets to be the same. */
const SAME = 0.5;

/**
 * Follows modes along the last parameter for each combination of the others, then joins the branches of
 * neighbouring lines, and of neighbouring planes: those whose modes are most alike over all places that
 * both have. Coupled modes that veer around a point of the grid have no order that holds everywhere; there
 * the greater part decides.
 *
 * @param outcomes the last parameter fastest, as many as the product of `shape`
 * @param shape number of values of each parameter
 * @param between the outcome at fraction f of the way from outcome i to i + 1, along the last parameter
 */
export function trackGrid(
  outcomes: readonly Outcome[],
  shape: readonly number[],
  between?: (i: number, f: number) => Outcome | undefined,
  options: GridOptions = {},
): GridTracking {
  if (shape.length === 0 || shape.reduce((n, k) => n * k, 1) !== outcomes.length) {
    throw new Error(`${outcomes.length} outcomes are no grid of ${shape.join(" x ")}`);
  }
  const length = shape[shape.length - 1];
  const lines = Array.from({ length: outcomes.length / length }, (_, line) => {
    const first = line * length;
    const within = between && ((i: number, f: number) => between(first + i, f));
    const settings: TrackOptions = options;
    return track(outcomes.slice(first, first + length), within, settings);
  });
  let blocks = lines.map((line) => line.branches.map((b) => b.modes));
  let size = length;
  for (let axis = shape.length - 2; axis >= 0; axis--) {
    const joined: Modes[][] = [];
    for (let k = 0; k < blocks.length; k += shape[axis]) {
      const first = k * size;
      joined.push(
        blocks
          .slice(k, k + shape[axis])
          .reduce((before, block, n) =>
            join(outcomes, first + (n - 1) * size, size, before, block),
          ),
      );
    }
    blocks = joined;
    size *= shape[axis];
  }
  const sheets = (blocks[0] ?? []).map((modes) => ({
    modes,
    frequencies: modes.map((m, i) => (m === undefined ? m : outcomes[i].frequencies[m - 1])),
  }));
  return { sheets, lines };
}

type Modes = readonly (number | undefined)[];

/**
 * Adds a block to those before it.
 *
 * @param last number of the first outcome of the block before
 * @param size outcomes of a block
 */
function join(
  outcomes: readonly Outcome[],
  last: number,
  size: number,
  before: readonly Modes[],
  block: readonly Modes[],
): Modes[] {
  const reach = before[0]?.length ?? 0;
  const weights = new Float64Array(before.length * block.length);
  const places = new Int32Array(weights.length);
  for (let k = 0; k < size; k++) {
    const at = reach - size + k;
    const [a, b] = [outcomes[last + k], outcomes[last + size + k]];
    const { pairs } = matchModes(a, b, a.frequencies.length);
    const alike = new Map(pairs.map((p) => [`${p.a} ${p.b}`, Math.max(p.mac, p.together ?? 0)]));
    before.forEach((p, i) => {
      block.forEach((q, j) => {
        if (p[at] === undefined || q[k] === undefined) return;
        places[i * block.length + j]++;
        weights[i * block.length + j] += alike.get(`${p[at]} ${q[k]}`) ?? 0;
      });
    });
  }
  const partner = assign(weights, before.length, block.length);
  const nothing: undefined[] = new Array(size).fill(undefined);
  const joined: Modes[] = before.map((modes, i) => {
    const k = i * block.length + partner[i];
    const same = partner[i] >= 0 && weights[k] > 0 && weights[k] >= SAME * places[k];
    if (!same) partner[i] = -1;
    return [...modes, ...(same ? block[partner[i]] : nothing)];
  });
  const taken = new Set(partner);
  for (const [j, modes] of block.entries()) {
    if (!taken.has(j)) joined.push([...new Array(reach).fill(undefined), ...modes]);
  }
  return joined;
}
