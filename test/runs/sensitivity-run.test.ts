/** A table made on several threads is that made on one. */

import { expect, test } from "vitest";
import { parseFrameSource } from "../../src/frame/change.ts";
import { LIBRARY_NAMES } from "../../src/material/library-names.ts";
import { sensitivityTable } from "../../src/runs/sensitivity-run.ts";
import { sensitivities } from "../../src/study/sensitivity.ts";
import { studyBase } from "../../src/study/sensitivity-base.ts";
import { crossSections } from "../modes/toys.ts";

const { candidates: _c, stack: _s, propulsion: _p, ...sections } = crossSections();
const text = JSON.stringify({ version: 1, name: "cross", ...sections });
const base = studyBase(parseFrameSource(text, "cross.jsonc", LIBRARY_NAMES));
const alone = sensitivities(base, { modes: 6 });

test.each([1, 2])("on %i", async (workers) => {
  const seen: number[] = [];
  const table = await sensitivityTable(base, text, {
    modes: 6,
    workers,
    progress: (done, all) => {
      seen.push(done);
      expect(all).toBe(alone.rows.length);
    },
  });
  expect(JSON.stringify(table)).toBe(JSON.stringify(alone));
  expect(table).toEqual(alone);
  expect(seen).toEqual(alone.rows.map((_, i) => i + 1));
});

test("stops when told to", async () => {
  const stop = new AbortController();
  const table = await sensitivityTable(base, text, {
    workers: 1,
    signal: stop.signal,
    progress: () => stop.abort(),
  });
  expect(table.rows).toHaveLength(1);
});
