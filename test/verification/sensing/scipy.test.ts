/** The digital filters beside SciPy's, where python3 has it. */

import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { type BiquadOrder, lowPassBiquad, notchBiquad } from "../../../src/filter/biquad.ts";
import { biquadResponse } from "../../../src/filter/biquad-response.ts";
import { complexGain } from "../../../src/filter/frequency-response.ts";

type Order = BiquadOrder & { readonly kind: "low-pass" | "notch" };

interface Sample {
  readonly b: readonly number[];
  readonly a: readonly number[];
  /** H and group delay (s) at each frequency */
  readonly re: readonly number[];
  readonly im: readonly number[];
  readonly delay: readonly number[];
}

const ORDERS: readonly Order[] = [
  { kind: "low-pass", f0: 100, Q: Math.SQRT1_2, fs: 4000 },
  { kind: "low-pass", f0: 1300, Q: Math.SQRT1_2, fs: 8000 },
  { kind: "low-pass", f0: 250, Q: 0.5, fs: 8000 },
  { kind: "low-pass", f0: 700, Q: 2, fs: 3200 },
  { kind: "notch", f0: 200, Q: 3, fs: 4000 },
  { kind: "notch", f0: 150, Q: 5, fs: 8000 },
  { kind: "notch", f0: 1100, Q: 0.8, fs: 3200 },
];
/** Hz; none of them a zero, where the group delay by division has no digits left. */
const F = [0, 3, 40, 110, 190, 420, 800, 1250, 1500];

/** SciPy's answers; undefined where python3 or SciPy is missing. */
function scipySamples(): readonly Sample[] | undefined {
  const script = fileURLToPath(new URL("filters.py", import.meta.url));
  const input = JSON.stringify({ orders: ORDERS, f: F });
  const run = spawnSync("python3", [script], { input, encoding: "utf8", timeout: 60_000 });
  if (run.status === 0) return JSON.parse(run.stdout).samples;
  if (run.error !== undefined || run.stderr.includes("No module named")) return undefined;
  throw new Error(`filters.py failed: ${run.stderr}`);
}

const samples = scipySamples();
if (samples === undefined) {
  console.warn('Skipped "filters beside SciPy": no python3 with SciPy found.');
}

describe.skipIf(samples === undefined)("filters beside SciPy", () => {
  test.each(ORDERS.map((order, i) => [order.kind, order, i] as const))(
    "%s %o",
    (kind, order, i) => {
      const { b, a, re, im, delay } = (samples as readonly Sample[])[i];
      const ours = kind === "notch" ? notchBiquad(order) : lowPassBiquad(order);
      for (const k of [0, 1, 2]) {
        expect(ours.b[k]).toBeCloseTo(b[k], 13);
        expect(ours.a[k]).toBeCloseTo(a[k], 13);
      }
      F.forEach((f, j) => {
        const at = biquadResponse(ours, f);
        const [x, y] = complexGain(at);
        expect(x).toBeCloseTo(re[j], 11);
        expect(y).toBeCloseTo(im[j], 11);
        expect(Math.abs((at.groupDelay - delay[j]) * order.fs), `${f} Hz`).toBeLessThan(1e-9);
      });
    },
  );
});
