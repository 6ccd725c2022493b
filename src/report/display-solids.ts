/** Arms, posts, motors and bodies for the three-dimensional picture. */

import type { Mesh } from "../mesh/types.ts";
import { widthAt } from "../model/arm.ts";
import type { ArmPart } from "../model/types.ts";
import type { BodyBox } from "./boxes.ts";
import { type DisplayDraft, fixedTo, type Vertex } from "./display-draft.ts";
import type { Sheet } from "./display-plate.ts";

/** Sides of what is round. */
export const POST_SIDES = 8;
export const MOTOR_SIDES = 20;

/**
 * An arm's middle surface, as wide as the arm is at every node. What is clamped between plates moves with
 * the root as the rigid block it is in the model.
 */
export function drawArm(draft: DisplayDraft, arm: ArmPart, nodes: readonly number[]): Sheet {
  const [dx, dy] = [0, 1].map((k) => (arm.tip[k] - arm.root[k]) / arm.length);
  const { xyz } = draft.mesh;
  const station = (node: number, back: number) => {
    const [nx, ny, z] = xyz.subarray(3 * node, 3 * node + 3);
    const [x, y] = [nx - back * dx, ny - back * dy];
    const s = Math.hypot(nx - arm.root[0], ny - arm.root[1], z - arm.root[2]) / arm.length;
    const w = widthAt(arm, s) / 2;
    const at = (k: number) => fixedTo(draft, node, x - k * w * dy, y + k * w * dx, z);
    return { left: at(1), right: at(-1) };
  };
  const clamped = arm.held.kind === "bolted" ? [station(nodes[0], arm.held.inserted)] : [];
  const sides = [...clamped, ...nodes.map((node) => station(node, 0))];
  const triangles = sides.slice(1).flatMap(({ left, right }, i) => {
    const before = sides[i];
    return [[before.right, right, left] as const, [before.right, left, before.left] as const];
  });
  const back = sides.map((s) => s.left).reverse();
  const border = [...sides.map((s) => s.right), ...back];
  return { triangles, borders: [[...border, border[0]]] };
}

/** A box along the axes (4 sides) or an upright cylinder that moves with a body's node. */
export function drawBody(
  draft: DisplayDraft,
  { centre, size }: BodyBox,
  node: number,
  sides: number,
): Vertex[] {
  // The corners of a square lie further out than its sides.
  const reach = sides === 4 ? Math.SQRT1_2 : 0.5;
  return [-0.5, 0.5].flatMap((h) =>
    Array.from({ length: sides }, (_, i) => {
      const angle = (2 * Math.PI * (i + 0.5)) / sides + (sides === 4 ? Math.PI : 0);
      const x = centre[0] + reach * size[0] * Math.cos(angle);
      const y = centre[1] + reach * size[1] * Math.sin(angle);
      return fixedTo(draft, node, x, y, centre[2] + h * size[2]);
    }),
  );
}

/** Rings around a chain of nodes, each turned so that it stands across the chain. */
export function drawPost(draft: DisplayDraft, nodes: readonly number[], radius: number): Vertex[] {
  const { xyz } = draft.mesh;
  const at = (n: number) => Array.from(xyz.subarray(3 * n, 3 * n + 3));
  const [from, to] = [at(nodes[0]), at(nodes[nodes.length - 1])];
  const along = unit(from.map((v, k) => to[k] - v));
  // Any direction that is not along the chain will do for the first spoke.
  const first = unit(cross(Math.abs(along[2]) > 0.9 ? [0, 1, 0] : [0, 0, 1], along));
  const second = cross(along, first);
  return nodes.flatMap((node) => {
    const c = at(node);
    return Array.from({ length: POST_SIDES }, (_, i) => {
      const angle = (2 * Math.PI * i) / POST_SIDES;
      const [p, q] = [radius * Math.cos(angle), radius * Math.sin(angle)];
      const [x, y, z] = c.map((v, k) => v + p * first[k] + q * second[k]);
      return fixedTo(draft, node, x, y, z);
    });
  });
}

/** Nodes of standoffs and members in their order, with the names of the parts. */
export function postChains(mesh: Mesh): { readonly name: string; readonly nodes: number[] }[] {
  const chains: { part: number; name: string; nodes: number[] }[] = [];
  for (const { part, nodes } of mesh.beams) {
    const { kind, name } = mesh.parts[part];
    if (kind === "arm" || kind === "plate" || kind === "arm root") continue;
    const last = chains.at(-1);
    if (last?.part === part && last.nodes.at(-1) === nodes[0]) last.nodes.push(nodes[1]);
    else chains.push({ part, name, nodes: [...nodes] });
  }
  return chains;
}

function unit(v: readonly number[]): number[] {
  const length = Math.hypot(...v);
  return v.map((c) => (length > 0 ? c / length : 0));
}

function cross(a: readonly number[], b: readonly number[]): number[] {
  return [0, 1, 2].map((k) => {
    const [i, j] = [(k + 1) % 3, (k + 2) % 3];
    return a[i] * b[j] - a[j] * b[i];
  });
}
