/** `stillpoint rank`: the main job. */

import type { Command } from "commander";
import type { Analysis } from "../analyse.ts";
import { inputError } from "../errors.ts";
import type { LoadedFrame } from "./input/load-frame.ts";
import { addMapOptions, readMapPitch, requireSenseOfMap } from "./input/map-options.ts";
import { analyseOptions, jsonOption, meshSizeOption, modesOption } from "./input/options.ts";
import { addReportOptions } from "./input/report-options.ts";
import { addSureOptions, requireSenseOfSure } from "./input/sure-options.ts";
import { freeOutputs, type OutputOptions, writeOutputs } from "./rank-outputs.ts";
import { commandLine } from "./terminal/numbers.ts";
import { progressOn } from "./terminal/progress.ts";
import type { Terminal } from "./terminal/terminal.ts";

interface RankOptions extends OutputOptions {
  readonly json?: boolean;
}

const EXAMPLES = `
Examples:
  stillpoint rank frames/five-inch.jsonc
  stillpoint rank frames/five-inch.jsonc --report five-inch.html
  stillpoint rank frames/five-inch.jsonc --map five-inch.csv --map-pitch "10 mm"
  stillpoint rank frames/five-inch.jsonc --mesh-size "8 mm" --no-report --json`;

export function setUp(command: Command, terminal: Terminal): void {
  command
    .description(
      "Computes how the frame vibrates and what its motors cause at every place where the sensor stack could sit, and ranks the places. Writes a report with figures.",
    )
    .argument("<frame>", "the frame file");
  const checkReport = addReportOptions(command, "reports/<frame>.html");
  addSureOptions(addMapOptions(command))
    .addOption(modesOption())
    .addOption(meshSizeOption())
    .addOption(jsonOption())
    .addHelpText("after", EXAMPLES)
    .action((frame: string, options: RankOptions) => {
      checkReport(options);
      requireSenseOfMap(options.map);
      requireSenseOfSure(options);
      return rank(frame, options, terminal);
    });
}

async function rank(framePath: string, options: RankOptions, terminal: Terminal): Promise<void> {
  const pitch = await readMapPitch(options.mapPitch);
  const settings = {
    ...(await analyseOptions(options, progressOn(terminal))),
    ...(pitch !== undefined && { map: { pitch } }),
  };
  const { checkSure, foundSure } = await import("./rank-sure.ts");
  await checkSure(options);
  const { inFrame, loadFrame } = await import("./input/load-frame.ts");
  const { analyse } = await import("../analyse.ts");
  const frame = loadFrame(framePath);
  const outputs = await freeOutputs(framePath, options);

  const { analysis, ranking, excitation } = inFrame(frame, settings, () => {
    requireMotors(frame);
    return ranked(analyse(frame.file, settings));
  });
  const [first] = ranking.candidates;
  const sure = await foundSure(frame, settings, first, options, terminal);
  await writeOutputs(outputs, { analysis, ranking, ...(sure && { sure }) }, frame, options);
  if (options.json) {
    const { rankingJson } = await import("./output/ranking-json.ts");
    terminal.print(rankingJson(analysis, ranking, excitation, frame, outputs, sure));
  } else {
    const { rankingText } = await import("./output/ranking-text.ts");
    const { rankedLines } = await import("./output/written.ts");
    const { sureText } = await import("./output/rank-sure-text.ts");
    const text = rankingText(analysis, ranking, excitation, terminal.ink, pitch);
    const more = sure ? sureText(sure, terminal.ink) : "";
    terminal.print(text + more + rankedLines(outputs, options));
  }
}

/** Said before the modes are computed, since nothing would come of them. */
function requireMotors({ path: frame, file }: LoadedFrame): void {
  if (file.propulsion !== undefined) return;
  throw inputError(
    "propulsion",
    `The frame has no motors, so nothing shakes its places and they cannot be ranked. Describe the motors and propellers in the section "propulsion"; or list how the frame vibrates by itself with: ${commandLine("modes", frame)}`,
  );
}

function ranked(analysis: Analysis) {
  const { ranking, excitation } = analysis;
  if (ranking !== undefined && excitation !== undefined) return { analysis, ranking, excitation };
  throw inputError(
    "candidates",
    'There is no place on this frame for a sensor stack: none is named, and its hole pattern fits on no plate. Name at least one place on a plate in the section "candidates".',
  );
}
