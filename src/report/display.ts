/** The frame as closed surfaces, and how they move in each mode. */

import type { BeamElement } from "../mesh/types.ts";
import { type BodyBox, bodyBoxes } from "./boxes.ts";
import { readScene, sceneMotion } from "./client/scene.ts";
import type { DrawnFrame, DrawnPart, MotionSteps, PackedMotion } from "./client/viewer-types.ts";
import { type DisplayDraft, emptyDisplay, numberOf, type Vertex } from "./display-draft.ts";
import { chipOnPlate, drawPlate, type Sheet } from "./display-plate.ts";
import {
  drawArm,
  drawBody,
  drawPost,
  MOTOR_SIDES,
  POST_SIDES,
  postChains,
} from "./display-solids.ts";
import { grams, millimetres } from "./numbers.ts";
import { packIntegers, unpackIntegers } from "./shape-codec.ts";
import type { Analysed } from "./types.ts";

/** The frame at rest and its modes from the lowest, as the page gets them. */
export interface DisplayData {
  readonly frame: DrawnFrame;
  readonly motions: readonly PackedMotion[];
  readonly steps: MotionSteps;
  /** per mode: how much the best place moves and turns, relative to the largest */
  readonly atMark?: readonly { readonly move: number; readonly turn: number }[];
}

/** Steps from rest to the largest displacement, and to the largest rotation, of a mode. */
export const STEPS: MotionSteps = { move: 300, turn: 120 };

/** Plates' motion is carried by every second, third ... node beyond this many nodes of all plates. */
const MOST_NODES = 1000;
/** Signs of all modes together; modes beyond are not drawn. */
const MOST_SIGNS = 125_000;

export function displayData(analysis: Analysed): DisplayData {
  const draft = emptyDisplay(analysis.mesh);
  const frame = drawnFrame(draft, analysis);
  const scene = readScene(frame, unpackIntegers);
  const motions: PackedMotion[] = [];
  const atMark: { readonly move: number; readonly turn: number }[] = [];
  const chip = frame.mark?.[1] ?? 0;
  let signs = 0;
  for (const shape of analysis.modes.shapes) {
    const { move, turn } = carrierMotion(draft, shape);
    const all = sceneMotion(scene, move, turn);
    const largest = {
      move: largestVector(all.move, scene.triangles),
      turn: largestVector(all.turn, scene.triangles),
    };
    const steps = (values: Float64Array, most: number, count: number) =>
      packIntegers(values.map((v) => (most > 0 ? Math.round((v / most) * count) : 0)));
    const packed = {
      move: steps(move, largest.move, STEPS.move),
      turn: steps(turn, largest.turn, STEPS.turn),
      turnPerMove: Number((largest.move > 0 ? largest.turn / largest.move : 0).toPrecision(6)),
    };
    signs += packed.move.length + packed.turn.length;
    if (signs > MOST_SIGNS && motions.length > 0) break;
    motions.push(packed);
    if (frame.mark === undefined) continue;
    const share = (all: Float64Array, most: number) =>
      Number((largestVector(all, [chip]) / (most || 1)).toPrecision(3));
    atMark.push({ move: share(all.move, largest.move), turn: share(all.turn, largest.turn) });
  }
  return { frame, motions, steps: STEPS, ...(frame.mark && { atMark }) };
}

/**
 * Displacements (mm) and rotations (rad) of the carriers, x of all, then y, then z.
 *
 * @param shape on all unknowns of the mesh, 6 per node, m and rad
 */
export function carrierMotion(
  { nodes }: Pick<DisplayDraft, "nodes">,
  shape: Float64Array,
): { readonly move: Float64Array; readonly turn: Float64Array } {
  const move = new Float64Array(3 * nodes.length);
  const turn = new Float64Array(3 * nodes.length);
  nodes.forEach((node, i) => {
    for (let k = 0; k < 3; k++) {
      move[k * nodes.length + i] = 1e3 * shape[6 * node + k];
      turn[k * nodes.length + i] = shape[6 * node + 3 + k];
    }
  });
  return { move, turn };
}

/** Length of the longest of the vectors (x, y, z after each other) that are used. */
function largestVector(vectors: Float64Array, used: ArrayLike<number>): number {
  let most = 0;
  for (let i = 0; i < used.length; i++) {
    const v = used[i];
    most = Math.max(most, Math.hypot(vectors[3 * v], vectors[3 * v + 1], vectors[3 * v + 2]));
  }
  return most;
}

function drawnFrame(draft: DisplayDraft, analysis: Analysed): DrawnFrame {
  const { model, mesh, ranking, file } = analysis;
  const nodes = mesh.grids.reduce((n, g) => n + g.nodeAt.filter((v) => v >= 0).length, 0);
  const step = Math.max(1, Math.round(Math.sqrt(nodes / MOST_NODES)));
  const mass = new Map(analysis.mass.parts.map((p) => [p.name, p.mass]));
  const weight = (name: string) => {
    const kg = mass.get(name);
    return kg === undefined ? "" : `, ${grams(kg)}`;
  };
  const plates = model.plates.map((p, i) => ({
    ...{ kind: "plate" as const, name: p.name, half: p.thickness / 2 },
    words: `plate, ${millimetres(p.thickness)} thick${weight(p.name)}`,
    sheet: drawPlate(draft, p, mesh.grids[i], step),
  }));
  const arms = model.arms.map((p, i) => ({
    ...{ kind: "arm" as const, name: p.name, half: p.thickness / 2 },
    words: `arm, ${millimetres(p.thickness)} thick${weight(p.name)}`,
    sheet: drawArm(draft, p, mesh.armNodes[i]),
  }));
  const posts = postChains(mesh).map(({ name, nodes: chain }) => ({
    ...{ kind: "post" as const, name, sides: POST_SIDES },
    words: `standoff or member${weight(name)}`,
    rings: drawPost(draft, chain, radiusOf(mesh.beams, chain)),
  }));
  const bodies = bodyBoxes({ model, file }).map((box: BodyBox) => {
    const { role, name } = model.bodies[box.body];
    const kind = role === "motor" || role === "stack" ? role : ("body" as const);
    const sides = kind === "motor" ? MOTOR_SIDES : 4;
    return {
      ...{ kind, name, sides },
      words: `${kind === "stack" ? "sensor stack" : kind}${weight(name)}`,
      rings: drawBody(draft, box, mesh.bodyNodes[box.body], sides),
    };
  });
  const best = ranking?.candidates[0]?.candidate;
  const mark = best && chipOnPlate(draft, mesh.grids[best.plate], best.chip);
  const number = (v: Vertex) => numberOf(draft, v);
  return {
    carriers: packIntegers(
      columns(
        draft.nodes.map((n) => mesh.xyz.subarray(3 * n, 3 * n + 3)),
        3,
      ),
    ),
    fixed: [
      packIntegers(draft.fixed.map(([carrier]) => carrier)),
      ...([1, 2, 3] as const).map((k) => packIntegers(draft.fixed.map((f) => hundredths(f[k])))),
    ] as unknown as DrawnFrame["fixed"],
    cells: packIntegers(draft.cells.flat().map(number)),
    inside: [
      packIntegers(draft.inside.map(([cell]) => cell)),
      packIntegers(draft.inside.map(([, s]) => Math.round(1e3 * s))),
      packIntegers(draft.inside.map(([, , t]) => Math.round(1e3 * t))),
    ],
    parts: [
      ...[...plates, ...arms].map(
        ({ kind, name, words, half, sheet }): DrawnPart => ({
          ...{ kind, name, words },
          slab: { ...packedSheet(sheet, number), half: hundredths(half) / 100 },
        }),
      ),
      ...[...posts, ...bodies].map(
        ({ kind, name, words, sides, rings }): DrawnPart => ({
          ...{ kind, name, words },
          prism: { rings: packIntegers(rings.map(number)), sides },
        }),
      ),
    ],
    ...(mark !== undefined && { mark: [number(mark[0]), number(mark[1])] as const }),
  };
}

function packedSheet({ triangles, borders }: Sheet, number: (v: Vertex) => number) {
  const border = borders.flatMap((line) => [...line.map(number), -1]);
  return {
    faces: packIntegers(triangles.flat().map(number)),
    borders: packIntegers(border),
  };
}

/** Radius of a solid round with the section's radius of gyration, m. */
function radiusOf(beams: readonly BeamElement[], [a, b]: readonly number[]): number {
  const section = beams.find((e) => e.nodes[0] === a && e.nodes[1] === b)?.sections[0];
  if (section === undefined) return 1e-3;
  return 2 * Math.sqrt((section.EIy + section.EIz) / 2 / section.EA);
}

/** First entries of all rows, then the second ones ..., in hundredths of a millimetre. */
function columns(rows: readonly ArrayLike<number>[], count: number): number[] {
  return Array.from({ length: count }, (_, k) => rows.map((r) => hundredths(r[k]))).flat();
}

function hundredths(metres: number): number {
  return Math.round(1e5 * metres);
}
