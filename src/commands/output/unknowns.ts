/** What each row of the written matrices stands for, as comma-separated values. */

import type { Reduction } from "../../matrices/reduction.ts";
import type { Mesh } from "../../mesh/types.ts";
import { csvField } from "../../runs/csv.ts";

const DIRECTIONS = ["x", "y", "z", "rx", "ry", "rz"];
/** The first line of every such list. */
export const UNKNOWNS_HEADER = "row,node,direction,unit,x_m,y_m,z_m,part";

/**
 * One line per row and column of K and M, numbered from 1 like the entries of the matrices: the node
 * (from 0), the direction of its motion (m, or rad for rx, ry, rz), where it is, and its parts.
 */
export function unknownsCsv(mesh: Mesh, { masters }: Reduction): string {
  const parts = partsOfNodes(mesh);
  const lines = Array.from(masters, (dof, row) => {
    const node = Math.floor(dof / 6);
    const direction = dof % 6;
    const place = mesh.xyz.slice(3 * node, 3 * node + 3);
    const unit = direction < 3 ? "m" : "rad";
    return [row + 1, node, DIRECTIONS[direction], unit, ...place, csvField(parts[node] ?? "")].join(
      ",",
    );
  });
  return `${[UNKNOWNS_HEADER, ...lines].join("\n")}\n`;
}

/** Names of the parts that each node belongs to, joined by " + ". */
function partsOfNodes(mesh: Mesh): string[] {
  const found: Set<number>[] = [];
  const elements = [
    ...mesh.cells,
    ...mesh.beams,
    ...mesh.springs,
    ...mesh.masses.map(({ node, part }) => ({ nodes: [node], part })),
  ];
  for (const { nodes, part } of elements) {
    for (const node of nodes) {
      if (node < 0) continue; // the ground
      found[node] ??= new Set();
      found[node].add(part);
    }
  }
  const names = found.map((set) => [...set].map((part) => mesh.parts[part].name).join(" + "));
  for (const [name, node] of mesh.pointNodes) names[node] ||= name;
  return names;
}
