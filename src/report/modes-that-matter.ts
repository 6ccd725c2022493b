/** Which modes say why: those that may be met at hover, and those that cause noise. */

import type { ModeDescription } from "../modes/types.ts";
import type { Cause, Crossing, RankedCandidate } from "../ranking/types.ts";
import { percent } from "./numbers.ts";
import { labelled } from "./place-names.ts";
import type { Analysed } from "./types.ts";

/** Shares of a place's noise below this are no reason to draw a mode's band. */
const LEAST_SHARE = 0.05;
/** Places whose causes count: the first ones. */
const PLACES = 3;

export interface Matter {
  readonly mode: ModeDescription;
  /** met within the margin around hover, or anywhere its frequency may lie */
  readonly nearHover: boolean;
  /** "38 % of the noise at 1a", or nothing */
  readonly causes: string;
}

/**
 * Whether the crossing can lie right at hover for some frequency within the band about the mode's: one that
 * is off by a share moves its crossings by the same share.
 */
export function mayBeAtHover({ fromHover }: Pick<Crossing, "fromHover">, band: number): boolean {
  // At hover the order pushes at f/(1 + fromHover).
  return Math.abs(1 / (1 + fromHover) - 1) <= band;
}

/**
 * The mode of the frame as drawn that a cause is about. Causes have the stack at their own place, which
 * moves frequencies a little: the nearest of the same name within the band, else the nearest in it.
 */
export function drawnMode(
  { frequency, modeName, mode }: Pick<Cause, "frequency" | "modeName" | "mode">,
  modes: readonly ModeDescription[],
  band: number,
): ModeDescription | undefined {
  if (mode === 0) return undefined;
  const off = (m: ModeDescription) => Math.abs(m.frequency / frequency - 1);
  const near = modes.filter((m) => off(m) <= band).sort((a, b) => off(a) - off(b));
  return near.find((m) => m.name === modeName) ?? near[0];
}

/**
 * The drawn modes through which noise comes at the best place, the one with most first; undefined stands
 * for one that has none like it among those as drawn.
 */
export function heardModes({
  modes,
  ranking,
}: Pick<Analysed, "modes" | "ranking">): (ModeDescription | undefined)[] {
  const best = ranking?.candidates[0];
  if (!best) return [];
  const heard = new Map<number, { share: number; mode: ModeDescription | undefined }>();
  for (const cause of best.causes) {
    if (cause.mode === 0) continue;
    const mode = drawnMode(cause, modes.described, ranking.frequencyBand);
    const key = mode?.number ?? -cause.mode;
    heard.set(key, { share: (heard.get(key)?.share ?? 0) + cause.share, mode });
  }
  return [...heard.values()].sort((a, b) => b.share - a.share).map((h) => h.mode);
}

/** In the order of their numbers. */
export function modesThatMatter({ modes, ranking }: Pick<Analysed, "modes" | "ranking">): Matter[] {
  if (!ranking) return [];
  const { candidates, crossings, frequencyBand } = ranking;
  const shares = labelled(candidates.slice(0, PLACES)).map(({ label, place }) => ({
    label,
    byMode: sharesOf(place, modes.described, frequencyBand),
  }));
  return modes.described.flatMap((mode): Matter[] => {
    const nearHover = crossings.some(
      (c) => c.mode === mode.number && (c.nearHover || mayBeAtHover(c, frequencyBand)),
    );
    const caused = shares.flatMap(({ label, byMode }) => {
      const share = byMode.get(mode.number) ?? 0;
      return share >= LEAST_SHARE ? [{ label, share }] : [];
    });
    if (!nearHover && caused.length === 0) return [];
    const causes = caused.map(({ label, share }, i) =>
      i === 0
        ? `${percent(share, 2)} of the noise at ${label}`
        : `${percent(share, 2)} at ${label}`,
    );
    return [{ mode, nearHover, causes: causes.join(", ") }];
  });
}

/** Shares of a place's noise by number of the drawn mode. */
function sharesOf(
  { causes }: RankedCandidate,
  modes: readonly ModeDescription[],
  band: number,
): Map<number, number> {
  const out = new Map<number, number>();
  for (const cause of causes) {
    const mode = drawnMode(cause, modes, band);
    if (mode) out.set(mode.number, (out.get(mode.number) ?? 0) + cause.share);
  }
  return out;
}
