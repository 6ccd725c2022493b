/**
 * Where figures stand in the page and when they are drawn: as they come near the window, again when the
 * scheme or their width changes, and all of them for printing. Runs in the page: gets from outside only
 * what it is handed.
 */

import type { Theme } from "../palette.ts";
import type { Browser, Element, Host, PageData, Place, PlaceOptions, Plotly } from "./types.ts";

/** @param library brings the plot library, or says in its error why it cannot */
export function createHost(
  browser: Browser,
  data: PageData,
  library: () => Promise<Plotly>,
): Host & { readonly find: (id: string) => PlaceOptions | undefined } {
  const { document } = browser;
  interface Placed {
    readonly at: Element;
    readonly draw: Parameters<Host["place"]>[1];
    readonly options: PlaceOptions;
    /** width it was drawn for, pixels; 0 before */
    width: number;
    wanted: boolean;
  }
  const placed = new Map<string, Placed>();
  const listeners: ((mode: number) => void)[] = [];
  const dark = browser.matchMedia("(prefers-color-scheme: dark)");
  const still = browser.matchMedia("(prefers-reduced-motion: reduce)");
  let plotly: Plotly | undefined;
  let printing = false;
  /** Width of a figure on paper, pixels: what A4 and Letter both leave between their margins. */
  const PAPER = 672;
  /** and height at most, so that words stand beside it on a page */
  const HIGHEST = 380;
  const NARROW = 520;

  const theme = (): Theme => {
    if (printing) return { ...data.themes.light, paper: "#ffffff", surface: "#ffffff" };
    return dark.matches ? data.themes.dark : data.themes.light;
  };
  const paint = (p: Placed) => {
    if (p.options.library !== false && plotly === undefined) return;
    if (p.width === 0) p.at.replaceChildren();
    p.width = p.at.clientWidth;
    const narrow = p.width < NARROW;
    const size = Number.parseFloat(
      browser.getComputedStyle(document.body).getPropertyValue("font-size"),
    );
    const text = (printing ? 16 : size) / 16;
    try {
      p.draw(p.at, { theme: theme(), Plotly: plotly as Plotly, printing, narrow, text });
    } catch (problem) {
      // Told like any other, but after the other figures are drawn.
      browser.setTimeout(() => {
        throw problem;
      }, 0);
    }
  };
  const pause = () => new Promise<void>((go) => browser.setTimeout(go, 0));
  /** One figure after the other, so that the page stays quick in between. */
  const repaint = async (which: (p: Placed) => boolean) => {
    for (const p of placed.values()) {
      if (p.width === 0 || !which(p)) continue;
      paint(p);
      await pause();
    }
  };
  const bring = async () => {
    plotly ??= await library();
  };
  const want = async (p: Placed) => {
    if (p.wanted) return;
    p.wanted = true;
    try {
      if (p.options.library !== false) await bring();
    } catch (problem) {
      p.at.textContent = (problem as Error).message;
      return;
    }
    paint(p);
  };

  dark.addEventListener("change", () => repaint(() => true));
  let resized: unknown;
  browser.addEventListener("resize", () => {
    browser.clearTimeout(resized);
    resized = browser.setTimeout(() => {
      if (!printing) repaint(({ at, width }) => at.clientWidth > 0 && at.clientWidth !== width);
    }, 120);
  });
  browser.addEventListener("beforeprint", () => {
    printing = true;
    // What is drawn here is done when this returns: the browser then sets its pages. On paper a figure
    // keeps the height that it is drawn with; in a part that is folded away it has none.
    for (const p of placed.values()) {
      p.at.style.width = `${p.options.paper ?? PAPER}px`;
      if (p.at.clientHeight === 0) continue;
      p.at.style.height = `${Math.min(p.at.clientHeight, HIGHEST)}px`;
      paint(p);
    }
  });
  browser.addEventListener("afterprint", () => {
    printing = false;
    for (const { at } of placed.values()) {
      at.style.width = "";
      at.style.height = "";
    }
    repaint(() => true);
  });
  const chooseMode = (mode: number, scroll = false) => {
    for (const listener of listeners) listener(mode);
    const behavior = still.matches ? "auto" : "smooth";
    if (scroll) document.getElementById("modes")?.scrollIntoView({ behavior });
  };
  document.addEventListener("click", ({ target }) => {
    const link = target.closest("[data-mode]");
    if (link) chooseMode(Number(link.dataset.mode));
  });
  // Unpacking the library takes the browser a moment: begun as soon as the first screen can be read.
  const needed = () => Array.from(placed.values()).some((p) => p.options.library !== false);
  browser.requestAnimationFrame(() =>
    browser.setTimeout(() => {
      if (needed()) bring().catch(() => {});
    }, 250),
  );

  return {
    theme,
    find: (id) => placed.get(id)?.options,
    place: (id, draw, options = {}): Place => {
      const at = document.getElementById(id);
      if (at === null) throw new Error(`the page has no ${id}`);
      const p: Placed = { at, draw, options, width: 0, wanted: false };
      placed.set(id, p);
      new browser.IntersectionObserver(
        (entries) => {
          if (entries.some((e) => e.isIntersecting)) want(p);
        },
        { rootMargin: "500px" },
      ).observe(at);
      return {
        redraw: () => {
          if (p.width > 0) paint(p);
        },
      };
    },
    chooseMode,
    onMode: (listener) => {
      listeners.push(listener);
    },
  };
}
