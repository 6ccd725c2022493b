/**
 * Pages of real runs, for the tests that look at them. A page is made once for a state of the sources and
 * kept in .artefacts/, so that test files and threads share it.
 */

import { createHash } from "node:crypto";
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { run } from "../../src/commands/program.ts";
import { recorder } from "../commands/recorder.ts";
import { hostileFrame } from "./hostile-frame.ts";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
const FOLDER = path.join(ROOT, ".artefacts/pages");
/** A page that is not there after this time was given up by whoever made it, ms. */
const PATIENCE = 110_000;

const HOSTILE = ".artefacts/pages/hostile.jsonc";
const frame = (sample: string) => path.join("frames", `${sample}.jsonc`);
/** Coarse: pages of studies are about their words and charts, not about their digits. */
const QUICK = ["--mesh-size", "20 mm", "--modes", "16", "--workers", "1"];

export const SAMPLES = ["three-inch", "five-inch", "seven-inch", "ten-inch"] as const;

const COMMANDS = {
  "three-inch": ["rank", frame("three-inch")],
  "five-inch": ["rank", frame("five-inch")],
  "seven-inch": ["rank", frame("seven-inch")],
  "ten-inch": ["rank", frame("ten-inch")],
  compare: [
    "compare",
    frame("five-inch"),
    ...["--set", "arms.arm.thickness=4 mm, 5 mm, 6 mm", "--samples", "32", ...QUICK],
  ],
  uncertainty: ["uncertainty", frame("five-inch"), "--samples", "32", ...QUICK],
  sweep: [
    "sweep",
    frame("five-inch"),
    ...["--vary", "arms.arm.thickness=4 mm..6 mm step 0.5 mm", "--delays", ...QUICK],
  ],
  sensitivity: ["sensitivity", frame("five-inch"), "--mesh-size", "20 mm", "--workers", "1"],
  "rank --sure": ["rank", frame("five-inch"), "--sure", "--samples", "32", ...QUICK],
  "hostile rank": ["rank", HOSTILE, "--sure", "--samples", "32", ...QUICK],
  "hostile compare": [
    "compare",
    HOSTILE,
    ...["--set", "arms.*.thickness=4 mm, 6 mm", "--samples", "32", ...QUICK],
  ],
  "hostile sensitivity": ["sensitivity", HOSTILE, "--mesh-size", "20 mm", "--workers", "1"],
  "hostile sweep": ["sweep", HOSTILE, "--vary", "arms.*.thickness=4, 5, 6 mm", ...QUICK],
} as const satisfies Record<string, readonly string[]>;

type AnyName = keyof typeof COMMANDS;
export type HostileName = Extract<AnyName, `hostile ${string}`>;
export type PageName = Exclude<AnyName, HostileName>;

const isHostile = (name: AnyName): name is HostileName => name.startsWith("hostile");
const NAMES = Object.keys(COMMANDS) as readonly AnyName[];

/** One of every kind, and all samples. */
export const PAGES = NAMES.filter((n): n is PageName => !isHostile(n));
/** One of every kind, of the frame with hostile names. */
export const HOSTILE_PAGES = NAMES.filter(isHostile);

/** URL of the page of a run; made if it is not there yet. */
export async function pageOf(name: AnyName): Promise<string> {
  return pathToFileURL(await pageFile(name)).href;
}

/** The same as a file. @throws Error when the run fails */
export async function pageFile(name: AnyName): Promise<string> {
  const args: readonly string[] = COMMANDS[name];
  const state = sourcesHash();
  const file = path.join(FOLDER, state, `${name.replaceAll(" ", "-")}.html`);
  mkdirSync(path.dirname(file), { recursive: true });
  const claim = `${file}.claim`;
  while (!existsSync(file)) {
    if (claimed(claim)) {
      try {
        await make(file, args);
        forgetOthers(state);
      } finally {
        rmSync(claim, { recursive: true, force: true });
      }
    } else {
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  }
  return file;
}

async function make(file: string, args: readonly string[]): Promise<void> {
  const { terminal, err } = recorder();
  const made = file.replace(/\.html$/, ".made.html");
  const rows = file.replace(/\.html$/, ".made.csv");
  for (const left of [made, rows]) rmSync(left, { force: true });
  if (args.includes(HOSTILE)) writeFileSync(path.join(ROOT, HOSTILE), hostileFrame());
  const out = args[0] === "sweep" ? ["--out", rows] : [];
  const code = await run([...args, ...out, "--report", made, "--no-date"], terminal);
  if (code !== 0) throw new Error(`${args.join(" ")} ended with ${code}: ${err()}`);
  renameSync(made, file);
}

/** Whether the folder could be made, so that nobody else is at it; an old one is taken over. */
function claimed(folder: string): boolean {
  try {
    mkdirSync(folder);
    return true;
  } catch {
    const old = existsSync(folder) && Date.now() - statSync(folder).mtimeMs > PATIENCE;
    if (old) rmSync(folder, { recursive: true, force: true });
    return false;
  }
}

function forgetOthers(state: string): void {
  for (const other of readdirSync(FOLDER)) {
    if (/^[0-9a-f]{16}$/.test(other) && other !== state)
      rmSync(path.join(FOLDER, other), { recursive: true, force: true });
  }
}

let known: string | undefined;

/** Of everything that pages are made from. */
function sourcesHash(): string {
  if (known !== undefined) return known;
  const hash = createHash("sha256").update(JSON.stringify(COMMANDS) + hostileFrame());
  for (const folder of ["src", "frames"]) {
    const names = readdirSync(path.join(ROOT, folder), { recursive: true, encoding: "utf8" });
    for (const name of names.filter((n) => /\.(?:ts|jsonc)$/.test(n)).sort()) {
      hash.update(name).update(readFileSync(path.join(ROOT, folder, name)));
    }
  }
  known = hash
    .update(readFileSync(path.join(ROOT, "package-lock.json")))
    .digest("hex")
    .slice(0, 16);
  return known;
}
