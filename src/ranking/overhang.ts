/** Plates that reach past their last support: found from the drawing, confirmed by a local mode. */

import type { Mesh } from "../mesh/types.ts";
import { bounds, clipToConvex, type Polygon, rectangle, sumMoments } from "../model/polygon.ts";
import type { Model } from "../model/types.ts";
import type { Modes } from "../modes/types.ts";
import type { Overhang } from "./types.ts";

/** Overhangs shorter than this many thicknesses are not worth a word. */
const SHORT = 8;
/** A mode belongs to an overhang when its plate holds this share of the strain energy ... */
const PLATE_STRAIN = 0.3;
/** ... and the overhang moves this many times more than the rest of the frame. */
const LIVELY = 2.5;

type Direction = Overhang["direction"];
const AXES: readonly { direction: Direction; axis: 0 | 1; sign: 1 | -1 }[] = [
  { direction: "front", axis: 0, sign: 1 },
  { direction: "rear", axis: 0, sign: -1 },
  { direction: "left", axis: 1, sign: 1 },
  { direction: "right", axis: 1, sign: -1 },
];

/** Points at which a plate is held: standoffs, joints, links, supports, and inserted ends of arms. */
function supportsOf(model: Model, plate: number): [number, number][] {
  const arms = model.arms.flatMap((arm): [number, number][] => {
    const h = arm.held;
    if (h.kind === "point") return [];
    const on = h.kind === "bolted" ? h.plates.includes(plate) : h.plate === plate;
    if (!on) return [];
    const back = h.inserted / arm.length;
    return [
      [arm.root[0], arm.root[1]],
      [
        arm.root[0] - back * (arm.tip[0] - arm.root[0]),
        arm.root[1] - back * (arm.tip[1] - arm.root[1]),
      ],
    ];
  });
  const links = model.links.flatMap((l): [number, number][] => {
    const p = model.points.get(l.point);
    return p && "plate" in l.to && l.to.plate === plate ? [[p[0], p[1]]] : [];
  });
  const supports = model.supports.flatMap(({ where }): [number, number][] => {
    if (!("plate" in where) || where.plate !== plate) return [];
    const corners = where.within ? pairs(where.within) : (where.along ?? []);
    return corners.map(([x, y]) => [x, y]);
  });
  return [
    ...arms,
    ...links,
    ...supports,
    ...model.standoffs.flatMap((s): [number, number][] =>
      s.plates.includes(plate) ? [[s.x, s.y]] : [],
    ),
    ...model.joints.flatMap((j): [number, number][] =>
      j.plates.includes(plate) ? [[j.x, j.y]] : [],
    ),
  ];
}

function pairs(p: Polygon): [number, number][] {
  return Array.from({ length: p.length / 2 }, (_, i) => [p[2 * i], p[2 * i + 1]]);
}

/**
 * Overhangs of all plates that are at least SHORT thicknesses long, longest first. One is flagged when
 * it has a mode of its own that the motors can excite.
 *
 * @param highest frequency of excitation, Hz
 */
export function findOverhangs(model: Model, mesh: Mesh, modes: Modes, highest: number): Overhang[] {
  return longOverhangs(model)
    .map(({ number, axis, sign, ...named }) => {
      const local = localMode(model, mesh, modes, number, axis, sign, named.supportAt);
      const flagged = local !== undefined && local.frequency <= highest;
      return { ...named, ...local, flagged, text: words(named, local) };
    })
    .sort((a, b) => b.length - a.length);
}

/** Overhangs by the drawing alone, in the order of the plates. */
export function longOverhangs(model: Model) {
  return model.plates.flatMap((plate, number) => {
    const supports = supportsOf(model, number);
    if (supports.length === 0) return [];
    const box = bounds(plate.outline);
    return AXES.flatMap(({ direction, axis, sign }) => {
      const supportAt = sign * Math.max(...supports.map((s) => sign * s[axis]));
      const endAt = sign > 0 ? box[2 + axis] : box[axis];
      const length = sign * (endAt - supportAt);
      if (length < SHORT * plate.thickness) return [];
      const mass = carriedMass(model, number, axis, sign, supportAt);
      const { name, thickness } = plate;
      return [
        { plate: name, direction, length, thickness, supportAt, endAt, mass, number, axis, sign },
      ];
    });
  });
}

function carriedMass(
  model: Model,
  number: number,
  axis: 0 | 1,
  sign: 1 | -1,
  from: number,
): number {
  const plate = model.plates[number];
  const [x0, y0, x1, y1] = bounds(plate.outline);
  const box = [x0, y0, x1, y1];
  box[sign > 0 ? axis : 2 + axis] = from;
  const beyond = rectangle(box[0], box[1], box[2], box[3]);
  const area = sumMoments([plate.outline, ...plate.holes].map((p) => clipToConvex(p, beyond))).area;
  const bodies = model.bodies.filter(
    (b) =>
      b.role !== "stack" &&
      b.host.kind === "plate" &&
      b.host.plate === number &&
      sign * (b.cg[axis] - from) > 0,
  );
  return area * plate.massPerArea + bodies.reduce((m, b) => m + b.mass, 0);
}

/**
 * The overhang's own mode: among the modes in which its plate strains and its nodes outmove the rest,
 * up to an octave above the lowest of them, the one in which the plate strains most.
 */
function localMode(
  model: Model,
  mesh: Mesh,
  modes: Modes,
  number: number,
  axis: 0 | 1,
  sign: 1 | -1,
  from: number,
): { mode: number; frequency: number } | undefined {
  const grid = mesh.grids[number];
  const nodes = Array.from(grid.nodeAt).filter(
    (n) => n >= 0 && sign * (mesh.xyz[3 * n + axis] - from) > 0,
  );
  const on = new Set(nodes);
  const rest = Array.from({ length: mesh.xyz.length / 3 }, (_, i) => i).filter((i) => !on.has(i));
  const name = model.plates[number].name;
  const own = modes.described.flatMap((d) => {
    const strain = d.shares.find((s) => s.kind === "plate" && s.part === name)?.strain ?? 0;
    const shape = modes.shapes[d.number - 1];
    const lively = strain >= PLATE_STRAIN && rms(nodes, shape) > LIVELY * rms(rest, shape);
    return lively ? [{ mode: d.number, frequency: d.frequency, strain }] : [];
  });
  const octave = own.filter((m) => m.frequency <= 2 * own[0].frequency);
  if (octave.length === 0) return undefined;
  const { mode, frequency } = octave.reduce((p, q) => (q.strain > p.strain ? q : p));
  return { mode, frequency };
}

/** Root-mean-square displacement over nodes. */
function rms(nodes: readonly number[], shape: Float64Array): number {
  let sum = 0;
  for (const n of nodes) for (let d = 0; d < 3; d++) sum += shape[6 * n + d] ** 2;
  return Math.sqrt(sum / nodes.length);
}

function words(
  o: Pick<Overhang, "plate" | "direction" | "length" | "thickness" | "supportAt" | "mass">,
  local: { mode: number; frequency: number } | undefined,
): string {
  const mm = (v: number) => `${Math.round(v * 1e3)} mm`;
  const carrying = `${(o.mass * 1e3).toPrecision(3)} g beyond it`;
  const start = `"${o.plate}" reaches ${mm(o.length)} past its last support to the ${o.direction} (${(o.length / o.thickness).toFixed(0)} times its ${(o.thickness * 1e3).toPrecision(2)} mm thickness, ${carrying})`;
  return local
    ? `${start} and has a mode of its own at ${Math.round(local.frequency)} Hz`
    : `${start}; no mode of its own among those computed`;
}
