/** Brings the plot library. Runs in the page: gets from outside only what it is handed. */

import type { Browser, Plotly } from "./types.ts";

/**
 * A function that brings the library at its first call: from the page, where it lies compressed, or from
 * the file beside it. A script of its own, not one in the page's text, is read by browsers beside their
 * other work.
 */
export function libraryLoader(browser: Browser): () => Promise<Plotly> {
  const { document } = browser;
  let coming: Promise<Plotly> | undefined;
  const run = (source: string, missing: string) =>
    new Promise<Plotly>((ready, fail) => {
      const script = document.createElement("script");
      script.src = source;
      script.addEventListener("load", () => ready(browser.Plotly));
      script.addEventListener("error", () => fail(new Error(missing)));
      document.body.append(script);
    });
  const unpacked = async (packed: string) => {
    if (browser.DecompressionStream === undefined) {
      throw new Error(
        "This browser is too old to unpack the page's figures; the words and tables say the same.",
      );
    }
    const bytes = Uint8Array.from(browser.atob(packed), (c) => c.charCodeAt(0));
    const stream = new browser.Blob([bytes]).stream();
    const plain = stream.pipeThrough(new browser.DecompressionStream("gzip"));
    const code = await new browser.Response(plain).blob();
    return browser.URL.createObjectURL(new browser.Blob([code], { type: "text/javascript" }));
  };
  const bring = async () => {
    const holder = document.getElementById("library");
    if (holder === null) throw new Error("the page has no plot library");
    const { beside } = holder.dataset;
    if (beside !== undefined) {
      const missing = `The figures need the file ${beside} in the folder of this page, and it is not there; the words and tables say the same.`;
      return run(beside, missing);
    }
    const source = await unpacked(holder.textContent ?? "");
    return run(source, "The plot library could not be started.");
  };
  return () => {
    coming ??= bring();
    return coming;
  };
}
