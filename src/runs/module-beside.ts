/** Where modules are that are named by URL: `.js` in the built program, `.ts` in the sources. */

import { createRequire } from "node:module";
import { pathToFileURL } from "node:url";

/** URL of the module `name` (without ending) beside the one whose `import.meta.url` is given. */
export function moduleBeside(importer: string, name: string): string {
  return new URL(`${name}.${isSource(importer) ? "ts" : "js"}`, importer).href;
}

/**
 * What Node must be told so that a thread can read the sources; nothing for the built program. The
 * loader's own entry serves the main thread only, so its programming interface is called, which stands
 * in a folder beside the entry.
 */
export function threadArguments(importer: string): string[] {
  if (!isSource(importer)) return [];
  const entry = pathToFileURL(createRequire(importer).resolve("tsx"));
  const code = `import { register } from "${new URL("esm/api/index.mjs", entry)}"; register();`;
  return ["--import", `data:text/javascript,${encodeURIComponent(code)}`];
}

function isSource(module: string): boolean {
  return /\.ts(?:\?|$)/.test(module);
}
