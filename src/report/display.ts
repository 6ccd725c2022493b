/** The frame as vertices, triangles and lines, and how they move in each mode. */

import type { Mesh } from "../mesh/types.ts";
import { widthAt } from "../model/arm.ts";
import type { ArmPart } from "../model/types.ts";
import { bodyBoxes } from "./boxes.ts";
import {
  addFrame,
  atNode,
  carrierMotion,
  type DisplayDraft,
  emptyDisplay,
  fixedTo,
  follow,
  numberOf,
  type Vertex,
} from "./display-draft.ts";
import { chipOnPlate, type Drawn, drawPlate } from "./display-plate.ts";
import { packUnit } from "./shape-codec.ts";
import type { Analysed } from "./types.ts";

/** As the page gets it; all lists flat. Places in mm, weights in thousandths. */
export interface DisplayData {
  /** x, y, z of each carrier (size 3 c) */
  readonly places: readonly number[];
  /** four carriers per frame */
  readonly frames: readonly number[];
  /** frame, w1, w2, w3 per follower; vertex numbers go on after the carriers */
  readonly followers: readonly number[];
  /** three vertices per triangle: plates and arms */
  readonly surface: readonly number[];
  /** borders, arms' edges, standoffs and members */
  readonly lines: readonly (readonly number[])[];
  readonly boxes: { readonly surface: readonly number[]; readonly lines: readonly number[][] };
  /** the best place: on the plate, and the chip above or below it */
  readonly mark?: readonly [number, number];
  /** motion of the carriers, packed, mode by mode from the lowest */
  readonly shapes: readonly string[];
}

/** Drawn cells per plate are made coarser beyond this many nodes of all plates together. */
const MOST_NODES = 1200;
/** Signs of all shapes together; modes beyond are not drawn. */
const MOST_SIGNS = 200_000;

const CORNERS = [0, 1, 2, 3, 4, 5, 6, 7].map((k) => [k & 1, (k >> 1) & 1, (k >> 2) & 1] as const);
/** Two triangles per side of a box, corners numbered as bits x, y, z. */
// biome-ignore format: six sides
const SIDES = [
  0, 2, 1, 1, 2, 3,  4, 5, 6, 5, 7, 6,  0, 1, 4, 1, 5, 4,
  2, 6, 3, 3, 6, 7,  0, 4, 2, 2, 4, 6,  1, 3, 5, 3, 7, 5,
];
const EDGES = [
  [0, 1, 3, 2, 0],
  [4, 5, 7, 6, 4],
  [0, 4],
  [1, 5],
  [2, 6],
  [3, 7],
];

export function displayData(analysis: Analysed): DisplayData {
  const { model, mesh, modes, ranking } = analysis;
  const draft = emptyDisplay(mesh);
  const nodes = mesh.grids.reduce(
    (n, g) => n + g.nodeAt.reduce((k, v) => k + (v < 0 ? 0 : 1), 0),
    0,
  );
  const step = Math.max(1, Math.round(Math.sqrt(nodes / MOST_NODES)));
  const drawn = [
    ...model.plates.map((p, i) => drawPlate(draft, p, mesh.grids[i], step)),
    ...model.arms.map((arm, i) => drawArm(draft, arm, mesh.armNodes[i])),
    drawBeams(draft, mesh),
  ];
  const boxes = drawBoxes(draft, analysis);
  const best = ranking?.candidates[0]?.candidate;
  const mark = best && chipOnPlate(draft, mesh.grids[best.plate], best.chip);
  const number = (v: Vertex) => numberOf(draft, v);
  const fitting = Math.max(1, Math.floor(MOST_SIGNS / (6 * draft.nodes.length)));
  return {
    places: draft.places.map((v) => Number((v * 1e3).toFixed(2))),
    frames: draft.frames.flat(),
    followers: draft.followers.flatMap(([f, ...w]) => [f, ...w.map((v) => Math.round(v * 1e3))]),
    surface: drawn.flatMap((d) => d.triangles.flat()).map(number),
    lines: drawn.flatMap((d) => d.lines).map((line) => line.map(number)),
    boxes: {
      surface: boxes.triangles.flat().map(number),
      lines: boxes.lines.map((line) => line.map(number)),
    },
    ...(mark !== undefined && { mark: [number(mark[0]), number(mark[1])] as const }),
    shapes: modes.shapes.slice(0, fitting).map((s) => packUnit(carrierMotion(draft, s))),
  };
}

/** A ribbon as wide as the arm. */
function drawArm(draft: DisplayDraft, arm: ArmPart, nodes: readonly number[]): Drawn {
  const [dx, dy] = [0, 1].map((k) => (arm.tip[k] - arm.root[k]) / arm.length);
  const { xyz } = draft.mesh;
  const sides = nodes.map((node) => {
    const [x, y, z] = xyz.subarray(3 * node, 3 * node + 3);
    const s = Math.hypot(x - arm.root[0], y - arm.root[1], z - arm.root[2]) / arm.length;
    const w = widthAt(arm, s) / 2;
    return [1, -1].map((k) => fixedTo(draft, node, x - k * w * dy, y + k * w * dx, z));
  });
  const triangles = sides.slice(1).flatMap(([l, r], i) => {
    const [l0, r0] = sides[i];
    return [[l0, r0, r] as const, [l0, r, l] as const];
  });
  const left = sides.map(([l]) => l);
  const right = sides.map(([, r]) => r).reverse();
  return { triangles, lines: [[...left, ...right, left[0]]] };
}

/** Standoffs and members as lines. */
function drawBeams(draft: DisplayDraft, mesh: Mesh): Drawn {
  const lines = mesh.beams
    .filter((b) => mesh.parts[b.part].kind !== "arm")
    .map((b) => b.nodes.map((n) => atNode(draft, n)));
  return { triangles: [], lines };
}

function drawBoxes(draft: DisplayDraft, analysis: Analysed): Drawn {
  const all = bodyBoxes(analysis).map(({ body, centre, size }) => {
    const node = analysis.mesh.bodyNodes[body];
    const at = (k: readonly number[]) => {
      const [x, y, z] = centre.map((c, i) => c + (k[i] - 0.5) * size[i]);
      return fixedTo(draft, node, x, y, z);
    };
    const frame = addFrame(draft, [at([0, 0, 0]), at([1, 0, 0]), at([0, 1, 0]), at([0, 0, 1])]);
    const corners = CORNERS.map((k) => follow(draft, frame, ...k));
    const triangles = SIDES.flatMap((_, i) =>
      i % 3 === 0 ? [[0, 1, 2].map((k) => corners[SIDES[i + k]]) as [Vertex, Vertex, Vertex]] : [],
    );
    return { triangles, lines: EDGES.map((edge) => edge.map((k) => corners[k])) };
  });
  return { triangles: all.flatMap((d) => d.triangles), lines: all.flatMap((d) => d.lines) };
}
