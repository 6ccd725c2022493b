/** One frame up to the forced response, with every intermediate result at hand. */

import { type AnalyseOptions, type Prepared, prepare } from "../../src/analyse.ts";
import type { Excitation } from "../../src/excitation/types.ts";
import type { FrameFile } from "../../src/frame/types.ts";
import { assemble, type System } from "../../src/matrices/assemble.ts";
import { type Seat, seatOf } from "../../src/mesh/seat.ts";
import { type SolvedModes, solveModes } from "../../src/modes/solve.ts";
import { type Harmonics, harmonics } from "../../src/response/harmonic.ts";
import { readingPoint } from "../../src/response/place.ts";
import { type Reading, readPlace } from "../../src/response/reading.ts";
import { type ResidualMotion, residualMotions } from "../../src/response/residual.ts";
import { packHarmonics } from "../../src/response/shaken.ts";

export interface Shaken extends Prepared {
  readonly excitation: Excitation;
  readonly system: System;
  readonly solved: SolvedModes;
  readonly residuals: readonly ResidualMotion[];
  readonly h: Harmonics;
  /** of the model's candidates */
  readonly sensors: readonly Seat[];
}

/** All modes there are. */
export const ALL = 1_000_000;

export function shake(file: FrameFile, options: AnalyseOptions = {}): Shaken {
  const prepared = prepare(file, options);
  const { model, mesh, mass, excitation } = prepared;
  if (!excitation) throw new Error("this frame has no propulsion");
  const system = assemble(mesh, model);
  const solved = solveModes(model, mesh, system, mass.cg, options.modes);
  const { modes, rigidShapes, factor, shift } = solved;
  const residuals = residualMotions(system, mesh, modes, model.rotors, factor, shift);
  const h = harmonics(mesh, modes, rigidShapes, model.rotors, residuals, excitation);
  const sensors = model.candidates.map((c) => {
    const sensor = seatOf(mesh.grids[c.plate], c.holes, c.footprint, c.chip);
    if (!sensor) throw new Error(`"${c.name}" has no plate under it`);
    return sensor;
  });
  return { ...prepared, excitation, system, solved, residuals, h, sensors };
}

/** What a chip without a stack's mass reads. */
export function readSensor(h: Harmonics, seat: Seat): Reading {
  return readPlace({ h, motions: packHarmonics(h) }, readingPoint(h, seat));
}

/** The same without the modes left out. */
export function withoutResiduals({ h }: Shaken): Harmonics {
  const none = new Float64Array(h.shapes[0].length);
  const zero = {
    sideX: none,
    sideY: none,
    thrust: none,
    torque: none,
    momentX: none,
    momentY: none,
  };
  return { ...h, residuals: h.residuals.map(() => zero) };
}

/**
 * Motion of the mesh for one order and rotor at one speed of the grid, u(t) = Re[(re + i im) e^(i w t)],
 * and the amplitude A of the force.
 */
export function motionOf(h: Harmonics, order: number, rotor: number, at: number) {
  const response = h.responses.find((r) => r.order === order && r.rotor === rotor);
  if (!response) throw new Error("no such response");
  const { kind, coefficient } = h.orders[order];
  const A = coefficient * h.excitation.grid[at] ** 2;
  const rest = h.residuals[rotor];
  const still = rest.thrust.map(() => 0);
  const [x, y] = {
    "side force": [rest.sideX, rest.sideY],
    "rotating moment": [rest.momentX, rest.momentY],
    thrust: [rest.thrust, still],
    torque: [rest.torque, still],
  }[kind];
  const re = x.map((v) => A * v);
  const im = y.map((v) => -h.rotors[rotor].spin * A * v);
  const q = at * h.shapes.length;
  h.shapes.forEach((shape, t) => {
    for (let i = 0; i < shape.length; i++) {
      re[i] += shape[i] * response.re[q + t];
      im[i] += shape[i] * response.im[q + t];
    }
  });
  return { re, im, A };
}
