/**
 * The pictures of README, from real reports: the first section of the seven-inch sample's.
 *
 *   npm run build && npm run pictures
 */

import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { launchBrowser } from "./chromium.ts";

const FOLDER = "reports/pictures";
const SAMPLE = "seven-inch";

mkdirSync(FOLDER, { recursive: true });
const folder = mkdtempSync(join(tmpdir(), "stillpoint-pictures-"));
const browser = await launchBrowser();
try {
  const report = join(folder, "report.html");
  execFileSync("node", ["dist/cli.js", "rank", `frames/${SAMPLE}.jsonc`, "--report", report]);
  const page = await browser.newPage({
    viewport: { width: 1180, height: 1000 },
    colorScheme: "light",
    reducedMotion: "reduce",
  });
  await page.goto(pathToFileURL(report).href);
  await page.locator("#verdict").screenshot({ path: join(FOLDER, `${SAMPLE}.png`) });
} finally {
  await browser.close();
  rmSync(folder, { recursive: true });
}
