/**
 * Times hundreds of places for the stack, once the modes of the frame without it are known: seats,
 * residual flexibility and readings of all of them, against the eigen-solution of the frame and against
 * the same place with the stack in the mesh, solved anew.
 *
 * A program that has once handed a buffer to another thread, as the loader of this one does, makes V8
 * check at every access to any array that its buffer is still there. Measured: the readings take 10 to
 * 30 % longer for it than in the program as built.
 */

import { excite } from "../../src/excitation/excite.ts";
import type { Excitation } from "../../src/excitation/types.ts";
import { readFrame } from "../../src/frame/read.ts";
import type { FrameFile } from "../../src/frame/types.ts";
import { assemble } from "../../src/matrices/assemble.ts";
import { massFromDrawing } from "../../src/matrices/mass.ts";
import { buildMesh } from "../../src/mesh/build.ts";
import { buildModel } from "../../src/model/build.ts";
import { candidateAt } from "../../src/model/equipment.ts";
import type { BodyPart, Candidate, Model } from "../../src/model/types.ts";
import { solveModes } from "../../src/modes/solve.ts";
import { assess, readPlaces } from "../../src/ranking/assess.ts";
import { instrumentsOf } from "../../src/ranking/instruments.ts";
import { type BareFrame, shakeBare } from "../../src/response/bare-frame.ts";
import { leverRows, readingPoint } from "../../src/response/place.ts";
import { readPlace, rms } from "../../src/response/reading.ts";
import { best, ms } from "./best.ts";

const PLATE = "middle";
/** Columns and rows of places, and the rectangle they fill, mm. */
const PLACES = { along: 40, across: 10, x: [-30, 30], y: [-5, 5] } as const;

/** Even steps over the rectangle. */
function placesOn(file: FrameFile, model: Model): Candidate[] {
  const { along, across, x, y } = PLACES;
  const step = ([from, to]: readonly [number, number], i: number, n: number) =>
    (from + ((to - from) * i) / (n - 1)) * 1e-3;
  return Array.from({ length: along * across }, (_, k) => {
    const [i, j] = [k % along, Math.floor(k / along)];
    const at = [step(x, i, along), step(y, j, across)] as const;
    const def = { plate: PLATE, at, side: "above", note: "" } as const;
    return candidateAt({ plates: model.plates, file }, `place ${k}`, def, false);
  });
}

function solve(model: Model, size: number, modes: number) {
  const mesh = buildMesh(model, size);
  const system = assemble(mesh, model);
  const { cg } = massFromDrawing(model, mesh);
  return { mesh, system, solved: solveModes(model, mesh, system, cg, modes) };
}

/** Gyro noise at a place, deg/s rms, with the stack in the mesh. */
function solvedAnew(
  bare: Model,
  size: number,
  modes: number,
  excitation: Excitation,
  { stack, cg, chip, plate, holes, footprint }: Candidate,
): number {
  const body: BodyPart = {
    name: "stack",
    role: "stack",
    mass: stack.mass,
    inertia: stack.inertia,
    cg,
    host: { kind: "plate", plate },
    hold: { kind: "seat", screws: holes, footprint },
    note: "",
  };
  const model = { ...bare, bodies: [...bare.bodies, body] };
  const { mesh, system, solved } = solve(model, size, modes);
  const frame: BareFrame = shakeBare(mesh, system, solved, model.rotors, excitation);
  const node = mesh.bodyNodes[model.bodies.length - 1];
  const from = (i: number) => chip[i] - mesh.xyz[3 * node + i];
  const dofs = Int32Array.from({ length: 6 }, (_, i) => 6 * node + i);
  const seat = { dofs, rows: leverRows([from(0), from(1), from(2)]) };
  return rms(readPlace(frame, readingPoint(frame.h, seat)).gyroAxes);
}

export function benchPlaces(frame: string, modes: number): void {
  const file = readFrame(frame);
  const whole = buildModel(file);
  const { size } = buildMesh(whole);
  const model = { ...whole, bodies: whole.bodies.filter((b) => b.role !== "stack") };
  const { mass } = massFromDrawing(whole, buildMesh(whole, size));
  const all = excite(file, model.rotors, mass);
  if (!all) throw new Error(`${frame} has no propulsion`);
  const { mesh, system, solved } = solve(model, size, modes);
  const { cg } = massFromDrawing(model, mesh);
  const eigen = best(() => solveModes(model, mesh, system, cg, modes));
  const candidates = placesOn(file, model);
  const count = candidates.length;
  console.log(
    `\n${frame} without its stack at ${(size * 1e3).toFixed(1)} mm: ${count} places on "${PLATE}", ${modes} modes, ${all.grid.length} speeds, ${model.rotors.length} motors`,
  );
  console.log(`  modes, proof, names       ${ms(eigen.seconds)}`);
  for (const orders of [4, all.orders.length]) {
    const excitation = { ...all, orders: all.orders.slice(0, orders) };
    const bare = shakeBare(mesh, system, solved, model.rotors, excitation);
    const read = best(() => readPlaces(bare, candidates), 5);
    const each = read.seconds / count;
    const anew = best(() => solvedAnew(model, size, modes, excitation, candidates[0]));
    const difference = rms(read.result[0].reading.gyroAxes) / anew.result - 1;
    console.log(
      `  ${count} places, ${orders} orders      ${ms(read.seconds)}   ${(each * 1e3).toFixed(2)} ms each, ${(read.seconds / eigen.seconds).toFixed(1)} x the modes`,
    );
    const instruments = instrumentsOf(file, excitation, model.rotors.length);
    const whole = best(() => assess(bare, { mass, cg }, instruments, candidates));
    console.log(`  with chips and filters    ${ms(whole.seconds)}`);
    console.log(
      `  one solved anew           ${ms(anew.seconds)}   ${(anew.seconds / each).toFixed(0)} x a place, gyro ${(100 * difference).toFixed(2)} % apart`,
    );
  }
}
