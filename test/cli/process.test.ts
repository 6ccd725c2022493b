/** The program as a process of its own: what only a process has. Starting one is slow, so they are few. */

import { spawn } from "node:child_process";
import { closeSync, existsSync, openSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { describe, expect, test } from "vitest";
import { useSandbox } from "../commands/sandbox.ts";

const CLI = fileURLToPath(new URL("../../src/cli.ts", import.meta.url));
const TSX = pathToFileURL(createRequire(import.meta.url).resolve("tsx")).href;
const HAS_DEV_FULL = existsSync("/dev/full");

useSandbox();

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** `output`: "closed" goes away before anything is printed; a number is an open file. */
function start(args: readonly string[], output: "pipe" | "closed" | number = "pipe") {
  const { NO_COLOR: _, ...env } = process.env;
  const child = spawn(process.execPath, ["--import", TSX, CLI, ...args], {
    env: { ...env, TERM: "xterm-256color" },
    stdio: ["ignore", typeof output === "number" ? output : "pipe", "pipe"],
  });
  let [out, err] = ["", ""];
  child.stdout?.setEncoding("utf8").on("data", (text: string) => {
    out += text;
  });
  child.stderr?.setEncoding("utf8").on("data", (text: string) => {
    err += text;
  });
  if (output === "closed") child.stdout?.destroy();
  return new Promise<Ended>((resolve, reject) => {
    child.on("error", reject);
    child.on("close", (code) => resolve({ code, out, err }));
  });
}

describe("the process", () => {
  test("ranks, without colours in a pipe", async () => {
    const { code, out, err } = await start(["rank", "frames/five-inch.jsonc", "--no-date"]);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toContain(`Report: ${path.join("reports", "five-inch.html")}`);
    expect(out).not.toContain("\u001b");
  });

  test("ends with 2 and keeps errors off standard output", async () => {
    const { code, out, err } = await start(["check", "frames/none.jsonc"]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(/^frames\/none\.jsonc: There is no such file\./);
  });

  test("ends quietly when its reader has gone, as behind head", async () => {
    expect(await start(["schema"], "closed")).toEqual({ code: 0, out: "", err: "" });
  });

  test.runIf(HAS_DEV_FULL)("says so when its output cannot be written", async () => {
    const full = openSync("/dev/full", "w");
    const { code, err } = await start(["schema"], full);
    closeSync(full);
    expect(code).toBe(2);
    expect(err).toContain("stillpoint: the output could not be written (ENOSPC).");
  });
});
