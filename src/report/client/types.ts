/**
 * What the page's script uses of a browser, of the plot library and of the page's data. The compiler
 * has no types of browsers here, and these few lines say what the script depends on.
 */

import type { DisplayData } from "../display.ts";
import type { Figure } from "../figure.ts";
import type { MapsData } from "../map-data.ts";
import type { Theme } from "../palette.ts";
import type { SpectraFigures } from "../spectra.ts";

export interface Element {
  textContent: string | null;
  checked: boolean;
  disabled: boolean;
  open: boolean;
  value: string;
  readonly dataset: Readonly<Record<string, string>>;
  readonly clientWidth: number;
  readonly clientHeight: number;
  readonly offsetTop: number;
  scrollTop: number;
  closest(selector: string): Element | null;
  replaceChildren(): void;
  setAttribute(name: string, value: string): void;
  addEventListener(type: string, listener: () => void, capture?: boolean): void;
  /** on an element with a chart: the plot library's own record, of which only the camera is used */
  readonly _fullLayout?: { readonly scene?: { readonly _scene?: { getCamera(): object } } };
}

export interface MediaQuery {
  readonly matches: boolean;
  addEventListener(type: "change", listener: () => void): void;
}

export type Trace = Record<string, unknown>;

export interface Plotly {
  newPlot(
    at: Element,
    traces: readonly unknown[],
    layout: unknown,
    config: unknown,
  ): Promise<unknown>;
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
}

export interface Browser {
  readonly Plotly: Plotly;
  readonly document: {
    readonly hidden: boolean;
    getElementById(id: string): Element | null;
    querySelectorAll(selector: string): Iterable<Element>;
    createElement(tag: "canvas"): { getContext(kind: string): unknown };
    addEventListener(type: string, listener: () => void): void;
  };
  matchMedia(query: string): MediaQuery;
  setTimeout(callback: () => void, milliseconds: number): unknown;
  requestAnimationFrame(callback: (milliseconds: number) => void): number;
  addEventListener(type: string, listener: () => void): void;
  readonly IntersectionObserver: new (
    callback: (entries: readonly { readonly isIntersecting: boolean }[]) => void,
    options?: { readonly rootMargin: string },
  ) => { observe(element: Element): void };
}

/** The JSON in the page. */
export interface PageData {
  readonly themes: { readonly light: Theme; readonly dark: Theme };
  /** name of annotations that narrow charts leave out */
  readonly wideOnly: string;
  /** by the id of their place in the page; drawn when they come into sight */
  readonly charts?: Readonly<Record<string, Figure>>;
  readonly campbell?: Figure;
  readonly spectra?: SpectraFigures;
  readonly filters?: Figure;
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

/** Functions that the others use; each is in the page under its own name. */
export interface Tools {
  readonly unpackUnit: (text: string) => Float64Array;
  readonly squareSizes: (
    values: readonly number[],
    low: number,
    high: number,
    room: number,
  ) => number[];
  readonly themed: <T>(value: T, theme: Theme) => T;
  readonly vertexMotion: (data: DisplayData, carriers: ArrayLike<number>) => Float64Array;
  readonly lineVertices: (lines: readonly (readonly number[])[]) => number[];
  readonly shapeTraces: (shape: PreparedShape, theme: Theme) => Trace[];
  readonly shapeUpdate: (shape: PreparedShape, size: number) => Record<string, unknown>;
}

/** The frame at rest and the motion of the mode that is shown. */
export interface PreparedShape {
  readonly data: ShapesData;
  /** x, y, z of every vertex, mm */
  readonly rest: Float64Array;
  /** motion of every vertex relative to the largest */
  readonly motion: Float64Array;
  readonly lines: readonly number[];
  readonly boxLines: readonly number[];
}
