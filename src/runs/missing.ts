/** Which rows of a sweep are missing, and what to run to get them. */

import type { Part } from "./part.ts";
import { inRanges, listed } from "./ranges.ts";

/** More parts than this are not named one by one. */
const MOST_SHARDS = 8;

/** @param missing numbers of rows (1..), ascending, not empty */
export function missingText(
  missing: readonly number[],
  parts: readonly Part[],
  of: number,
): string {
  const are = missing.length === 1 ? "is" : "are";
  const what = `${missing.length} of ${of} rows ${are} missing: ${inRanges(missing)}.`;
  return [what, ...advice(missing, parts, of)].join(" ");
}

function advice(missing: readonly number[], parts: readonly Part[], of: number): string[] {
  const n = commonStep(parts) ?? fewestShards(missing, of);
  if (n === undefined) return [];
  const shards = shardsOf(missing, n);
  const begun = shards.flatMap((shard) => {
    const part = parts.find(({ rows }) => rows.some(({ index }) => shardAt(index, n) === shard));
    return part === undefined ? [] : [{ shard, file: part.file }];
  });
  const goOn = begun.slice(0, MOST_SHARDS).map(({ shard, file }) => {
    const which = n === 1 ? "" : ` (part ${shard}/${n})`;
    return `${file}${which} is not complete: run the command that wrote it again, and it goes on where it stopped.`;
  });
  const whole = shards.filter((shard) => begun.every((one) => one.shard !== shard));
  if (whole.length === 0 || n === 1) return goOn;
  const names = whole.slice(0, MOST_SHARDS).map((shard) => `--shard ${shard}/${n}`);
  const others = whole.length > names.length ? [`${whole.length - names.length} more`] : [];
  return [...goOn, `Run the sweep with ${listed([...names, ...others])} as well.`];
}

function shardAt(index: number, n: number): number {
  return ((index - 1) % n) + 1;
}

function shardsOf(indexes: readonly number[], n: number): number[] {
  const shards = new Set(indexes.map((index) => shardAt(index, n)));
  return [...shards].sort((a, b) => a - b);
}

/** Into how many shards the sweep was cut, by the files that are one or its beginning. */
function commonStep(parts: readonly Part[]): number | undefined {
  const steps = new Set(parts.flatMap((part) => stepOf(part) ?? []));
  const [step] = steps;
  return steps.size === 1 ? step : undefined;
}

function stepOf({ rows }: Part): number | undefined {
  if (rows.length < 2) return undefined;
  const [first, second] = rows;
  const step = second.index - first.index;
  const isShard = first.index <= step && rows.every((r, i) => r.index === first.index + i * step);
  return isShard ? step : undefined;
}

/** The smallest n for which whole shards i/n, not too many, are exactly what is missing. */
function fewestShards(missing: readonly number[], of: number): number | undefined {
  for (let n = 2; n <= Math.min(of, 1000); n++) {
    const shards = shardsOf(missing, n);
    if (shards.length > MOST_SHARDS) continue;
    const size = (shard: number): number => Math.floor((of - shard) / n) + 1;
    if (shards.reduce((sum, shard) => sum + size(shard), 0) === missing.length) return n;
  }
  return undefined;
}
