/** Parts of a sweep in processes of their own, one of them killed. Starting one is slow, so they are few. */

import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { setTimeout } from "node:timers/promises";
import { fileURLToPath, pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { joinParts } from "../../src/runs/join.ts";
import { readPart } from "../../src/runs/part.ts";
import { runSweep } from "../../src/runs/sweep-file.ts";
import { useFolder } from "./folder.ts";
import { toySweep } from "./sweep-task.ts";

const PROGRAM = fileURLToPath(new URL("./sweep-process.ts", import.meta.url));
const TSX = pathToFileURL(createRequire(import.meta.url).resolve("tsx")).href;

const at = useFolder();
const rowsIn = (file: string) =>
  existsSync(file) ? readFileSync(file, "utf8").split("\n").length - 2 : 0;

interface Ended {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly out: string;
  readonly err: string;
}

function start(file: string, shard: string, workers: number, stuckAt?: number) {
  const options = [
    at(file),
    shard,
    String(workers),
    ...(stuckAt === undefined ? [] : [`${stuckAt}`]),
  ];
  const child = spawn(process.execPath, ["--import", TSX, PROGRAM, ...options], { stdio: "pipe" });
  let [out, err] = ["", ""];
  child.stdout.setEncoding("utf8").on("data", (text: string) => {
    out += text;
  });
  child.stderr.setEncoding("utf8").on("data", (text: string) => {
    err += text;
  });
  const ended = new Promise<Ended>((resolve, reject) => {
    child.on("error", reject);
    child.on("close", (code, signal) => resolve({ code, signal, out, err }));
  });
  return { child, ended };
}

/** Sends the signal as soon as the file has so many rows, which is all that the process can get. */
async function stopAfter(rows: number, file: string, child: ChildProcess, signal: NodeJS.Signals) {
  while (rowsIn(at(file)) < rows && child.exitCode === null) await setTimeout(5);
  child.kill(signal);
}

test("parts of which one was killed and run again are the whole when they are joined", async () => {
  await runSweep(toySweep(at("whole.csv")));
  const parts = ["1.csv", "2.csv", "3.csv"];
  // part 2/3 has jobs 1, 4, 7, 10, 13, 16, 19 and hangs at the fourth
  const hanging = start("2.csv", "2/3", 2, 10);
  const others = [start("1.csv", "1/3", 1), start("3.csv", "3/3", 1)];
  await stopAfter(3, "2.csv", hanging.child, "SIGKILL");
  expect(await hanging.ended).toMatchObject({ code: null, signal: "SIGKILL" });
  for (const { ended } of others) expect(await ended).toMatchObject({ code: 0, err: "" });

  const killed = readFileSync(at("2.csv"), "utf8");
  expect(rowsIn(at("2.csv"))).toBe(3);
  const join = () =>
    joinParts(
      parts.map((part) => readPart(at(part))),
      false,
    );
  expect(join).toThrow(/4 of 20 rows are missing: 11, 14, 17, 20\. .*2\.csv \(part 2\/3\) is not/);

  expect(await start("2.csv", "2/3", 1).ended).toMatchObject({ code: 0, err: "" });
  expect(readFileSync(at("2.csv"), "utf8").startsWith(killed)).toBe(true);
  expect(join().text).toBe(readFileSync(at("whole.csv"), "utf8"));
});

test("Ctrl-C ends a run with 130 and whole rows, and nothing listens for it any more", async () => {
  const { child, ended } = start("rows.csv", "1/1", 2, 5);
  await stopAfter(5, "rows.csv", child, "SIGINT");
  const { code, out, err } = await ended;
  expect({ code, out }).toEqual({ code: 130, out: "0 listeners\n" });
  expect(err.replace(/\s+/g, " ")).toContain("stillpoint: 5 of 20 rows are in");
  expect(rowsIn(at("rows.csv"))).toBe(5);
});
