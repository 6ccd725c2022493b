import type { z } from "zod";
import type { FilePath } from "./file-path.ts";

/** Something wrong at a place in the file, before that place is turned into line and column. */
export interface PlacedFinding {
  readonly path: FilePath;
  readonly message: string;
  /** The key itself is wrong, not its value. */
  readonly atKey?: boolean;
}

type Issue = z.core.$ZodIssue;

/**
 * Message of a union whose branches are to be looked into. Passed to zod as the error map of a
 * parse; every other message is made where the field is declared.
 */
const LOOK_INSIDE = "?";

export function fallbackMessage(issue: { readonly code?: string }): string | undefined {
  return issue.code === "invalid_union" ? LOOK_INSIDE : undefined;
}

/** One finding per thing to mend: unions resolved to the branch that was meant, keys one by one. */
export function findingsOf(issues: readonly Issue[], above: FilePath = []): PlacedFinding[] {
  return issues.flatMap((issue) => findingsOfOne(issue, [...above, ...(issue.path as FilePath)]));
}

function findingsOfOne(issue: Issue, path: FilePath): PlacedFinding[] {
  if (issue.code === "unrecognized_keys") {
    // `section` writes one line per key, in this order
    const messages = issue.message.split("\n");
    return issue.keys.map((key, i) => ({
      path: [...path, key],
      message: messages[i],
      atKey: true,
    }));
  }
  if (issue.code === "invalid_union" && issue.message === LOOK_INSIDE && issue.errors.length > 0) {
    return likeliestBranch(issue.errors, path);
  }
  return [{ path, message: issue.message }];
}

/** The branch with the least to mend: what is not even of the right type was hardly meant. */
function likeliestBranch(branches: readonly (readonly Issue[])[], path: FilePath): PlacedFinding[] {
  let best = branches[0];
  for (const branch of branches) if (misfit(branch) < misfit(best)) best = branch;
  return findingsOf(best, path);
}

function misfit(issues: readonly Issue[]): number {
  let sum = 0;
  for (const issue of issues) {
    if (issue.code === "unrecognized_keys") sum += issue.keys.length;
    else if (issue.path.length === 0 && isTypeMismatch(issue)) sum += 100;
    else sum += 1;
  }
  return sum;
}

function isTypeMismatch(issue: Issue): boolean {
  return ["invalid_type", "invalid_value", "invalid_union"].includes(issue.code);
}
