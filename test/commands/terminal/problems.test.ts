import { describe, expect, test } from "vitest";
import { problemOf } from "../../../src/commands/terminal/problems.ts";
import { InputError, InterruptedError, inputError, SolveError } from "../../../src/errors.ts";

const told = (error: unknown, debug = false) => problemOf(error, { debug });

describe("bad input", () => {
  test("has file, line and column first, then path and message, and a count", () => {
    const findings = [
      { path: "plates.top", message: "is too thin", line: 12, column: 3 },
      { path: "arms", message: "are missing" },
    ];
    const { exitCode, text } = told(new InputError(findings, "frames/x.jsonc"));
    expect(exitCode).toBe(2);
    expect(text).toBe(
      [
        "frames/x.jsonc:12:3: plates.top: is too thin",
        "frames/x.jsonc: arms: are missing",
        "2 problems in frames/x.jsonc; nothing was written",
        "",
      ].join("\n"),
    );
  });

  test("counts one problem as one", () => {
    const error = new InputError([{ path: "", message: "is empty" }], "x.jsonc");
    expect(told(error).text).toContain("\n1 problem in x.jsonc; nothing was written\n");
  });

  test("in an option names the program, not a file", () => {
    expect(told(inputError("--modes", "is not a number")).text).toBe(
      "stillpoint: --modes: is not a number\n",
    );
  });

  test("is wrapped to 80 columns, with a long file name in one piece", () => {
    const file = `${"deep/".repeat(30)}x.jsonc`;
    const message = "word ".repeat(60);
    const { text } = told(new InputError([{ path: "a", message, line: 1, column: 2 }], file));
    const lines = text.split("\n");
    expect(lines[0]).toBe(`${file}:1:2:`);
    const messageLines = lines.slice(1, 6);
    for (const line of messageLines) expect(line.length).toBeLessThanOrEqual(80);
  });

  test("cannot act on the terminal", () => {
    const error = new InputError(
      [{ path: "\u001b[2J", message: "\u0007\u202e" }],
      "\u001b]0;x.json",
    );
    expect(told(error).text.replaceAll("\n", "")).not.toMatch(/[\p{Cc}\p{Cf}]/u);
  });
});

test("what could not be solved ends with 3", () => {
  const { exitCode, text } = told(new SolveError("a mode is missing below 300 Hz"));
  expect(exitCode).toBe(3);
  expect(text).toMatch(/^stillpoint: a mode is missing below 300 Hz\n/);
});

describe("a fault of the program", () => {
  test("ends with 1 and asks for a report, without a stack", () => {
    const { exitCode, text } = told(new TypeError("x is undefined"));
    expect(exitCode).toBe(1);
    expect(text).toContain("x is undefined");
    expect(text).toContain("together with the frame file");
    expect(text).toContain("STILLPOINT_DEBUG=1");
    expect(text).not.toMatch(/\bat .*problems\.test/);
  });

  test("shows the stack and the cause when asked to", () => {
    const { text } = told(new Error("outer", { cause: new Error("inner") }), true);
    expect(text).toMatch(/at .*problems\.test/);
    expect(text).toContain("inner");
  });

  test("is told even when it is no error at all", () => {
    expect(told("oops").text).toContain("oops");
  });
});

test("what the user stopped ends with 130 and says how to go on", () => {
  const error = new InterruptedError(
    "3 of 9 rows are in a.csv; the same command goes on from there.",
  );
  expect(told(error)).toEqual({ exitCode: 130, text: `stillpoint: ${error.message}\n` });
});
