/** What `compare` and `uncertainty` share: variants computed, then told and drawn. */

import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import path from "node:path";
import type { FrameSource } from "../frame/change.ts";
import type { VariantAsked } from "../runs/asked.ts";
import type { FrameGiven } from "../runs/compare-run.ts";
import type { ComparisonStudy } from "../study/results.ts";
import { solveOptionsText } from "./input/options.ts";
import { type RunOptions, type StudyOptions, sampleOptions } from "./input/study-options.ts";
import type { Terminal } from "./terminal/terminal.ts";

export interface StudyAsked {
  readonly frames: readonly FrameGiven[];
  readonly variants: readonly VariantAsked[];
  /** whether the spreads are sampled */
  readonly sampled: boolean;
  /** "-comparison": of the report's usual name */
  readonly suffix: string;
  /** the options as typed, for the report */
  readonly typed: string;
}

/** A frame file read for variants. @throws InputError */
export async function givenFrame(
  framePath: string,
  options: RunOptions,
): Promise<{ source: FrameSource; given: FrameGiven }> {
  const { requireFrameFile } = await import("./input/missing-frame.ts");
  const { readFrameSource } = await import("../frame/change.ts");
  const { LIBRARY_NAMES } = await import("../material/library-names.ts");
  const { readLength } = await import("./input/lengths.ts");
  requireFrameFile(framePath);
  const source = readFrameSource(framePath, LIBRARY_NAMES);
  const bytes = readFileSync(framePath);
  const { meshSize, modes, keepHeights } = options;
  const given = {
    path: framePath,
    text: bytes.toString("utf8"),
    hash: createHash("sha256").update(bytes).digest("hex"),
    ...(meshSize !== undefined && { meshSize: await readLength("--mesh-size", meshSize) }),
    ...(modes !== undefined && { modes }),
    ...(keepHeights !== undefined && { keepHeights }),
  };
  return { source, given };
}

/** @throws InputError, SolveError, InterruptedError */
export async function runStudy(
  asked: StudyAsked,
  options: StudyOptions,
  terminal: Terminal,
): Promise<void> {
  const [first] = asked.frames;
  const { requireReportFree } = await import("./page-input.ts");
  const report = reportPath(first.path, asked.suffix, options.report);
  if (report !== undefined) await requireReportFree(report, options, first.path);
  const study = await computed(asked, options, terminal);
  if (report !== undefined) {
    const { writeFiles } = await import("./write-files.ts");
    const { pageParts } = await import("./page-input.ts");
    const { renderComparison } = await import("../report/study-page.ts");
    const { input, beside } = await pageParts(report, options, [
      asked.typed,
      solveOptionsText(options),
    ]);
    writeFiles([{ path: report, text: renderComparison(study, input) }, ...beside]);
  }
  if (options.json) {
    const { comparisonJson } = await import("./output/comparison-json.ts");
    terminal.print(comparisonJson(study, { ...(report !== undefined && { report }) }));
    return;
  }
  const { comparisonText } = await import("./output/comparison-text.ts");
  const { rankedLines } = await import("./output/written.ts");
  terminal.print(
    comparisonText(study, terminal.ink, terminal.bars) +
      rankedLines({ ...(report !== undefined && { report }) }, options),
  );
}

async function computed(
  { frames, variants, sampled }: StudyAsked,
  options: StudyOptions,
  terminal: Terminal,
): Promise<ComparisonStudy> {
  const { interruptible } = await import("../runs/interrupt.ts");
  const { compareVariants } = await import("../runs/compare-run.ts");
  const { stageProgressOn } = await import("./terminal/stage-progress.ts");
  const progress = stageProgressOn(terminal);
  const how = await sampleOptions(options);
  try {
    return await interruptible((signal) =>
      compareVariants(frames, variants, { ...how, sampled, signal, progress: progress.show }),
    );
  } finally {
    progress.end();
  }
}

/** @param report as given; false: none */
export function reportPath(
  frame: string,
  suffix: string,
  report: string | false | undefined,
): string | undefined {
  if (report === false) return undefined;
  return report ?? path.join("reports", `${path.parse(frame).name}${suffix}.html`);
}
