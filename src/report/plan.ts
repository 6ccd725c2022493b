/** The frame from above, with the candidate places. */

import { armBreaks, widthAt } from "../model/arm.ts";
import { PLAIN_STACK } from "../model/plain-stack.ts";
import { bounds, clipToConvex, type Polygon, rectangle } from "../model/polygon.ts";
import type { ArmPart, Model } from "../model/types.ts";
import type { Overhang } from "../ranking/types.ts";
import { type BodyBox, bodyBoxes, isMotor } from "./boxes.ts";
import {
  box,
  circle,
  drawing,
  type Extent,
  extentOf,
  extentWith,
  fine,
  fromAbove,
  label,
  line,
  type Point,
  path,
  polygonPath,
  type View,
} from "./drawing.ts";
import { type Html, html } from "./html.ts";
import { type CalloutLines, candidateMarks, type Marks } from "./markers.ts";
import { quietMapLayer } from "./quiet-layer.ts";
import type { Analysed } from "./types.ts";

/** The outline of an arm from above: its free length, and the end between the plates. */
export function armOutline(arm: ArmPart): Polygon {
  const [ux, uy] = [0, 1].map((k) => (arm.tip[k] - arm.root[k]) / arm.length);
  const inside = arm.held.kind === "point" ? 0 : arm.held.inserted / arm.length;
  const stations = [-inside, ...new Set(armBreaks(arm).sort((a, b) => a - b))];
  const side = (k: 1 | -1) =>
    stations.map((s): Point => {
      const w = (k * widthAt(arm, Math.max(0, s))) / 2;
      const along = s * arm.length;
      return [arm.root[0] + along * ux - w * uy, arm.root[1] + along * uy + w * ux];
    });
  return Float64Array.from([...side(-1), ...side(1).reverse()].flat());
}

/** The part of a plate that reaches past its last support. */
export function overhangRegion(outline: Polygon, o: Overhang): Polygon {
  const [x0, y0, x1, y1] = bounds(outline);
  const cut = {
    front: [o.supportAt, y0, x1, y1],
    rear: [x0, y0, o.supportAt, y1],
    left: [x0, o.supportAt, x1, y1],
    right: [x0, y0, x1, o.supportAt],
  }[o.direction];
  return clipToConvex(outline, rectangle(cut[0], cut[1], cut[2], cut[3]));
}

/** The frame from above, front at the top. */
export function planDrawing(analysed: Analysed, finding: string): Html {
  const { model, file } = analysed;
  const boxes = bodyBoxes(analysed);
  const motors = boxes.filter((b) => isMotor(model.bodies[b.body]));
  const frame = planExtent(model, motors);
  const size = Math.max(frame.x1 - frame.x0, frame.y1 - frame.y0);
  const r = size / 36;
  const marked = marks(analysed, fromAbove, besidePlates(model, frame, r), r);
  const extent = extentWith(frame, marked.callouts, 2 * r);
  const R = (file.propulsion?.propeller.diameter ?? 0) * 500;
  const sheets = [
    ...model.plates.map((p) => ({
      z: p.z,
      shape: path(polygonPath([p.outline, ...p.holes]), "plate"),
    })),
    ...model.arms.map((a) => ({ z: a.root[2], shape: path(polygonPath([armOutline(a)]), "arm") })),
  ].sort((a, b) => a.z - b.z);
  const flagged = overhangs(analysed).map((o) => overhangPath(model, o));
  const members = analysed.mesh.beams.flatMap(({ nodes, part }) =>
    analysed.mesh.parts[part].kind === "member"
      ? [
          line(
            nodeAt(analysed, nodes[0], fromAbove),
            nodeAt(analysed, nodes[1], fromAbove),
            "member",
          ),
        ]
      : [],
  );
  return drawing("plan", extent, "The frame from above, front at the top", finding, [
    html`<g class="propellers">${R > 0 && model.rotors.map((m) => circle(fromAbove(...m.position), R, "propeller"))}</g>`,
    html`<g class="sheets">${sheets.map((s) => s.shape)}${members}</g>`,
    quietMapLayer(analysed),
    html`<g fill="url(#plan-hatch)">${flagged.map((d) => path(d, "overhang"))}</g>`,
    html`<g>${model.standoffs.map((s) => circle(fromAbove(s.x, s.y, 0), Math.max(1.5, s.footprint * 500), "standoff"))}</g>`,
    html`<g>${motors.map((m) => circle(fromAbove(...m.centre), m.size[0] * 500, "motor"))}</g>`,
    bestBox(analysed),
    cgMark(fromAbove(...analysed.mass.cg), 0.8 * r),
    html`<g>${marked.layers}</g>`,
    frontArrow([(extent.x0 + extent.x1) / 2, extent.y0 + 0.5 * r], r),
    scaleBar([extent.x1 - r, extent.y1 - 0.8 * r], r, size),
  ]);
}

/** The stack's own outline at the best place. */
function bestBox({ ranking, file }: Analysed): Html {
  const [best] = ranking?.candidates ?? [];
  if (!best) return html``;
  const { x, y } = best.candidate;
  const [a, b] = (file.stack ?? PLAIN_STACK).size;
  const corners = [fromAbove(x - a / 2, y - b / 2, 0), fromAbove(x + a / 2, y + b / 2, 0)] as const;
  return html`${box(...corners, "best-ground")}${box(...corners, "best-box")}`;
}

/** The overhangs worth showing. */
export function overhangs({ ranking }: Analysed): readonly Overhang[] {
  return ranking?.overhangs.filter((o) => o.flagged) ?? [];
}

/** Number of the plate that an overhang belongs to. */
export function plateNumber(model: Model, o: Overhang): number {
  return model.plates.findIndex((p) => p.name === o.plate);
}

function overhangPath(model: Model, o: Overhang): string {
  const plate = model.plates[plateNumber(model, o)];
  return polygonPath([overhangRegion(plate.outline, o)]);
}

/** Callouts to the right of the plates, and to the left for places on one level. */
function besidePlates(model: Model, frame: Extent, r: number): CalloutLines {
  const ys = model.plates.flatMap((p) => [bounds(p.outline)[1], bounds(p.outline)[3]]);
  const half = [Math.max(0, ...ys), Math.min(0, ...ys)].map((y) => -y * 1e3);
  return {
    axis: 0,
    at: [half[1] + 3 * r, half[0] - 3 * r],
    limits: [frame.y0 + 4 * r, frame.y1 - 3 * r],
  };
}

/** The candidates' marks in a view. */
export function marks(analysed: Analysed, view: View, lines: CalloutLines, r: number): Marks {
  const candidates = analysed.ranking?.candidates ?? [];
  const places = candidates.map(({ candidate: { x, y, chip } }) => view(x, y, chip[2]));
  return candidateMarks(candidates, places, lines, r);
}

function nodeAt({ mesh }: Analysed, node: number, view: View): Point {
  const [x, y, z] = mesh.xyz.subarray(3 * node, 3 * node + 3);
  return view(x, y, z);
}

/** All that must be on the drawing from above: x, y pairs in metres. */
export function planPoints(model: Model, motors: readonly BodyBox[]): Float64Array {
  const points = [
    ...model.plates.flatMap((p) => Array.from(p.outline)),
    ...model.arms.flatMap((a) => Array.from(armOutline(a))),
    ...motors.flatMap(({ centre: [x, y], size: [d] }) => [
      ...[x - d / 2, y - d / 2],
      ...[x + d / 2, y + d / 2],
    ]),
    ...[...model.points.values()].flatMap((p) => p.slice(0, 2)),
  ];
  return Float64Array.from(points.length > 0 ? points : [0, 0]);
}

function planExtent(model: Model, motors: readonly BodyBox[]): Extent {
  const [x0, y0, x1, y1] = bounds(planPoints(model, motors));
  const margin = 60 * Math.max(x1 - x0, y1 - y0, 0.01);
  const around = extentOf([fromAbove(x0, y0, 0), fromAbove(x1, y1, 0)], margin / 2);
  // Room for the arrow above and the scale below.
  return { ...around, y0: around.y0 - margin, y1: around.y1 + margin };
}

/** The usual sign for a centre of gravity: a quartered disc. */
export function cgMark([x, y]: Point, r: number): Html {
  const quarter = (sx: number, sy: number) =>
    `M${fine(x)} ${fine(y)}L${fine(x + sx * r)} ${fine(y)}A${fine(r)} ${fine(r)} 0 0 ${sx * sy > 0 ? 1 : 0} ${fine(x)} ${fine(y + sy * r)}Z`;
  return html`<g class="cg">${circle([x, y], r, "cg-ground")}<path class="cg-quarters" d="${quarter(1, 1)}${quarter(-1, -1)}"/></g>`;
}

function frontArrow([x, y]: Point, r: number): Html {
  const d = `M${fine(x)} ${fine(y + 2.4 * r)}L${fine(x)} ${fine(y)}M${fine(x - 0.6 * r)} ${fine(y + 0.8 * r)}L${fine(x)} ${fine(y)}L${fine(x + 0.6 * r)} ${fine(y + 0.8 * r)}`;
  return html`<path class="arrow" d="${d}"/>${label([x + 1.1 * r, y + 1.6 * r], 1.1 * r, "front", "note", "start")}`;
}

/** A length of 10, 20, 50, 100 ... mm, about a sixth of the drawing. */
function scaleBar([x, y]: Point, r: number, size: number): Html {
  const about = size / 6;
  const decade = 10 ** Math.floor(Math.log10(about));
  const length = decade * ([5, 2, 1].find((k) => k * decade <= about) ?? 1);
  const d = `M${fine(x - length)} ${fine(y - 0.5 * r)}V${fine(y)}H${fine(x)}V${fine(y - 0.5 * r)}`;
  return html`<path class="arrow" d="${d}"/>${label([x - length / 2, y - 0.6 * r], 1.1 * r, `${length} mm`, "note")}`;
}
