/** What became of each spot, and of the best. */

import type { Outcome, Spot } from "../variants/types.ts";
import type { BestChange, BestSpot, Change, DelayChange, SpotChange } from "./compare-types.ts";

export function changeOf(from: number, to: number): Change {
  return { from, to, change: to - from };
}

/** By name; a spot that changed its plate is another one. */
export function spotChanges(from: Outcome, to: Outcome): SpotChange[] {
  const same = (a: Spot) => (b: Spot) => a.name === b.name && a.plate === b.plate;
  return [
    ...from.spots.map((a) => spotChange(a, to.spots.find(same(a)))),
    ...to.spots.filter((b) => !from.spots.some(same(b))).map((b) => spotChange(undefined, b)),
  ];
}

function spotChange(a: Spot | undefined, b: Spot | undefined): SpotChange {
  const { name, plate } = (a ?? b)!;
  const level = (of: "gyro" | "accel") => ({
    ...(a && { from: a[of] }),
    ...(b && { to: b[of] }),
    ...(a && b && decibelBetween(a[of], b[of])),
  });
  return {
    name,
    plate,
    where: a && b ? "both" : a ? "reference" : "variant",
    gyro: level("gyro"),
    accel: level("accel"),
    delay: delayChange(a?.delay, b?.delay),
    delayWithNotches: delayChange(a?.delayWithNotches, b?.delayWithNotches),
    tilt:
      a && b ? changeOf(a.tilt, b.tilt) : { ...(a && { from: a.tilt }), ...(b && { to: b.tilt }) },
    ruledOut: {
      ...(a?.ruledOut !== undefined && { from: a.ruledOut }),
      ...(b?.ruledOut !== undefined && { to: b.ruledOut }),
    },
  };
}

/** 20 log10(to/from); nothing where either is no level. */
function decibelBetween(from: number, to: number): { decibel?: number } {
  const decibel = 20 * Math.log10(to / from);
  return Number.isFinite(decibel) ? { decibel } : {};
}

function delayChange(from: number | undefined, to: number | undefined): DelayChange {
  const lost = (v: number | undefined) => v === Number.POSITIVE_INFINITY;
  const unreached = lost(from) ? (lost(to) ? "both" : "from") : lost(to) ? "to" : "neither";
  const known = (v: number | undefined): v is number => v !== undefined && Number.isFinite(v);
  if (known(from) && known(to)) return { ...changeOf(from, to), unreached };
  return { ...(known(from) && { from }), ...(known(to) && { to }), unreached };
}

export function bestChange(from: Outcome, to: Outcome): BestChange {
  const [a, b] = [from, to].map((o) => (o.best === undefined ? undefined : o.spots[o.best]));
  const shown = ({ name, plate, gyro }: Spot): BestSpot => ({ name, plate, gyro });
  const same = a?.name === b?.name && a?.plate === b?.plate;
  const old = a && to.spots.find((s) => s.name === a.name && s.plate === a.plate);
  const ahead = !same && b && old && old.ruledOut === undefined;
  return {
    ...(a && { from: shown(a) }),
    ...(b && { to: shown(b) }),
    changed: !same,
    ...(a && b && decibelBetween(a.gyro, b.gyro)),
    delay: delayChange(a?.delay, b?.delay),
    ...(ahead && { lead: old.score - b.score }),
  };
}
