/** The names that frame files may use without defining them. */

import { LIBRARY_MATERIALS } from "./library-materials.ts";
import { LIBRARY_PLIES } from "./library-plies.ts";

export const LIBRARY_NAMES = {
  libraryMaterials: LIBRARY_MATERIALS.map(({ id }) => id),
  libraryPlies: LIBRARY_PLIES.map(({ id }) => id),
};
