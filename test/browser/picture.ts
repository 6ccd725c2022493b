/**
 * The pictures of README, from real reports of the samples.
 *
 *   npm run pictures
 */

import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser } from "playwright-core";
import { run } from "../../src/commands/program.ts";
import { processTerminal } from "../../src/commands/terminal/terminal.ts";
import { launchBrowser } from "./chromium.ts";
import { readPng } from "./png.ts";
import { smallPng } from "./small-png.ts";

const FOLDER = "reports/pictures";

/** Arguments of the runs whose pages are shown, by the name of the page. */
const RUNS = {
  "three-inch": ["rank", "frames/three-inch.jsonc"],
  "five-inch": ["rank", "frames/five-inch.jsonc"],
  "seven-inch": ["rank", "frames/seven-inch.jsonc"],
  "ten-inch": ["rank", "frames/ten-inch.jsonc"],
  compare: ["compare", "frames/five-inch.jsonc", "--set", "arms.arm.thickness=4 mm, 5 mm, 6 mm"],
  sensitivity: ["sensitivity", "frames/five-inch.jsonc"],
} as const satisfies Record<string, readonly string[]>;

interface Shot {
  readonly file: string;
  readonly page: keyof typeof RUNS;
  readonly scheme: "light" | "dark";
  readonly size: readonly [width: number, height: number];
  /** what is shown; the first screen where not given */
  readonly part?: string;
}

const DESK = [1280, 860] as const;

const SHOTS: readonly Shot[] = [
  { file: "seven-inch", page: "seven-inch", scheme: "light", size: DESK },
  { file: "five-inch-dark", page: "five-inch", scheme: "dark", size: DESK },
  { file: "ten-inch", page: "ten-inch", scheme: "light", size: DESK },
  { file: "three-inch-phone", page: "three-inch", scheme: "light", size: [390, 844] },
  { file: "map", page: "seven-inch", scheme: "light", size: DESK, part: "#map figure" },
  { file: "mode", page: "five-inch", scheme: "light", size: DESK, part: "#modes .stage" },
  {
    file: "interference",
    page: "five-inch",
    scheme: "light",
    size: DESK,
    part: "#interference figure",
  },
  { file: "sure", page: "five-inch", scheme: "light", size: DESK, part: "#sure figure" },
  { file: "compare", page: "compare", scheme: "light", size: DESK },
  { file: "sensitivity", page: "sensitivity", scheme: "dark", size: DESK },
];

async function take(browser: Browser, shot: Shot, url: string): Promise<Buffer> {
  const [width, height] = shot.size;
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: shot.scheme,
    reducedMotion: "reduce",
  });
  const page = await context.newPage();
  await page.goto(url);
  // Contents that stay in sight would lie on a part of the page.
  if (shot.part !== undefined)
    await page.addStyleTag({ content: "nav { position: static !important; }" });
  const what = shot.part === undefined ? undefined : page.locator(shot.part).first();
  await what?.scrollIntoViewIfNeeded();
  // Figures are drawn as they come near.
  await page.waitForTimeout(4000);
  await what?.scrollIntoViewIfNeeded();
  const png = await (what ?? page).screenshot();
  await context.close();
  return smallPng(readPng(png));
}

const folder = mkdtempSync(path.join(tmpdir(), "stillpoint-pictures-"));
const browser = await launchBrowser();
try {
  const pages = new Map<string, string>();
  for (const [name, args] of Object.entries(RUNS)) {
    const file = path.join(folder, `${name}.html`);
    const code = await run([...args, "--report", file, "--no-date"], {
      ...processTerminal(),
      print: () => {},
    });
    if (code !== 0) throw new Error(`${args.join(" ")} ended with ${code}`);
    pages.set(name, pathToFileURL(file).href);
  }
  mkdirSync(FOLDER, { recursive: true });
  for (const old of readdirSync(FOLDER)) rmSync(path.join(FOLDER, old));
  for (const shot of SHOTS) {
    const picture = await take(browser, shot, pages.get(shot.page) ?? "");
    writeFileSync(path.join(FOLDER, `${shot.file}.png`), picture);
    console.log(`${`${shot.file}.png`.padEnd(24)} ${Math.round(picture.length / 1e3)} kB`);
  }
} finally {
  await browser.close();
  rmSync(folder, { recursive: true });
}
