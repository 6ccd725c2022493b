import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { describeInBrowser } from "./chromium.ts";
import { drawnSigns, NO_OVERFLOW, overflow, scrollThrough, undrawn } from "./look.ts";
import { type OpenPage, openOffline } from "./page.ts";
import { PAGES, type PageName, pageFile, pageOf, SAMPLES } from "./pages.ts";

const RANK = [
  ...["verdict", "ranking", "map", "filters", "levelling"],
  ...["modes", "interference", "spectra", "mounts", "cases", "sure", "check"],
  ...["model", "masses", "limits", "cautions", "inputs", "words"],
];

const LAST = ["limits", "cautions", "inputs", "words"];

/** Sections in the order in which they are read. */
const SECTIONS: Readonly<Record<PageName, readonly string[]>> = {
  "three-inch": RANK,
  "five-inch": RANK,
  "seven-inch": RANK,
  "ten-inch": RANK,
  "rank --sure": RANK,
  compare: [
    ...["answer", "variants", "noise", "delay", "frequencies", "crossings", "sure", "changes"],
    ...LAST,
  ],
  uncertainty: ["answer", "noise", "frequencies", "crossings", "sure", "changes", ...LAST],
  sweep: ["findings", "front", "course", "rows", "branches", ...LAST],
  sensitivity: ["answer", "help", "figures", "modes", ...LAST],
};

/** Id, heading and first words of every section, in order. */
const READ = `Array.from(document.querySelectorAll("main section[id]"), (s) => {
  const lead = s.querySelector(".finding, .lead, h2 + p, h2 + div p, h2 + ul, h2 + dl");
  const heading = s.querySelector("h2")?.textContent ?? "";
  // The first section's heading is its finding.
  return { id: s.id, heading, finding: lead?.textContent ?? (heading.length > 60 ? heading : "") };
})`;

interface ReadSection {
  readonly id: string;
  readonly heading: string;
  readonly finding: string;
}

describeInBrowser("the pages of real runs", (browser) => {
  describe.each(PAGES)("%s", (name) => {
    let opened: OpenPage;

    beforeAll(async () => {
      opened = await openOffline(browser(), await pageOf(name));
    });
    afterAll(() => opened.page.context().close());

    test("has its sections in order, each with a heading and what came out first", async () => {
      const sections = (await opened.page.evaluate(READ)) as readonly ReadSection[];
      expect(sections.map((s) => s.id)).toEqual(SECTIONS[name]);
      const [headed] = sections.filter((s) => s.heading.trim().length < 4);
      expect(headed).toBeUndefined();
      const silent = sections.filter((s) => s.finding.trim().length < 10);
      expect(silent.map((s) => s.id)).toEqual([]);
    });

    test("leads from its contents to every section", async () => {
      const links = "Array.from(document.querySelectorAll('nav a'), (a) => a.getAttribute('href'))";
      const shown = (await opened.page.evaluate(links)) as readonly string[];
      // A chapter's own link leads to its first section.
      expect([...new Set(shown)]).toEqual(SECTIONS[name].map((id) => `#${id}`));
    });

    test("has every figure drawn when it has been scrolled through, and says what it shows", async () => {
      await scrollThrough(opened.page);
      expect(await undrawn(opened.page)).toEqual([]);
      expect(Object.keys(await drawnSigns(opened.page)).length).toBeGreaterThan(2);
      const nameless =
        "Array.from(document.querySelectorAll('.chart')).filter((c) => ((c.matches('[aria-label]') ? c : c.querySelector('[aria-label]'))?.getAttribute('aria-label') ?? '').length < 20).map((c) => c.id)";
      expect(await opened.page.evaluate(nameless)).toEqual([]);
      expect(await overflow(opened.page)).toEqual(NO_OVERFLOW);
    });

    test("has no id twice, no link to nowhere, no number with too many digits or none at all", async () => {
      const ids =
        "Array.from(document.querySelectorAll('[id]'), (e) => e.id).filter((id, i, all) => all.indexOf(id) !== i)";
      expect(await opened.page.evaluate(ids)).toEqual([]);
      const astray =
        "Array.from(document.querySelectorAll('a[href^=\"#\"]'), (a) => a.getAttribute('href')).filter((h) => !document.getElementById(h.slice(1)))";
      expect(await opened.page.evaluate(astray)).toEqual([]);
      const text = await opened.page.textContent("main");
      expect(text).not.toMatch(/\bNaN\b|undefined|\[object|Infinity|\bnull\b/);
    });

    test("made no request and no error", () => {
      expect(opened.requests).toEqual([]);
      expect(opened.errors).toEqual([]);
    });
  });
});

describe("the size of the pages", () => {
  test.each(SAMPLES)(
    "%s is below 7 MB, and below 400 kB without the plot library",
    async (name) => {
      const page = readFileSync(await pageFile(name), "utf8");
      const [library] = page.match(/<script type="text\/plain" id="library">[^<]*/) ?? [""];
      expect(library.length).toBeGreaterThan(1e6);
      expect(Buffer.byteLength(page)).toBeLessThan(7e6);
      expect(Buffer.byteLength(page) - library.length).toBeLessThan(400e3);
    },
  );
});
