import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { DARK, LIGHT } from "../../src/report/palette.ts";
import { describeInBrowser } from "./chromium.ts";
import { undrawn, until } from "./look.ts";
import { openOffline } from "./page.ts";
import { type PageName, pageOf, SAMPLES } from "./pages.ts";

/** Looked at by people; made anew by every run of the tests. */
const PRINTS = ".artefacts/prints";
const FORMATS = ["A4", "Letter"] as const;
/** Pages of paper: fewer and something is missing, more and something is out of bounds. */
const SHEETS = { least: 8, most: 24 };

/** Width of an A4 sheet between margins of 10 mm at 96 px to the inch. */
const SHEET_WIDTH = Math.round((190 / 25.4) * 96);

const sheets = (pdf: Buffer) =>
  pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;

const WIDER = `Array.from(document.querySelectorAll("table, .chart, svg, canvas")).filter((e) => {
  const box = e.getBoundingClientRect();
  return box.width > 0 && box.right > document.documentElement.clientWidth + 1;
}).map((e) => e.tagName + "#" + (e.id || e.closest("[id]")?.id))`;

const CUT_ROWS = `Array.from(document.querySelectorAll("tr")).filter((r) => !/avoid/.test(getComputedStyle(r).breakInside)).length`;
const LOOSE_HEADINGS = `Array.from(document.querySelectorAll("h2, h3")).filter((h) => !/avoid/.test(getComputedStyle(h).breakAfter)).map((h) => h.textContent)`;

const INKS = `Array.from(document.querySelectorAll(".js-plotly-plot"), (c) => c.layout.font?.color).filter((c) => c !== undefined)`;

async function readyToPrint(page: Page): Promise<void> {
  await page.evaluate("window.dispatchEvent(new Event('beforeprint'))");
  await page.emulateMedia({ media: "print", colorScheme: "dark" });
  await until(page, "document.querySelectorAll('.chart .waiting').length === 0");
  await until(page, `${INKS}.every((ink) => ink === '${LIGHT.ink}')`);
}

describeInBrowser("pages on paper", (browser) => {
  beforeAll(() => void mkdirSync(PRINTS, { recursive: true }));

  describe.each([...SAMPLES, "compare", "sweep"] as readonly PageName[])("%s", (name) => {
    let page: Page;
    beforeAll(async () => {
      ({ page } = await openOffline(browser(), await pageOf(name)));
      await page.emulateMedia({ colorScheme: "dark" });
      await until(page, `${INKS}.every((ink) => ink === '${DARK.ink}')`);
      // Figures need the library, which comes a moment after the first screen.
      await until(page, "typeof window.Plotly === 'object'");
      await page.waitForTimeout(300);
      await page.setViewportSize({ width: SHEET_WIDTH, height: 1000 });
    });
    afterAll(() => page.context().close());

    test("has every figure in light colours, though none was in sight and the window is dark", async () => {
      await readyToPrint(page);
      expect(await undrawn(page)).toEqual([]);
      const ground = (await page.evaluate(
        "getComputedStyle(document.body).backgroundColor",
      )) as string;
      expect(ground).toMatch(/^rgba\(0, 0, 0, 0\)$|^rgb\(2[45]\d, 2[45]\d, 2[45]\d\)$/);
      expect(await page.evaluate("getComputedStyle(document.body).color")).toBe(rgb(LIGHT.ink));
      const folded = page.locator("details:not([open])");
      for (const part of await folded.all()) expect(await part.isVisible()).toBe(false);
      expect(await page.locator(".on-paper").isVisible()).toBe(true);
    });

    test("keeps to the sheet, and its rows and headings together", async () => {
      expect(await page.evaluate(WIDER)).toEqual([]);
      expect(await page.evaluate(CUT_ROWS)).toBe(0);
      expect(await page.evaluate(LOOSE_HEADINGS)).toEqual([]);
      const controls = "button, input[type=range], nav";
      for (const control of await page.locator(controls).all()) {
        expect(await control.isVisible(), await control.innerHTML()).toBe(false);
      }
    });

    const sample = SAMPLES.find((s) => s === name);
    test.runIf(sample).each(FORMATS)("takes a sensible number of %s sheets", async (format) => {
      const pdf = await page.pdf({ format, printBackground: true });
      writeFileSync(path.join(PRINTS, `${name}-${format}.pdf`), pdf);
      expect(sheets(pdf)).toBeGreaterThanOrEqual(SHEETS.least);
      expect(sheets(pdf)).toBeLessThanOrEqual(SHEETS.most);
    });
  });
});

function rgb(hex: string): string {
  const [r, g, b] = [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16));
  return `rgb(${r}, ${g}, ${b})`;
}
