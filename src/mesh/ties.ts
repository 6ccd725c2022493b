/** Rigid ties written as rows of coefficients, sum c u = 0. */

import { type Draft, nodeAt, type RigidTie } from "./draft.ts";
import type { Tie } from "./types.ts";

/**
 * Every tie has a carrier, whose rotation reaches over the distance, and a follower, a weighted set of
 * nodes: mean of u_follower = u_carrier + theta_carrier x r and mean of theta_follower = theta_carrier.
 * A node tied to a patch carries the patch; a node tied to a node is carried by it.
 */
interface Sides {
  readonly carrier: number;
  readonly nodes: ArrayLike<number>;
  readonly weights: Float64Array;
  /** from the carrier to the follower's point */
  readonly r: readonly number[];
}

/**
 * A node with one tie is eliminated itself; a node with several stays and the heaviest plate node
 * under each patch goes, which keeps the expressions short.
 */
export function tieRows(draft: Draft): Tie[] {
  const count = new Map<number, number>();
  for (const t of draft.rigidTies) count.set(t.node, (count.get(t.node) ?? 0) + 1);
  return draft.rigidTies.flatMap((t) => rowsOf(draft, t, count.get(t.node) === 1));
}

function sidesOf(draft: Draft, { node, to }: RigidTie): Sides {
  const at = nodeAt(draft, node);
  if ("patch" in to) {
    const { nodes, weights, centre } = to.patch;
    return { carrier: node, nodes, weights, r: centre.map((c, i) => c - at[i]) };
  }
  const other = nodeAt(draft, to.node);
  const r = at.map((c, i) => c - other[i]);
  return { carrier: to.node, nodes: [node], weights: Float64Array.of(1), r };
}

function rowsOf(draft: Draft, tie: RigidTie, alone: boolean): Tie[] {
  const { carrier, nodes, weights, r } = sidesOf(draft, tie);
  // theta x r, as rows on theta
  const cross = [
    [0, r[2], -r[1]],
    [-r[2], 0, r[0]],
    [r[1], -r[0], 0],
  ];
  const heaviest = nodes[weights.indexOf(Math.max(...weights))];
  return tie.motions.map((m) => {
    const block = m < 3 ? 0 : 3;
    const local = m - block;
    const e = [0, 1, 2].map((i) => (tie.axes ? tie.axes[3 * local + i] : +(i === local)));
    const dofs: number[] = [];
    const coefs: number[] = [];
    const put = (dof: number, c: number) => {
      if (Math.abs(c) < 1e-15) return;
      dofs.push(dof);
      coefs.push(c);
    };
    for (let k = 0; k < nodes.length; k++) {
      for (let i = 0; i < 3; i++) put(6 * nodes[k] + block + i, weights[k] * e[i]);
    }
    for (let i = 0; i < 3; i++) put(6 * carrier + block + i, -e[i]);
    if (block === 0) {
      for (let j = 0; j < 3; j++) {
        put(6 * carrier + 3 + j, -(e[0] * cross[0][j] + e[1] * cross[1][j] + e[2] * cross[2][j]));
      }
    }
    const largest = [0, 1, 2].reduce((a, b) => (Math.abs(e[b]) > Math.abs(e[a]) ? b : a));
    const owner = alone ? tie.node : heaviest;
    return {
      dofs: Int32Array.from(dofs),
      coefs: Float64Array.from(coefs),
      prefer: 6 * owner + block + largest,
    };
  });
}
