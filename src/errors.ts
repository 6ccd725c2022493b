/** Errors that the program expects, each with the exit code it ends with. */

/** One thing that is wrong with an input, said so that the user can act on it. */
export interface Finding {
  /** Where in the file, e.g. `plates.bottom.thickness`; empty for the file as a whole. */
  readonly path: string;
  /** The rule, the value found, what is allowed and what to do, in one or two sentences. */
  readonly message: string;
  /** 1-based position in the file, where known. */
  readonly line?: number;
  readonly column?: number;
}

/** The input cannot be used as it is. Exit code 2. */
export class InputError extends Error {
  readonly exitCode = 2;
  readonly findings: readonly Finding[];
  /** The file the findings are about, as the user named it; undefined for command-line options. */
  readonly file: string | undefined;

  constructor(findings: readonly Finding[], file?: string) {
    super(findings.map((f) => (f.path === "" ? f.message : `${f.path}: ${f.message}`)).join("\n"));
    this.name = "InputError";
    this.findings = findings;
    this.file = file;
  }
}

/** The model was accepted but could not be solved with proof that the answer is right. Exit code 3. */
export class SolveError extends Error {
  readonly exitCode = 3;

  constructor(message: string) {
    super(message);
    this.name = "SolveError";
  }
}

/** The user stopped the work: says what is done and how to go on. Exit code 130, as shells have it. */
export class InterruptedError extends Error {
  readonly exitCode = 130;

  constructor(message: string) {
    super(message);
    this.name = "InterruptedError";
  }
}

/** An InputError with a single finding. */
export function inputError(path: string, message: string): InputError {
  return new InputError([{ path, message }]);
}
