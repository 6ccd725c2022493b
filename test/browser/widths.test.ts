import { mkdirSync } from "node:fs";
import path from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { DARK, LIGHT } from "../../src/report/palette.ts";
import { describeInBrowser } from "./chromium.ts";
import { NO_OVERFLOW, overflow, scrollThrough, undrawn, until } from "./look.ts";
import { openOffline } from "./page.ts";
import { PAGES, type PageName, pageOf, SAMPLES } from "./pages.ts";

/** Looked at by people; made anew by every run of the tests. */
const SCREENS = ".artefacts/screens";
const ALL_WIDTHS = [3840, 1920, 1280, 768, 390, 360] as const;
/** Pages that another one resembles are looked at in fewer. */
const WIDTHS: Partial<Record<PageName, readonly number[]>> = {
  "five-inch": ALL_WIDTHS,
  "seven-inch": ALL_WIDTHS,
  compare: ALL_WIDTHS,
};
const SOME_WIDTHS = [1280, 390];
const SCHEMES = { light: LIGHT, dark: DARK } as const;

/** Words that lie over each other in the first screen, as pairs of their texts. */
const OVERLAPS = `(() => {
  const texts = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let n = walker.nextNode(); n; n = walker.nextNode()) {
    const at = n.parentElement;
    if (n.textContent.trim() === "" || at.closest("script, style, .skip, .spoken, svg, .chart, details:not([open])")) continue;
    if (!at.checkVisibility({ visibilityProperty: true, opacityProperty: true })) continue;
    const range = document.createRange();
    range.selectNodeContents(n);
    for (const box of range.getClientRects()) {
      if (box.top < innerHeight && box.bottom > 0 && box.width > 2) texts.push({ n, box });
    }
  }
  const found = [];
  for (const [i, a] of texts.entries()) for (const b of texts.slice(i + 1)) {
    if (a.n === b.n || a.n.parentElement.contains(b.n) || b.n.parentElement.contains(a.n)) continue;
    const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
    const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
    if (wide > 3 && high > 5) found.push([a.n.textContent.trim(), b.n.textContent.trim()]);
  }
  return found;
})()`;

/** Colours of ink that the charts drawn by the plot library are written in. */
const INKS = `Array.from(new Set(Array.from(document.querySelectorAll(".js-plotly-plot"),
  (c) => c.layout?.font?.color).filter((c) => c !== undefined)))`;

describeInBrowser("pages at every width and in both schemes", (browser) => {
  beforeAll(() => void mkdirSync(SCREENS, { recursive: true }));

  describe.each(PAGES)("%s", (name) => {
    let page: Page;

    beforeAll(async () => {
      ({ page } = await openOffline(browser(), await pageOf(name)));
      await page.emulateMedia({ reducedMotion: "reduce" });
      await scrollThrough(page);
    });
    afterAll(() => page.context().close());

    test.each(WIDTHS[name] ?? SOME_WIDTHS)(
      "%i px: nothing sticks out, no word lies on another",
      async (width) => {
        await page.setViewportSize({ width, height: 900 });
        expect(await overflow(page)).toEqual(NO_OVERFLOW);
        expect(await page.evaluate(OVERLAPS)).toEqual([]);
        for (const [colorScheme, theme] of Object.entries(SCHEMES)) {
          await page.emulateMedia({ colorScheme: colorScheme as keyof typeof SCHEMES });
          await until(page, `${INKS}.every((ink) => ink === '${theme.ink}')`);
          if (SAMPLES.includes(name as (typeof SAMPLES)[number])) {
            const file = path.join(SCREENS, `${name}-${width}-${colorScheme}.png`);
            await page.screenshot({ path: file, fullPage: width === 390 });
          }
        }
        expect(await undrawn(page)).toEqual([]);
      },
    );
  });
});
