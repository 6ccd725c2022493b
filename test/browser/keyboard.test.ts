import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { describeInBrowser } from "./chromium.ts";
import { openOffline } from "./page.ts";
import { type PageName, pageOf } from "./pages.ts";

/** Where the focus is: number of the element in the document, and whether a reader sees that it is there. */
const FOCUSED = `(() => {
  const at = document.activeElement;
  if (at === null || at === document.body) return undefined;
  const box = at.getBoundingClientRect();
  const style = getComputedStyle(at);
  return {
    number: Array.from(document.querySelectorAll("*")).indexOf(at),
    words: at.tagName.toLowerCase() + (at.id ? "#" + at.id : "") + " " + (at.getAttribute("aria-label") ?? at.textContent ?? "").trim().slice(0, 40),
    href: at.getAttribute("href") ?? "",
    outlined: style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2,
    inSight: box.width > 0 && box.height > 0 && box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth,
  };
})()`;

interface Focused {
  readonly number: number;
  readonly words: string;
  readonly href: string;
  readonly outlined: boolean;
  readonly inSight: boolean;
}

/** Whatever a reader must be able to reach: of a group of radio buttons one. */
const REACHABLE = `(() => {
  const all = Array.from(document.querySelectorAll("*"));
  const groups = new Set();
  return all.filter((e) => {
    if (!e.matches("a[href], button, input, select, textarea, summary, [tabindex]") || e.tabIndex < 0 || e.disabled) return false;
    if (!e.checkVisibility({ visibilityProperty: true })) return false;
    if (e.type !== "radio") return true;
    const checked = document.querySelector("input[type=radio]:checked[name='" + e.name + "']");
    return checked === null ? !groups.has(e.name) && groups.add(e.name) : e === checked;
  }).map((e) => all.indexOf(e));
})()`;

/** Tab from the top of the page until the focus leaves it; more than `most` is a trap. */
async function walk(page: Page, most: number): Promise<Focused[]> {
  const stops: Focused[] = [];
  while (stops.length <= most) {
    await page.keyboard.press("Tab");
    const at = (await page.evaluate(FOCUSED)) as Focused | undefined;
    if (at === undefined || at.number === stops[0]?.number) return stops;
    stops.push(at);
  }
  const last = stops.slice(-3).map((s) => s.words);
  throw new Error(`the focus does not leave the page: ${last.join("; ")}`);
}

describeInBrowser("a page by keyboard alone", (browser) => {
  const names: readonly PageName[] = ["five-inch", "compare", "sweep"];

  test.each(names)("%s: every control is reached, in order, and is seen to be", async (name) => {
    const { page } = await openOffline(browser(), await pageOf(name));
    await page.emulateMedia({ reducedMotion: "reduce" });
    // Figures that are drawn on the way may add buttons; those count too.
    const stops = await walk(page, 600);
    expect(stops[0].href).toBe("#main");
    expect(stops[1].href).toMatch(/^#/);
    const numbers = stops.map((s) => s.number);
    expect(numbers).toEqual(numbers.toSorted((a, b) => a - b));
    expect(stops.filter((s) => !s.outlined).map((s) => s.words)).toEqual([]);
    expect(stops.filter((s) => !s.inSight).map((s) => s.words)).toEqual([]);
    const reached = new Set(numbers);
    const missed = ((await page.evaluate(REACHABLE)) as number[]).filter((n) => !reached.has(n));
    expect(missed).toEqual([]);
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
