import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { parseFrameSource } from "../../src/frame/change.ts";
import { LIBRARY_NAMES } from "../../src/material/library-names.ts";
import { type SweepOptions, sweepFrame } from "../../src/runs/sweep-run.ts";
import type { Outcome } from "../../src/variants/types.ts";
import { SMALL } from "./small-frame.ts";

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), "stillpoint-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

const thickness = (values: readonly string[]) => ({
  name: "arms.arm.thickness",
  values,
  unit: "mm",
  places: [["arms", "arm", "thickness"]],
});
const kappa = (values: readonly number[]) => ({
  name: "arms.arm.joint.kappa",
  values,
  unit: "",
  places: [["arms", "arm", "joint", "kappa"]],
});

const optionsOf = (more: Partial<SweepOptions>): SweepOptions => ({
  frame: SMALL,
  hash: SMALL.hash,
  source: parseFrameSource(SMALL.text, SMALL.path, LIBRARY_NAMES),
  parameters: [thickness(["4 mm", "5 mm", "6 mm"]), kappa([5.3, 8, 12.8, 18, 23, 28])],
  out: path.join(folder, "rows.csv"),
  version: "0.0.0",
  delays: false,
  exact: false,
  workers: 1,
  ...more,
});

describe("a sweep of many variants", () => {
  test("gives the rows of exact solutions within 0.2 % in frequency", async () => {
    const rows = new Map<string, Outcome[]>();
    for (const exact of [false, true]) {
      const found: Outcome[] = [];
      await sweepFrame(
        optionsOf({
          exact,
          out: path.join(folder, `${exact ? "exact" : "reduced"}.csv`),
          onOutcome: (_, o) => void found.push(o),
        }),
      );
      rows.set(String(exact), found);
    }
    const [reduced, exact] = [rows.get("false") ?? [], rows.get("true") ?? []];
    expect(reduced).toHaveLength(18);
    expect(exact.every((o) => o.solution.method === "exact")).toBe(true);
    expect(reduced.filter((o) => o.solution.method === "reduced").length).toBeGreaterThan(12);
    let flipped = 0;
    reduced.forEach((o, i) => {
      o.frequencies.forEach((f, k) => {
        expect(Math.abs(f / exact[i].frequencies[k] - 1)).toBeLessThan(0.002);
      });
      o.spots.forEach((s, k) => {
        expect(Math.abs(20 * Math.log10(s.gyro / exact[i].spots[k].gyro))).toBeLessThan(0.1);
        if (s.ruledOut !== exact[i].spots[k].ruledOut) flipped++;
      });
    });
    // A chip that clips by a hair in one may not in the other.
    expect(flipped).toBeLessThanOrEqual(1);
  });

  test("in parts gives the same rows", async () => {
    const whole = readFileSync(path.join(folder, "reduced.csv"), "utf8").trimEnd().split("\r\n");
    for (const part of [1, 2]) {
      const out = path.join(folder, `part-${part}.csv`);
      await sweepFrame(optionsOf({ out, shard: { part, parts: 2 } }));
      const rows = readFileSync(out, "utf8").trimEnd().split("\r\n");
      expect(rows.slice(1)).toEqual(whole.slice(1).filter((_, i) => i % 2 === part - 1));
    }
  });

  test("goes on after the rows that could not be computed", async () => {
    const failed: string[] = [];
    const { progress } = await sweepFrame(
      optionsOf({
        parameters: [thickness(["5 mm", "0 mm", "6 mm"])],
        out: path.join(folder, "failing.csv"),
        onFailed: (index, reason) => void failed.push(`${index}: ${reason}`),
      }),
    );
    expect(progress).toMatchObject({ rows: 3, failed: 1 });
    expect(failed).toHaveLength(1);
    expect(failed[0]).toMatch(/^1: .*thickness.*more than zero/);
    expect(readFileSync(path.join(folder, "failing.csv"), "utf8")).toContain("more than zero");
  });

  test("hands out a way to solve what lies between its rows", async () => {
    const { solver } = await sweepFrame(
      optionsOf({ parameters: [thickness(["5 mm", "6 mm"])], out: path.join(folder, "few.csv") }),
    );
    const solve = await solver();
    const [low, middle, high] = ["5 mm", "5.5 mm", "6 mm"].map(
      (written) => solve([{ path: ["arms", "arm", "thickness"], written }]).mass,
    );
    expect(middle).toBeCloseTo((low + high) / 2, 9);
  });
});
