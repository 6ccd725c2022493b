/** Figures of a comparison in words, with three digits at most. */

/** Three digits, without zeros at the end that say nothing. */
export function digits(v: number): string {
  return `${Number(v.toPrecision(3))}`;
}

/** Two digits: for differences. */
export function twoDigits(v: number): string {
  return `${Number(v.toPrecision(2))}`;
}

export const gramsOf = (kg: number) => `${digits(1e3 * kg)} g`;
export const hertzOf = (Hz: number) => `${digits(Hz)} Hz`;
export const decibelsOf = (dB: number) => `${twoDigits(dB)} dB`;
export const rateOf = (v: number) => `${digits(v)} deg/s`;
export const delayOf = (s: number) => `${digits(1e3 * s)} ms`;
export const shareOf = (v: number) => `${twoDigits(100 * v)} %`;
export const tiltOf = (rad: number) => {
  const text = twoDigits((180 * rad) / Math.PI);
  return `${text} ${text === "1" ? "degree" : "degrees"}`;
};

/** Shorter moves of the centre of gravity than this are none, m. */
const STAYS = 5e-5;

const WAYS = [
  ["forward", "back"],
  ["to the left", "to the right"],
  ["up", "down"],
] as const;

/** How far something moved, the farthest way first: "3.2 mm back and 1.1 mm up"; "" where it stays. */
export function movedWords(change: readonly [number, number, number]): string {
  const most = Math.max(...change.map(Math.abs));
  const told = change
    .map((v, i) => ({ far: Math.abs(v), way: WAYS[i][v > 0 ? 0 : 1] }))
    // what is lost in rounding beside the farthest is left out
    .filter(({ far }) => far >= Math.max(STAYS, most / 20))
    .sort((a, b) => b.far - a.far)
    .map(({ far, way }) => `${twoDigits(1e3 * far)} mm ${way}`);
  return told.length < 2 ? told.join("") : `${told.slice(0, -1).join(", ")} and ${told.at(-1)}`;
}
