/** Bodies that are drawn as boxes and stand in each other. */

import type { BodyPart, Model } from "../model/types.ts";

/** Boxes that touch are clear of each other, m. */
const TOUCH = 1e-6;

/** Names of each two bodies whose boxes cut each other. */
export function clashesOf({ bodies }: Pick<Model, "bodies">): string[] {
  const boxes = bodies.filter((b) => b.role === "body" && b.size !== undefined);
  return boxes.flatMap((a, i) =>
    boxes.slice(0, i).flatMap((b) => (cut(a, b) ? [`${b.name} and ${a.name}`] : [])),
  );
}

function cut(a: BodyPart, b: BodyPart): boolean {
  return [0, 1, 2].every((i) => {
    const reach = ((a.size?.[i] ?? 0) + (b.size?.[i] ?? 0)) / 2;
    return Math.abs(a.cg[i] - b.cg[i]) < reach - TOUCH;
  });
}
