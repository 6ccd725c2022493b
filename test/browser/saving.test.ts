import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { DARK, LIGHT } from "../../src/report/palette.ts";
import { describeInBrowser } from "./chromium.ts";
import { scrollThrough } from "./look.ts";
import { type OpenPage, openOffline } from "./page.ts";
import { type PageName, pageOf } from "./pages.ts";
import { inkShare, readPng } from "./png.ts";

/** What stands in an SVG file: read as a browser reads it, and drawn beside the page. */
const INSIDE = (svg: string) => `(async () => {
  const text = ${JSON.stringify(svg)};
  const parsed = new DOMParser().parseFromString(text, "image/svg+xml");
  const root = parsed.documentElement;
  const shapes = Array.from(root.querySelectorAll("path, rect, circle, line, polyline, polygon, image"));
  const image = new Image();
  image.src = "data:image/svg+xml;charset=utf-8," + encodeURIComponent(text);
  await image.decode();
  const canvas = document.createElement("canvas");
  [canvas.width, canvas.height] = [image.width, image.height];
  const draw = canvas.getContext("2d");
  draw.drawImage(image, 0, 0);
  const pixels = new Uint32Array(draw.getImageData(0, 0, canvas.width, canvas.height).data.buffer);
  const counts = new Map();
  for (const p of pixels) counts.set(p, (counts.get(p) ?? 0) + 1);
  return {
    root: root.tagName, width: image.width, height: image.height, shapes: shapes.length, colours: counts.size,
    ink: 1 - Math.max(...counts.values()) / pixels.length,
    words: root.textContent,
  };
})()`;

interface Inside {
  readonly root: string;
  readonly width: number;
  readonly height: number;
  readonly shapes: number;
  readonly colours: number;
  /** share of pixels that are not of the commonest colour */
  readonly ink: number;
  readonly words: string;
}

async function saved(page: Page, id: string, format: "svg" | "png") {
  const button = page.locator(`button[data-save=${format}][data-of="${id}"]`);
  const [download] = await Promise.all([page.waitForEvent("download"), button.press("Enter")]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

describeInBrowser("figures saved as files", (browser) => {
  describe.each(["five-inch", "compare"] as readonly PageName[])("%s", (name) => {
    let opened: OpenPage;
    let page: Page;
    let figures: readonly string[];

    beforeAll(async () => {
      opened = await openOffline(browser(), await pageOf(name));
      ({ page } = opened);
      await page.emulateMedia({ reducedMotion: "reduce", colorScheme: "dark" });
      await scrollThrough(page);
      figures = (await page.evaluate(
        "Array.from(document.querySelectorAll('button[data-save=svg]'), (b) => b.dataset.of)",
      )) as readonly string[];
    });
    afterAll(() => page.context().close());

    test("every chart and drawing can be saved", async () => {
      const charts = "Array.from(document.querySelectorAll('.chart'), (c) => c.id)";
      expect(figures).toEqual(expect.arrayContaining((await page.evaluate(charts)) as string[]));
    });

    test("as SVG that stands alone, with its colours and words in it", async () => {
      for (const id of figures) {
        const file = await saved(page, id, "svg");
        expect(file.name).toMatch(/^[\p{L}\p{N}-]+\.svg$/u);
        const text = file.bytes.toString("utf8");
        expect(text, id).not.toMatch(/var\(|"--|: ?--[a-z]|<script|<foreignObject/);
        const inside = (await page.evaluate(INSIDE(text))) as Inside;
        expect(inside.root, id).toBe("svg");
        expect(Math.min(inside.width, inside.height), id).toBeGreaterThan(100);
        expect(inside.shapes, id).toBeGreaterThan(0);
        expect(inside.colours, id).toBeGreaterThan(8);
        expect(inside.ink, id).toBeGreaterThan(0.005);
      }
    });

    test("as PNG, twice as fine as on the screen", async () => {
      for (const id of figures) {
        const file = await saved(page, id, "png");
        expect(file.name).toMatch(/^[\p{L}\p{N}-]+\.png$/u);
        const picture = readPng(file.bytes);
        const wide = (await page.evaluate(
          `document.getElementById("${id}").clientWidth`,
        )) as number;
        expect(picture.width / wide, id).toBeCloseTo(2, 1);
        expect(inkShare(picture), id).toBeGreaterThan(0.005);
      }
    });

    test("in the colours of the page as it is seen", async () => {
      const [id] = figures.filter((f) => f.endsWith("-chart") && f !== "shape-chart");
      const dark = (await saved(page, id, "svg")).bytes.toString("utf8");
      await page.emulateMedia({ colorScheme: "light" });
      await page.waitForTimeout(1500);
      const light = (await saved(page, id, "svg")).bytes.toString("utf8");
      await page.emulateMedia({ colorScheme: "dark" });
      expect(has(dark, DARK.ink) && has(light, LIGHT.ink)).toBe(true);
      expect(has(dark, LIGHT.ink) || has(light, DARK.ink)).toBe(false);
    });

    test("without a request or an error", () => {
      expect([opened.requests, opened.errors]).toEqual([[], []]);
    });
  });
});

/** Whether a colour is in a drawing, in either way of writing it. */
function has(svg: string, hex: string): boolean {
  const [r, g, b] = [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16));
  return svg.includes(hex) || svg.includes(`rgb(${r}, ${g}, ${b})`);
}
