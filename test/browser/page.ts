/** A page opened without a network, with a record of what it asked for and what went wrong in it. */

import type { Browser, Page } from "playwright-core";

export interface OpenPage {
  readonly page: Page;
  /**
   * Every URL the page asked for beside itself, other files included; grows while the page lives.
   * Empty for a page that stands alone. Name look-ups and connections opened in advance
   * (dns-prefetch, preconnect) do not show here.
   */
  readonly requests: readonly string[];
  /** Uncaught errors and console errors, in order; grows while the page lives. */
  readonly errors: readonly string[];
}

/** URLs that carry their own content. */
const INLINE = /^(?:data|blob|about):/;

/** Opens `url` (file:, data:) in a context of its own; the context is closed with the browser. */
export async function openOffline(browser: Browser, url: string): Promise<OpenPage> {
  const context = await browser.newContext({
    offline: true,
    serviceWorkers: "block",
    viewport: { width: 1280, height: 900 },
  });
  const page = await context.newPage();
  const requests: string[] = [];
  const errors: string[] = [];
  let own = true;
  context.on("request", (request) => {
    const itself = own && request.isNavigationRequest() && request.frame() === page.mainFrame();
    if (itself) own = false;
    else if (!INLINE.test(request.url())) requests.push(request.url());
  });
  page.on("websocket", (socket) => requests.push(socket.url()));
  page.on("pageerror", (error) => errors.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") errors.push(message.text());
  });
  await page.goto(url, { waitUntil: "load" });
  return { page, requests, errors };
}

/** A URL that is itself the page. */
export function inlinePage(html: string): string {
  return `data:text/html;charset=utf-8,${encodeURIComponent(html)}`;
}
