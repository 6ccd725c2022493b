/** What lies packed in the page. Runs in the page: gets from outside only what it is handed. */

import type { Browser, PageResponse } from "./types.ts";

/** The text of an element, unpacked. @throws Error in words where the browser cannot */
export async function unpack(browser: Browser, id: string): Promise<PageResponse> {
  const holder = browser.document.getElementById(id);
  if (holder === null) throw new Error(`the page has no ${id}`);
  if (browser.DecompressionStream === undefined) {
    throw new Error(
      "This browser is too old to unpack the page's figures; the words and tables say the same.",
    );
  }
  const bytes = Uint8Array.from(browser.atob(holder.textContent ?? ""), (c) => c.charCodeAt(0));
  const stream = new browser.Blob([bytes]).stream();
  return new browser.Response(stream.pipeThrough(new browser.DecompressionStream("gzip")));
}
