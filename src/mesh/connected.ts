/** The check that every part hangs on the rest, or on the ground. */

import { type Finding, InputError } from "../errors.ts";
import type { Draft } from "./draft.ts";
import type { PartKind, Tie } from "./types.ts";

/** Where in the frame file parts of a kind are written. */
const SECTION: Record<PartKind, string> = {
  plate: "plates",
  arm: "arms",
  "arm root": "arms",
  standoff: "standoffs",
  member: "members",
  joint: "joints",
  spring: "springs",
  mount: "bodies",
  body: "bodies",
};

/** @throws InputError naming each part that is loose */
export function checkConnected(draft: Draft, ties: readonly Tie[]): void {
  const ground = draft.xyz.length / 3;
  const parent = Int32Array.from({ length: ground + 1 }, (_, i) => i);
  const root = (i: number): number => {
    let r = i;
    while (parent[r] !== r) {
      parent[r] = parent[parent[r]];
      r = parent[r];
    }
    return r;
  };
  const join = (nodes: ArrayLike<number>) => {
    for (let i = 1; i < nodes.length; i++) parent[root(nodes[i])] = root(nodes[0]);
  };
  for (const b of draft.beams) join(b.nodes);
  for (const c of draft.cells) join(c.nodes);
  for (const s of draft.springs) join([s.nodes[0], s.nodes[1] < 0 ? ground : s.nodes[1]]);
  for (const p of draft.pads) join([p.node, ...p.patch.nodes]);
  for (const t of ties) join(t.dofs.map((d) => Math.floor(d / 6)));
  for (const d of draft.fixed) join([Math.floor(d / 6), ground]);

  const elements = [
    ...draft.beams.map((e) => ({ node: e.nodes[0], part: e.part })),
    ...draft.cells.map((e) => ({ node: e.nodes[0], part: e.part })),
    ...draft.springs.map((e) => ({ node: e.nodes[0], part: e.part })),
    ...draft.pads.map((e) => ({ node: e.node, part: e.part })),
    ...draft.masses.map((e) => ({ node: e.node, part: e.part })),
  ];
  const size = new Map<number, number>();
  for (const e of elements) size.set(root(e.node), (size.get(root(e.node)) ?? 0) + 1);
  const grounded = root(ground);
  const main = size.has(grounded)
    ? grounded
    : [...size].reduce((best, entry) => (entry[1] > best[1] ? entry : best), [-1, 0])[0];
  const loose = new Set(elements.filter((e) => root(e.node) !== main).map((e) => e.part));
  if (loose.size === 0) return;
  const findings: Finding[] = [...loose].map((p) => {
    const part = draft.parts[p];
    return {
      path: `${SECTION[part.kind]}.${part.name}`,
      message: `this ${part.kind} is not connected to the rest of the frame; join it with a standoff, a joint, an arm or a link`,
    };
  });
  throw new InputError(findings);
}
