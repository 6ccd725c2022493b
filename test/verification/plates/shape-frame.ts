/** A plate of shapes.json as a frame file, where it lies or turned in the plan. */

import { frequencies } from "../frequencies.ts";
import { type Hole, SHAPES } from "./ritz-values.ts";

export interface ShapeOptions {
  /** cells along the longer side of the box around the plate before it is turned; the default mesh
   * size where not given */
  readonly cells?: number;
  /** degrees, from x towards y; the warp turns along */
  readonly turned?: number;
}

export function shapeFrame(name: string, { cells, turned = 0 }: ShapeOptions): object {
  const { plate, material, clamped = false } = SHAPES[name];
  const [c, s] = [Math.cos((turned * Math.PI) / 180), Math.sin((turned * Math.PI) / 180)];
  const turn = ([x, y]: readonly [number, number]) => [c * x - s * y, s * x + c * y];
  const hole = (h: Hole) =>
    "outline" in h ? { outline: h.outline.map(turn) } : { ...h, at: centres(h.at).map(turn) };
  const side = (i: 0 | 1) => {
    const values = plate.outline.map((p) => p[i]);
    return Math.max(...values) - Math.min(...values);
  };
  return {
    ...(cells !== undefined && { meshSize: Math.max(side(0), side(1)) / cells }),
    materials: { stuff: material },
    plates: {
      sheet: {
        ...plate,
        material: "stuff",
        z: 0,
        outline: plate.outline.map(turn),
        holes: (plate.holes ?? []).map(hole),
        warp: (plate.warp ?? 0) + turned,
      },
    },
    supports: clamped ? HELD : {},
  };
}

/** Fast at x = 0; nothing moves in the plane, so that only bending is found. */
const FAR = 1e4;
const HELD = {
  wall: {
    plate: "sheet",
    along: [
      [0, -FAR],
      [0, FAR],
    ],
    fix: "all",
  },
  "in the plane": {
    plate: "sheet",
    within: [
      [-FAR, -FAR],
      [FAR, -FAR],
      [FAR, FAR],
      [-FAR, FAR],
    ],
    fix: ["x", "y", "rz"],
  },
};

/** The first eight frequencies, Hz. */
export function shapeFrequencies(name: string, options: ShapeOptions): number[] {
  return frequencies(shapeFrame(name, options), { modes: 8 });
}

type Point = readonly [number, number];

/** One centre or a list of them, as a list. */
function centres(at: Point | readonly Point[]): readonly Point[] {
  const isPoint = (value: typeof at): value is Point => typeof value[0] === "number";
  return isPoint(at) ? [at] : at;
}
