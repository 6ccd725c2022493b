/** The commands, each loaded only when it is called, and the exit code of a run. */

import { Command, CommanderError } from "commander";
import { commandLine } from "./terminal/numbers.ts";
import { printable } from "./terminal/printable.ts";
import type { Terminal } from "./terminal/terminal.ts";
import { wrap } from "./terminal/wrap.ts";
import { programVersion } from "./version.ts";

/** A command's own file: adds arguments, options, examples and the action. */
interface CommandModule {
  readonly setUp: (command: Command, terminal: Terminal) => void;
}

interface Entry {
  readonly name: string;
  /** As the list of commands shows them. */
  readonly takes: string;
  readonly summary: string;
  readonly load: () => Promise<CommandModule>;
}

const ENTRIES: readonly Entry[] = [
  {
    name: "rank",
    takes: "<frame>",
    summary: "rank the places for the sensor stack and write a report",
    load: () => import("./rank.ts"),
  },
  {
    name: "compare",
    takes: "<frames...>",
    summary: "compare variants and say whether their differences are real",
    load: () => import("./compare.ts"),
  },
  {
    name: "sweep",
    takes: "<frame>",
    summary: "compute many variants of a frame, a row each",
    load: () => import("./sweep.ts"),
  },
  {
    name: "uncertainty",
    takes: "<frame>",
    summary: "say how sure the ranking of a frame is",
    load: () => import("./uncertainty.ts"),
  },
  {
    name: "sensitivity",
    takes: "<frame>",
    summary: "what moves modes and noise most, and what would help",
    load: () => import("./sensitivity.ts"),
  },
  {
    name: "modes",
    takes: "<frame>",
    summary: "list the frame's natural vibrations",
    load: () => import("./modes.ts"),
  },
  {
    name: "check",
    takes: "<frame>",
    summary: "read the frame, build it and weigh it",
    load: () => import("./check.ts"),
  },
  {
    name: "new",
    takes: "<file>",
    summary: "start a frame file from typical sizes",
    load: () => import("./new.ts"),
  },
  {
    name: "materials",
    takes: "[name]",
    summary: "show the built-in materials and plies and their sources",
    load: () => import("./materials.ts"),
  },
  {
    name: "schema",
    takes: "",
    summary: "print the JSON Schema of frame files, for editors",
    load: () => import("./schema.ts"),
  },
  {
    name: "matrices",
    takes: "<frame>",
    summary: "write stiffness and mass matrices for other programs",
    load: () => import("./matrices.ts"),
  },
  {
    name: "join",
    takes: "<parts...>",
    summary: "join the parts of a sweep, and say which are missing",
    load: () => import("./join.ts"),
  },
];

const ABOUT =
  "Estimates how a small multirotor frame vibrates and where on it a gyro and accelerometer are shaken least. Reads a frame file; ranks the places for the sensor stack.";

const EXAMPLES = `
Examples:
  stillpoint rank frames/five-inch.jsonc
  stillpoint modes frames/five-inch.jsonc --modes 12
  stillpoint new my-frame.jsonc --class "5 inch"

Exit codes: 0 done; 1 a fault in the program; 2 something to correct in the
frame file or the command; 3 the modes could not be computed reliably; 130
stopped by Ctrl-C.`;

/** Does what the arguments say and gives the exit code; an error is printed, never thrown. */
export async function run(args: readonly string[], terminal: Terminal): Promise<number> {
  try {
    await makeProgram(terminal).parseAsync(withHelpLast(args), { from: "user" });
    return 0;
  } catch (error) {
    if (error instanceof CommanderError) return misuse(error, args, terminal);
    const { problemOf } = await import("./terminal/problems.ts");
    const { exitCode, text } = problemOf(error, { debug: process.env.STILLPOINT_DEBUG === "1" });
    terminal.complain(text);
    return exitCode;
  }
}

/** "help rank" as "rank --help": only a command that is called gets its options. */
function withHelpLast(args: readonly string[]): readonly string[] {
  const [first, name] = args;
  const asked = first === "help" && ENTRIES.some((entry) => entry.name === name);
  return asked ? [name, "--help"] : args;
}

function makeProgram(terminal: Terminal): Command {
  const program = new Command("stillpoint")
    .description(ABOUT)
    .version(programVersion(), "-V, --version", "print the version")
    .helpOption("-h, --help", "show this help")
    .helpCommand("help [command]", "show the help of a command")
    .addHelpText("after", EXAMPLES)
    .enablePositionalOptions()
    .exitOverride()
    .configureOutput({
      writeOut: terminal.print,
      writeErr: terminal.complain,
      outputError: () => {}, // printed by `misuse`
      getOutHelpWidth: () => 80,
      getErrHelpWidth: () => 80,
    })
    .configureHelp({ subcommandTerm });
  for (const { name, summary } of ENTRIES) program.command(name).summary(summary);
  // Only now is it known which command's file is wanted.
  program.hook("preSubcommand", async (_, chosen) => {
    const entry = ENTRIES.find(({ name }) => name === chosen.name());
    if (entry !== undefined) (await entry.load()).setUp(chosen, terminal);
  });
  return program;
}

function subcommandTerm(command: Command): string {
  const takes = ENTRIES.find(({ name }) => name === command.name())?.takes ?? "[command]";
  return `${command.name()} ${takes}`.trim();
}

/** Help and version end here as well as commands and options that do not exist. */
function misuse(error: CommanderError, args: readonly string[], terminal: Terminal): number {
  if (error.exitCode === 0) return 0;
  if (error.code !== "commander.help") {
    const [first, ...hints] = error.message.replace(/^error: /, "").split("\n");
    const hint = [...hints.map((line) => line.replace(/^\((.*)\)$/, "$1")), advice(error, args)];
    terminal.complain(
      wrap(printable(`${sentence(first)} ${hint.join(" ")}`), "stillpoint: ", "  "),
    );
  }
  return 2;
}

function sentence(text: string): string {
  const capital = text[0].toUpperCase() + text.slice(1);
  return /[.?!]$/.test(capital) ? capital : `${capital}.`;
}

/** What to type next: a frame file where a command is expected is the commonest slip. */
function advice({ code }: CommanderError, args: readonly string[]): string {
  const frame = args[0] ?? "";
  if (code === "commander.unknownCommand" && /\.jsonc?$/i.test(frame)) {
    return `To rank the places on a frame: ${commandLine("rank", frame)}`;
  }
  const name = ENTRIES.find((entry) => entry.name === args[0])?.name;
  return `See: ${commandLine(...(name === undefined ? [] : [name]), "--help")}`;
}
