import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { DARK, LIGHT } from "../../src/report/palette.ts";
import { readPlotly } from "../../src/report/plotly.ts";
import { renderComparison } from "../../src/report/study-page.ts";
import { renderSweep } from "../../src/report/sweep-page.ts";
import { INPUT } from "../report/fixture.ts";
import {
  HOSTILE_SPOT,
  HOSTILE_TITLE,
  HOSTILE_VARIANT,
  madeStudy,
  madeVariants,
} from "../study/made-study.ts";
import { HOSTILE_SWEPT, madeSweep } from "../study/made-sweep.ts";
import { describeInBrowser } from "./chromium.ts";
import { type OpenPage, openOffline } from "./page.ts";

const folder = mkdtempSync(path.join(tmpdir(), "stillpoint-study-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const study = madeStudy(
  madeVariants([HOSTILE_VARIANT, "4 mm", "6 mm"], HOSTILE_SPOT),
  64,
  HOSTILE_TITLE,
);

const CHARTS = ["answer", "noise", "delay", "frequencies", "chances"].map((n) => `${n}-chart`);

/** Polls from outside: the page's policy forbids to evaluate text inside it. */
async function until(page: Page, expression: string): Promise<void> {
  await vi.waitUntil(() => page.evaluate(expression), { timeout: 60_000, interval: 50 });
}

const data = (id: string) => `document.getElementById('${id}').data`;

async function drawAll(page: Page): Promise<void> {
  for (const id of CHARTS) {
    await page.locator(`#${id}`).scrollIntoViewIfNeeded();
    await until(page, `${data(id)}?.length > 0`);
  }
}

describeInBrowser("a comparison in the browser", (browser) => {
  let opened: OpenPage;
  let page: Page;

  beforeAll(async () => {
    const file = path.join(folder, "comparison.html");
    writeFileSync(
      file,
      renderComparison(study, { ...INPUT, library: { kind: "inside", source: readPlotly() } }),
    );
    opened = await openOffline(browser(), pathToFileURL(file).href);
    page = opened.page;
  });

  test("draws a chart when it comes into sight, not before", async () => {
    await until(page, `${data("answer-chart")}?.length > 0`);
    expect(await page.evaluate(`${data("chances-chart")} === undefined`)).toBe(true);
    await drawAll(page);
    expect(await page.locator(".waiting").count()).toBe(0);
  });

  test("plots what was found", async () => {
    const [pair] = study.sure?.pairs ?? [];
    const shown = (await page.evaluate(`${data("answer-chart")}[1].x[0]`)) as number;
    expect(shown).toBeCloseTo(pair.noise.decibel?.median.value ?? 0, 2);
    const modes = (await page.evaluate(`${data("frequencies-chart")}[2].x`)) as number[];
    const bands = study.variants[1].sampled?.modes.map((m) => m.band?.median.value) ?? [];
    for (const [i, f] of modes.entries()) expect(f / (bands[i] ?? 0)).toBeCloseTo(1, 3);
    const points = "#noise-chart .scatterlayer .trace path.point";
    expect(await page.locator(points).count()).toBe(12);
    expect(await page.locator("#noise-chart .errorbars path").count()).toBeGreaterThan(8);
    expect(await page.locator("#chances-chart .barlayer .point").count()).toBe(6);
  });

  test("shows hostile names as they are, in the page and in the labels", async () => {
    expect(await page.title()).toBe(`${HOSTILE_TITLE}: 3 variants compared`);
    const text = await page.textContent("body");
    for (const name of [HOSTILE_SPOT, HOSTILE_VARIANT, HOSTILE_TITLE]) expect(text).toContain(name);
    expect(await page.locator("main img, main script, main b").count()).toBe(0);
    await page.locator("#noise-chart").scrollIntoViewIfNeeded();
    await page.evaluate(
      `Plotly.Fx.hover(document.getElementById("noise-chart"), [{ curveNumber: 0, pointNumber: 0 }])`,
    );
    const label = page.locator("#noise-chart .hovertext");
    await vi.waitUntil(async () =>
      (await label.allTextContents()).join().includes(`${HOSTILE_VARIANT}, ${HOSTILE_SPOT}: 2.4`),
    );
  });

  test.each([390, 1280])("does not scroll sideways at a width of %i", async (width) => {
    await page.setViewportSize({ width, height: 900 });
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      await page.waitForTimeout(300);
      const wide = (await page.evaluate("document.documentElement.scrollWidth")) as number;
      expect(wide).toBeLessThanOrEqual(width);
    }
    await page.setViewportSize({ width: 1280, height: 900 });
  });

  test("follows the colour scheme in every chart that is drawn", async () => {
    for (const [colorScheme, theme] of [
      ["dark", DARK],
      ["light", LIGHT],
    ] as const) {
      await page.emulateMedia({ colorScheme });
      for (const id of CHARTS) {
        const ink = `document.getElementById('${id}').layout.font.color`;
        await until(page, `${ink} === '${theme.ink}'`);
      }
    }
  });

  test("made no request and no error in all of this", () => {
    expect(opened.requests).toEqual([]);
    expect(opened.errors).toEqual([]);
  });

  test("draws charts that were never in sight for printing, in the light theme", async () => {
    const { page: fresh, errors } = await openOffline(browser(), page.url());
    await fresh.emulateMedia({ colorScheme: "dark" });
    await until(fresh, `${data("answer-chart")}?.length > 0`);
    expect(await fresh.evaluate(`${data("chances-chart")} === undefined`)).toBe(true);
    await until(fresh, "typeof window.Plotly === 'object'");
    await fresh.evaluate("window.dispatchEvent(new Event('beforeprint'))");
    for (const id of CHARTS) {
      await until(fresh, `document.getElementById('${id}').layout?.font.color === '${LIGHT.ink}'`);
    }
    expect(errors).toEqual([]);
  });
});

describeInBrowser("a sweep in the browser", (browser) => {
  test("plots its findings, narrow and wide, light and dark, without an error", async () => {
    const sweep = madeSweep(HOSTILE_SPOT, HOSTILE_SWEPT);
    const file = path.join(folder, "sweep.html");
    writeFileSync(
      file,
      renderSweep(sweep, { ...INPUT, library: { kind: "inside", source: readPlotly() } }),
    );
    const { page, errors, requests } = await openOffline(browser(), pathToFileURL(file).href);
    for (const id of ["front-chart", "course-chart", "branches-chart"]) {
      await page.locator(`#${id}`).scrollIntoViewIfNeeded();
      await until(page, `${data(id)}?.length > 0`);
    }
    const quietest = await page.evaluate(`${data("front-chart")}[3].y[0]`);
    // 12/7 + 3 exp(-1.5^2)
    expect(quietest).toBeCloseTo(12 / 7 + 3 * Math.exp(-2.25), 2);
    expect(await page.textContent("#course-chart .xtitle")).toContain(HOSTILE_SWEPT);
    for (const width of [390, 1280]) {
      await page.setViewportSize({ width, height: 900 });
      for (const colorScheme of ["dark", "light"] as const) {
        await page.emulateMedia({ colorScheme });
        // Charts follow the width a little later.
        await until(page, `document.documentElement.scrollWidth <= ${width}`);
      }
    }
    expect([errors, requests]).toEqual([[], []]);
  });
});
