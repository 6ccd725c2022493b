/** The frame as far as it can be known without solving: parts, mesh, masses, motor speeds. */

import { motorSpeeds } from "../../excitation/speeds.ts";
import type { Speeds } from "../../excitation/types.ts";
import type { FrameFile } from "../../frame/types.ts";
import { type MassReport, massFromDrawing } from "../../matrices/mass.ts";
import { buildMesh } from "../../mesh/build.ts";
import type { Mesh } from "../../mesh/types.ts";
import { buildModel } from "../../model/build.ts";
import type { Model } from "../../model/types.ts";

export interface BuiltFrame {
  readonly model: Model;
  readonly mesh: Mesh;
  readonly mass: MassReport;
  /** undefined without motors */
  readonly speeds?: Speeds;
}

/**
 * @param size of the mesh, m; undefined: the file's own or one that suits the frame
 * @throws InputError for geometry that does not work, parts that miss each other and loose parts
 */
export function buildFrame(file: FrameFile, size: number | undefined): BuiltFrame {
  const model = buildModel(file);
  const mesh = buildMesh(model, size);
  const mass = massFromDrawing(model, mesh);
  const { propulsion } = file;
  const motors = model.rotors.length;
  if (propulsion === undefined || motors === 0) return { model, mesh, mass };
  return { model, mesh, mass, speeds: motorSpeeds(propulsion, mass.mass, motors) };
}
