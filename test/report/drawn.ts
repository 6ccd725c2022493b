/** A small frame to draw, made by hand: a plate of one cell, a box, a post of eight sides. */

import { sceneMotion } from "../../src/report/client/scene.ts";
import type { DrawnFrame, Scene, SceneMotion } from "../../src/report/client/viewer-types.ts";
import { packIntegers } from "../../src/report/shape-codec.ts";

/** Corners of the cell, mm; the node of the box is the fifth carrier. */
const CARRIERS = [
  [-20, -10, 0],
  [20, -10, 0],
  [20, 10, 0],
  [-20, 10, 0],
  [0, 0, 8],
];

const BOX = [
  ...[-4, 4].flatMap((z) => [
    [-6, -3, z],
    [6, -3, z],
    [6, 3, z],
    [-6, 3, z],
  ]),
];

const RING = (z: number) =>
  Array.from({ length: 8 }, (_, i) => [
    15 + 2 * Math.cos((i * Math.PI) / 4),
    2 * Math.sin((i * Math.PI) / 4),
    z,
  ]);

const hundredths = (mm: number) => Math.round(100 * mm);
const column = (rows: readonly (readonly number[])[], k: number) =>
  packIntegers(rows.map((r) => hundredths(r[k])));

/** The points of the post hang on the first corner. */
const FIXED = [
  ...BOX.map((r) => [4, ...r]),
  ...[...RING(1), ...RING(13)].map(([x, y, z]) => [0, x + 20, y + 10, z]),
];

/** Thousandths along the cell: its middle, and a point off the middle. */
const INSIDE = [
  [500, 500],
  [250, 800],
];

const first = CARRIERS.length;
const prism = (from: number, count: number) =>
  packIntegers(Array.from({ length: count }, (_, i) => from + i));
const middle = first + FIXED.length;

export const DRAWN: DrawnFrame = {
  carriers: packIntegers([0, 1, 2].flatMap((k) => CARRIERS.map((c) => hundredths(c[k])))),
  fixed: [
    packIntegers(FIXED.map(([c]) => c)),
    column(FIXED, 1),
    column(FIXED, 2),
    column(FIXED, 3),
  ],
  cells: packIntegers([0, 1, 2, 3]),
  inside: [
    packIntegers(INSIDE.map(() => 0)),
    packIntegers(INSIDE.map(([s]) => s)),
    packIntegers(INSIDE.map(([, t]) => t)),
  ],
  parts: [
    {
      kind: "plate",
      name: "deck",
      words: "plate",
      slab: {
        faces: packIntegers([0, 1, middle, 1, 2, middle, 2, 3, middle, 3, 0, middle]),
        borders: packIntegers([0, 1, 2, 3, 0, -1]),
        half: 1,
      },
    },
    {
      kind: "body",
      name: "crate",
      words: "body, 10 g",
      prism: { rings: prism(first, 8), sides: 4 },
    },
    { kind: "post", name: "post", words: "post", prism: { rings: prism(first + 8, 16), sides: 8 } },
  ],
  mark: [middle, first],
};

/** Number of the first vertex of a kind: carriers, fixed points, points in the cell, skins. */
export const FIRST = { fixed: first, inside: middle, skins: middle + INSIDE.length };

/** Motion of all vertices when carriers move as a field says: ux uy uz rx ry rz at a place in mm. */
export function moved(
  scene: Scene,
  field: (x: number, y: number, z: number) => readonly number[],
): SceneMotion {
  const n = scene.carriers;
  const values = Array.from({ length: n }, (_, i) =>
    field(scene.rest[3 * i], scene.rest[3 * i + 1], scene.rest[3 * i + 2]),
  );
  const columns = (from: number) =>
    [0, 1, 2].flatMap((k) => values.map((v) => v[from + k] as number));
  return sceneMotion(scene, columns(0), columns(3));
}
