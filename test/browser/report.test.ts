import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { renderReport } from "../../src/report/page.ts";
import { readPlotly } from "../../src/report/plotly.ts";
import type { ReportInput } from "../../src/report/types.ts";
import { fixture, HOSTILE, INPUT, withoutMotors } from "../report/fixture.ts";
import { describeInBrowser } from "./chromium.ts";
import { scrollThrough, undrawn, until } from "./look.ts";
import { type OpenPage, openOffline } from "./page.ts";
import { readPng } from "./png.ts";

const folder = mkdtempSync(path.join(tmpdir(), "stillpoint-report-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const WHOLE: ReportInput = { ...INPUT, library: { kind: "inside", source: readPlotly() } };

function written(name: string, html: string): string {
  const file = path.join(folder, name);
  writeFileSync(file, html);
  return pathToFileURL(file).href;
}

const picture = async (page: Page) =>
  Buffer.from(readPng(await page.locator("#shape-chart").screenshot()).bytes);

describeInBrowser("a made-up report in the browser", (browser) => {
  let opened: OpenPage;
  let page: Page;

  beforeAll(async () => {
    opened = await openOffline(browser(), written("report.html", renderReport(fixture(), WHOLE)));
    page = opened.page;
    await page.emulateMedia({ reducedMotion: "reduce" });
    await page.setViewportSize({ width: 1000, height: 600 }); // little for software to draw
    await scrollThrough(page);
  });

  test("shows hostile names as they are and runs nothing of them", async () => {
    expect(await page.title()).toBe(`${HOSTILE.frame}: where the sensor stack should sit`);
    const text = await page.textContent("main");
    for (const name of Object.values(HOSTILE)) expect(text).toContain(name);
    expect(await page.locator("main").isVisible()).toBe(true);
    expect(await page.locator("main img, main script, main b").count()).toBe(0);
  });

  test("shows on the map what is chosen, by pointer and by keyboard, in figures and in words", async () => {
    const drawn = "document.getElementById('map-1').data[0].marker.color";
    const { places } = fixture().ranking!.map;
    /** The quietest is at the bottom of the scale, the loudest at its top, the others between in order. */
    const shows = async (values: readonly number[]) => {
      const rank = (of: readonly number[]) => of.map((v) => of.filter((o) => o < v - 1e-9).length);
      await vi.waitUntil(async () => {
        const colours = (await page.evaluate(drawn)) as number[];
        return JSON.stringify(rank(colours)) === JSON.stringify(rank(values));
      });
    };
    await shows(places.map((p) => p.gyro));
    await page.check("input[name=map-quantity][value=tilt]");
    await shows(places.map((p) => p.tilt));
    expect(await page.textContent("#map-words")).toMatch(/^False tilt: least 0\.573/);
    expect(await page.getAttribute("#map-1", "aria-label")).toContain("false tilt from");
    await page.press("input[name=map-quantity][value=tilt]", "ArrowLeft");
    await shows(places.map((p) => p.delayWithout));
    await page.check("input[name=map-quantity][value=gyro]");
    await shows(places.map((p) => p.gyro));
  });

  test("tells in the labels of bars and squares what they are", async () => {
    const shown = async (chart: string, curve: number, point: number, words: readonly string[]) => {
      await page.evaluate(
        `Plotly.Fx.hover(document.getElementById("${chart}"), [{ curveNumber: ${curve}, pointNumber: ${point} }])`,
      );
      const label = page.locator(`#${chart} .hovertext`);
      await vi.waitUntil(async () => {
        const text = (await label.allTextContents()).join("\n");
        return words.every((w) => text.includes(w));
      });
    };
    await shown("filters-chart", 0, 0, [`1a: ${HOSTILE.best}`, "2nd order", "120\u00a0Hz", "0.95"]);
    await shown("map-1", 0, 1, ["gyro noise 2.2 deg/s rms", "false tilt 0.573 degrees"]);
    expect(await page.title()).toContain(HOSTILE.frame);
  });

  test("made no request and no error in all of this", () => {
    expect(opened.requests).toEqual([]);
    expect(opened.errors).toEqual([]);
  });
});

describeInBrowser("another report in the browser", (browser) => {
  test("refuses a script that is not its own", async () => {
    const html = renderReport(fixture(), INPUT);
    const broken = html.replace("</main>", "<script>document.title = 'ran'</script></main>");
    const { page, errors } = await openOffline(browser(), written("broken.html", broken));
    expect(await page.title()).toContain(HOSTILE.frame);
    expect(errors.join()).toContain("Content Security Policy");
  });

  test("refuses whatever asks for the network, and code from text", async () => {
    const html = renderReport(fixture(), WHOLE);
    const asking = '<img alt="" src="https://elsewhere.invalid/a.png">';
    const { page, errors } = await openOffline(
      browser(),
      written("asking.html", html.replace("</main>", `${asking}</main>`)),
    );
    await until(page, "document.querySelector('main > img') !== null");
    await vi.waitUntil(() => errors.some((e) => e.includes("img-src")));
    // Later, since what is evaluated from outside may make code from text.
    await page.evaluate(
      "setTimeout(() => { try { window.made = new Function('return 1')(); } catch (e) { window.made = e.name; } }, 0)",
    );
    await until(page, "window.made !== undefined");
    expect(await page.evaluate("window.made")).toBe("EvalError");
  });

  test("stays still where motion is unwanted, and does without motors", async () => {
    const { page, errors } = await openOffline(browser(), "about:blank");
    await page.emulateMedia({ reducedMotion: "reduce" });
    await page.goto(written("bare.html", renderReport(withoutMotors(), WHOLE)));
    await scrollThrough(page);
    expect(await undrawn(page)).toEqual([]);
    await page.locator("#shape-chart").scrollIntoViewIfNeeded();
    await page.waitForTimeout(300);
    const before = await picture(page);
    await page.waitForTimeout(400);
    expect((await picture(page)).equals(before)).toBe(true);
    expect(await page.textContent("#mode-play")).toBe("Play");
    expect(await page.textContent("#spectra")).toContain("The file has no motors");
    expect(errors).toEqual([]);
  });
});
