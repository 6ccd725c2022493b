/** Finds and starts a Chromium-family browser for the tests that look at pages. */

import { accessSync, constants, statSync } from "node:fs";
import path from "node:path";
import { type Browser, chromium } from "playwright-core";
import { afterAll, beforeAll, describe } from "vitest";

type Environment = Readonly<Record<string, string | undefined>>;

const COMMANDS = [
  "chromium",
  "chromium-browser",
  "google-chrome-stable",
  "google-chrome",
  "chrome",
  "microsoft-edge",
  "msedge",
];

const HOW_TO_GET_ONE =
  "Install Chromium (Debian: apt-get install chromium) or set CHROMIUM_PATH to a browser of its family.";

/** WebGL without a graphics card: ANGLE on SwiftShader, for the 3D plots. */
const FLAGS = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--use-gl=angle",
  "--use-angle=swiftshader",
  "--enable-unsafe-swiftshader",
];

/** What `findChromium` asks of the machine; replaced in its own tests. */
export interface Machine {
  readonly env: Environment;
  readonly platform: string;
  readonly isExecutable: (file: string) => boolean;
}

const THIS_MACHINE: Machine = { env: process.env, platform: process.platform, isExecutable };

/**
 * The browser to use: CHROMIUM_PATH, then the search path, then the usual places of the platform;
 * undefined when there is none.
 *
 * @throws Error when CHROMIUM_PATH is set and names no executable file.
 */
export function findChromium(machine: Machine = THIS_MACHINE): string | undefined {
  const named = machine.env.CHROMIUM_PATH ?? "";
  if (named === "") {
    return [...onSearchPath(machine), ...usualPlaces(machine)].find(machine.isExecutable);
  }
  if (!machine.isExecutable(named)) {
    throw new Error(
      `CHROMIUM_PATH is "${named}", which is not an executable file: correct it or unset it.`,
    );
  }
  return named;
}

function onSearchPath({ env, platform }: Machine): string[] {
  const windows = platform === "win32";
  const { delimiter, join } = windows ? path.win32 : path.posix;
  const folders = (env.PATH ?? env.Path ?? "").split(delimiter).filter((f) => f !== "");
  return folders.flatMap((f) => COMMANDS.map((c) => join(f, windows ? `${c}.exe` : c)));
}

function usualPlaces({ env, platform }: Machine): string[] {
  if (platform === "darwin") {
    const applications = ["/Applications", `${env.HOME ?? ""}/Applications`];
    const names = ["Chromium", "Google Chrome", "Microsoft Edge"];
    return applications.flatMap((a) => names.map((n) => `${a}/${n}.app/Contents/MacOS/${n}`));
  }
  if (platform === "win32") {
    const roots = [env.ProgramFiles, env["ProgramFiles(x86)"], env.LOCALAPPDATA];
    const places = [
      "Chromium\\Application\\chrome.exe",
      "Google\\Chrome\\Application\\chrome.exe",
      "Microsoft\\Edge\\Application\\msedge.exe",
    ];
    return roots.flatMap((r) => (r === undefined ? [] : places.map((p) => path.win32.join(r, p))));
  }
  const folders = ["/usr/bin", "/usr/local/bin", "/snap/bin"];
  return [
    ...folders.flatMap((f) => COMMANDS.map((c) => `${f}/${c}`)),
    "/usr/lib/chromium/chromium",
    "/opt/google/chrome/chrome",
    "/opt/microsoft/msedge/msedge",
  ];
}

function isExecutable(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return statSync(file).isFile();
  } catch {
    return false;
  }
}

/**
 * Starts a headless browser on a fresh profile, which goes away with `close()`.
 *
 * @throws Error when there is no browser.
 */
export async function launchBrowser(): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error(`No Chromium found. ${HOW_TO_GET_ONE}`);
  return chromium.launch({ executablePath, args: FLAGS, timeout: 60_000 });
}

/**
 * A `describe` with one browser for all its tests, closed at the end. Without a browser the tests
 * are skipped and a line says so, or fail when STILLPOINT_REQUIRE_BROWSER is set, as it is in CI.
 *
 * @param tests declares the tests; call `browser()` inside a test, not while declaring.
 */
export function describeInBrowser(name: string, tests: (browser: () => Browser) => void): void {
  const required = !["", "0"].includes(process.env.STILLPOINT_REQUIRE_BROWSER ?? "");
  const skip = !required && findChromium() === undefined;
  if (skip) console.warn(`Skipped "${name}": no Chromium found. ${HOW_TO_GET_ONE}`);

  describe.skipIf(skip)(name, () => {
    let browser: Browser | undefined;
    beforeAll(async () => {
      browser = await launchBrowser();
    });
    afterAll(() => browser?.close());
    tests(() => {
      if (browser === undefined) throw new Error("browser() was called outside a test");
      return browser;
    });
  });
}
