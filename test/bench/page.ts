/**
 * The report in a browser: when the first thing and when the verdict is seen, and whether the page stays
 * quick to answer while a mode moves. Headless Chromium draws in software: a machine with a graphics card
 * is quicker with the moving picture. Every figure is the median of fresh browser contexts, because the
 * first opening after a start of the browser is always slower.
 */

import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser } from "playwright-core";
import { analyse } from "../../src/analyse.ts";
import { readFrame } from "../../src/frame/read.ts";
import { renderReport } from "../../src/report/page.ts";
import { libraryFile, readPlotly } from "../../src/report/plotly.ts";
import type { PlotLibrary } from "../../src/report/types.ts";
import { findChromium, launchBrowser } from "../browser/chromium.ts";

const RUNS = 5;
const SECONDS_OF_MOTION = 5;

/** Before the page's own scripts: notes the first frame that has the verdict, and every long task. */
const WATCH = `
window.seen = {}; window.longTasks = [];
new PerformanceObserver((list) => {
  for (const e of list.getEntries()) window.longTasks.push([e.startTime, e.duration]);
}).observe({ type: "longtask", buffered: true });
const there = (e) => e !== null && e.getBoundingClientRect().height > 0;
const look = () => {
  const now = performance.now();
  if (there(document.querySelector("#verdict h2"))) window.seen.text ??= now;
  if (there(document.querySelector("#verdict svg"))) window.seen.picture ??= now;
  if (!window.seen.text || !window.seen.picture) requestAnimationFrame(look);
};
requestAnimationFrame(look);`;

const OPENED = `({
  paint: performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? NaN,
  text: window.seen.text ?? NaN,
  picture: window.seen.picture ?? NaN,
  loaded: performance.getEntriesByType("navigation")[0].loadEventEnd,
})`;

type Opened = Readonly<Record<"paint" | "text" | "picture" | "loaded", number>>;
type LongTask = readonly [start: number, duration: number];

interface Measured extends Opened {
  /** while a mode moves */
  readonly tasks: number;
  readonly longest: number;
}

async function measure(browser: Browser, url: string): Promise<Measured> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  try {
    const page = await context.newPage();
    await page.addInitScript(WATCH);
    await page.goto(url, { waitUntil: "load" });
    await page.waitForTimeout(1000);
    const opened = (await page.evaluate(OPENED)) as Opened;
    await page.locator("#shape-chart").scrollIntoViewIfNeeded();
    await page.waitForTimeout(1500); // until it is drawn and moves
    if ((await page.getAttribute("#mode-play", "aria-pressed")) === "false") {
      await page.click("#mode-play");
    }
    const from = (await page.evaluate("performance.now()")) as number;
    await page.waitForTimeout(1000 * SECONDS_OF_MOTION);
    const all = (await page.evaluate("window.longTasks")) as readonly LongTask[];
    const tasks = all.filter(([start]) => start > from).map(([, duration]) => duration);
    return { ...opened, tasks: tasks.length, longest: Math.max(0, ...tasks) };
  } finally {
    await context.close();
  }
}

const median = (values: readonly number[]) =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

/** Prints what was measured; a line that says so where there is no browser. */
export async function benchPage(frame: string): Promise<void> {
  console.log(`\nThe report of ${frame} in a browser`);
  if (findChromium() === undefined) {
    console.log("  no Chromium found");
    return;
  }
  const analysis = analyse(readFrame(frame));
  const page = (library: PlotLibrary) =>
    renderReport(analysis, {
      fileName: frame,
      fileHash: "",
      version: "bench",
      options: "",
      library,
    });
  const text = page({ kind: "inside", source: readPlotly() });
  const size = Buffer.byteLength(text);
  const own = Buffer.byteLength(page({ kind: "beside", file: libraryFile() }));
  console.log(
    `  size ${(size / 1e6).toFixed(2)} MB, ${Math.round(own / 1e3)} kB without the library`,
  );
  const folder = mkdtempSync(path.join(tmpdir(), "stillpoint-bench-"));
  const browser = await launchBrowser();
  try {
    const file = path.join(folder, "report.html");
    writeFileSync(file, text);
    const runs: Measured[] = [];
    for (let i = 0; i < RUNS; i++) runs.push(await measure(browser, pathToFileURL(file).href));
    const of = (key: keyof Measured) =>
      `${Math.round(median(runs.map((r) => r[key])))}`.padStart(6);
    console.log(`  first paint            ${of("paint")} ms`);
    console.log(`  verdict's words        ${of("text")} ms`);
    console.log(`  verdict's picture      ${of("picture")} ms`);
    console.log(`  all loaded             ${of("loaded")} ms`);
    console.log(
      `  a mode moves for ${SECONDS_OF_MOTION} s: ${of("tasks").trim()} tasks over 50 ms, the longest ${of("longest").trim()} ms`,
    );
  } finally {
    await browser.close();
    rmSync(folder, { recursive: true });
  }
}
