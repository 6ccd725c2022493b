import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { renderReport } from "../../src/report/page.ts";
import { fixture, HOSTILE, INPUT } from "../report/fixture.ts";
import { describeInBrowser } from "./chromium.ts";
import { type OpenPage, openOffline } from "./page.ts";

const folder = mkdtempSync(path.join(tmpdir(), "stillpoint-viewer-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function written(): string {
  const file = path.join(folder, "report.html");
  // The plot library draws the other figures; here nothing is to be seen of them.
  const source = "window.Plotly = { react: async () => {} };";
  const html = renderReport(fixture(), { ...INPUT, library: { kind: "inside", source } });
  writeFileSync(file, html);
  return pathToFileURL(file).href;
}

/** What a canvas shows, as text to compare. */
const shows = (page: Page, id = "shape-chart") =>
  page.evaluate(`document.querySelector("#${id} canvas").toDataURL()`) as Promise<string>;

/** Waits until a canvas shows something else; returns that. */
async function changed(page: Page, before: string, id = "shape-chart"): Promise<string> {
  await vi.waitUntil(async () => (await shows(page, id)) !== before, {
    timeout: 20_000,
    interval: 40,
  });
  return shows(page, id);
}

async function see(page: Page, id: string): Promise<void> {
  await page
    .locator(`#${id}`)
    .evaluate((e) => e.scrollIntoView({ block: "center", behavior: "instant" }));
  await page.locator(`#${id} canvas`).waitFor();
}

describeInBrowser("the picture of the modes", (browser) => {
  let opened: OpenPage;
  let page: Page;

  beforeAll(async () => {
    opened = await openOffline(browser(), "about:blank");
    page = opened.page;
    await page.setViewportSize({ width: 1000, height: 700 });
    await page.emulateMedia({ reducedMotion: "reduce" });
    await page.goto(written());
    await see(page, "shape-chart");
  });

  test("stays still at the largest deflection where motion is unwanted", async () => {
    const before = await shows(page);
    expect(await page.textContent("#mode-play")).toBe("Play");
    await page.waitForTimeout(400);
    expect(await shows(page)).toBe(before);
    await page.fill("#mode-size", "20");
    await changed(page, before);
    await page.fill("#mode-size", "9");
  });

  test("swings while it plays, and stops on demand", async () => {
    const before = await shows(page);
    await page.click("#mode-play");
    await changed(page, before);
    await page.click("#mode-play");
    expect(await page.textContent("#mode-play")).toBe("Play");
    const still = await shows(page);
    await page.waitForTimeout(300);
    expect(await shows(page)).toBe(still);
  });

  test("rests while it is out of sight", async () => {
    await page.click("#mode-play");
    await page.evaluate("window.scrollTo({ top: 0, behavior: 'instant' })");
    await page.waitForTimeout(300);
    const away = await shows(page);
    await page.waitForTimeout(300);
    expect(await shows(page)).toBe(away);
    await see(page, "shape-chart");
    await changed(page, away);
    await page.click("#mode-play");
  });

  test("shows the mode that is chosen: in the table, by keyboard, by the buttons, by a link", async () => {
    const words = () => page.textContent("#mode-words");
    await page.check("input[name=mode][value='1']");
    expect(await words()).toContain("Mode 1, 160\u00a0Hz");
    const first = await shows(page);
    await page.focus("input[name=mode][value='1']");
    await page.keyboard.press("ArrowDown");
    expect(await words()).toContain("Mode 2, 230\u00a0Hz");
    const second = await changed(page, first);
    await page.click("#mode-next");
    expect(await words()).toContain("Mode 3, 450\u00a0Hz");
    expect(await page.isChecked("input[name=mode][value='3']")).toBe(true);
    expect(await page.isDisabled("#mode-next")).toBe(true);
    await page.click("#mode-back");
    expect(await shows(page)).toBe(second);
    const label = await page.getAttribute("#shape-chart canvas", "aria-label");
    expect(label).toBe(await words());
    await page.click("#mode-back");
    const number = await page.getAttribute("#modes .finding [data-mode]", "data-mode");
    await page.click("#modes .finding [data-mode]");
    expect(await words()).toContain(`Mode ${number}, `);
  });

  test("is coloured by movement or by turning, with or without bodies and the frame at rest", async () => {
    await see(page, "shape-chart");
    let before = await shows(page);
    await page.check("#mode-by-turning");
    before = await changed(page, before);
    expect(await page.locator(".by-turning").isVisible()).toBe(true);
    expect(await page.locator(".by-moving").isVisible()).toBe(false);
    for (const box of ["#mode-bodies", "#mode-ghost"]) {
      await page.uncheck(box);
      before = await changed(page, before);
    }
  });

  test("is turned by hand, by keys and by buttons, and says what is under the pointer", async () => {
    await page.click("#modes button[data-view=above]");
    await page.waitForTimeout(100);
    const above = await shows(page);
    const box = await page.locator("#shape-chart canvas").boundingBox();
    if (box === null) throw new Error("the picture has no box");
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    const tip = page.locator("#shape-chart .tip");
    expect(await tip.textContent()).toMatch(
      /: moves [\d.]+\u00a0% and turns [\d.]+\u00a0% of the most/,
    );
    expect(await tip.textContent()).toContain(HOSTILE.plate);
    await page.mouse.down();
    await page.mouse.move(x + 40, y + 25, { steps: 4 });
    await page.mouse.up();
    const turned = await changed(page, above);
    await page.focus("#shape-chart canvas");
    await page.keyboard.press("ArrowLeft");
    const keyed = await changed(page, turned);
    await page.keyboard.press("+");
    await changed(page, keyed);
    await page.click("#modes button[data-view=above]");
    await vi.waitUntil(async () => (await shows(page)) === above);
  });

  test("is drawn in the colours of the scheme and in the size of its place", async () => {
    const light = await shows(page);
    await page.emulateMedia({ colorScheme: "dark" });
    await changed(page, light);
    await page.emulateMedia({ colorScheme: "light" });
    await vi.waitUntil(async () => (await shows(page)) === light);
    await page.setViewportSize({ width: 390, height: 700 });
    const width = "document.querySelector('#shape-chart canvas').width";
    await vi.waitUntil(async () => Number(await page.evaluate(width)) < 390);
    await page.setViewportSize({ width: 1000, height: 700 });
    await vi.waitUntil(async () => (await shows(page)) === light);
  });

  test.each(["svg", "png"])("is saved as %s", async (format) => {
    await see(page, "shape-chart");
    const [file] = await Promise.all([
      page.waitForEvent("download"),
      page.click(`button[data-of=shape-chart][data-save=${format}]`),
    ]);
    const bytes = readFileSync(await file.path());
    if (format === "png") expect(bytes.subarray(1, 4).toString()).toBe("PNG");
    else {
      const text = bytes.toString();
      expect(text).toContain('<svg xmlns="http');
      expect(text.match(/<path /g)?.length).toBeGreaterThan(200);
      expect(text).not.toContain(HOSTILE.plate);
    }
  });

  test("is filmed for a swing or two", async () => {
    await page.fill("#mode-speed", "2");
    if (!(await page.locator("#mode-clip").isVisible())) return; // this browser cannot film
    const [file] = await Promise.all([page.waitForEvent("download"), page.click("#mode-clip")]);
    const bytes = readFileSync(await file.path());
    expect(bytes.subarray(0, 4).toString("hex")).toBe("1a45dfa3"); // EBML, as WebM begins
    expect(bytes.length).toBeGreaterThan(3000);
  });

  test("has the frame at rest beside it, which names its parts", async () => {
    await see(page, "frame-chart");
    const before = await shows(page, "frame-chart");
    await page.uncheck("#frame-bodies");
    const bare = await changed(page, before, "frame-chart");
    await page.click("#model button[data-view=above]");
    await changed(page, bare, "frame-chart");
    const box = await page.locator("#frame-chart canvas").boundingBox();
    await page.mouse.move(
      (box?.x ?? 0) + (box?.width ?? 0) / 2,
      (box?.y ?? 0) + (box?.height ?? 0) / 2,
    );
    const tip = await page.textContent("#frame-chart .tip");
    expect(tip).toContain(`${HOSTILE.plate}: plate, 2\u00a0mm thick, `);
  });

  test("made no request and no error in all of this", () => {
    expect(opened.requests).toEqual([]);
    expect(opened.errors).toEqual([]);
  });
});
