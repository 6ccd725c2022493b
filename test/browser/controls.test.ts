import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { describeInBrowser } from "./chromium.ts";
import { scrollThrough, until } from "./look.ts";
import { type OpenPage, openOffline } from "./page.ts";
import { pageOf } from "./pages.ts";
import { type Picture, readPng } from "./png.ts";

const gd = (id: string) => `document.getElementById("${id}")`;

/** The figure as it is seen now. */
async function seen(page: Page, id: string): Promise<Picture> {
  return readPng(await page.locator(`#${id}`).screenshot());
}

/** Share of the pixels that differ between two pictures of one size. */
function difference(a: Picture, b: Picture): number {
  expect([b.width, b.height]).toEqual([a.width, a.height]);
  let differing = 0;
  for (let i = 0; i < a.bytes.length; i += a.channels) {
    const far = [0, 1, 2].some((k) => Math.abs(a.bytes[i + k] - b.bytes[i + k]) > 8);
    if (far) differing++;
  }
  return differing / (a.width * a.height);
}

/** Of a figure of this size: more than a few pixels at edges. */
const SOMETHING = 2e-4;

describeInBrowser("the controls of the five-inch's page", (browser) => {
  let opened: OpenPage;
  let page: Page;

  beforeAll(async () => {
    opened = await openOffline(browser(), await pageOf("five-inch"));
    ({ page } = opened);
    await page.emulateMedia({ reducedMotion: "reduce" }); // the shape rests until it is told to move
    await page.setViewportSize({ width: 1000, height: 700 }); // little for software to draw
    await scrollThrough(page);
  });
  afterAll(() => page.context().close());

  test("the map's switch shows another quantity, in squares and in words", async () => {
    const switches = page.locator("input[name=map-quantity]");
    const shown = new Set<string>();
    const quantities = (await page.evaluate(
      `Array.from(document.querySelectorAll("input[name=map-quantity]"), (i) => i.value)`,
    )) as string[];
    expect(await switches.count()).toBe(quantities.length);
    for (const [column, key] of quantities.entries()) {
      await page.locator(`input[name=map-quantity][value="${key}"]`).focus();
      await page.keyboard.press("Space");
      // Louder is never coloured quieter; equal colours only where figures differ by little.
      const inOrder = `(() => {
        const { marker, customdata } = ${gd("map-1")}.data[0];
        return customdata.every((a, i) => customdata.every((b, j) =>
          (a[${column}] - b[${column}]) * (marker.color[i] - marker.color[j]) >= 0))
          && new Set(marker.color).size > 1;
      })()`;
      await until(page, inOrder);
      shown.add((await page.textContent("#map-words")) ?? "");
      shown.add((await page.getAttribute("#map-1", "aria-label")) ?? "");
    }
    expect(shown.size).toBe(2 * quantities.length);
  });

  describe("of the picture of the modes", () => {
    beforeAll(async () => {
      await page.locator("#shape-chart").scrollIntoViewIfNeeded();
      await page.waitForTimeout(400);
    });

    const changes = async (what: () => Promise<unknown>) => {
      const before = await seen(page, "shape-chart");
      await what();
      await vi.waitUntil(
        async () => difference(before, await seen(page, "shape-chart")) > SOMETHING,
        { timeout: 10_000, interval: 100 },
      );
      return before;
    };
    const isBack = (before: Picture) =>
      vi.waitUntil(
        async () => difference(before, await seen(page, "shape-chart")) < SOMETHING / 4,
        { timeout: 10_000, interval: 100 },
      );

    test("rests where motion is unwanted, moves on demand and stops again", async () => {
      const before = await seen(page, "shape-chart");
      await page.waitForTimeout(300);
      expect(difference(before, await seen(page, "shape-chart"))).toBe(0);
      await changes(() => page.press("#mode-play", "Enter"));
      expect(await page.getAttribute("#mode-play", "aria-pressed")).toBe("true");
      await page.press("#mode-play", "Space");
      await page.waitForTimeout(400);
      const still = await seen(page, "shape-chart");
      await page.waitForTimeout(300);
      expect(difference(still, await seen(page, "shape-chart"))).toBe(0);
    });

    test.each(["ghost", "bodies"])("%s: goes and comes back", async (name) => {
      const before = await changes(() => page.press(`#mode-${name}`, "Space"));
      await page.press(`#mode-${name}`, "Space");
      await isBack(before);
    });

    test("colours: by movement or by turning", async () => {
      const before = await changes(() => page.check("#mode-by-turning"));
      await page.press("#mode-by-turning", "ArrowLeft");
      await isBack(before);
    });

    test("size: larger and smaller", async () => {
      await changes(() => page.press("#mode-size", "Home"));
      await changes(() => page.press("#mode-size", "End"));
    });

    test("speed: the phase of the motion goes on as fast as it says", async () => {
      for (const speed of ["2", "0.25", "1"]) {
        await page.fill("#mode-speed", speed);
        await changes(() => page.press("#mode-play", "Enter"));
        await page.press("#mode-play", "Enter");
      }
      expect(await page.getAttribute("#mode-play", "aria-pressed")).toBe("false");
    });

    test("views: each another, by button and by keys", async () => {
      const views = page.locator("#modes .views");
      for (const view of ["above", "front", "side", "corner"]) {
        await changes(() => views.locator(`button[data-view=${view}]`).press("Enter"));
      }
      const before = await changes(() => views.locator("button[data-zoom=in]").press("Enter"));
      await views.locator("button[data-zoom=out]").press("Enter");
      await changes(() => page.keyboard.press("Enter"));
      await views.locator("button[data-view=corner]").press("Enter");
      expect(before.width).toBeGreaterThan(200);
      await changes(() =>
        page.press("#shape-chart [tabindex], #shape-chart[tabindex]", "ArrowRight"),
      );
    });

    test("turned by hand", async () => {
      const box = (await page.locator("#shape-chart").boundingBox())!;
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      await changes(async () => {
        await page.mouse.move(x, y);
        await page.mouse.down();
        await page.mouse.move(x + 60, y + 20, { steps: 4 });
        await page.mouse.up();
      });
    });

    test("step by step through the modes", async () => {
      await page.check("input[name=mode][value='3']");
      await changes(() => page.press("#mode-next", "Enter"));
      expect(await page.textContent("#mode-words")).toMatch(/^Mode 4,/);
      await changes(() => page.press("#mode-back", "Enter"));
      expect(await page.textContent("#mode-words")).toMatch(/^Mode 3,/);
    });

    test("table: another mode by pointer and by arrow", async () => {
      await changes(() => page.check("input[name=mode][value='1']"));
      expect(await page.textContent("#mode-words")).toMatch(/^Mode 1,/);
      await changes(() => page.press("input[name=mode][value='1']", "ArrowDown"));
      expect(await page.textContent("#mode-words")).toMatch(/^Mode 2,/);
      const said = page.locator("#shape-chart[aria-label], #shape-chart [aria-label]").first();
      expect(await said.getAttribute("aria-label")).toMatch(/^Mode 2,/);
    });

    test("links elsewhere in the page choose their mode too", async () => {
      const link = page.locator("a[data-mode]:visible").first();
      const mode = await link.getAttribute("data-mode");
      const other = mode === "1" ? "2" : "1";
      await page.check(`input[name=mode][value='${other}']`);
      await link.press("Enter");
      await until(page, `document.querySelector("input[name=mode]:checked").value === "${mode}"`);
      expect(await page.textContent("#mode-words")).toMatch(new RegExp(`^Mode ${mode},`));
    });
  });

  describe("of the levels against motor speed", () => {
    const title = `${gd("spectra-chart")}.layout.yaxis.title.text`;
    const curves = `JSON.stringify(${gd("spectra-chart")}.data.filter((t) => t.visible !== false)
      .map((t) => Array.from(t.y ?? [])))`;
    const map = `JSON.stringify(${gd("sweep-chart")}.data.flatMap((t) =>
      Array.from(t.z ?? [], (row) => Array.from(row).reduce((sum, v) => sum + (v ?? 0), 0))))`;
    const words = () => page.textContent("#spectra-words");

    /** What is drawn after a control was used; it must not be what was drawn before. */
    const changed = async (what: string, use: () => Promise<unknown>) => {
      const before = (await page.evaluate(what)) as string;
      await use();
      await vi.waitUntil(async () => (await page.evaluate(what)) !== before, { timeout: 10_000 });
      return before;
    };
    const isAgain = (what: string, before: string) =>
      vi.waitUntil(async () => (await page.evaluate(what)) === before, { timeout: 10_000 });

    test("another quantity, with its unit", async () => {
      expect(await page.evaluate(title)).toContain("deg/s");
      const said = await words();
      const before = await changed(curves, () => page.check("input[name=quantity][value=accel]"));
      expect(await page.evaluate(title)).toMatch(/\bg\b/);
      expect(await words()).not.toBe(said);
      await page.press("input[name=quantity][value=accel]", "ArrowLeft");
      await isAgain(curves, before);
      expect(await words()).toBe(said);
    });

    test("another place, in both figures", async () => {
      const said = await words();
      const drawn = await changed(map, () =>
        changed(curves, () => page.check("input[name=spectra-place][value='1']")),
      );
      expect(await words()).not.toBe(said);
      await page.check("input[name=spectra-place][value='0']");
      await isAgain(map, drawn);
    });

    test("all places together, those that are ticked", async () => {
      const count = `${gd("spectra-chart")}.data.filter((t) => t.visible !== false).length`;
      const before = await changed(curves, () => page.check("input[name=spectra-view][value=all]"));
      const ticked = (await page.evaluate(count)) as number;
      const box = page.locator("input[name=curve]").first();
      await changed(curves, () => box.press("Space"));
      expect(await page.evaluate(count)).toBeLessThan(ticked);
      await changed(curves, () => box.press("Space"));
      expect(await page.evaluate(count)).toBe(ticked);
      await page.check("input[name=spectra-view][value=orders]");
      await isAgain(curves, before);
    });
  });

  test("a crossing that is clicked in the diagram of motor speed chooses its mode", async () => {
    await page.locator("#campbell-chart").scrollIntoViewIfNeeded();
    // A marker of a crossing with the mode it belongs to, on the screen.
    const found = (await page.evaluate(`(() => {
      const chart = ${gd("campbell-chart")};
      const { xaxis, yaxis } = chart._fullLayout;
      const box = chart.getBoundingClientRect();
      const within = (v, from, axis) => v > from + axis._offset + 4 && v < from + axis._offset + axis._length - 4;
      const inside = (p) => within(p.x, box.left, xaxis) && within(p.y, box.top, yaxis);
      for (const trace of chart.data.toReversed()) {
        if (trace.mode !== "markers" || trace.customdata === undefined) continue;
        for (const [i, about] of trace.customdata.entries()) {
          const mode = typeof about === "object" ? about.mode : about;
          const at = { mode, x: box.left + xaxis._offset + xaxis.d2p(trace.x[i]), y: box.top + yaxis._offset + yaxis.d2p(trace.y[i]) };
          if (Number.isInteger(mode) && inside(at)) return at;
        }
      }
    })()`)) as { readonly mode: number; readonly x: number; readonly y: number } | undefined;
    expect(found).toBeDefined();
    const { mode, x, y } = found!;
    await page.check(`input[name=mode][value='${mode === 1 ? 2 : 1}']`);
    await page.locator("#campbell-chart").scrollIntoViewIfNeeded();
    await page.mouse.move(x, y, { steps: 3 });
    await page.mouse.click(x, y);
    await until(page, `document.querySelector("input[name=mode]:checked").value === "${mode}"`);
  });

  test("a word's meaning opens beside it, by pointer and by keyboard, and leads to the list", async () => {
    const word = page.locator("a.term").first();
    const note = page.locator("#word-note");
    await word.scrollIntoViewIfNeeded();
    await word.click();
    expect(await note.isVisible()).toBe(true);
    const entry = ((await word.getAttribute("href")) ?? "#").slice(1);
    const meaning = await page.evaluate(`${gd(entry)}.nextElementSibling.textContent`);
    expect(await page.textContent("#word-says")).toBe(meaning);
    const box = await note.boundingBox();
    expect(box?.x).toBeGreaterThanOrEqual(0);
    expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(1000);
    await page.keyboard.press("Escape");
    expect(await note.isVisible()).toBe(false);
    const focused = "document.activeElement.getAttribute('href') ?? document.activeElement.id";
    expect(await page.evaluate(focused)).toBe(`#${entry}`);
    await word.press("Enter");
    expect(await note.isVisible()).toBe(true);
    expect(await page.evaluate(focused)).toBe("word-note");
    await page.keyboard.press("Tab");
    expect(await page.evaluate("document.activeElement.id")).toBe("word-more");
    await page.keyboard.press("Enter");
    expect(await note.isVisible()).toBe(false);
    expect(page.url()).toContain(`#${entry}`);
  });

  test("the contents say which part is being read", async () => {
    for (const id of ["levelling", "masses"]) {
      await page.evaluate(`${gd(id)}.scrollIntoView({ behavior: "instant" })`);
      await until(page, `document.querySelector("nav [aria-current]") !== null`);
      const here = `document.querySelector("nav [aria-current]").getAttribute("href")`;
      await until(page, `${here} === "#${id}"`);
    }
  });

  test("all of this without a request or an error", () => {
    expect([opened.requests, opened.errors]).toEqual([[], []]);
  });
});
