/** `stillpoint join`: the parts of a sweep as one file. */

import type { Command } from "commander";
import { inputError } from "../errors.ts";
import type { Joined } from "../runs/join.ts";
import type { Part } from "../runs/part.ts";
import { count } from "./terminal/numbers.ts";
import { printable } from "./terminal/printable.ts";
import type { Terminal } from "./terminal/terminal.ts";
import { wrap } from "./terminal/wrap.ts";

interface JoinOptions {
  readonly out: string;
  readonly partial?: boolean;
}

const EXAMPLES = `
Examples:
  stillpoint join part-1.csv part-2.csv --out whole.csv
  stillpoint join part-1.csv --out half.csv --partial

The first puts the rows of both parts in order, as one run would have written
them. When rows are missing it says which, and how to compute them.`;

export function setUp(command: Command, terminal: Terminal): void {
  command
    .description(
      "Joins the files that the parts of a sweep were written to (sweep --shard). Nothing is written when a row is missing or stands twice, or when the files are not of one sweep.",
    )
    .argument("<parts...>", "the files, all .csv or all .jsonl")
    .requiredOption("--out <file>", "where the whole goes, with the same ending")
    .option("--partial", "join what is there though rows are missing")
    .addHelpText("after", EXAMPLES)
    .action((parts: readonly string[], options: JoinOptions) => join(parts, options, terminal));
}

async function join(
  files: readonly string[],
  { out, partial = false }: JoinOptions,
  terminal: Terminal,
): Promise<void> {
  const { rowFormat } = await import("../runs/sheet.ts");
  const { readPart } = await import("../runs/part.ts");
  const { joinParts } = await import("../runs/join.ts");
  const { isSameFile, requireFree, ROWS } = await import("./overwrite.ts");
  const { statIfThere, writeFiles } = await import("./write-files.ts");
  const { writtenLines } = await import("./output/written.ts");

  const format = rowFormat(out);
  const parts = files.map((file) => readPart(file));
  if (parts.some((part) => part.format !== format)) {
    throw inputError("--out", `${out} and the parts must all be .csv or all .jsonl.`);
  }
  if (files.some((file) => isSameFile(file, out))) {
    throw inputError("--out", `${out} is one of the parts; choose another name.`);
  }
  const joined = joinParts(parts, partial);
  requireFree(out, ROWS);
  if (statIfThere(out)?.isFile()) requireNothingLost(readPart(out, "--out"), parts);
  writeFiles([{ path: out, text: joined.text }]);
  terminal.print(writtenLines([out]) + summary(joined));
}

/** Rows may have taken hours: a file with others than these is not written over. */
function requireNothingLost(older: Part, parts: readonly Part[]): void {
  const lines = new Set(parts.flatMap(({ rows }) => rows.map(({ line }) => line)));
  if (older.rows.every(({ line }) => lines.has(line))) return;
  throw inputError(
    "--out",
    `${older.file} exists and holds rows that are not in these parts; choose another name or delete it.`,
  );
}

function summary({ rows, of, failed, missing }: Joined): string {
  const all = rows === of ? `All ${of} rows of the sweep` : `${rows} of ${of} rows`;
  const without =
    failed === 0
      ? "."
      : `; ${count(failed, "variant")} could not be computed, the column "failed" says why.`;
  return wrap(all + without) + (missing === undefined ? "" : wrap(printable(missing)));
}
