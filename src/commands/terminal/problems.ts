/** Errors as text on the terminal, with the exit code that goes with each. */

import { type Finding, InputError, InterruptedError, SolveError } from "../../errors.ts";
import { count } from "./numbers.ts";
import { columnsOf, printable } from "./printable.ts";
import { PAGE_COLUMNS, wrap } from "./wrap.ts";

export interface Problem {
  readonly exitCode: 1 | 2 | 3 | 130;
  readonly text: string;
}

/** What was being done, for the message about a fault of the program itself. */
export interface Circumstances {
  readonly debug: boolean;
}

export function problemOf(error: unknown, { debug }: Circumstances): Problem {
  if (error instanceof InputError) return { exitCode: 2, text: inputProblem(error) };
  if (error instanceof SolveError) return { exitCode: 3, text: solveProblem(error) };
  if (error instanceof InterruptedError) {
    return { exitCode: 130, text: wrap(printable(error.message), "stillpoint: ", "  ") };
  }
  return { exitCode: 1, text: ownFault(error, debug) };
}

function inputProblem({ findings, file }: InputError): string {
  const text = findings.map((finding) => findingText(finding, file)).join("");
  if (file === undefined) return text;
  const problems = count(findings.length, "problem");
  return text + wrap(`${problems} in ${printable(file)}; nothing was written`);
}

/** `file:line:column: path: message`; the place stays in one piece so that editors can follow it. */
function findingText({ path, message, line, column }: Finding, file: string | undefined): string {
  const position = line === undefined ? "" : `:${line}${column === undefined ? "" : `:${column}`}`;
  const place = `${file === undefined ? "stillpoint" : printable(file) + position}:`;
  const text = printable(path === "" ? message : `${path}: ${message}`);
  if (columnsOf(place) < PAGE_COLUMNS / 2) return wrap(text, `${place} `, "  ");
  return `${place}\n${wrap(text, "  ")}`;
}

function solveProblem({ message }: SolveError): string {
  return (
    wrap(printable(message), "stillpoint: ", "  ") +
    wrap(
      "The frame was read, but its modes could not be computed reliably, so none are shown.",
      "  ",
    )
  );
}

function ownFault(error: unknown, debug: boolean): string {
  const message = error instanceof Error ? error.message : String(error);
  const advice = debug ? "" : " Set STILLPOINT_DEBUG=1 to see where in the program it happened.";
  return (
    wrap(printable(message), "stillpoint: a fault in the program: ", "  ") +
    wrap(`Please report this message together with the frame file.${advice}`, "  ") +
    (debug ? stackText(error) : "")
  );
}

function stackText(error: unknown): string {
  if (!(error instanceof Error) || error.stack === undefined) return "";
  const lines = error.stack.split("\n").map((line) => `  ${printable(line)}\n`);
  const cause = error.cause === undefined ? "" : `  caused by:\n${stackText(error.cause)}`;
  return lines.join("") + cause;
}
