/** Marks the part of the contents that is being read. Runs in the page. */

import type { Browser, Element } from "./types.ts";

export function startContents(browser: Browser): void {
  const { document } = browser;
  const links = new Map<string, Element>();
  for (const link of document.querySelectorAll("nav a")) {
    const id = (link.getAttribute("href") ?? "").slice(1);
    if (!links.has(id)) links.set(id, link);
  }
  let current: Element | undefined;
  const watch = new browser.IntersectionObserver(
    (entries) => {
      const entry = entries.find((e) => e.isIntersecting);
      const link = entry && links.get(entry.target.id);
      if (link === undefined || link === current) return;
      current?.removeAttribute("aria-current");
      link.setAttribute("aria-current", "true");
      current = link;
    },
    // The section that crosses a line in the upper third of the window.
    { rootMargin: "-30% 0px -69% 0px" },
  );
  for (const section of document.querySelectorAll("main section[id]")) watch.observe(section);
}
