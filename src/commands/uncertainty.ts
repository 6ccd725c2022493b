/** `stillpoint uncertainty`: how sure the answer for one frame is. */

import type { Command } from "commander";
import { addReportOptions } from "./input/report-options.ts";
import { addStudyOptions, type StudyOptions } from "./input/study-options.ts";
import { givenFrame, runStudy } from "./study.ts";
import type { Terminal } from "./terminal/terminal.ts";

const EXAMPLES = `
Examples:
  stillpoint uncertainty frames/five-inch.jsonc
  stillpoint uncertainty frames/five-inch.jsonc --error 10 --seed 2
  stillpoint uncertainty frames/five-inch.jsonc --samples 100 --json

How far real frames lie from the drawing can be written into the file (section
"spreads"); where it is not, common practice is assumed and said.`;

export function setUp(command: Command, terminal: Terminal): void {
  command
    .description(
      "Draws frames from the spreads of the inputs (thicknesses, moduli, masses, joints, damping) and says where 90 % of them lie in frequency and noise, and how often each spot is the best.",
    )
    .argument("<frame>", "the frame file");
  const checkReport = addReportOptions(command, "reports/<frame>-uncertainty.html");
  addStudyOptions(command)
    .addHelpText("after", EXAMPLES)
    .action(async (frame: string, options: StudyOptions) => {
      checkReport(options);
      const { given: read } = await givenFrame(frame, options);
      const asked = { name: frame, frame: 0, changes: [], told: [] };
      await runStudy(
        { frames: [read], variants: [asked], sampled: true, suffix: "-uncertainty", typed: "" },
        options,
        terminal,
      );
    });
}
