/** What the report is made of. */

import type { Excitation } from "../excitation/types.ts";
import type { FrameFile } from "../frame/types.ts";
import type { MassProperties, MassReport } from "../matrices/mass.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Model } from "../model/types.ts";
import type { Modes } from "../modes/types.ts";
import type { Ranking } from "../ranking/types.ts";
import type { HowSure } from "../study/how-sure.ts";

/** One frame with all that was found out about it: the record that the analysis makes. */
export interface Analysed {
  readonly file: FrameFile;
  readonly model: Model;
  readonly mesh: Mesh;
  /** by supports, or by springs to the ground */
  readonly held: boolean;
  readonly mass: MassReport;
  /** from the matrices; undefined where the frame is held */
  readonly assembledMass?: MassProperties;
  readonly modes: Modes;
  readonly excitation?: Excitation;
  readonly ranking?: Ranking;
  readonly warnings: readonly string[];
}

/** The plot library: its source text inside the page, or the name of its file beside the page. */
export type PlotLibrary =
  | { readonly kind: "inside"; readonly source: string }
  | { readonly kind: "beside"; readonly file: string };

/** What a page is made by, whatever it is about. */
export interface PageInput {
  /** of the program */
  readonly version: string;
  /** ISO time; absent when reports are to be the same byte for byte */
  readonly created?: string;
  /** as typed */
  readonly options: string;
  readonly library: PlotLibrary;
}

/** Where the report comes from. */
export interface ReportInput extends PageInput {
  readonly fileName: string;
  /** SHA-256 of the frame file, hexadecimal */
  readonly fileHash: string;
  /** frames drawn and inputs moved, where that was asked for */
  readonly sure?: HowSure;
}
