/** A folder of their own for the tests of a file. */

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach } from "vitest";

/** Gives the path of a name in a folder that is empty before every test. */
export function useFolder(): (...names: string[]) => string {
  let folder = "";
  beforeEach(() => {
    folder = mkdtempSync(path.join(tmpdir(), "stillpoint-"));
  });
  afterEach(() => rmSync(folder, { recursive: true }));
  return (...names) => path.join(folder, ...names);
}
