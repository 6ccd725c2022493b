/** A small frame with the chips and loops by which its places are judged. */

import type { FrameFile } from "../../src/frame/types.ts";
import type { Candidate } from "../../src/model/types.ts";
import { type Assessed, assess } from "../../src/ranking/assess.ts";
import { type Instruments, instrumentsOf } from "../../src/ranking/instruments.ts";
import { type Bare, bareOf } from "../response/joined.ts";

export interface Judged extends Bare {
  readonly instruments: Instruments;
}

export function judged(file: FrameFile, modes = 20, every = 4): Judged {
  return withInstruments(bareOf(file, modes, every));
}

export function withInstruments(frame: Bare): Judged {
  const { file, excitation, model } = frame;
  return { ...frame, instruments: instrumentsOf(file, excitation, model.rotors.length) };
}

export function assessed(
  { bare, mass, instruments, model }: Judged,
  places: readonly Candidate[] = model.candidates,
): Assessed[] {
  return assess(bare, mass, instruments, places);
}
