/** What threads send to each other. */

import { type Finding, InputError, SolveError } from "../errors.ts";
import type { JobResult } from "./task.ts";

export interface ThreadSetup {
  /** URL of the task module */
  readonly task: string;
  readonly setup: unknown;
}

export type Answer<R> =
  | { readonly kind: "ready" }
  | { readonly kind: "result"; readonly result: JobResult<R> }
  /** ends the run */
  | { readonly kind: "error"; readonly error: PackedError };

/** An error as plain data: structured clones lose its class and its own fields. */
export type PackedError =
  | { readonly type: "input"; readonly findings: readonly Finding[]; readonly file?: string }
  | { readonly type: "solve"; readonly message: string }
  | { readonly type: "other"; readonly message: string; readonly stack?: string };

export function packError(error: unknown): PackedError {
  if (error instanceof InputError) {
    const { findings, file } = error;
    return { type: "input", findings, ...(file !== undefined && { file }) };
  }
  if (error instanceof SolveError) return { type: "solve", message: error.message };
  if (!(error instanceof Error)) return { type: "other", message: String(error) };
  const { message, stack } = error;
  return { type: "other", message, ...(stack !== undefined && { stack }) };
}

export function unpackError(packed: PackedError): Error {
  if (packed.type === "input") return new InputError(packed.findings, packed.file);
  if (packed.type === "solve") return new SolveError(packed.message);
  const error = new Error(packed.message);
  if (packed.stack !== undefined) error.stack = packed.stack;
  return error;
}
