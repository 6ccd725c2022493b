/** Suggestions against whole solutions of what they suggest. */

import { describe, expect, test } from "vitest";
import { changedFrame, parseFrameSource } from "../../src/frame/change.ts";
import { sensitivities } from "../../src/study/sensitivity.ts";
import { studyBase } from "../../src/study/sensitivity-base.ts";
import type { SensitivityTable } from "../../src/study/sensitivity-types.ts";
import { suggestions } from "../../src/study/suggest.ts";
import { noneWords, suggestionWords } from "../../src/study/suggest-words.ts";
import { exactOutcome } from "../../src/variants/exact.ts";
import { prepareVariant } from "../../src/variants/prepare.ts";
import { crossSections } from "../modes/toys.ts";

const { candidates: _candidates, ...cross } = crossSections({ lopsided: true, lossFactor: 0.3 });

function studied(more: object, inputs: readonly string[]) {
  const frame = { version: 1, name: "cross", ...cross, ...more };
  const base = studyBase(parseFrameSource(JSON.stringify(frame), "cross.jsonc"));
  return { base, table: sensitivities(base, { modes: 3, inputs }) };
}

const THICK = ["arms.arm.thickness", "plates.hub.thickness"];
const { base, table } = studied({}, [...THICK, "bodies.lump.at#1"]);
const told: string[] = [];
const { found, spot, tried } = suggestions(base, table, {
  progress: (idea) => told.push(idea),
});

describe("suggestions for a cross", () => {
  test("are about the best spot, and each change that was looked at was told", () => {
    expect(spot).toBe("as designed");
    expect(told).toHaveLength(tried);
    expect(found.length).toBeGreaterThan(0);
    expect(found.length).toBeLessThanOrEqual(3);
  });

  test("hold when they are solved anew", () => {
    for (const { changes, gyro, accel, mass, text } of found) {
      const { file } = changedFrame(base.source, changes);
      const now = exactOutcome(prepareVariant(file, base.prepared.mesh.size), {
        modes: base.count,
      });
      const [before, after] = [base.outcome.spots[0], now.spots[0]];
      expect(20 * Math.log10(after.gyro / before.gyro)).toBeCloseTo(gyro, 9);
      expect(20 * Math.log10(after.accel / before.accel)).toBeCloseTo(accel, 9);
      expect(now.mass - base.outcome.mass).toBeCloseTo(mass, 12);
      expect(after.ruledOut).toBeUndefined();
      expect(gyro).toBeLessThanOrEqual(-0.3);
      expect(text).toMatch(/: .*falls by [\d.]+ dB.*\(solved anew\)\.$/);
    }
  });

  test("are for different parts, at most two of a kind, the most helpful first", () => {
    expect(new Set(found.map((f) => `${f.kind} ${f.part}`)).size).toBe(found.length);
    const kinds = found.map((f) => f.kind);
    for (const kind of kinds) expect(kinds.filter((k) => k === kind).length).toBeLessThan(3);
    const scores = found.map((f) => f.score);
    expect(scores).toEqual([...scores].sort((a, b) => a - b));
  });

  test("name a mode that moved, as it was and is", () => {
    for (const { mode, changes } of found) {
      const { file } = changedFrame(base.source, changes);
      const now = exactOutcome(prepareVariant(file, base.prepared.mesh.size), {
        modes: base.count,
      });
      if (mode === undefined) throw new Error("no mode");
      expect(base.outcome.frequencies[mode.number - 1]).toBe(mode.from);
      expect([...now.frequencies]).toContain(mode.to);
      expect(mode.to).not.toBe(mode.from);
    }
  });
});

test("no more are given than asked for", () => {
  const narrow: SensitivityTable = { ...table, rows: table.rows.slice(0, 1) };
  expect(suggestions(base, narrow, { most: 0 }).found).toEqual([]);
});

test("where nothing helps, that is said", () => {
  // a craft that nothing but its joints' damping could quieten: no input with any leverage, stiff mounts flagged
  const few: SensitivityTable = { ...table, rows: [] };
  const stiff = suggestions(base, few);
  expect(stiff.found).toEqual([]);
  expect(stiff.none).toBe(
    'None of 3 changes that a builder could make takes 0.3 dB or more off the gyro noise at "as designed".',
  );
});

test("a frame all of whose spots are ruled out gets none", () => {
  const { base: bad, table: its } = studied(
    { materials: { metal: { ...(cross.materials as { metal: object }).metal, lossFactor: 0.02 } } },
    [],
  );
  expect(bad.outcome.best).toBeUndefined();
  expect(suggestions(bad, its)).toEqual({ found: [], tried: 0, none: noneWords(undefined, 0) });
});

describe("words", () => {
  const figures = {
    kind: "thickness",
    part: "arms.arm",
    words: "Arms 5.5 mm thick instead of 5 mm",
    changes: [],
    mass: 6e-3,
    gyro: -1.1,
    accel: 0.2,
    score: -0.7,
    moved: [],
  } as const;
  const mode = { number: 13, name: "arms flap", from: 122, to: 133 };

  test("say what it costs and what it gives", () => {
    expect(suggestionWords({ ...figures, mode }, "bay")).toBe(
      'Arms 5.5 mm thick instead of 5 mm: 6 g more, the gyro noise at "bay" falls by 1.1 dB, mode 13 (arms flap) rises from 122 to 133 Hz (solved anew).',
    );
  });

  test("say so where it costs nothing, or the accelerometer pays", () => {
    const still = { ...mode, to: 122.3 };
    expect(suggestionWords({ ...figures, mass: 0, accel: 1.2, mode: still }, "bay")).toBe(
      'Arms 5.5 mm thick instead of 5 mm: no heavier, the gyro noise at "bay" falls by 1.1 dB, the accelerometer\'s rises by 1.2 dB, no mode moves by more than 0.5 % (solved anew).',
    );
  });
});
