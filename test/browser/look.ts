/** Looking at a page as a reader does: scrolling through it, and telling whether its figures are drawn. */

import type { Page } from "playwright-core";
import { vi } from "vitest";

/** Polls from outside: the page's policy forbids to evaluate text inside it. */
export async function until(page: Page, expression: string): Promise<void> {
  await vi.waitUntil(() => page.evaluate(expression), { timeout: 60_000, interval: 50 });
}

/**
 * What there is in every figure's place: of a chart of the plot library the number of signs with a size
 * (lines, bars, points), of a canvas its area; 0 where nothing is drawn, -1 where the place says it waits.
 */
const DRAWN = `Object.fromEntries(Array.from(document.querySelectorAll(".chart"), (at) => {
  if (at.querySelector(".waiting")) return [at.id, -1];
  const sized = (e) => { const b = e.getBoundingClientRect(); return b.width + b.height > 0; };
  const canvases = Array.from(at.querySelectorAll("canvas")).filter(sized);
  const signs = Array.from(at.querySelectorAll(
    ".main-svg .trace path, .main-svg .point path, .main-svg .trace text, .main-svg image, svg:not(.main-svg) :is(path, circle, rect, line, polyline)")).filter(sized);
  return [at.id, signs.length + canvases.length];
}))`;

export type Drawn = Readonly<Record<string, number>>;

export function drawnSigns(page: Page): Promise<Drawn> {
  return page.evaluate(DRAWN) as Promise<Drawn>;
}

/** Ids of the figures that are not drawn. */
export async function undrawn(page: Page): Promise<string[]> {
  const drawn = await drawnSigns(page);
  return Object.keys(drawn).filter((id) => drawn[id] <= 0);
}

/** Scrolls from the top to the end and back, waiting for each figure as it comes into sight. */
export async function scrollThrough(page: Page): Promise<void> {
  for (const chart of await page.locator(".chart").all()) {
    await chart.evaluate((e) => e.scrollIntoView({ block: "center", behavior: "instant" }));
    const id = (await chart.getAttribute("id")) ?? "";
    try {
      await vi.waitUntil(async () => (await drawnSigns(page))[id] > 0, {
        timeout: 20_000,
        interval: 50,
      });
    } catch {
      throw new Error(`${id} is in sight and not drawn`);
    }
  }
  await page.evaluate("window.scrollTo({ top: 0, behavior: 'instant' })");
}

/** Elements that stick out of the window to the right without a box of their own that scrolls. */
const TOO_WIDE = `Array.from(document.querySelectorAll("body *")).filter((e) => {
  const box = e.getBoundingClientRect();
  if (box.width === 0 || box.height === 0 || box.right <= document.documentElement.clientWidth + 1) return false;
  for (let p = e; p; p = p.parentElement) {
    if (/auto|scroll|hidden|clip/.test(getComputedStyle(p).overflowX)) return false;
  }
  return true;
}).map((e) => e.tagName + (e.id ? "#" + e.id : "") + "." + (e.getAttribute("class") ?? ""))`;

export interface Overflow {
  /** px */
  readonly by: number;
  readonly of: readonly string[];
}

export const NO_OVERFLOW: Overflow = { by: 0, of: [] };

/**
 * By how much the page scrolls sideways and what sticks out, once it has had the time to settle: charts
 * follow the width of the window a little later.
 */
export async function overflow(page: Page): Promise<Overflow> {
  for (let tries = 0; ; tries++) {
    const by = (await page.evaluate(
      "document.documentElement.scrollWidth - document.documentElement.clientWidth",
    )) as number;
    const of = (await page.evaluate(TOO_WIDE)) as string[];
    if ((by === 0 && of.length === 0) || tries === 60) return { by, of };
    await page.waitForTimeout(50);
  }
}
