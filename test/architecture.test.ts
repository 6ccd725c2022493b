/** The rules of the source tree (DEVELOPERS.md), checked against the tree as it is. */

import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import {
  countLines,
  findCycle,
  flowFault,
  lockFaults,
  packageOf,
  type SourceFile,
  STAGES,
  textFaults,
} from "./architecture/rules.ts";
import { scanImports, scanUnwantedExports } from "./architecture/scan.ts";

const ROOT = fileURLToPath(new URL("..", import.meta.url));
const MAX_LINES = 350;

/** Not committed, or not ours. */
const NOT_COMMITTED = /^(?:\.git|\.artefacts|\.idea|\.vscode|node_modules|dist|reports)$/;
/** Tables and recorded values, which are as long as they are. */
const DATA = /\.(?:jsonc?|csv|md|txt|svg)$|\/golden\//;

function list(folder: string): string[] {
  return readdirSync(path.join(ROOT, folder), { withFileTypes: true }).flatMap((entry) => {
    const name = folder === "" ? entry.name : `${folder}/${entry.name}`;
    if (NOT_COMMITTED.test(name)) return [];
    if (entry.isDirectory()) return list(name);
    return entry.isFile() ? [name] : [];
  });
}

/** Every text file of the tree. */
const files: readonly SourceFile[] = list("")
  .map((name) => ({ path: name, text: readFileSync(path.join(ROOT, name), "utf8") }))
  .filter((file) => !file.text.includes("\0"));
const code = files.filter((file) => /^(?:src|test)\/.*\.ts$/.test(file.path));
const sources = code.filter((file) => file.path.startsWith("src/"));

/** Every import of src with what `fault` says against it. */
function importFaults(fault: (file: string, specifier: string) => string | undefined): string[] {
  return sources.flatMap((file) =>
    scanImports(file.text).flatMap(({ specifier, line }) => {
      const reason = fault(file.path, specifier);
      return reason === undefined ? [] : [`${file.path}:${line} ${reason}`];
    }),
  );
}

describe("the source tree", () => {
  test("is read as a whole", () => {
    expect(code.map((file) => file.path)).toEqual(
      expect.arrayContaining(["src/errors.ts", "test/architecture.test.ts"]),
    );
    const ours = code.find((file) => file.path === "test/architecture.test.ts");
    expect(scanImports(ours?.text ?? "").length).toBeGreaterThan(5);
  });

  test("has no folder or file in src that the flow does not know", () => {
    const known = new Set(STAGES.flat());
    expect(readdirSync(path.join(ROOT, "src")).filter((name) => !known.has(name))).toEqual([]);
  });

  test("imports along the flow only, and keeps zod, plotly and commander at home", () => {
    expect(importFaults(flowFault)).toEqual([]);
  });

  test("imports in src only packages that are installed with the program", () => {
    const { dependencies } = JSON.parse(readFileSync(path.join(ROOT, "package.json"), "utf8")) as {
      dependencies: Record<string, string>;
    };
    const fault = (_: string, specifier: string) => {
      const name = packageOf(specifier);
      if (name === undefined || name in dependencies) return undefined;
      return `imports ${name}, which is not among the dependencies (write node: before a built-in)`;
    };
    expect(importFaults(fault)).toEqual([]);
  });

  test("has no import cycle", () => {
    expect(findCycle(code)).toBeUndefined();
  });

  test(`has no file over ${MAX_LINES} lines`, () => {
    const long = files
      .filter((file) => /^(?:src|test)\//.test(file.path) && !DATA.test(file.path))
      .map((file) => ({ file: file.path, lines: countLines(file.text) }))
      .filter(({ lines }) => lines > MAX_LINES);
    expect(long).toEqual([]);
  });

  test("has no default exports and no barrels", () => {
    const unwanted = code.flatMap((file) => [
      ...scanUnwantedExports(file.text).map((what) => `${file.path}: ${what}`),
      ...(path.posix.basename(file.path) === "index.ts" ? [`${file.path}: barrel`] : []),
    ]);
    expect(unwanted).toEqual([]);
  });
});

describe("the committed text", () => {
  test("names no path of one machine and no package host but the public one", () => {
    const faults = files.flatMap((f) => textFaults(f.text).map((fault) => `${f.path} ${fault}`));
    expect(faults).toEqual([]);
  });

  test("has a lockfile that installs anywhere", () => {
    expect(lockFaults(readFileSync(path.join(ROOT, "package-lock.json"), "utf8"))).toEqual([]);
  });
});
