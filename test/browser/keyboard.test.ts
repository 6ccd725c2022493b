import type { Page } from "playwright-core";
import { beforeAll, describe, expect, test } from "vitest";
import { describeInBrowser } from "./chromium.ts";
import { scrollThrough } from "./look.ts";
import { openOffline } from "./page.ts";
import { type PageName, pageOf } from "./pages.ts";

/**
 * Where the focus is, and whether a reader sees that it is there. The elements are kept in the page:
 * numbers of elements change as figures are drawn.
 */
const FOCUSED = `(() => {
  const at = document.activeElement;
  if (at === null || at === document.body) return undefined;
  window.stops ??= [];
  const { stops } = window;
  const last = stops.at(-1);
  const box = at.getBoundingClientRect();
  const style = getComputedStyle(at);
  const again = stops.includes(at);
  stops.push(at);
  return {
    words: at.tagName.toLowerCase() + (at.id ? "#" + at.id : "") + " " + (at.getAttribute("aria-label") ?? at.textContent ?? "").trim().slice(0, 40),
    href: at.getAttribute("href") ?? "",
    again,
    inOrder: last === undefined || (last.compareDocumentPosition(at) & Node.DOCUMENT_POSITION_FOLLOWING) > 0,
    outlined: style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2,
    inSight: box.width > 0 && box.height > 0 && box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth,
  };
})()`;

interface Focused {
  readonly words: string;
  readonly href: string;
  /** it was there before */
  readonly again: boolean;
  /** after the stop before, in the document */
  readonly inOrder: boolean;
  readonly outlined: boolean;
  readonly inSight: boolean;
}

/** Whatever a reader must be able to reach and has not; of a group of radio buttons one. */
const MISSED = `(() => {
  const groups = new Set();
  return Array.from(document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex]")).filter((e) => {
    if (e.tabIndex < 0 || e.disabled || window.stops.includes(e)) return false;
    if (!e.checkVisibility({ visibilityProperty: true })) return false;
    if (e.type !== "radio") return true;
    return !window.stops.some((s) => s.type === "radio" && s.name === e.name);
  }).map((e) => e.outerHTML.slice(0, 120));
})()`;

/** Tab from the top of the page until the focus leaves it; more than `most` is a trap. */
async function walk(page: Page, most: number): Promise<Focused[]> {
  const stops: Focused[] = [];
  while (stops.length <= most) {
    await page.keyboard.press("Tab");
    const at = (await page.evaluate(FOCUSED)) as Focused | undefined;
    if (at === undefined || at.again) return stops;
    stops.push(at);
  }
  const last = stops.slice(-3).map((s) => s.words);
  throw new Error(`the focus does not leave the page: ${last.join("; ")}`);
}

describeInBrowser("a page by keyboard alone", (browser) => {
  const names: readonly PageName[] = ["five-inch", "compare", "sweep"];
  beforeAll(async () => {
    for (const name of names) await pageOf(name);
  });

  test.each(names)("%s: every control is reached, in order, and is seen to be", async (name) => {
    const { page } = await openOffline(browser(), await pageOf(name));
    await page.emulateMedia({ reducedMotion: "reduce" });
    // Pictures are controls too, and there only once they are drawn.
    await scrollThrough(page);
    // Back to where a reader begins.
    await page.evaluate(
      "document.body.tabIndex = -1; document.body.focus(); document.body.removeAttribute('tabindex')",
    );
    const stops = await walk(page, 600);
    expect(stops[0].href).toBe("#main");
    expect(stops[1].href).toMatch(/^#/);
    expect(stops.length).toBeGreaterThan(12);
    expect(stops.filter((s) => !s.inOrder).map((s) => s.words)).toEqual([]);
    expect(stops.filter((s) => !s.outlined).map((s) => s.words)).toEqual([]);
    expect(stops.filter((s) => !s.inSight).map((s) => s.words)).toEqual([]);
    expect(await page.evaluate(MISSED)).toEqual([]);
    await page.context().close();
  });

  describe("from the skip link", () => {
    test("leads past the contents", async () => {
      const { page } = await openOffline(browser(), await pageOf("five-inch"));
      await page.keyboard.press("Tab");
      await page.keyboard.press("Enter");
      await page.keyboard.press("Tab");
      const inside = "document.getElementById('main').contains(document.activeElement)";
      expect(await page.evaluate(inside)).toBe(true);
      expect(page.url()).toMatch(/#main$/);
      await page.context().close();
    });
  });
});
