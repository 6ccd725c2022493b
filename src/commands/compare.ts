/** `stillpoint compare`: variants side by side, and whether their differences are real. */

import path from "node:path";
import type { Command } from "commander";
import { inputError } from "../errors.ts";
import type { VariantAsked } from "../runs/asked.ts";
import { addReportOptions, collect } from "./input/report-options.ts";
import { addStudyOptions, type StudyOptions } from "./input/study-options.ts";
import { givenFrame, runStudy } from "./study.ts";
import type { Terminal } from "./terminal/terminal.ts";

interface CompareOptions extends StudyOptions {
  readonly set?: readonly string[];
  readonly sampling: boolean;
}

const EXAMPLES = `
Examples:
  stillpoint compare frames/five-inch.jsonc --set "arms.arm.thickness=4, 6 mm"
  stillpoint compare frames/five-inch.jsonc --set "bodies.battery.at#1=-42"
  stillpoint compare frames/five-inch.jsonc --set "dampingFactor=0.5"
  stillpoint compare frames/five-inch.jsonc my.jsonc --no-sampling

A place in the file is written as messages write it: keys joined by points,
entries of lists counted from 1 after "#", "*" for every name of a section.
When a thickness changes, what touched still touches (--keep-heights: not so).`;

/** More would be a sweep. */
const MOST_VARIANTS = 24;

export function setUp(command: Command, terminal: Terminal): void {
  command
    .description(
      "Compares frames, or one frame with changes: masses, modes matched by their shapes, noise and filter delay at every named spot. Draws frames from the spreads of the inputs and says whether a difference is real.",
    )
    .argument("<frames...>", "the frame file, or several; the first is the reference")
    .option(
      "--set <place=values>",
      "change a value of the file; each of several values is a variant, several --set are combined",
      collect,
    )
    .option("--no-sampling", "compare the frames as drawn only");
  const checkReport = addReportOptions(command, "reports/<frame>-comparison.html");
  addStudyOptions(command)
    .addHelpText("after", EXAMPLES)
    .action((frames: readonly string[], options: CompareOptions) => {
      checkReport(options);
      return compare(frames, options, terminal);
    });
}

async function compare(
  paths: readonly string[],
  options: CompareOptions,
  terminal: Terminal,
): Promise<void> {
  const { set = [] } = options;
  if (paths.length > 1 && set.length > 0) {
    throw inputError("--set", "goes with one frame file; several files are compared as they are.");
  }
  const frames = await Promise.all(paths.map((p) => givenFrame(p, options)));
  const variants =
    paths.length > 1
      ? fileNames(paths).map((name, frame): VariantAsked => {
          return { name, frame, changes: [], told: [] };
        })
      : await changedVariants(frames[0].source, set);
  if (variants.length < 2) {
    throw inputError(
      "--set",
      'there is nothing to compare with: name a second frame file, or changes such as --set "arms.arm.thickness=4 mm, 6 mm".',
    );
  }
  if (variants.length > MOST_VARIANTS) {
    throw inputError(
      "--set",
      `these values make ${variants.length} variants, and at most ${MOST_VARIANTS} can be compared side by side; use the command sweep for more.`,
    );
  }
  await runStudy(
    {
      frames: frames.map((f) => f.given),
      variants,
      sampled: options.sampling,
      suffix: "-comparison",
      typed: set.map((s) => `--set ${JSON.stringify(s)}`).join(" "),
    },
    options,
    terminal,
  );
}

/** Names of the files without folder and ending where these tell them apart. @throws InputError */
function fileNames(paths: readonly string[]): readonly string[] {
  if (new Set(paths).size < paths.length) {
    throw inputError("", "a frame file is named twice; there is nothing to compare it with.");
  }
  const short = paths.map((p) => path.parse(p).name);
  return new Set(short).size === paths.length ? short : paths;
}

/** The combinations of the values; where there is one only, the file as it is comes first. */
async function changedVariants(
  source: Awaited<ReturnType<typeof givenFrame>>["source"],
  set: readonly string[],
): Promise<VariantAsked[]> {
  if (set.length === 0) return [];
  const { combinationName, combinations, readVaried, toldChanges } = await import(
    "./input/changes.ts"
  );
  const varied = set.map((text) => readVaried("--set", text, source));
  const changed = combinations(varied).map(
    (values): VariantAsked => ({
      name: combinationName(varied, values),
      frame: 0,
      changes: values.flatMap((v) => v.changes),
      told: toldChanges(varied, values),
    }),
  );
  const asIs = { name: "as it is", frame: 0, changes: [], told: [] };
  return changed.length === 1 ? [asIs, ...changed] : changed;
}
