/** Whether there is room for the stack's box beside what is drawn. */

import type { FrameFile } from "../frame/types.ts";
import { PLAIN_STACK } from "../model/plain-stack.ts";
import { clipToConvex, type Polygon, rectangle, sumMoments } from "../model/polygon.ts";
import type { Model, PlatePart } from "../model/types.ts";

/** Boxes that touch are clear of each other: less than this is rounding, m and m^2. */
const TOUCH = 1e-6;
const TOUCH_AREA = 1e-9;

interface Box {
  readonly plan: Polygon;
  readonly low: number;
  readonly high: number;
}

/** Whether the box is clear of all that `inTheWay` looks at. */
export function hasRoom(...place: Parameters<typeof inTheWay>): boolean {
  return inTheWay(...place) === undefined;
}

/**
 * The first thing that the stack's box would cut, in words: another plate, an arm, a standoff, or a body
 * that has a size. Wires and screw heads are not drawn.
 */
export function inTheWay(
  file: FrameFile,
  model: Model,
  plate: PlatePart,
  x: number,
  y: number,
  side: "above" | "below",
): string | undefined {
  const [lx, ly, lz] = (file.stack ?? PLAIN_STACK).size;
  const up = side === "above" ? 1 : -1;
  const face = plate.z + (up * plate.thickness) / 2;
  const box: Box = {
    plan: around(x, y, lx, ly),
    low: Math.min(face, face + up * lz),
    high: Math.max(face, face + up * lz),
  };
  const body = model.bodies.find(({ role, size, cg }) => {
    if (role !== "body" || !size) return false;
    const plan = around(cg[0], cg[1], size[0], size[1]);
    return meets(box, cg[2] - size[2] / 2, cg[2] + size[2] / 2, plan);
  });
  if (body) return `"${body.name}"`;
  const other = model.plates.find((p) => p !== plate && hitsPlate(box, p));
  if (other) return `the plate "${other.name}"`;
  const arm = model.arms.find((a) => {
    const widest = Math.max(...a.profile.map((p) => p.width));
    const z = a.root[2];
    return meets(box, z - a.thickness / 2, z + a.thickness / 2, armPlan(a, widest));
  });
  if (arm) return `the ${arm.name}`;
  const post = model.standoffs.find((s) =>
    meets(box, s.from, s.to, around(s.x, s.y, s.footprint, s.footprint)),
  );
  return post && `the ${post.name}`;
}

const around = (x: number, y: number, lx: number, ly: number) =>
  rectangle(x - lx / 2, y - ly / 2, x + lx / 2, y + ly / 2);

function hitsPlate(box: Box, { outline, z, thickness }: PlatePart): boolean {
  if (!overlap(box, z - thickness / 2, z + thickness / 2)) return false;
  return sumMoments([clipToConvex(outline, box.plan)]).area > TOUCH_AREA;
}

/** The free length of an arm and what of it is bolted to plates, as wide as it gets. */
function armPlan({ root, tip, length, held }: Model["arms"][number], width: number): Polygon {
  const [ux, uy] = [(tip[0] - root[0]) / length, (tip[1] - root[1]) / length];
  const back = held.kind === "bolted" ? held.inserted : 0;
  const [x, y] = [root[0] - back * ux, root[1] - back * uy];
  const [vx, vy] = [(-uy * width) / 2, (ux * width) / 2];
  // biome-ignore format: corners, anticlockwise
  return Float64Array.of(
    x - vx, y - vy,
    tip[0] - vx, tip[1] - vy,
    tip[0] + vx, tip[1] + vy,
    x + vx, y + vy,
  );
}

const overlap = ({ low, high }: Box, from: number, to: number) =>
  to > low + TOUCH && from < high - TOUCH;

function meets(box: Box, from: number, to: number, plan: Polygon): boolean {
  if (!overlap(box, from, to)) return false;
  return sumMoments([clipToConvex(plan, box.plan)]).area > TOUCH_AREA;
}
