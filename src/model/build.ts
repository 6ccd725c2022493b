/** A frame file as a model: every part in SI, copies written out, geometry checked, all errors at once. */

import { type Finding, InputError } from "../errors.ts";
import type { FrameFile } from "../frame/types.ts";
import { checkMaterial } from "../material/check.ts";
import { buildArms, centreOf } from "./arms.ts";
import { buildBodies, buildSmeared } from "./bodies.ts";
import { buildCandidates, buildMotors, buildRotors, buildStack } from "./equipment.ts";
import {
  buildJoints,
  buildLinks,
  buildMembers,
  buildSprings,
  buildStandoffs,
  buildSupports,
} from "./fastenings.ts";
import { buildPlates } from "./plates.ts";
import type { Model } from "./types.ts";
import { materialOf, type Workbench } from "./workbench.ts";

/** @throws InputError with every finding about materials and geometry */
export function buildModel(file: FrameFile): Model {
  const bench: Workbench = {
    file,
    findings: [],
    warnings: [],
    materials: new Map(),
    plates: [],
    arms: [],
  };
  checkMaterials(bench);
  buildPlates(bench);
  buildArms(bench);
  const parts = {
    standoffs: buildStandoffs(bench),
    members: buildMembers(bench),
    joints: buildJoints(bench),
    links: buildLinks(bench),
    springs: buildSprings(bench),
    supports: buildSupports(bench),
    bodies: [...buildMotors(bench), ...buildBodies(bench), ...buildStack(bench)],
    candidates: buildCandidates(bench),
  };
  if (bench.findings.length > 0) throw new InputError(withoutCopies(bench.findings));
  return {
    name: file.name,
    notes: file.notes,
    theory: file.beamTheory,
    centre: centreOf(bench.arms),
    ...(file.meshSize !== undefined && { meshSize: file.meshSize }),
    assemblyLossFactor: file.assemblyLossFactor,
    dampingFactor: file.dampingFactor,
    plates: bench.plates,
    arms: bench.arms,
    points: new Map(Object.entries(file.points)),
    ...parts,
    smeared: buildSmeared(bench),
    rotors: buildRotors(bench),
    warnings: [...new Set(bench.warnings)],
  };
}

/** Laminates that cannot be read end the reading here: no part can be built of them. */
function checkMaterials(bench: Workbench): void {
  for (const name of Object.keys(bench.file.materials)) {
    try {
      checkMaterial(materialOf(bench, name), `materials.${name}`);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      bench.findings.push(...error.findings);
    }
  }
  if (bench.findings.length > 0) throw new InputError(bench.findings);
}

/** What is wrong with a part is wrong with its mirrored copies; say it once. */
function withoutCopies(findings: readonly Finding[]): Finding[] {
  const plain = ({ path, message }: Finding) =>
    `${path}: ${message.replace(/\b(front|rear|left|right) /g, "").replace(/-(?=\d)/g, "")}`;
  const seen = new Set<string>();
  return findings.filter((f) => !seen.has(plain(f)) && seen.add(plain(f)));
}
