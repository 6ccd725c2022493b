/** What a thread does for a table of sensitivities: one input after the other. */

import { parseFrameSource } from "../frame/change.ts";
import { inputsOf } from "../frame/inputs.ts";
import { LIBRARY_NAMES } from "../material/library-names.ts";
import { drawnWith, type KnownModes, type RowBase, sensitivityRow } from "../study/sensitivity.ts";
import type { SensitivityRow } from "../study/sensitivity-types.ts";
import { prepareVariant } from "../variants/prepare.ts";
import { type ReducedVariants, variantSolver } from "../variants/reduced.ts";
import type { Work } from "./task.ts";

/** Plain data. */
export interface SensitivitySetup {
  readonly path: string;
  readonly text: string;
  /** m */
  readonly meshSize: number;
  readonly reduced: ReducedVariants;
  /** of the frame as drawn */
  readonly spots: RowBase["spots"];
  readonly known: KnownModes;
}

/** Jobs are positions in the list of inputs. */
export function setUp(setup: SensitivitySetup): Work<number, SensitivityRow> {
  const source = parseFrameSource(setup.text, setup.path, LIBRARY_NAMES);
  const prepared = prepareVariant(source.file, setup.meshSize);
  const drawn = drawnWith({ prepared }, setup.known);
  const inputs = inputsOf(source);
  const base = { source, prepared, solver: variantSolver(setup.reduced), spots: setup.spots };
  return (job) => sensitivityRow(base, drawn, inputs[job]);
}
