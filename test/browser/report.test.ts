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
  await drawn(opened.page);
  return opened;
}

/** Polls from outside: the page's policy forbids to evaluate text inside it. */
async function until(page: Page, expression: string): Promise<void> {
  await vi.waitUntil(() => page.evaluate(expression), { timeout: 60_000, interval: 50 });
}

const drawn = (page: Page) =>
  until(page, "document.getElementById('shape-chart').data?.length === 7");

/** Heights of the surface's vertices as they are drawn. */
const HEIGHTS = "Array.from(document.getElementById('shape-chart').data[0].z)";
const heights = (page: Page) => page.evaluate(HEIGHTS) as Promise<number[]>;

/** Waits for the surface to differ from `before`. */
const moved = (page: Page, before: readonly number[]) =>
  until(page, `JSON.stringify(${HEIGHTS}) !== '${JSON.stringify(before)}'`);

async function pause(page: Page): Promise<void> {
  if ((await page.textContent("#mode-play")) === "Pause") await page.click("#mode-play");
  await page.waitForTimeout(400); // the frame under way
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
    expect(await page.locator("section > h2").count()).toBe(16);
    expect(await page.locator("#campbell-chart .main-svg .scatterlayer .trace").count()).toBe(7);
    expect(await page.locator("#spectra-chart .scatterlayer .trace").count()).toBe(3);
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

  test("moves the shape, stops on demand, and takes the size from the slider", async () => {
    await page.locator("#shape-chart").scrollIntoViewIfNeeded(); // out of sight it rests
    await moved(page, await heights(page));
    await pause(page);
    const still = await heights(page);
    await page.waitForTimeout(300);
    expect(await heights(page)).toEqual(still);
    const reach = (z: readonly number[]) => Math.max(...z) - Math.min(...z);
    await page.fill("#mode-size", "0");
    await moved(page, still);
    const flat = await heights(page);
    await page.fill("#mode-size", "30");
    await moved(page, flat);
    expect(reach(await heights(page))).toBeGreaterThanOrEqual(reach(flat));
  });

  test("shows the mode that is chosen, by pointer and by keyboard", async () => {
    await pause(page);
    const colours = "Array.from(document.getElementById('shape-chart').data[0].intensity)";
    const second = await page.evaluate(colours);
    await page.check("input[name=mode][value='1']");
    const first = await page.evaluate(colours);
    expect(first).not.toEqual(second);
    expect(await page.textContent("#mode-words")).toContain("Mode 1, 160\u00a0Hz");
    await page.focus("input[name=mode][value='1']");
    await page.keyboard.press("ArrowDown");
    expect(await page.textContent("#mode-words")).toContain("Mode 2, 230\u00a0Hz");
    expect(await page.evaluate(colours)).toEqual(second);
  });

  test("keeps the view that was chosen while the shape moves", async () => {
    const eye = "document.getElementById('shape-chart')._fullLayout.scene._scene.getCamera().eye";
    const height = async () => ((await page.evaluate(eye)) as { readonly z: number }).z;
    await page.click("button[data-view=above]");
    await vi.waitUntil(async () => (await height()) > 1.5);
    await page.click("button[data-view=front]");
    await vi.waitUntil(async () => (await height()) < 0.1);
    await page.click("#mode-play");
    await page.locator("#shape-chart").evaluate((e) => e.scrollIntoView({ block: "start" }));
    await moved(page, await heights(page));
    const box = await page.locator("#shape-chart").boundingBox();
    if (box === null) throw new Error("the chart has no box");
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 1; i <= 10; i++) {
      await page.mouse.move(x + 2 * i, y + 9 * i);
      await page.waitForTimeout(40); // as a hand would
    }
    await page.mouse.up();
    const turned = await height();
    expect(turned).toBeGreaterThan(0.2);
    await moved(page, await heights(page));
    expect(await height()).toBeCloseTo(turned, 1);
    await pause(page);
  });

  test("draws the curves that are ticked, of the quantity that is chosen", async () => {
    const shown = "document.getElementById('spectra-chart').data.map((t) => t.visible)";
    expect(await page.evaluate(shown)).toEqual([true, true, true]);
    await page.uncheck("input[name=curve][value='1']");
    expect(await page.evaluate(shown)).toEqual([true, false, true]);
    await page.check("input[name=quantity][value=accel]");
    const title = "document.getElementById('spectra-chart').layout.yaxis.title.text";
    expect(await page.evaluate(title)).toBe("acceleration, g rms");
    expect(await page.evaluate(shown)).toEqual([true, false, true]);
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
    await until(page, `${notes} === "lowest,hover,full"`);
    await page.setViewportSize({ width: 390, height: 900 });
    await page.emulateMedia({ colorScheme: "dark" });
    await until(page, `${notes} === "hover,full"`);
    const card = await page.locator(".ranking tr.best").boundingBox();
    expect(card?.width).toBeLessThanOrEqual(390);
    const box = "document.querySelector('.ranking').parentElement";
    expect(await page.evaluate(`${box}.scrollWidth - ${box}.clientWidth`)).toBe(0);
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.emulateMedia({ colorScheme: "light" });
    await until(page, `${notes} === "lowest,hover,full"`);
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

  test("stays still where motion is unwanted, and does without motors", async () => {
    const html = renderReport(withoutMotors(), {
      ...INPUT,
      library: { kind: "inside", source: readPlotly() },
    });
    const { page, errors } = await openOffline(browser(), "about:blank");
    await page.emulateMedia({ reducedMotion: "reduce" });
    await page.goto(written("bare.html", html));
    await drawn(page);
    await page.locator("#shape-chart").scrollIntoViewIfNeeded();
    await page.waitForTimeout(300);
    const before = await heights(page);
    await page.waitForTimeout(600);
    expect(await heights(page)).toEqual(before);
    expect(await page.textContent("#mode-play")).toBe("Play");
    expect(await page.textContent("#spectra")).toContain("The file has no motors");
    expect(errors).toEqual([]);
  });
});
