/** A frame meshed, its ties eliminated: what one variant is compared with another by. */

import { plateMassPerArea } from "../matrices/elements.ts";
import { eliminate, type Reduction } from "../matrices/reduction.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Model } from "../model/types.ts";
import { lossWeight } from "../modes/describe.ts";

export interface Meshed {
  readonly model: Model;
  readonly mesh: Mesh;
  readonly reduction: Reduction;
  /** of each plate with what is smeared over it, kg/m^2 */
  readonly massPerArea: readonly number[];
  /** weight of each mesh part's strain energy in a mode's loss factor: sum of weight U/U (see modes/describe.ts) */
  readonly lossWeights: readonly number[];
}

/** @throws InputError when everything is held */
export function meshed(model: Model, mesh: Mesh): Meshed {
  return withReduction(model, mesh, eliminate(2 * mesh.xyz.length, mesh.ties, mesh.fixed));
}

/** The same with an elimination that is known already. */
export function withReduction(model: Model, mesh: Mesh, reduction: Reduction): Meshed {
  return {
    model,
    mesh,
    reduction,
    massPerArea: model.plates.map((_, i) => plateMassPerArea(model, i)),
    lossWeights: mesh.parts.map((p) => lossWeight(p, model)),
  };
}
