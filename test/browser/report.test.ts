import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { renderReport } from "../../src/report/page.ts";
import { DARK, LIGHT } from "../../src/report/palette.ts";
import { readPlotly } from "../../src/report/plotly.ts";
import { fixture, HOSTILE, INPUT, withoutMotors } from "../report/fixture.ts";
import { describeInBrowser } from "./chromium.ts";
import { type OpenPage, openOffline } from "./page.ts";

const folder = mkdtempSync(path.join(tmpdir(), "stillpoint-report-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function written(name: string, html: string): string {
  const file = path.join(folder, name);
  writeFileSync(file, html);
  return pathToFileURL(file).href;
}

/** Opens a report and waits until its charts are drawn. */
async function openReport(browser: Browser, url: string): Promise<OpenPage> {
  const opened = await openOffline(browser, url);
  // Figures are drawn as they come near the window.
  for (const figure of await opened.page.locator("[role=img]").all()) {
    await figure.scrollIntoViewIfNeeded();
    await opened.page.waitForTimeout(60);
  }
  await drawn(opened.page);
  return opened;
}

/** Polls from outside: the page's policy forbids to evaluate text inside it. */
async function until(page: Page, expression: string): Promise<void> {
  await vi.waitUntil(() => page.evaluate(expression), { timeout: 60_000, interval: 50 });
}

/** Looks at all of the page, since figures are drawn as they come near, and goes back to its top. */
async function drawn(page: Page): Promise<void> {
  const height = (await page.evaluate("document.documentElement.scrollHeight")) as number;
  for (let y = 0; y < height; y += 600) {
    await page.evaluate(`window.scrollTo({ top: ${y}, behavior: "instant" })`);
    await page.waitForTimeout(30);
  }
  await until(page, "document.querySelectorAll('.waiting').length === 0");
  await page.evaluate("window.scrollTo({ top: 0, behavior: 'instant' })");
}

describeInBrowser("a report in the browser", (browser) => {
  let url: string;
  let opened: OpenPage;
  let page: Page;

  beforeAll(async () => {
    url = written(
      "report.html",
      renderReport(fixture(), { ...INPUT, library: { kind: "inside", source: readPlotly() } }),
    );
    opened = await openReport(browser(), url);
    page = opened.page;
    await page.setViewportSize({ width: 1000, height: 600 }); // little for software to draw
  });

  test("shows every section and draws every chart", async () => {
    for (const heading of await page.locator("section > h2").all()) {
      expect((await heading.textContent())?.length).toBeGreaterThan(3);
      expect((await heading.boundingBox())?.height).toBeGreaterThan(10);
    }
    expect(await page.locator("section > h2").count()).toBe(17);
    // Three bands, the levels, two orders, crossings of three kinds, the flight, the band chosen, points.
    expect(await page.evaluate("document.getElementById('campbell-chart').data.length")).toBe(12);
    // The total, two orders, the flight.
    expect(await page.locator("#spectra-chart .scatterlayer .trace").count()).toBe(4);
    expect(await page.locator("#sweep-chart .heatmaplayer image").count()).toBe(1);
    expect(await page.locator("#lever-chart .scatterlayer .trace").count()).toBeGreaterThan(3);
    expect(await page.locator("#filters-chart .barlayer .point").count()).toBe(6);
    expect(await page.locator("#map-1 .scatterlayer .trace").count()).toBe(5);
    expect(await page.locator("#shape-chart canvas").count()).toBeGreaterThan(0);
    expect(await page.locator(".waiting").count()).toBe(0);
  });

  test("shows hostile names as they are and runs nothing of them", async () => {
    expect(await page.title()).toBe(`${HOSTILE.frame}: where the sensor stack should sit`);
    const text = await page.textContent("main");
    for (const name of Object.values(HOSTILE)) expect(text).toContain(name);
    expect(await page.locator("main").isVisible()).toBe(true);
    expect(await page.locator("main img, main script, main b").count()).toBe(0);
  });

  test("shows hostile names as they are in the labels of a chart too", async () => {
    await page.check("input[name=spectra-view][value=all]");
    await page.evaluate(`Plotly.Fx.hover(document.getElementById("spectra-chart"),
      [{ curveNumber: 0, pointNumber: 3 }, { curveNumber: 1, pointNumber: 9 }])`);
    const labels = page.locator("#spectra-chart .hovertext");
    await labels.first().waitFor();
    const shown = (await labels.allTextContents()).join("\n");
    expect(shown).toContain(`${HOSTILE.best}: `);
    expect(shown).toContain(`${HOSTILE.second}: `);
    expect(shown).not.toContain("%{y");
    expect(await page.title()).toContain(HOSTILE.frame);
  });

  test("shows on the map what is chosen, by pointer and by keyboard, in figures and in words", async () => {
    const marker = "document.getElementById('map-1').data[0].marker";
    const colours = () => page.evaluate(`${marker}.color`) as Promise<number[]>;
    const sizes = () => page.evaluate(`${marker}.size`) as Promise<number[]>;
    const { places } = fixture().ranking!.map;
    expect(await colours()).toEqual(places.map((p) => p.gyro));
    const loudest = (await sizes()).indexOf(Math.max(...(await sizes())));
    expect(places[loudest].gyro).toBe(Math.max(...places.map((p) => p.gyro)));
    await page.check("input[name=map-quantity][value=tilt]");
    const degrees = places.map((p) => Number(((p.tilt * 180) / Math.PI).toPrecision(3)));
    expect(await colours()).toEqual(degrees);
    expect(await page.textContent("#map-words")).toMatch(/^False tilt: least 0\.573/);
    expect(await page.textContent("#map-least")).toBe("0.573\u00a0degrees");
    expect(await page.getAttribute("#map-1", "aria-label")).toContain("false tilt from");
    await page.focus("input[name=map-quantity][value=tilt]");
    await page.keyboard.press("ArrowLeft");
    expect(await colours()).toEqual(places.map((p) => 1e3 * p.delayWithout));
    await page.check("input[name=map-quantity][value=gyro]");
    expect(await colours()).toEqual(places.map((p) => p.gyro));
  });

  test("draws the squares of the map as far apart as they are, at any width", async () => {
    const sides = async () => {
      const boxes = await page
        .locator("#map-1 .scatterlayer .trace")
        .first()
        .locator("path.point")
        .all();
      return Promise.all(boxes.map(async (b) => (await b.boundingBox())!));
    };
    const gap = async () => {
      // Places 10 mm fore and aft of each other: -10 and 0; the last is 40 mm ahead of the middle.
      const [, a, , , b] = await sides();
      return Math.abs(a.y + a.height / 2 - b.y - b.height / 2) / 5;
    };
    for (const width of [390, 1280]) {
      await page.setViewportSize({ width, height: 900 });
      await vi.waitUntil(async () => {
        const largest = Math.max(...(await sides()).map((s) => s.width));
        return Math.abs(largest / (await gap()) - 0.96) < 0.12;
      });
    }
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
    await shown("filters-chart", 0, 0, [
      `1a: ${HOSTILE.best}, low-pass alone: low-pass of 2nd order at 120\u00a0Hz: 2.1\u00a0ms, leaves 0.95\u00a0deg/s rms`,
    ]);
    await shown("map-1", 0, 1, [
      "x\u00a0−10, y\u00a00\u00a0mm, on the plate",
      "gyro noise 2.2 deg/s rms",
      "false tilt 0.573 degrees",
    ]);
    await shown("map-1", 4, 1, [`1b: ${HOSTILE.second}, under the plate`]);
    expect(await page.title()).toContain(HOSTILE.frame);
  });

  test("draws the curves that are ticked, of the quantity that is chosen", async () => {
    const names = "document.getElementById('spectra-chart').data.map((t) => t.name)";
    const count = async () => ((await page.evaluate(names)) as string[]).length;
    await page.check("input[name=spectra-view][value=all]");
    expect(await count()).toBe(4); // and the flight
    await page.uncheck("input[name=curve][value='1']");
    expect(await count()).toBe(3);
    await page.check("input[name=quantity][value=accel]");
    const title = "document.getElementById('spectra-chart').layout.yaxis.title.text";
    expect(await page.evaluate(title)).toBe("acceleration, g rms");
    await page.check("input[name=spectra-view][value=orders]");
    expect(await page.evaluate(names)).toContainEqual(expect.stringContaining(", 3 per turn"));
  });

  test.each([390, 1280, 2560])("does not scroll sideways at a width of %i", async (width) => {
    await page.setViewportSize({ width, height: 900 });
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      await page.waitForTimeout(300);
      const wide = (await page.evaluate("document.documentElement.scrollWidth")) as number;
      expect(wide).toBeLessThanOrEqual(width);
      for (const chart of await page.locator(".chart").all()) {
        const box = await chart.boundingBox();
        expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(width);
      }
    }
    await page.setViewportSize({ width: 1280, height: 900 });
  });

  test("turns the ranking into cards and drops a label where the page is narrow", async () => {
    const notes =
      "document.getElementById('spectra-chart').layout.annotations.map((a) => a.text).join()";
    await page.emulateMedia({ colorScheme: "light" }); // each change of scheme draws again
    await until(
      page,
      `${notes} === "lowest,hover,full,around hover 100\u00a0%,all together,once per turn,3 per turn"`,
    );
    await page.setViewportSize({ width: 390, height: 900 });
    await page.emulateMedia({ colorScheme: "dark" });
    await until(page, `${notes} === "hover,full,all together,once per turn,3 per turn"`);
    const card = await page.locator(".ranking tr.best").boundingBox();
    expect(card?.width).toBeLessThanOrEqual(390);
    const box = "document.querySelector('.ranking').parentElement";
    expect(await page.evaluate(`${box}.scrollWidth - ${box}.clientWidth`)).toBe(0);
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.emulateMedia({ colorScheme: "light" });
    await until(
      page,
      `${notes} === "lowest,hover,full,around hover 100\u00a0%,all together,once per turn,3 per turn"`,
    );
  });

  test("keeps the key figures together", async () => {
    const tops = `new Set(Array.from(document.querySelectorAll(".verdict .facts div"), (e) => Math.round(e.getBoundingClientRect().top))).size`;
    for (const [width, lines] of [
      [800, 1],
      [1280, 2],
      [2560, 2],
    ] as const) {
      await page.setViewportSize({ width, height: 900 });
      expect(await page.evaluate(tops)).toBe(lines);
    }
    await page.setViewportSize({ width: 1280, height: 900 });
  });

  test("follows the colour scheme, in the charts as well", async () => {
    const ink = "document.getElementById('campbell-chart').layout.font.color";
    await page.emulateMedia({ colorScheme: "dark" });
    await until(page, `${ink} === '${DARK.ink}'`);
    await page.emulateMedia({ colorScheme: "light" });
    await until(page, `${ink} === '${LIGHT.ink}'`);
  });

  test("prints in the light theme with nothing folded away", async () => {
    const ink = "document.getElementById('campbell-chart').layout.font.color";
    await page.emulateMedia({ colorScheme: "dark" });
    await until(page, `${ink} === '${DARK.ink}'`); // the change of scheme must not come after
    await page.evaluate("window.dispatchEvent(new Event('beforeprint'))");
    await until(page, `${ink} === '${LIGHT.ink}'`);
    expect(await page.locator("details:not([open])").count()).toBe(0);
    await page.emulateMedia({ colorScheme: "light" });
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

  test("does without motors", async () => {
    const html = renderReport(withoutMotors(), {
      ...INPUT,
      library: { kind: "inside", source: readPlotly() },
    });
    const { page, errors } = await openOffline(browser(), "about:blank");
    await page.goto(written("bare.html", html));
    await drawn(page);
    expect(await page.textContent("#spectra")).toContain("The file has no motors");
    expect(errors).toEqual([]);
  });
});
