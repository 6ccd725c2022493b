/** The findings of a sweep in sentences. */

import { gramsOf, hertzOf, rateOf } from "./figures.ts";
import { bestGyro } from "./pareto.ts";
import type { SweepRow, SweepStudy } from "./results-sweep.ts";

/** Below this ratio of loudest to quietest, the parameters do not matter for noise. */
const MATTERS = 1.06;
/** A frequency that changes by less than this share is not worth a word. */
const MOVES = 0.03;

type Found = Omit<SweepStudy, "words">;

export function sweepWords(study: Found): string[] {
  return [...noiseWords(study), ...modeWords(study), ...frontWords(study), ...failedWords(study)];
}

/** "thickness 4.5 mm, width 17 mm" */
export function rowName({ parameters }: Pick<SweepStudy, "parameters">, { at }: SweepRow): string {
  return parameters.map(({ name, texts }, p) => `${name} ${texts[at[p]]}`).join(", ");
}

function noiseWords(study: Found): string[] {
  const { rows, quietest } = study;
  if (quietest === undefined) return ["No variant has a spot to use."];
  const open = rows.filter((r) => r.outcome?.best !== undefined);
  const gyro = (r: SweepRow) => (r.outcome ? bestGyro(r.outcome) : Number.NaN);
  const loudest = open.reduce((a, b) => (gyro(b) > gyro(a) ? b : a));
  const [least, most] = [gyro(rows[quietest]), gyro(loudest)];
  if (most < MATTERS * least) {
    return [
      `Gyro noise at the best spot hardly depends on it: ${rateOf(least)} to ${rateOf(most)} rms over all variants.`,
    ];
  }
  const { outcome } = rows[quietest];
  const spot = outcome?.best === undefined ? "" : ` at "${outcome.spots[outcome.best].name}"`;
  return [
    `Quietest is ${rowName(study, rows[quietest])} with ${rateOf(least)} rms of gyro noise${spot}; loudest ${rowName(study, loudest)} with ${rateOf(most)} at its best spot.`,
  ];
}

/** The mode that moves most along the first line; nothing where none was followed all the way. */
function modeWords({ lines, rows, parameters, along }: Found): string[] {
  const [line] = lines;
  if (!line) return [];
  const { branches, crossings, veerings } = line.tracking;
  const moves = branches.flatMap((b) => {
    const known = b.frequencies.filter((f) => f !== undefined);
    if (known.length < b.frequencies.length) return [];
    return [{ known, share: Math.max(...known) / Math.min(...known) - 1 }];
  });
  if (moves.length === 0) return [];
  const { known, share } = moves.reduce((a, b) => (b.share > a.share ? b : a));
  const { name, texts } = parameters[along];
  if (share < MOVES) return [`No mode that was followed moves by more than 3 % with ${name}.`];
  const text = (row: number) => texts[rows[row].at[along]];
  const range = `from ${text(line.rows[0])} to ${text(line.rows[line.rows.length - 1])}`;
  const isSteady = known.every((f, i) => i === 0 || f >= known[i - 1] === known[1] >= known[0]);
  const way = isSteady
    ? `goes from ${hertzOf(known[0])} to ${hertzOf(known[known.length - 1])}`
    : `lies between ${hertzOf(Math.min(...known))} and ${hertzOf(Math.max(...known))}`;
  const meet = [counted(crossings.length, "crossing"), counted(veerings.length, "veering")];
  const met = meet.filter((t) => t !== "").join(" and ");
  const others = met === "" ? "" : ` Of the modes followed there are ${met} on the way.`;
  return [`With ${name} ${range} the mode that moves most ${way}.${others}`];
}

function counted(count: number, noun: string): string {
  return count === 0 ? "" : `${count} ${noun}${count === 1 ? "" : "s"}`;
}

function frontWords(study: Found): string[] {
  const { rows, front } = study;
  if (front.length < 2) return [];
  const [light, quiet] = [rows[front[0]], rows[front[front.length - 1]]];
  if (!light.outcome || !quiet.outcome) return [];
  const cost = quiet.outcome.mass - light.outcome.mass;
  const gain = 20 * Math.log10(bestGyro(light.outcome) / bestGyro(quiet.outcome));
  return [
    `${front.length} of ${rows.length} variants are beaten by no other in mass and noise at once; from the lightest of them (${rowName(study, light)}) to the quietest, ${gramsOf(cost)} buy ${Number(gain.toPrecision(2))} dB.`,
  ];
}

function failedWords({ rows }: Found): string[] {
  const failed = rows.filter((r) => r.failed !== undefined).length;
  if (failed === 0) return [];
  return [`${failed} of ${rows.length} variants could not be computed; their rows say why.`];
}
