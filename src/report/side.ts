/** The frame from the side, which tells places on different plates apart. */

import { bounds } from "../model/polygon.ts";
import { bodyBoxes, isMotor } from "./boxes.ts";
import { box, drawing, extentOf, extentWith, fromRight, line, type Point } from "./drawing.ts";
import { type Html, html } from "./html.ts";
import { cgMark, marks, overhangs, planPoints, plateNumber } from "./plan.ts";
import type { Analysed } from "./types.ts";

/** The frame from its right-hand side, which tells places on different plates apart. */
export function sideDrawing(analysed: Analysed, finding: string): Html {
  const { model } = analysed;
  const boxes = bodyBoxes(analysed);
  const [x0, , x1] = bounds(planPoints(model, []));
  const extentPoints: Point[] = [
    [x0 * 1e3, 0],
    [x1 * 1e3, 0],
    ...boxes.flatMap(({ centre: [x, , z], size: [a, , c] }): Point[] => [
      [(x - a / 2) * 1e3, -(z - c / 2) * 1e3],
      [(x + a / 2) * 1e3, -(z + c / 2) * 1e3],
    ]),
    ...model.plates.map((p): Point => fromRight(p.outline[0], 0, p.z)),
    ...(analysed.ranking?.candidates ?? []).map(({ candidate: c }) =>
      fromRight(c.x, c.y, c.chip[2]),
    ),
  ];
  const around = extentOf(extentPoints);
  const r = (around.x1 - around.x0) / 36;
  const frame = extentOf(extentPoints, r);
  // Callouts above the frame, and below it for places under each other.
  const lines = {
    axis: 1,
    at: [frame.y0 - r, frame.y1 + r],
    limits: [frame.x0 + r, frame.x1 - r],
  } as const;
  const marked = marks(analysed, fromRight, lines, r);
  const extent = extentWith(frame, marked.callouts, 2 * r);
  const slab = (a: number, b: number, z: number, t: number, kind: string) =>
    box(fromRight(a, 0, z - t / 2), fromRight(b, 0, z + t / 2), kind);
  const hatched = overhangs(analysed)
    .filter((o) => o.direction === "front" || o.direction === "rear")
    .map((o) => {
      const p = model.plates[plateNumber(model, o)];
      return slab(o.supportAt, o.endAt, p.z, 2 * p.thickness, "overhang");
    });
  return drawing(
    "side",
    extent,
    "The frame from its right-hand side, front to the right",
    finding,
    [
      html`<g>${boxes.map(({ body, centre: [x, , z], size: [a, , c] }) => box(fromRight(x - a / 2, 0, z - c / 2), fromRight(x + a / 2, 0, z + c / 2), isMotor(model.bodies[body]) ? "motor" : "body"))}</g>`,
      html`<g>${model.standoffs.map((s) => line(fromRight(s.x, 0, s.from), fromRight(s.x, 0, s.to), "post"))}</g>`,
      html`<g>${model.arms.map((a) => slab(Math.min(a.root[0], a.tip[0]), Math.max(a.root[0], a.tip[0]), a.root[2], a.thickness, "arm"))}</g>`,
      html`<g>${model.plates.map((p) => slab(bounds(p.outline)[0], bounds(p.outline)[2], p.z, p.thickness, "plate edge"))}</g>`,
      html`<g fill="url(#side-hatch)">${hatched}</g>`,
      cgMark(fromRight(...analysed.mass.cg), r),
      html`<g>${marked.layers}</g>`,
    ],
  );
}
