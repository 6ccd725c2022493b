/** A mode's main parts with mirrored copies taken together: "4 x arm" says more than four names. */

import type { Model } from "../../model/types.ts";
import type { Share } from "../../modes/types.ts";

/** Parts below this share of a mode's strain energy are not worth a mention. */
const LEAST_SHARE = 0.05;
const MOST_PARTS = 3;

export interface PooledShare {
  readonly name: string;
  /** of the strain energy, 0..1 */
  readonly strain: number;
}

interface Named {
  readonly arms: readonly PartName[];
  readonly standoffs: readonly PartName[];
}

type PartName = Pick<Model["arms"][number], "name" | "group">;

/** The name under which each part that has copies is pooled. */
export function poolNames(model: Named): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const parts of [model.arms, model.standoffs]) {
    for (const { name, group } of parts) {
      const copies = parts.filter((part) => part.group === group).length;
      if (copies < 2) continue;
      names.set(name, `${copies} x ${group}`);
      names.set(`${name} root`, `${copies} x ${group} root`);
    }
  }
  return names;
}

/** The parts that store most of the mode's strain energy, largest first, at least one. */
export function mainParts(
  shares: readonly Share[],
  pools: ReadonlyMap<string, string>,
): PooledShare[] {
  const pooled = new Map<string, number>();
  for (const { part, strain } of shares) {
    const name = pools.get(part) ?? part;
    pooled.set(name, (pooled.get(name) ?? 0) + strain);
  }
  return [...pooled]
    .map(([name, strain]) => ({ name, strain }))
    .sort((a, b) => b.strain - a.strain)
    .filter(({ strain }, i) => i === 0 || strain >= LEAST_SHARE)
    .slice(0, MOST_PARTS);
}
