/** The modes of a frame for other programs. */

import type { Analysis } from "../../analyse.ts";
import type { ModeDescription, Modes } from "../../modes/types.ts";
import { documentText, type FrameIdentity, frameFields } from "./document.ts";
import { massFields } from "./mass.ts";

/** What `modes --json` prints. */
export function modesJson(
  analysis: Pick<Analysis, "modes" | "mass" | "warnings">,
  frame: FrameIdentity,
): string {
  return documentText("modes", {
    ...frameFields(frame),
    ...modesFields(analysis.modes),
    mass: massFields(analysis.mass),
    warnings: analysis.warnings,
  });
}

export function modesFields({ described, evidence, rigid }: Modes): Record<string, unknown> {
  return {
    modes: described.map(modeFields),
    rigidBodyModes: rigid.length,
    evidence: {
      maxResidual: evidence.maxResidual,
      orthogonality: evidence.orthogonality,
      modesCounted: evidence.counted,
      modesFound: evidence.found,
      checkFrequencyHz: evidence.checkFrequency,
      operatorCalls: evidence.operatorCalls,
      factorisations: evidence.factorisations,
      factorEntries: evidence.factorEntries,
      unknowns: evidence.unknowns,
    },
  };
}

function modeFields(mode: ModeDescription): Record<string, unknown> {
  return {
    number: mode.number,
    frequencyHz: mode.frequency,
    dampingRatio: mode.damping,
    lossFactor: mode.lossFactor,
    name: mode.name,
    symmetry: mode.symmetry,
    parts: mode.shares.map(({ part, kind, strain, kinetic }) => ({
      name: part,
      kind,
      strainEnergyShare: strain,
      kineticEnergyShare: kinetic,
    })),
    motionShares: mode.motion,
    frequencyFallWithShear: mode.shearEffect,
  };
}
