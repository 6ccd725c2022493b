/** The same place screwed down and on isolators, side by side. */

import type { MassProperties } from "../matrices/mass.ts";
import { damped, resolveIsolators } from "../model/isolators.ts";
import type { Candidate, Isolators, Model } from "../model/types.ts";
import type { BareFrame } from "../response/bare-frame.ts";
import { isolatorFlags } from "../response/isolator-flags.ts";
import { isolatorModes } from "../response/mount-frequencies.ts";
import { assess } from "./assess.ts";
import { couplingsOf } from "./detail.ts";
import { controlBand } from "./flags.ts";
import type { Instruments } from "./instruments.ts";
import type { Flag, MountRow } from "./types.ts";

/** Kinds compared where the file names none, each at these levels of its range. */
const COMPARED = [
  ["silicone grommets", "low"],
  ["silicone grommets", "usual"],
  ["silicone grommets", "high"],
  ["soft gel pads", "usual"],
] as const;
const LEVELS = { low: "soft", usual: "usual", high: "stiff" } as const;

/** Screwed down, on what the candidate has, and on usual kinds. */
export function compareMounts(
  model: Model,
  bare: BareFrame,
  mass: Pick<MassProperties, "mass" | "cg">,
  instruments: Instruments,
  candidate: Candidate,
): MountRow[] {
  const plate = model.plates[candidate.plate];
  const face = plate.z + (candidate.side * plate.thickness) / 2;
  const { isolators: own, ...screwed } = candidate;
  const usual = COMPARED.flatMap(([kind, level]) => {
    const isolators = damped(resolveIsolators(kind, face, level), model.dampingFactor);
    return isolators ? [{ name: `${kind}, ${LEVELS[level]}`, isolators }] : [];
  });
  const rows: { name: string; isolators?: Isolators }[] = [
    { name: "screwed down" },
    ...(own ? [{ name: `${own.name} (as in the file)`, isolators: own }] : []),
    ...usual,
  ];
  const places = rows.map(({ isolators }) => ({ ...screwed, ...(isolators && { isolators }) }));
  return assess(bare, mass, instruments, places).map((a, i): MountRow => {
    const modes = isolatorModes(a.candidate);
    return {
      name: rows[i].name,
      ...(modes && { modes }),
      gyro: a.sensed.gyro,
      accel: a.sensed.accel,
      filter: a.filter,
      flags: [
        ...controlBand(instruments, couplingsOf(bare, instruments, a)),
        ...mountFlags(bare, instruments, a.candidate),
      ],
    };
  });
}

/** What is wrong with a candidate's own mounts; none where it is screwed down. */
export function mountFlags(
  { h }: BareFrame,
  { bandwidth }: Pick<Instruments, "bandwidth">,
  candidate: Candidate,
): Flag[] {
  const modes = isolatorModes(candidate);
  const { isolators } = candidate;
  if (!modes || !isolators) return [];
  const { axial, lossFactor } = isolators;
  const hover = h.excitation.speeds.hover / (2 * Math.PI);
  const found = isolatorFlags({ modes, axial, lossFactor, hover, controlBandwidth: bandwidth });
  return found.map(({ kind, text, brief, advice }, i) => ({
    kind,
    hard: false,
    brief,
    ...(i === 0 && advice !== "" ? { text: `${text}; ${advice}`, advice } : { text }),
  }));
}
