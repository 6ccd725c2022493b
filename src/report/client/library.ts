/** Brings the plot library. Runs in the page: gets from outside only what it is handed. */

import type { Browser, Plotly } from "./types.ts";
import type { unpack } from "./unpack.ts";

/**
 * A function that brings the library at its first call: from the page, where it lies compressed, or from
 * the file beside it. A script of its own, not one in the page's text, is read by browsers beside their
 * other work.
 */
export function libraryLoader(
  browser: Browser,
  tools: { readonly unpack: typeof unpack },
): () => Promise<Plotly> {
  const { document } = browser;
  let coming: Promise<Plotly> | undefined;
  const run = (source: string, missing: string) =>
    new Promise<Plotly>((ready, fail) => {
      const script = document.createElement("script");
      script.src = source;
      script.addEventListener("load", () => {
        browser.URL.revokeObjectURL(source);
        ready(browser.Plotly);
      });
      script.addEventListener("error", () => fail(new Error(missing)));
      document.body.append(script);
    });
  const bring = async () => {
    const holder = document.getElementById("library");
    if (holder === null) throw new Error("the page has no plot library");
    const { beside } = holder.dataset;
    if (beside !== undefined) {
      const missing = `The figures need the file ${beside} in the folder of this page, and it is not there; the words and tables say the same.`;
      return run(beside, missing);
    }
    const code = await (await tools.unpack(browser, "library")).blob();
    const script = new browser.Blob([code], { type: "text/javascript" });
    return run(browser.URL.createObjectURL(script), "The plot library could not be started.");
  };
  return () => {
    coming ??= bring();
    return coming;
  };
}
