/** The matrices of a variant in the space: the base's, and what differs. */

import type { MassProperties } from "../matrices/mass.ts";
import type { Basis } from "./basis.ts";
import { beamShares } from "./beam-terms.ts";
import type { Differences } from "./differences.ts";
import { exchangeOf } from "./exchange.ts";
import type { Known } from "./known.ts";
import { type MeshRows, variantRows } from "./mesh-rows.ts";
import { padShares, softestPad } from "./pad-terms.ts";
import { plateShares } from "./plate-terms.ts";
import { addScaled, probesOf, squareOf } from "./projection.ts";
import { type RigidPart, rigidPart, withoutRigid } from "./rigid-part.ts";
import { seenBy, seenMomentum, seenSum } from "./seen.ts";

export interface ReducedMatrices {
  /** V'K V, the same of the mass less its rigid part, and of the stiffness weighed by loss (width x width) */
  readonly K: Float64Array;
  readonly M: Float64Array;
  readonly H: Float64Array;
  /** W'K V and of the mass less its rigid part (probes x width, row-major) */
  readonly probedK: Float64Array;
  readonly probedM: Float64Array;
  readonly rigid: RigidPart;
  /** how the space moves the variant's mesh */
  readonly rows: MeshRows;
  /** least ratio of a stiffness to that of the base */
  readonly softest: number;
}

/** @param mass of the variant */
export function reducedMatrices(
  frame: Basis,
  known: Known,
  found: Differences,
  mass: MassProperties,
): ReducedMatrices {
  const { base, space, whole } = frame;
  const { meshed, moved, pads } = found;
  const rows = moved ? variantRows(known.rows, meshed.reduction, moved) : known.rows;
  const beams = beamShares(frame, known, meshed, found.beams);
  const exchange = exchangeOf(known, rows, base, found, beams.rest);
  const plates = plateShares(frame, known, meshed, found.plates);
  const heavy = [...beams.heavy, ...plates.heavy];
  const stiff = [...beams.stiff, ...plates.stiff, ...padShares(frame, known, meshed, pads)];

  const { differing, hanging } = exchange;
  const stiffRows = seenBy(rows, differing.stiffness, hanging.stiffness);
  const massRows = seenBy(rows, differing.mass, hanging.mass);
  const K = seenSum(space, stiffRows, 0);
  const H = seenSum({ ...space, probes: 0 }, stiffRows, 1);
  const M = seenSum(space, massRows, 0);
  addScaled(K, 1, whole.K);
  addScaled(H, 1, whole.H);
  addScaled(M, 1, whole.M);
  for (const { of, stiffness: more, loss } of stiff) {
    addScaled(K, more, of.projected);
    addScaled(H, loss, of.projected);
  }
  for (const { of, mass: more } of heavy) addScaled(M, more, of.projected);

  const momentum = seenMomentum(massRows, rows.all, meshed.mesh.xyz, frame.about);
  const rigid = rigidPart(frame, known, meshed, momentum, heavy, mass);
  withoutRigid(space, M, rigid);
  return {
    K: squareOf(space, K),
    M: squareOf(space, M),
    H: squareOf(space, H),
    probedK: probesOf(space, K),
    probedM: probesOf(space, M),
    rigid,
    rows,
    softest: Math.min(exchange.softest, beams.softest, plates.softest, softestPad(base, meshed)),
  };
}
