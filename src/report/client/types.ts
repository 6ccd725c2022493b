/**
 * What the page's script uses of a browser, of the plot library and of the page's data. The compiler
 * has no types of browsers here, and these few lines say what the script depends on.
 */

import type { CampbellData } from "../campbell.ts";
import type { DisplayData } from "../display.ts";
import type { Figure } from "../figure.ts";
import type { MapsData } from "../map-data.ts";
import type { Theme } from "../palette.ts";
import type { SpectraData } from "../spectra-data.ts";
import type { Camera, Look, Picked, Scene } from "./viewer-types.ts";

export interface Element {
  id: string;
  textContent: string | null;
  checked: boolean;
  disabled: boolean;
  open: boolean;
  hidden: boolean;
  value: string;
  href: string;
  src: string;
  download: string;
  width: number;
  height: number;
  scrollTop: number;
  readonly dataset: Readonly<Record<string, string>>;
  readonly style: {
    width: string;
    height: string;
    left: string;
    top: string;
    setProperty(name: string, value: string): void;
  };
  readonly namespaceURI: string;
  readonly clientWidth: number;
  readonly clientHeight: number;
  readonly offsetTop: number;
  readonly nextElementSibling: Element | null;
  append(child: Element): void;
  cloneNode(deep: true): Element;
  closest(selector: string): Element | null;
  querySelector(selector: string): Element | null;
  querySelectorAll(selector: string): Iterable<Element>;
  replaceChildren(): void;
  getAttribute(name: string): string | null;
  setAttribute(name: string, value: string): void;
  removeAttribute(name: string): void;
  getBoundingClientRect(): {
    readonly left: number;
    readonly top: number;
    readonly bottom: number;
    readonly right: number;
  };
  scrollIntoView(options: { readonly behavior: "auto" | "smooth" }): void;
  click(): void;
  focus(): void;
  addEventListener(
    type: string,
    listener: (event: PageEvent) => void,
    options?: boolean | { readonly passive: boolean },
  ): void;
  /** absent in older browsers */
  showPopover?(): void;
  hidePopover?(): void;
  setPointerCapture(pointer: number): void;
  /** of a canvas */
  getContext(kind: string): { drawImage(image: Element, ...box: number[]): void };
  toDataURL(type: string): string;
  /** on an element with a chart: what the plot library draws there */
  readonly data?: readonly Trace[];
  readonly layout?: {
    readonly margin?: { readonly t?: number };
    readonly [key: string]: unknown;
  };
  /** the plot library's events of a chart */
  on?(type: string, listener: (event: { readonly points?: readonly ChartPoint[] }) => void): void;
}

/** A point of a chart under the pointer. */
export interface ChartPoint {
  readonly customdata?: unknown;
  readonly curveNumber: number;
  readonly pointNumber: number;
}

export interface PageEvent {
  readonly target: Element;
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly clientX: number;
  readonly clientY: number;
  readonly pointerId: number;
  readonly pointerType: string;
  preventDefault(): void;
}

export interface MediaQuery {
  readonly matches: boolean;
  addEventListener(type: "change", listener: () => void): void;
}

export type Trace = Record<string, unknown>;

export interface Plotly {
  react(
    at: Element,
    traces: readonly unknown[],
    layout: unknown,
    config: unknown,
  ): Promise<unknown>;
  update(
    at: Element,
    traces: unknown,
    layout: unknown,
    which?: readonly number[],
  ): Promise<unknown>;
  relayout(at: Element, update: unknown): Promise<unknown>;
  toImage(figure: unknown, options: unknown): Promise<string>;
}

export interface PageResponse {
  text(): Promise<string>;
  blob(): Promise<unknown>;
}

interface PageStream {
  pipeThrough(through: object): PageStream;
}

export interface Browser {
  readonly Plotly: Plotly;
  readonly innerWidth: number;
  readonly innerHeight: number;
  readonly devicePixelRatio: number;
  readonly performance: { now(): number };
  readonly document: {
    readonly hidden: boolean;
    readonly body: Element;
    getElementById(id: string): Element | null;
    querySelectorAll(selector: string): Iterable<Element>;
    createElement(tag: string): Element;
    addEventListener(type: string, listener: (event: PageEvent) => void): void;
  };
  matchMedia(query: string): MediaQuery;
  getComputedStyle(element: Element): { getPropertyValue(name: string): string };
  setTimeout(callback: () => void, milliseconds: number): unknown;
  clearTimeout(timer: unknown): void;
  requestAnimationFrame(callback: (milliseconds: number) => void): number;
  addEventListener(type: string, listener: (event: PageEvent) => void): void;
  atob(text: string): string;
  readonly IntersectionObserver: new (
    callback: (
      entries: readonly { readonly isIntersecting: boolean; readonly target: Element }[],
    ) => void,
    options?: { readonly rootMargin: string },
  ) => { observe(element: Element): void };
  readonly Blob: new (
    parts: readonly unknown[],
    options?: { readonly type: string },
  ) => { stream(): PageStream };
  readonly Response: new (body: unknown) => PageResponse;
  /** absent in older browsers */
  readonly DecompressionStream?: new (
    format: "gzip",
  ) => object;
  readonly URL: { createObjectURL(blob: object): string };
  readonly Image: new () => Element;
  readonly XMLSerializer: new () => { serializeToString(node: Element): string };
}

/** What a figure is told when it is to be drawn. */
export interface DrawContext {
  readonly theme: Theme;
  /** not there for places that need no library */
  readonly Plotly: Plotly;
  readonly printing: boolean;
  readonly narrow: boolean;
  /** size of the page's text, 1 where it is 16 px: figures' text grows with it */
  readonly text: number;
}

export interface PlaceOptions {
  /** false: needs no plot library */
  readonly library?: false;
  /** the figure as a data: or blob: URL; by the plot library where absent */
  readonly save?: (format: "svg" | "png") => Promise<string>;
  /** width on paper, pixels; the whole page's where absent */
  readonly paper?: number;
}

export interface Place {
  /** Draws again what is drawn already. */
  redraw(): void;
}

/** What the figures' own scripts get from the page. */
export interface Host {
  /** of the page now */
  readonly theme: () => Theme;
  /**
   * Registers a figure: drawn when it comes near the window, again when the scheme or its width changes,
   * and for printing.
   */
  place(id: string, draw: (at: Element, c: DrawContext) => unknown, options?: PlaceOptions): Place;
  /** The mode that is looked at: chosen in its table, in a diagram, by a link. */
  chooseMode(mode: number, scroll?: boolean): void;
  onMode(listener: (mode: number) => void): void;
}

/** The JSON in the page. */
export interface PageData {
  /** what the page is about, for titles of figures and names of files */
  readonly name: string;
  readonly themes: { readonly light: Theme; readonly dark: Theme };
  /** name of annotations that narrow charts leave out */
  readonly wideOnly: string;
  /** by the id of their place in the page; drawn when they come into sight */
  readonly charts?: Readonly<Record<string, Figure>>;
  readonly campbell?: CampbellData;
  readonly spectra?: SpectraData;
  readonly maps?: MapsData;
  readonly shapes?: ShapesData;
}

export interface ShapesData extends DisplayData {
  /** per mode: what is said under the picture */
  readonly words: readonly string[];
  /** number of the mode shown first */
  readonly first: number;
  readonly scale: readonly (readonly [number, string])[];
}

/** A picture that can be turned. */
export interface StageOptions {
  readonly at: Element;
  readonly scene: Scene;
  /** how everything is to look now */
  readonly look: () => Look;
  /** what is under the pointer, in words */
  readonly say: (picked: Picked) => string;
  /** of the whole picture, for those who do not see it */
  readonly label: () => string;
  /** "from the corner" and the like: buttons with data-view, and those with data-zoom */
  readonly buttons: Iterable<Element>;
}

export interface Stage {
  readonly canvas: Element;
  readonly camera: Camera;
  /** in the page, in its size and scheme as they are now */
  readonly place: (c: Pick<DrawContext, "printing">) => void;
  readonly render: () => void;
  readonly save: (format: "svg" | "png") => Promise<string>;
  /** points per pixel at most, lowered while frames take too long */
  readonly coarsen: (ratio: number) => void;
}
