/** One rotor worse than the others: a bad propeller, a lost bit of a blade. */

import { inputError } from "../errors.ts";
import { nearestName } from "../frame/nearest-name.ts";
import { choices, shown } from "../frame/shown.ts";
import type { ExcitationDef, PropulsionDef } from "../frame/types-flight.ts";
import type { Rotor } from "../model/types.ts";
import { inGmm, inPercent, normalUnbalance, residualUnbalance } from "./orders.ts";
import type { Speeds, UnbalanceCase, UnbalanceVariant } from "./types.ts";

/** Where a lost tip's mass sat, as a share of the radius; common practice, no source. */
const TIP_RADIUS = 0.9;

/**
 * The states beside the normal one, as unbalances (kg m) and not as factors on the normal state's, so
 * that they hold for a rotor said to be without unbalance too: with the mean-square reading P_r of
 * `UNIT_UNBALANCE` on rotor r, a state reads sum U_r^2 P_r in place of the normal state's.
 *
 * A bad propeller that is no worse than the normal state is left out with a warning.
 *
 * @throws InputError for a motor that the frame does not have
 */
export function unbalanceCases(
  e: ExcitationDef,
  p: PropulsionDef,
  rotors: readonly Rotor[],
  speeds: Speeds,
): { cases: UnbalanceCase[]; warnings: string[] } {
  const normal = Float64Array.from(rotors, (r) => normalUnbalance(e, r.rotatingMass, speeds));
  const bad = badPropeller(e, rotors, speeds, normal);
  const lost = lostTip(e, p, rotors, normal);
  if (bad.variants.length > 0) return { cases: [bad, lost], warnings: [] };
  const warning = `a bad propeller of grade G ${e.badPropeller.grade} is no worse than the motors' own unbalance of ${inGmm(Math.max(...normal))}, so the state "${bad.name}" is left out; raise "grade" in excitation.badPropeller`;
  return { cases: [lost], warnings: [warning] };
}

function badPropeller(
  { badPropeller: { motor, grade } }: ExcitationDef,
  rotors: readonly Rotor[],
  speeds: Speeds,
  normal: Float64Array,
): UnbalanceCase {
  const whole = rotors.map((r) => residualUnbalance(r.rotatingMass, grade, speeds.full));
  const worse = struck(rotors, motor, "badPropeller").filter((r) => whole[r] > normal[r]);
  return {
    name: "one bad propeller",
    text: `${where(motor)} nicked or badly balanced: ${inGmm(Math.max(...whole))}, balance grade G ${grade} at full speed (ISO 21940-11 law; the grade is common practice, no source), in place of ${inGmm(Math.max(...normal))}`,
    variants: worse.map((r) => variant(normal, r, whole[r])),
  };
}

function lostTip(
  { lostTip: { motor, massShare } }: ExcitationDef,
  { propeller }: PropulsionDef,
  rotors: readonly Rotor[],
  normal: Float64Array,
): UnbalanceCase {
  const added = lostTipUnbalance(propeller, massShare);
  return {
    name: "lost balance",
    // how the lost bit lies to what was there before is not known: their powers add
    text: `${where(motor)} without ${inPercent(massShare)} of a blade's mass at ${TIP_RADIUS} of the radius (common practice, no source): ${inGmm(added)} beside the ${inGmm(Math.max(...normal))} that were there, at any angle to them`,
    variants: struck(rotors, motor, "lostTip").map((r) =>
      variant(normal, r, Math.hypot(normal[r], added)),
    ),
  };
}

/**
 * Unbalance left by a lost tip, kg m: m r with m the share of one blade's mass. All of the propeller's
 * mass counts as blades, none as hub, which errs to the worse side.
 */
export function lostTipUnbalance(
  { mass, blades, diameter }: PropulsionDef["propeller"],
  massShare: number,
): number {
  return ((massShare * mass) / blades) * TIP_RADIUS * (diameter / 2);
}

function variant(normal: Float64Array, rotor: number, U: number): UnbalanceVariant {
  const unbalance = normal.slice();
  unbalance[rotor] = U;
  return { rotor, unbalance };
}

function where(motor: string | undefined): string {
  return motor === undefined
    ? "one propeller, on the worst of the motors,"
    : `the propeller of the ${motor}`;
}

/** Indices of the rotors it may happen to. @throws InputError for a motor that does not exist */
function struck(rotors: readonly Rotor[], motor: string | undefined, field: string): number[] {
  if (motor === undefined) return rotors.map((_, r) => r);
  const names = rotors.map((r) => r.name);
  const at = names.indexOf(motor);
  if (at >= 0) return [at];
  const near = nearestName(motor, names);
  const hint = near === undefined ? "" : ` Did you mean ${shown(near)}?`;
  throw inputError(
    `excitation.${field}.motor`,
    `There is no motor called ${shown(motor)}.${hint} Motors of this frame: ${choices(names)}. Leave "motor" out to try each in turn.`,
  );
}
