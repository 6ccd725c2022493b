/** A small frame without its stack, and the same frame with the stack of a candidate in its mesh. */

import { excite } from "../../src/excitation/excite.ts";
import type { Excitation } from "../../src/excitation/types.ts";
import type { FrameFile } from "../../src/frame/types.ts";
import { assemble, type System } from "../../src/matrices/assemble.ts";
import { type MassProperties, massFromDrawing } from "../../src/matrices/mass.ts";
import { buildMesh } from "../../src/mesh/build.ts";
import { type Seat, seatOf } from "../../src/mesh/seat.ts";
import type { Mesh } from "../../src/mesh/types.ts";
import { buildModel } from "../../src/model/build.ts";
import type { BodyPart, Candidate, Model, Vec3 } from "../../src/model/types.ts";
import { type SolvedModes, solveModes } from "../../src/modes/solve.ts";
import { type BareFrame, shakeBare } from "../../src/response/bare-frame.ts";
import { stackDynamics } from "../../src/response/mount-stiffness.ts";
import { type Place, placesOf } from "../../src/response/place.ts";
import { type CrossOptions, crossSections, frameOf } from "../modes/toys.ts";

/** All modes there are. */
export const ALL = 1_000_000;

export interface Solved {
  readonly model: Model;
  readonly mesh: Mesh;
  readonly system: System;
  readonly solved: SolvedModes;
  readonly mass: MassProperties;
}

/** The frame without its stack. */
export interface Bare extends Solved {
  readonly file: FrameFile;
  readonly excitation: Excitation;
  readonly bare: BareFrame;
}

export function solve(model: Model, size: number | undefined, modes: number): Solved {
  const mesh = buildMesh(model, size);
  const system = assemble(mesh, model);
  const mass = massFromDrawing(model, mesh);
  return { model, mesh, system, mass, solved: solveModes(model, mesh, system, mass.cg, modes) };
}

/** @param every how many of the 300 speeds of the grid are left out between two that are kept */
export function bareOf(file: FrameFile, modes = 20, every = 1): Bare {
  const whole = buildModel(file);
  const wholeMesh = buildMesh(whole);
  const excitation = excite(file, whole.rotors, massFromDrawing(whole, wholeMesh).mass);
  if (!excitation) throw new Error("this frame has no motors");
  const model = { ...whole, bodies: whole.bodies.filter((b) => b.role !== "stack") };
  const solved = solve(model, wholeMesh.size, modes);
  return shaken({ ...solved, file }, thinned(excitation, every));
}

/** The same frame under other forces. */
export function shaken(frame: Solved & { file: FrameFile }, excitation: Excitation): Bare {
  const { mesh, system, solved, model } = frame;
  const bare = shakeBare(mesh, system, solved, model.rotors, excitation);
  return { ...frame, excitation, bare };
}

function thinned(e: Excitation, every: number): Excitation {
  if (every === 1) return e;
  const kept = (a: Float64Array) => a.filter((_, i) => i % every === 0);
  const weights = kept(e.weights);
  const sum = weights.reduce((a, b) => a + b, 0);
  return { ...e, grid: kept(e.grid), weights: weights.map((w) => w / sum) };
}

/** The candidate's seat on the bare frame. */
export function placeOf({ bare, mesh }: Bare, c: Candidate): Place {
  const seat = seatOf(mesh.grids[c.plate], c.holes, c.footprint, c.cg);
  if (!seat) throw new Error(`"${c.name}" has no plate under it`);
  const chip = from(c.cg, c.chip);
  return placesOf(bare.h, bare.flexibility, [{ seat, stack: stackDynamics(c), chip }])[0];
}

export interface Joined extends Solved {
  /** the chip: six motions from the mesh's unknowns */
  readonly chip: Seat;
}

/** The frame with the stack of the candidate in its mesh, solved anew. */
export function joined({ model, mesh }: Bare, c: Candidate, modes: number): Joined {
  const { stack, cg, plate, holes, footprint, isolators } = c;
  const body: BodyPart = {
    name: "stack",
    role: "stack",
    mass: stack.mass,
    inertia: stack.inertia,
    cg,
    host: { kind: "plate", plate },
    hold: { kind: "seat", screws: holes, footprint, ...(isolators && { isolators }) },
    note: "",
  };
  const bodies = [...model.bodies, body];
  const whole = solve({ ...model, bodies }, mesh.size, modes);
  const node = whole.mesh.bodyNodes[bodies.length - 1];
  return { ...whole, chip: pointOnNode(whole.mesh, node, c.chip) };
}

/** A point fixed to a node: it moves by u + theta x r. */
export function pointOnNode(mesh: Mesh, node: number, point: Vec3): Seat {
  const at = mesh.xyz.subarray(3 * node, 3 * node + 3);
  const [x, y, z] = from([at[0], at[1], at[2]], point);
  // biome-ignore format: a matrix, row by row
  const rows = Float64Array.of(
    1, 0, 0, 0, z, -y,
    0, 1, 0, -z, 0, x,
    0, 0, 1, y, -x, 0,
    0, 0, 0, 1, 0, 0,
    0, 0, 0, 0, 1, 0,
    0, 0, 0, 0, 0, 1,
  );
  return { dofs: Int32Array.from({ length: 6 }, (_, i) => 6 * node + i), rows };
}

const from = (a: Vec3, b: Vec3): Vec3 => [b[0] - a[0], b[1] - a[1], b[2] - a[2]];

/** Three places on the lopsided cross, meshed coarsely: some 310 unknowns without the stack. */
export function smallCross(
  options: CrossOptions = {},
  stack: object = {},
  more: object = {},
): FrameFile {
  const s = crossSections({ armElements: 1, lopsided: true, ...options }) as Sections;
  return frameOf({ ...s, meshSize: 40, ...more, stack: { ...s.stack, ...stack } });
}

type Sections = Record<string, object>;
