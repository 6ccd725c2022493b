/** Parts of a sweep, for several computers or several evenings. */

import { inputError } from "../errors.ts";

/** Part `part` (1..`parts`) of a sweep that is cut into `parts`. */
export interface Shard {
  readonly part: number;
  readonly parts: number;
}

export const WHOLE: Shard = { part: 1, parts: 1 };

const EXAMPLE = 'write the number of the part and of all parts, such as "2/5"';

/** "2/5" is the second of five parts. @throws InputError of --shard */
export function readShard(text: string): Shard {
  const match = /^\s*(\d{1,9})\s*\/\s*(\d{1,9})\s*$/.exec(text);
  if (match === null) {
    throw inputError("--shard", `${JSON.stringify(text)} is not a part of a sweep: ${EXAMPLE}.`);
  }
  const shard = { part: Number(match[1]), parts: Number(match[2]) };
  const { part, parts } = shard;
  if (parts === 0) throw inputError("--shard", `${text}: there must be at least one part.`);
  if (part === 0) {
    throw inputError("--shard", `${text}: parts are counted from 1, so the first is 1/${parts}.`);
  }
  if (part > parts) {
    throw inputError(
      "--shard",
      `${text}: there are ${parts} parts, so the last is ${parts}/${parts}.`,
    );
  }
  return shard;
}

/**
 * Every `parts`-th job beginning with number `part`: neighbours in a sweep cost about the same, so the
 * parts do too.
 *
 * @throws InputError when there are more parts than jobs
 */
export function shardOf<J>(jobs: readonly J[], { part, parts }: Shard): readonly J[] {
  if (parts > jobs.length) {
    throw inputError(
      "--shard",
      `${part}/${parts}: the sweep has only ${jobs.length} variants and cannot be cut into ${parts} parts.`,
    );
  }
  return parts === 1 ? jobs : jobs.filter((_, i) => i % parts === part - 1);
}
