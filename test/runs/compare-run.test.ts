import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import type { Change } from "../../src/frame/change.ts";
import type { VariantAsked } from "../../src/runs/asked.ts";
import { compareVariants } from "../../src/runs/compare-run.ts";
import { SMALL } from "./small-frame.ts";

const thick = (written: unknown): Change[] => [{ path: ["arms", "arm", "thickness"], written }];
const asked = (name: string, changes: readonly Change[]): VariantAsked => ({
  name,
  frame: 0,
  changes,
  told: [],
});
const HERE = { seed: 1, workers: 1 };

describe("variants as drawn", async () => {
  const study = await compareVariants(
    [SMALL],
    [asked("4 mm", thick("4 mm")), asked("6 mm", thick("6 mm")), asked("none", thick("0 mm"))],
    { ...HERE, sampled: false },
  );
  const [thin, stout] = study.variants.map((v) => v.outcome);

  test("are solved exactly, with names and delays", () => {
    expect(thin.solution).toEqual({ method: "exact", error: 0 });
    expect(thin.modeNames).toHaveLength(thin.frequencies.length);
    expect(thin.spots.every((s) => s.delay !== undefined)).toBe(true);
    expect(stout.mass).toBeGreaterThan(thin.mass);
  });

  test("keep everything in contact: the plates follow the arms", () => {
    expect(thin.moved.join()).toMatch(/plate \w+ 0\.5 mm down/);
    expect(stout.moved.join()).toMatch(/plate \w+ 0\.5 mm up/);
    expect(study.variants[0].outcome.warnings.join()).not.toMatch(/apart|into each other/);
  });

  test("that cannot be are told with their reason, the others are compared", () => {
    expect(study.failed.map((f) => f.name)).toEqual(["none"]);
    expect(study.failed[0].reason).toMatch(/^arms\.arm\.thickness: .*more than zero/);
    expect(study.comparison.differences.map((d) => d.name)).toEqual(["6 mm"]);
  });

  test("say nothing about how sure they are", () => {
    expect(study.sure).toBeUndefined();
    expect(study.variants[0].sampled).toBeUndefined();
  });
});

test("without a variant that can be, there is no study", async () => {
  const run = compareVariants([SMALL], [asked("none", thick("0 mm"))], { ...HERE, sampled: false });
  await expect(run).rejects.toThrow(InputError);
});

describe("variants over samples", async () => {
  const variants = [asked("4 mm", thick("4 mm")), asked("6 mm", thick("6 mm"))];
  const study = await compareVariants([SMALL], variants, { ...HERE, sampled: true, samples: 32 });

  test("carry bands around what is drawn", () => {
    for (const { outcome, sampled } of study.variants) {
      const first = sampled?.modes[0];
      expect(first?.band?.found).toBeGreaterThan(16);
      expect(first?.band?.low.value).toBeLessThan(outcome.frequencies[0]);
      expect(first?.band?.high.value).toBeGreaterThan(outcome.frequencies[0]);
    }
  });

  test("take the samples asked for, most of them from the reduced model", () => {
    expect(study.sure).toMatchObject({ samples: 32, seed: 1, failed: [] });
    expect(study.sure?.text).toMatch(/^32 samples: /);
    const { reduced = 0, exact = 0 } = study.sure ?? {};
    expect(reduced + exact).toBe(64);
    expect(reduced).toBeGreaterThan(40);
  });

  test("name the spreads and where they come from", () => {
    const thickness = study.sure?.inputs.find((i) => i.name === "arms.arm.thickness");
    expect(thickness).toEqual({
      name: "arms.arm.thickness",
      spread: "±3 %",
      source: "common practice, no source",
    });
  });

  test("are paired: the same frame but for what was changed, so the arms' mode rises in all", () => {
    const [pair] = study.sure?.pairs ?? [];
    expect(pair).toMatchObject({ reference: "4 mm", name: "6 mm" });
    const most = pair.modes.reduce((a, b) =>
      b.shift.relative.median.value > a.shift.relative.median.value ? b : a,
    );
    expect(most.name).toMatch(/arms/);
    expect(most.shift.higher.share).toBe(1);
    expect(most.shift.relative.median.value).toBeGreaterThan(0.2);
  });

  test("are answered in words that agree with the chances", () => {
    const [lead] = study.sure?.chances.rivals ?? [];
    expect(study.words[0]).toContain(lead.name);
  });
});
