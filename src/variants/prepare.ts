/** One variant of a frame before its modes are known. */

import { excite } from "../excitation/excite.ts";
import type { Excitation } from "../excitation/types.ts";
import type { FrameFile } from "../frame/types.ts";
import { type MassReport, massFromDrawing, requireMass } from "../matrices/mass.ts";
import { buildMesh } from "../mesh/build.ts";
import type { Mesh } from "../mesh/types.ts";
import { buildModel } from "../model/build.ts";
import type { Model } from "../model/types.ts";

export interface Prepared {
  readonly file: FrameFile;
  /** as drawn, with the stack where the file puts it */
  readonly model: Model;
  /** without the stack */
  readonly bareModel: Model;
  /** of the bare frame */
  readonly mesh: Mesh;
  /** with the stack, and without it */
  readonly mass: MassReport;
  readonly bareMass: MassReport;
  /** undefined without propulsion */
  readonly excitation?: Excitation;
  readonly warnings: readonly string[];
}

/**
 * @param meshSize m; the file's or the default where not given
 * @throws InputError for a frame that cannot be built
 */
export function prepareVariant(file: FrameFile, meshSize?: number): Prepared {
  const model = buildModel(file);
  const bareModel = { ...model, bodies: model.bodies.filter((b) => b.role !== "stack") };
  const mesh = buildMesh(bareModel, meshSize);
  const mass = massFromDrawing(model, mesh);
  const bareMass = massFromDrawing(bareModel, mesh);
  requireMass(bareMass);
  const excitation = excite(file, model.rotors, mass.mass);
  return {
    file,
    model,
    bareModel,
    mesh,
    mass,
    bareMass,
    ...(excitation && { excitation }),
    warnings: [...model.warnings, ...(excitation?.warnings ?? [])],
  };
}
