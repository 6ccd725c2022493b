import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { describeInBrowser } from "./chromium.ts";
import { HOSTILE_NAMES } from "./hostile-frame.ts";
import { NO_OVERFLOW, overflow, scrollThrough, undrawn } from "./look.ts";
import { type OpenPage, openOffline } from "./page.ts";
import { HOSTILE_PAGES, pageOf } from "./pages.ts";

/** Before anything of the page: notes whatever its policy stops. */
const WATCH = `window.blocked = [];
document.addEventListener("securitypolicyviolation", (e) => window.blocked.push(e.violatedDirective + " " + e.blockedURI));`;

/** Elements that only a name could have made. */
const MADE = `Array.from(document.querySelectorAll(
  "img, iframe, textarea, math, object, embed, main style, main script, title:not(head > title, svg > title), form, [onerror], [onload], [onmouseover], [srcdoc], a[href^='javascript'], svg a"),
  (e) => e.outerHTML.slice(0, 80)).concat(
  Array.from(document.querySelectorAll("b, i, sub, a, tspan"), (e) => e.textContent)
    .filter((t) => ["thick", "low", "turned", "lead"].includes(t)))`;

/** Labels of the plot library for the first points of every trace. */
const HOVER = `(() => {
  const shown = [];
  for (const chart of document.querySelectorAll(".js-plotly-plot")) {
    if (!chart._fullLayout?.xaxis) continue;
    for (let curve = 0; curve < chart.data.length; curve++) for (const point of [0, 1, 2, 3, 4]) {
      try { Plotly.Fx.hover(chart, [{ curveNumber: curve, pointNumber: point }]); } catch { continue; }
      for (const label of chart.querySelectorAll(".hovertext")) shown.push(label.textContent);
    }
    Plotly.Fx.unhover(chart);
  }
  return shown;
})()`;

const CANDIDATES = [
  HOSTILE_NAMES["sandwich centre"],
  HOSTILE_NAMES["rear bay"],
  HOSTILE_NAMES["under the top plate"],
  HOSTILE_NAMES["nose bay"],
];

describeInBrowser("pages of a frame with hostile names", (browser) => {
  describe.each(HOSTILE_PAGES)("%s", (name) => {
    let opened: OpenPage;
    let page: Page;

    beforeAll(async () => {
      opened = await openOffline(browser(), "about:blank");
      ({ page } = opened);
      await page.addInitScript(WATCH);
      await page.emulateMedia({ reducedMotion: "reduce" });
      await page.goto(await pageOf(name));
      await scrollThrough(page);
    });
    afterAll(() => page.context().close());

    test("show the names as they are", async () => {
      const text = (await page.textContent("main")) ?? "";
      // A page of what moves a frame is about its best place.
      const told = name === "hostile sensitivity" ? CANDIDATES.slice(0, 1) : CANDIDATES;
      const shown = name === "hostile rank" ? Object.values(HOSTILE_NAMES) : told;
      expect(shown.filter((n) => !text.includes(n))).toEqual([]);
      expect(await page.title()).toContain(HOSTILE_NAMES.Brindle);
      expect(await page.isVisible("main")).toBe(true);
      expect(await undrawn(page)).toEqual([]);
    });

    test("show them as they are in the labels of charts", async () => {
      const labels = ((await page.evaluate(HOVER)) as readonly string[]).join("\n");
      expect(labels.length).toBeGreaterThan(100);
      expect(Object.values(HOSTILE_NAMES).filter((n) => labels.includes(n)).length).toBeGreaterThan(
        0,
      );
      expect(labels).not.toMatch(/%\{(?!x\} \\u003c)/);
    });

    test("make no element of them and run nothing", async () => {
      expect(await page.evaluate(MADE)).toEqual([]);
      expect(await page.evaluate("[window.ran, window.blocked]")).toEqual([undefined, []]);
      expect(opened.errors).toEqual([]);
      expect(opened.requests).toEqual([]);
    });

    test("keep to the width of a phone", async () => {
      await page.setViewportSize({ width: 390, height: 900 });
      expect(await overflow(page)).toEqual(NO_OVERFLOW);
    });
  });
});
