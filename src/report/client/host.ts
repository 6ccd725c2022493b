/**
 * Where figures stand in the page and when they are drawn: as they come near the window, again when the
 * scheme or their width changes, and all of them for printing. Runs in the page: gets from outside only
 * what it is handed.
 */

import type { Theme } from "../palette.ts";
import type {
  Browser,
  Element,
  Host,
  PageData,
  Place,
  PlaceOptions,
  Plotly,
  SavingHost,
} from "./types.ts";

/** @param library brings the plot library, or says in its error why it cannot */
export function createHost(
  browser: Browser,
  data: PageData,
  library: () => Promise<Plotly>,
): SavingHost {
  const { document } = browser;
  interface Placed {
    readonly at: Element;
    readonly draw: Parameters<Host["place"]>[1];
    readonly options: PlaceOptions;
    /** size it was drawn for, pixels; 0 before */
    width: number;
    height: number;
    /** settled when it is drawn, or cannot be */
    wanted?: Promise<void>;
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
  /** Its words stay where a figure cannot be drawn, and the other figures are drawn all the same. */
  const failed = (p: Placed, problem: unknown) => {
    p.width = 0;
    const why = problem instanceof Error ? problem.message : String(problem);
    p.at.textContent = `${p.at.getAttribute("aria-label") ?? ""} (The figure cannot be drawn: ${why})`;
    browser.setTimeout(() => {
      throw problem;
    }, 0);
  };
  const paint = (p: Placed) => {
    if (p.options.library !== false && plotly === undefined) return;
    if (p.width === 0) p.at.replaceChildren();
    [p.width, p.height] = [p.at.clientWidth, p.at.clientHeight];
    const narrow = p.width < NARROW;
    const size = Number.parseFloat(
      browser.getComputedStyle(document.body).getPropertyValue("font-size"),
    );
    const text = (printing ? 16 : size) / 16;
    const context = { theme: theme(), Plotly: plotly as Plotly, printing, narrow, text };
    try {
      Promise.resolve(p.draw(p.at, context)).catch((problem) => failed(p, problem));
    } catch (problem) {
      failed(p, problem);
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
  /** For paper: what is drawn here is done when this returns, since the browser then sets its pages. */
  const paintForPaper = () => {
    // A figure keeps the height that it is drawn with; in a part that is folded away it has none.
    for (const p of placed.values()) {
      p.at.style.width = `${p.options.paper ?? PAPER}px`;
      if (p.at.clientHeight === 0) continue;
      p.at.style.height = `${Math.min(p.at.clientHeight, HIGHEST)}px`;
      paint(p);
    }
  };
  const bring = async () => {
    if (plotly !== undefined) return;
    plotly = await library();
    // Where a page is printed before its library is there, the figures come with the next drawing of it.
    if (printing) paintForPaper();
  };
  const want = (p: Placed): Promise<void> => {
    p.wanted ??= (p.options.library === false ? Promise.resolve() : bring()).then(
      () => {
        if (p.width === 0) paint(p);
      },
      (problem) => {
        p.at.textContent = `${p.at.getAttribute("aria-label") ?? ""} (${(problem as Error).message})`;
      },
    );
    return p.wanted;
  };

  dark.addEventListener("change", () => repaint(() => true));
  let resized: unknown;
  browser.addEventListener("resize", () => {
    browser.clearTimeout(resized);
    resized = browser.setTimeout(() => {
      if (printing) return;
      repaint(({ at, width, height }) => {
        return at.clientWidth > 0 && (at.clientWidth !== width || at.clientHeight !== height);
      });
    }, 120);
  });
  browser.addEventListener("beforeprint", () => {
    printing = true;
    paintForPaper();
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
    drawn: async (id) => {
      const p = placed.get(id);
      if (p === undefined) return undefined;
      await want(p);
      return p.width > 0 ? p.options : undefined;
    },
    place: (id, draw, options = {}): Place => {
      const at = document.getElementById(id);
      if (at === null) throw new Error(`the page has no ${id}`);
      const p: Placed = { at, draw, options, width: 0, height: 0 };
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
