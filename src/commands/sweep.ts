/** `stillpoint sweep`: many variants of one frame, a row each. */

import path from "node:path";
import type { Command } from "commander";
import { inputError } from "../errors.ts";
import type { FrameSource } from "../frame/change.ts";
import type { Job } from "../runs/jobs.ts";
import type { SweepEnd, SweptParameter } from "../runs/sweep-run.ts";
import type { Outcome } from "../variants/types.ts";
import { solveOptionsText } from "./input/options.ts";
import { addReportOptions, collect, type ReportOptions } from "./input/report-options.ts";
import { addRunOptions, type RunOptions } from "./input/study-options.ts";
import { givenFrame, reportPath } from "./study.ts";
import type { Terminal } from "./terminal/terminal.ts";
import { programVersion } from "./version.ts";

interface SweepOptions extends RunOptions, ReportOptions {
  readonly vary: readonly string[];
  readonly out?: string;
  readonly shard?: string;
  readonly delays?: boolean;
  readonly exact?: boolean;
}

const EXAMPLES = `
Examples:
  stillpoint sweep frames/five-inch.jsonc --vary "dampingFactor=0.5, 1, 2"
  stillpoint sweep my.jsonc --vary "arms.arm.thickness=3 mm..8 mm step 0.5 mm"
  stillpoint sweep my.jsonc --vary "dampingFactor=1, 2" --shard 1/2 --out 1.csv

Every combination of the values is a row. Ctrl-C leaves whole rows; the same
command goes on from there. --shard 2/5 computes every fifth row from the second
on, on this or another machine; the command join puts the parts together.`;

export function setUp(command: Command, terminal: Terminal): void {
  command
    .description(
      "Computes many variants of one frame: masses, frequencies, and the noise at every named spot, one row each as comma-separated values or JSON Lines. Follows the modes through the variants and says where noise is least and which variants are light and quiet at once.",
    )
    .argument("<frame>", "the frame file")
    .requiredOption(
      "--vary <place=values>",
      'a place in the file and its values, such as "arms.arm.thickness=3 mm..8 mm step 0.5 mm"; several are combined',
      collect,
    )
    .option(
      "--out <file>",
      "where the rows go, .csv or .jsonl (default: reports/<frame>-sweep.csv)",
    )
    .option("--shard <i/n>", "the i-th of n equal parts of the rows only")
    .option("--delays", "filter delays too; takes about twice as long")
    .option("--exact", "solve every variant exactly, without a reduced model");
  const checkReport = addReportOptions(command, "reports/<frame>-sweep.html");
  addRunOptions(command)
    .addHelpText("after", EXAMPLES)
    .action((frame: string, options: SweepOptions) => {
      checkReport(options);
      return sweep(frame, options, terminal);
    });
}

async function sweep(framePath: string, options: SweepOptions, terminal: Terminal): Promise<void> {
  const { readShard, shardOf } = await import("../runs/shard.ts");
  const { rowFormat } = await import("../runs/sheet.ts");
  const { gridJobs } = await import("../runs/jobs.ts");
  const { requireFree, ROWS } = await import("./overwrite.ts");
  const { requireReportFree } = await import("./page-input.ts");
  const out = options.out ?? path.join("reports", `${path.parse(framePath).name}-sweep.csv`);
  rowFormat(out);
  const shard = options.shard === undefined ? undefined : readShard(options.shard);
  const { source, given } = await givenFrame(framePath, options);
  const parameters = await readParameters(options.vary, source);
  const jobs = gridJobs(parameters);
  requireFree(out, ROWS, framePath);
  const report = reportPath(framePath, "-sweep", options.report);
  if (report !== undefined) await requireReportFree(report, options, framePath);

  const outcomes = new Map<number, Outcome>();
  const reasons = new Map<number, string>();
  const total = shard ? shardOf(jobs, shard).length : jobs.length;
  const { progress, solver } = await run(
    terminal,
    total,
    {
      frame: given,
      hash: given.hash,
      source,
      parameters,
      out,
      version: programVersion(),
      delays: options.delays ?? false,
      exact: options.exact ?? false,
      ...(shard && { shard }),
      ...(options.workers !== undefined && { workers: options.workers }),
      onOutcome: (index: number, outcome: Outcome) => void outcomes.set(index, outcome),
      onFailed: (index: number, reason: string) => void reasons.set(index, reason),
    },
    // Rows that were there before are computed again, for the findings.
    () => (shard ? [] : jobs.filter(({ index }) => !outcomes.has(index) && !reasons.has(index))),
  );
  const { sweepText } = await import("./output/sweep-text.ts");
  const { studyOf } = await import("./sweep-study.ts");
  if (!shard && outcomes.size === 0) throw noneComputed(jobs.length, reasons);
  const computed = { source, given, parameters, jobs, outcomes, reasons };
  const study = shard ? undefined : studyOf({ ...computed, solve: await solver() });
  const drawn = study && report;
  if (study && report !== undefined) {
    const { writeFiles } = await import("./write-files.ts");
    const { pageParts } = await import("./page-input.ts");
    const { renderSweep } = await import("../report/sweep-page.ts");
    const vary = options.vary.map((text) => `--vary ${JSON.stringify(text)}`);
    const { input, beside } = await pageParts(report, options, [
      ...vary,
      solveOptionsText(options),
    ]);
    writeFiles([{ path: report, text: renderSweep(study, input) }, ...beside]);
  }
  const { rankedLines } = await import("./output/written.ts");
  const files = rankedLines({ ...(drawn !== undefined && { report: drawn }) }, options);
  terminal.print(sweepText(out, progress, study) + files);
}

function noneComputed(count: number, reasons: ReadonlyMap<number, string>) {
  const [reason] = reasons.values();
  return inputError("--vary", `none of the ${count} variants can be computed: ${reason}`);
}

/**
 * @param missing rows that the findings lack, to be computed when the file is complete
 * @throws InterruptedError when Ctrl-C ended it
 */
async function run(
  terminal: Terminal,
  total: number,
  options: Omit<Parameters<typeof import("../runs/sweep-run.ts")["sweepFrame"]>[0], "signal">,
  missing: () => readonly Job[],
): Promise<SweepEnd> {
  const { InterruptedError } = await import("../errors.ts");
  const { interruptible, requireGoingOn } = await import("../runs/interrupt.ts");
  const { sweepFrame } = await import("../runs/sweep-run.ts");
  const { runProgressOn } = await import("./terminal/run-progress.ts");
  const { stageProgressOn } = await import("./terminal/stage-progress.ts");
  const rows = runProgressOn(terminal, total);
  const stages = stageProgressOn(terminal);
  try {
    return await interruptible(async (signal) => {
      const end = await sweepFrame({
        ...options,
        signal,
        progress: stages.show,
        onProgress: (p) => {
          stages.end();
          rows.show(p.rows);
        },
      });
      const { rows: done, total: all } = end.progress;
      rows.end();
      if (done < all) {
        throw new InterruptedError(
          `${done} of ${all} rows are in ${options.out}; the same command goes on from there.`,
        );
      }
      await end.compute(missing());
      requireGoingOn(signal);
      return end;
    });
  } finally {
    stages.end();
    rows.end();
  }
}

async function readParameters(
  vary: readonly string[],
  source: FrameSource,
): Promise<SweptParameter[]> {
  const { readVaried } = await import("./input/changes.ts");
  const { inputsOf } = await import("../frame/inputs.ts");
  const { formatPath } = await import("../frame/file-path.ts");
  const inputs = inputsOf(source);
  return vary.map((text) => {
    const { path: name, values } = readVaried("--vary", text, source);
    const places = values[0].changes.map((c) => c.path);
    const unit = inputs.find((i) => i.name === formatPath(places[0]))?.unit;
    return {
      name,
      values: values.map((v) => v.written),
      ...(unit !== undefined && { unit }),
      places,
    };
  });
}
