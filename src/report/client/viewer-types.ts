/** The frame as it is drawn in three dimensions: what its functions hand to each other. */

import type { Theme } from "../palette.ts";

/** What a drawn part is; decides its colour, its pattern and whether one can see through it. */
export type DrawnKind = "plate" | "arm" | "post" | "motor" | "stack" | "body";

/** One part as the page gets it. Lists of vertices are packed by `packIntegers`. */
export interface DrawnPart {
  readonly kind: DrawnKind;
  readonly name: string;
  /** said of it when it is pointed at: mass, material */
  readonly words: string;
  /** a slab: triangles of its middle surface, its borders with -1 between them, half its thickness (mm) */
  readonly slab?: { readonly faces: string; readonly borders: string; readonly half: number };
  /** a prism: rings of `sides` vertices each, from one end to the other */
  readonly prism?: { readonly rings: string; readonly sides: number };
}

/** The frame at rest, and how each vertex follows the nodes of the mesh. Lengths in hundredths of mm. */
export interface DrawnFrame {
  /** x of all carriers, then y, then z; a carrier is a node of the mesh */
  readonly carriers: string;
  /** points that move rigidly with a carrier: carrier, then x, y, z from it, each a list of its own */
  readonly fixed: readonly [string, string, string, string];
  /** cells of plates: four vertices (carriers or fixed points) anticlockwise from least x and y */
  readonly cells: string;
  /** points in a cell: cell, and how far along x and y, thousandths */
  readonly inside: readonly [string, string, string];
  readonly parts: readonly DrawnPart[];
  /** the best place: on the plate, and the chip above or below it */
  readonly mark?: readonly [number, number];
}

/** One mode: the carriers' displacements x, y, z and rotations x, y, z, each a list, in steps. */
export interface PackedMotion {
  readonly move: string;
  readonly turn: string;
  /** largest rotation, rad, where the largest displacement is 1 mm */
  readonly turnPerMove: number;
}

/** Steps from rest to the largest displacement, and to the largest rotation. */
export interface MotionSteps {
  readonly move: number;
  readonly turn: number;
}

/** Closed surfaces of triangles, and their edges. Vertex numbers count carriers, fixed, inside, skins. */
export interface Scene {
  /** x, y, z of each vertex, mm */
  readonly rest: Float64Array;
  /** of the vertices before the skins */
  readonly carriers: number;
  /** carrier of each fixed point */
  readonly fixed: readonly number[];
  readonly cells: readonly number[];
  readonly inside: readonly (readonly number[])[];
  /** vertex whose motion a skin's vertex has, and the offset x, y, z from it, mm */
  readonly skins: readonly number[];
  readonly offsets: readonly number[];
  /** three vertices per triangle, anticlockwise from outside */
  readonly triangles: Int32Array;
  /** part of each triangle */
  readonly partOf: Int32Array;
  /** per edge: two vertices, and a triangle on each side of it, or -1 */
  readonly edges: Int32Array;
  readonly edgePart: Int32Array;
  /** 1: an edge of something round, drawn only where it is the contour */
  readonly soft: Uint8Array;
  readonly kinds: readonly DrawnKind[];
  /** least and largest x, y, z at rest */
  readonly low: readonly number[];
  readonly high: readonly number[];
  /** how far from the vertical axis through the middle anything lies, and how high, mm: pairs */
  readonly profile: readonly number[];
}

/** Motion of every vertex of a scene, for a largest displacement of 1 mm. */
export interface SceneMotion {
  /** x, y, z, mm */
  readonly move: Float64Array;
  /** rotation vector x, y, z, rad */
  readonly turn: Float64Array;
}

/** From where a scene is looked at; angles in rad. */
export interface Camera {
  /** of the eye about z, from x to y */
  yaw: number;
  /** of the eye above the level */
  pitch: number;
  zoom: number;
}

/** A scene on a picture: pixels from the left and from the top, and mm towards the eye. */
export interface Projected {
  readonly width: number;
  readonly height: number;
  /** pixels per mm */
  readonly scale: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly depth: Float64Array;
  /** of any point in space, mm */
  readonly at: (x: number, y: number, z: number) => readonly [number, number, number];
}

/** Red, green, blue from 0 to 255. */
export type Rgb = readonly [number, number, number];

/** What colours the triangles: per vertex a value from 0 to 1, or else every part has one colour. */
export interface Paint {
  readonly values?: Float64Array;
  /** from value 0 to value 1; or one per part */
  readonly colours: readonly Rgb[];
  /** of the colours under each light, one row after the other: see shadeTable */
  readonly table: Uint32Array;
  /** what is left of a colour where a surface looks away from the light */
  readonly dimmest: number;
  /** opacity per part; 0: not drawn, 1: covers */
  readonly opacity: readonly number[];
  /** per part: 0 plain, 1 striped */
  readonly pattern?: readonly number[];
  readonly ground: Rgb;
}

/** Colours and depths of a picture's points. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  /** red, green, blue, opacity from the lowest byte */
  readonly pixels: Uint32Array;
  /** mm towards the eye; -Infinity where nothing is */
  readonly depth: Float32Array;
}

/** Lines and letters over the surfaces, for the canvas and for SVG alike. */
export interface Stroke {
  /** x1, y1, x2, y2 of each piece, pixels */
  readonly pieces: readonly number[];
  readonly colour: string;
  readonly width: number;
  readonly dash?: readonly number[];
}

export interface Lettering {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly colour: string;
  readonly size: number;
}

/** A closed shape over all else. */
export interface Badge {
  readonly points: readonly number[];
  readonly fill: string;
  readonly edge: string;
}

export interface Overlay {
  readonly strokes: readonly Stroke[];
  readonly badges: readonly Badge[];
  readonly letters: readonly Lettering[];
}

/** What is under the pointer. */
export interface Picked {
  readonly part: number;
  readonly triangle: number;
  /** weights of the triangle's corners */
  readonly weights: readonly [number, number, number];
  readonly depth: number;
}

/** A triangle in the order of drawing: corners in pixels, colour as #rrggbb, how much it covers. */
export interface Area {
  readonly points: readonly number[];
  readonly fill: string;
  readonly opacity: number;
  readonly depth: number;
  readonly striped: boolean;
}

/** How a scene is to look. */
export interface Look {
  readonly paint: Paint;
  /** of every vertex, for a largest displacement of 1; absent: at rest */
  readonly move?: Float64Array;
  /** mm: how far the largest displacement is drawn from rest */
  readonly size: number;
  /** the borders at rest too */
  readonly ghost: boolean;
  readonly mark?: readonly [number, number];
  readonly theme: Theme;
  /** mm kept free around the frame at rest */
  readonly room: number;
}

/** A picture that is drawn: where everything lies, and the lines over it. */
export interface Picture {
  readonly seen: Projected;
  readonly overlay: Overlay;
}

/** What is used of a canvas' drawing functions. */
export interface Canvas2d {
  fillStyle: string;
  strokeStyle: string;
  lineWidth: number;
  lineCap: string;
  lineJoin: string;
  font: string;
  textAlign: string;
  createImageData(
    width: number,
    height: number,
  ): { readonly data: { readonly buffer: ArrayBuffer } };
  putImageData(image: object, x: number, y: number): void;
  drawImage(image: object, x: number, y: number): void;
  beginPath(): void;
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  closePath(): void;
  stroke(): void;
  fill(): void;
  setLineDash(dash: readonly number[]): void;
  fillText(text: string, x: number, y: number): void;
}
