/** A comparison for other programs: what `compare --json` and `uncertainty --json` print. */

import {
  crossingsAcross,
  modesAcross,
  type NearCrossing,
  spotsAcross,
} from "../../study/across.ts";
import type { CrossingChange, Difference, SpotChange } from "../../study/compare-types.ts";
import type { ComparisonStudy, PairResult, VariantResult } from "../../study/results.ts";
import { toDegrees, toRpm } from "../terminal/numbers.ts";
import { documentText } from "./document.ts";
import {
  bandFields,
  chanceFields,
  chancesFields,
  noiseFields,
  pairedFields,
  shiftFields,
  sureFields,
} from "./sureness-json.ts";

/** One document; the kind is "uncertainty" for one variant alone. */
export function comparisonJson(
  study: ComparisonStudy,
  written: { readonly report?: string },
): string {
  const { variants, files, failed, comparison, sure } = study;
  const crossings = crossingsAcross(study);
  return documentText(variants.length === 1 ? "uncertainty" : "comparison", {
    title: study.title,
    frames: files.map(({ path, hash }) => ({ file: path, sha256: hash })),
    report: written.report ?? null,
    answer: study.words,
    use: study.use,
    reference: variants[0]?.name ?? null,
    variants: variants.map((v, i) => variantFields(v, crossings[i].near)),
    notBuilt: failed,
    differences: comparison.differences.map(differenceFields),
    modesMatched: modesAcross(study).map(({ name, cells }) => ({
      name,
      byVariant: cells.map((c) =>
        c === undefined
          ? null
          : {
              mode: c.number,
              frequencyHz: c.frequency,
              changeShare: c.share ?? null,
              shapeLikeness: c.likeness ?? null,
            },
      ),
    })),
    sure: sure
      ? {
          ...sureFields(sure),
          quietestVariant: chancesFields(sure.chances),
          pairs: sure.pairs.map(pairFields),
        }
      : null,
  });
}

function variantFields(v: VariantResult, near: readonly NearCrossing[]): unknown {
  const { outcome, sampled } = v;
  const [best] = outcome.best === undefined ? [] : [outcome.spots[outcome.best]];
  const modes = Array.from(outcome.frequencies, (frequency, k) => {
    const band = sampled?.modes.find((m) => m.number === k + 1)?.band;
    return {
      mode: k + 1,
      name: outcome.modeNames?.[k] ?? null,
      frequencyHz: frequency,
      lossFactor: outcome.lossFactors[k],
      band: band ? bandFields(band, "Hz") : null,
    };
  });
  return {
    name: v.name,
    changes: v.changes,
    massKg: outcome.mass,
    centreOfGravityM: outcome.cg,
    hoverRpm: toRpm(outcome.hover),
    bestSpot: best?.name ?? null,
    modes,
    spots: spotsAcross({ variants: [v] }).map(({ name, plate, cells: [c] }) => ({
      name,
      plate,
      best: c?.best ?? false,
      avoid: c?.spot.ruledOut !== undefined,
      avoidBecause: c?.spot.ruledOut ?? null,
      sensedGyroDegPerSecRms: c?.spot.gyro,
      sensedAccelGRms: c?.spot.accel,
      ...delayFields("delayLowPassAlone", c?.spot.delay),
      ...delayFields("delayWithNotches", c?.spot.delayWithNotches),
      falseTiltDeg: toDegrees(c?.spot.tilt ?? Number.NaN),
      scoreDb: c?.spot.score,
      sampled: c?.ruledOut
        ? { noise: c.noise ? noiseFields(c.noise) : null, avoid: chanceFields(c.ruledOut) }
        : null,
    })),
    bestSpotOfSamples: sampled ? chancesFields(sampled.chances) : null,
    sure: sampled?.words ?? null,
    crossingsNearHover: near.map((c) => ({ ...crossingFields(c), newAgainstReference: c.gained })),
    solvedBy: outcome.solution.method,
    warnings: outcome.warnings,
    heightsThatFollowed: outcome.moved,
  };
}

/** Absent where it was not asked for; null where no chain of filters leaves what is wanted. */
function delayFields(name: string, delay: number | undefined): Record<string, unknown> {
  return delay === undefined
    ? {}
    : { [`${name}S`]: delay, [`${name}Reached`]: Number.isFinite(delay) };
}

function crossingFields({ mode, name, frequency, order, multiple, fromHover }: CrossingChange) {
  return {
    mode,
    modeName: name,
    frequencyHz: frequency,
    order,
    multiple,
    fromHoverShare: fromHover,
  };
}

function differenceFields(d: Difference): unknown {
  return {
    name: d.name,
    massChangeKg: d.mass.change,
    centreOfGravityChangeM: d.cg.change,
    hoverChangeRpm: toRpm(d.hover.change),
    modesNotMatchedBecause: d.unmatched ?? null,
    crossingsGained: d.crossings.gained.map(crossingFields),
    crossingsLost: d.crossings.lost.map(crossingFields),
    bestSpot: {
      from: d.best.from?.name ?? null,
      to: d.best.to?.name ?? null,
      gyroChangeDb: d.best.decibel ?? null,
      delayChangeS: d.best.delay.change ?? null,
      aheadOfOldDb: d.best.lead ?? null,
    },
    spots: d.spots.map(spotFields),
  };
}

function spotFields(s: SpotChange): unknown {
  return {
    name: s.name,
    plate: s.plate,
    in: s.where,
    gyroChangeDb: s.gyro.decibel ?? null,
    accelChangeDb: s.accel.decibel ?? null,
    delayChangeLowPassAloneS: s.delay.change ?? null,
    delayChangeWithNotchesS: s.delayWithNotches.change ?? null,
    falseTiltChangeDeg: s.tilt.change === undefined ? null : toDegrees(s.tilt.change),
  };
}

function pairFields({ reference, name, noise, spots, modes, words }: PairResult): unknown {
  return {
    first: reference,
    second: name,
    words,
    bestSpots: pairedFields(noise),
    spots: spots.map((s) => ({ name: s.name, ...pairedFields(s.noise) })),
    modes: modes.map((m) => ({ name: m.name, ...shiftFields(m.shift) })),
  };
}
