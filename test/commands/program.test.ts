import { existsSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { run } from "../../src/commands/program.ts";
import { columnsOf } from "../../src/commands/terminal/printable.ts";
import { writeParts } from "../runs/sweep-task.ts";
import { recorder } from "./recorder.ts";
import { stillpoint, useSandbox } from "./sandbox.ts";

const COMMANDS = [
  "rank",
  "compare",
  "sweep",
  "uncertainty",
  "sensitivity",
  "modes",
  "check",
  "new",
  "materials",
  "schema",
  "matrices",
  "join",
];

/** What makes commands quick that solve a frame many times over. */
const COARSE = ["--mesh-size", "30 mm", "--workers", "1"];
const FEW = ["--modes", "12", "--samples", "32"];
const QUICK: Readonly<Record<string, readonly string[]>> = {
  compare: [...COARSE, ...FEW],
  uncertainty: [...COARSE, ...FEW],
  sweep: [...COARSE, "--modes", "12"],
  sensitivity: [...COARSE, "--no-suggestions"],
};

const ROOT = process.cwd();
useSandbox();
// of the examples of join
beforeAll(async () => {
  writeParts("part-1.csv", "part-2.csv");
  await stillpoint("new", "my.jsonc", "--class", "5 inch");
});

function examplesIn(help: string): string[] {
  return help.split("\n").filter((line) => /^ {2}stillpoint /.test(line));
}

describe("help", () => {
  test.each([[], ...COMMANDS.map((name) => [name])])("of %s fits the page", async (...name) => {
    const { code, out, err } = await stillpoint(...name, "--help");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toContain("Examples:\n  stillpoint ");
    for (const line of out.split("\n")) expect(columnsOf(line)).toBeLessThanOrEqual(80);
  });

  test("lists every command", async () => {
    const { out } = await stillpoint("--help");
    for (const name of COMMANDS) expect(out).toMatch(new RegExp(`\n  ${name} `));
  });

  test("is the same behind the word help", async () => {
    expect(await stillpoint("help", "rank")).toEqual(await stillpoint("rank", "--help"));
  });

  test("comes without a command too, as a mistake", async () => {
    const { code, out, err } = await stillpoint();
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain("Usage: stillpoint");
  });
});

describe("the examples of the help", async () => {
  const helps = await Promise.all([[], ...COMMANDS.map((name) => [name])].map(help));
  const examples = [...new Set(helps.flatMap(examplesIn))].map((line) => ({
    line: line.trim(),
    words: wordsOf(line),
  }));

  test("are there for every command and name frames that come with the program", () => {
    expect(new Set(examples.map(({ words: [name] }) => name))).toEqual(new Set(COMMANDS));
    const frames = examples
      .flatMap(({ words }) => words)
      .filter((word) => word.startsWith("frames/"));
    expect(frames.filter((frame) => !existsSync(`${ROOT}/${frame}`))).toEqual([]);
  });

  // in the order of the help: one makes the file that the next writes over
  test.each(examples)("$line", async ({ words }) => {
    const { code, out, err } = await stillpoint(...words, ...(QUICK[words[0]] ?? []));
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).not.toBe("");
  });
});

/** The arguments of a command line with quotes. */
function wordsOf(line: string): string[] {
  const words = line.match(/"[^"]*"|\S+/g) ?? [];
  return words.slice(1).map((word) => word.replaceAll('"', ""));
}

async function help(name: readonly string[]): Promise<string> {
  return (await stillpoint(...name, "--help")).out;
}

describe("version", () => {
  test("is the one of the package", async () => {
    expect((await stillpoint("--version")).out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});

test("a fault of the program ends with 1 and asks for a report", async () => {
  const { terminal, err } = recorder();
  const broken = () => {
    throw new TypeError("print is broken");
  };
  expect(await run(["schema"], { ...terminal, print: broken })).toBe(1);
  expect(err()).toMatch(/^stillpoint: a fault in the program: print is broken\n/);
});

describe("what is not understood", () => {
  test.each([
    [["rnk", "x"], "Unknown command 'rnk'. Did you mean rank? See: stillpoint --help"],
    [["rank", "x", "--mesh-siz", "3"], "Did you mean --mesh-size? See: stillpoint rank --help"],
    [["rank"], "Missing required argument 'frame'. See: stillpoint rank --help"],
    [["rank", "a", "b"], "Too many arguments for 'rank'"],
    [["modes", "x", "--modes", "many"], "Give a whole number from 1 to 500."],
    [["modes", "x", "--modes", "1e2"], "Give a whole number from 1 to 500."],
    [["modes", "x", "--modes", "501"], "Give a whole number from 1 to 500."],
    [["check", "x", "--mesh-size", "5 GPa"], '--mesh-size: "5 GPa" is a pressure'],
    [["check", "x", "--mesh-size", "0"], "must be more than zero"],
    [["matrices", "x", "--output", ""], "stillpoint: --output: nothing was given"],
    [["rank", "x", "--report", ""], "stillpoint: --report: nothing was given: name a file"],
    [["rank", "x", "--report", "a.html", "--no-report"], "leave out one of the two"],
    [["rank", "x", "--no-report", "--report", "a.html"], "leave out one of the two"],
    [["rank", "x", "--report", "my.JSONC"], "give a name that ends in .html"],
    [["rank", "x", "--map", ""], "stillpoint: --map: nothing was given: name a file"],
    [["rank", "x", "--map", "my.jsonc"], "give a name that ends in .csv"],
    [["rank", "x", "--map", "my.HTML"], "give a name that ends in .csv"],
    [["rank", "x", "--map-pitch", "4 GPa"], '--map-pitch: "4 GPa" is a pressure'],
    [["rank", "x", "--map-pitch", "0"], "must be more than zero"],
    [["rank", "x", "--map-pitch", "-4 mm"], "must be more than zero"],
    [["rank", "x", "--map-pitch", "-4"], "must be more than zero"],
    [["rank", "x", "--map-pitch", "1,5 mm"], 'Write it with a point: "1.5 mm".'],
    [["rank", "x", "--map-pitch", "fine"], '"fine" is not a number with a unit'],
    [["rank", "x", "--map-pitch", "2 m"], "--map-pitch: 2000 mm is not possible"],
    [["rank", "x", "--map-pitch", "2 m"], "the distance between places must be 1 m or less"],
    [["rank", "x", "--map-pitch", "0.1"], "0.1 mm is not possible: the distance"],
    [["rank", "x", "--map-pitch", "1 um"], "must be 0.5 mm or more"],
    [["rank", "x", "--map-pitch"], "See: stillpoint rank --help"],
    [["schema", "--output", ""], "stillpoint: --output: nothing was given: name a file"],
    [["join", "--out", "a.csv"], "Missing required argument 'parts'. See: stillpoint join --help"],
    [["join", "a.csv"], "Required option '--out <file>' not specified"],
    [["join", "a.csv", "--out", ""], "stillpoint: --out: nothing was given: name a file"],
    [["join", "a.csv", "--out", "all.txt"], "all.txt: give a name that ends in .csv"],
    [["join", "none.csv", "--out", "all.csv"], "stillpoint: none.csv: there is no such file."],
    [["new", "x.jsonc", "--class", "6"], "Choose 3 inch, 5 inch, 7 inch or 10 inch."],
    [["new", "x.jsonc"], "Required option '--class <size>' not specified"],
    [["frames/five-inch.jsonc"], "stillpoint rank frames/five-inch.jsonc"],
    [["materials", "carbonplate-0-90"], 'Did you mean "carbon-plate-0-90"?'],
    [["materials", "\u001b[2J"], '"\\u001b[2J"'],
    [["\u001b[2J"], "'\\u001b[2J'"],
  ])("%j ends with 2 and advice", async (args, message) => {
    const { code, out, err } = await stillpoint(...args);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err.replace(/\s+/g, " ")).toContain(message);
    expect(err.replaceAll("\n", "")).not.toMatch(/\p{Cc}/u);
    for (const line of err.split("\n")) expect(columnsOf(line)).toBeLessThanOrEqual(80);
  });
});
