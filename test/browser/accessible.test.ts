import axe from "axe-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { describeInBrowser } from "./chromium.ts";
import { scrollThrough } from "./look.ts";
import { type OpenPage, openOffline } from "./page.ts";
import { PAGES, type PageName, pageOf } from "./pages.ts";

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly target: readonly string[]; readonly html: string }[];
}

type View = readonly [width: number, scheme: "light" | "dark"];
const ALL_VIEWS: readonly View[] = [
  [1280, "light"],
  [1280, "dark"],
  [390, "light"],
  [390, "dark"],
];
/** Pages that another one resembles are looked at in two. */
const VIEWS: Partial<Record<PageName, readonly View[]>> = {
  "five-inch": ALL_VIEWS,
  compare: ALL_VIEWS,
};
const SOME_VIEWS = [ALL_VIEWS[1], ALL_VIEWS[2]];

/** The rules run from outside, so that the page keeps its own policy. */
const RUN = "axe.run(document, { resultTypes: ['violations'] }).then((r) => r.violations)";

describeInBrowser("pages by the rules of accessibility", (browser) => {
  describe.each(PAGES)("%s", (name) => {
    let opened: OpenPage;

    beforeAll(async () => {
      opened = await openOffline(browser(), await pageOf(name));
      // Where nothing moves, nothing changes between two looks.
      await opened.page.emulateMedia({ reducedMotion: "reduce" });
      await scrollThrough(opened.page);
      await opened.page.evaluate(
        "for (const d of document.querySelectorAll('details')) d.open = true",
      );
      await opened.page.evaluate(axe.source);
    });
    afterAll(() => opened.page.context().close());

    test.each(VIEWS[name] ?? SOME_VIEWS)(
      "break none of them, %i px, %s",
      async (width, colorScheme) => {
        const { page } = opened;
        await page.setViewportSize({ width, height: 900 });
        await page.emulateMedia({ colorScheme });
        const violations = (await page.evaluate(RUN)) as readonly Violation[];
        expect(
          violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(" ")).join(", ")}`),
        ).toEqual([]);
      },
    );
  });
});
