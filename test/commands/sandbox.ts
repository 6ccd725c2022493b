/** An empty working folder with a small frame in it, for commands that read and write files. */

import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll } from "vitest";
import { run } from "../../src/commands/program.ts";
import { starterFrame } from "../../src/frame/starter.ts";
import { recorder } from "./recorder.ts";

export interface Outcome {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Coarse on purpose: a tenth of a second instead of one. */
export const SMALL_FRAME = starterFrame("5 inch", "Small").replace(
  '"notes":',
  '"meshSize": "15 mm",\n  "notes":',
);

/** Makes the tests of a file run in a folder of their own, where frames/five-inch.jsonc is small. */
export function useSandbox(): void {
  const home = process.cwd();
  let folder = "";
  beforeAll(() => {
    folder = mkdtempSync(path.join(tmpdir(), "stillpoint-"));
    process.chdir(folder);
    mkdirSync("frames");
    writeFileSync("frames/five-inch.jsonc", SMALL_FRAME);
  });
  afterAll(() => {
    process.chdir(home);
    rmSync(folder, { recursive: true });
  });
}

/** Runs a command in this process. */
export async function stillpoint(...args: readonly string[]): Promise<Outcome> {
  const { terminal, out, err } = recorder();
  const code = await run(args, terminal);
  return { code, out: out(), err: err() };
}

export function read(file: string): string {
  return readFileSync(file, "utf8");
}
