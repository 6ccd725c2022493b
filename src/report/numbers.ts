/** Numbers for people: at most three meaningful digits, with their units. */

const NARROW_SPACE = "\u202f";
const NO_BREAK = "\u00a0";
const MINUS = "\u2212";
const SUPERSCRIPT = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** 1234 -> "1 230", 0.01234 -> "0.0123", 2.34e-9 -> "2.34 × 10⁻⁹"; trailing zeros are left out. */
export function three(x: number, digits = 3): string {
  if (Number.isNaN(x)) return "–";
  if (!Number.isFinite(x)) return x > 0 ? "∞" : `${MINUS}∞`;
  const rounded = Number(x.toPrecision(digits));
  const size = Math.abs(rounded);
  if (size !== 0 && (size < 1e-3 || size >= 1e6)) return scientific(rounded);
  const [whole, fraction] = plain(size).split(".");
  const sign = rounded < 0 ? MINUS : "";
  return `${sign}${grouped(whole)}${fraction ? `.${fraction}` : ""}`;
}

/** With all three digits also where they are zeros, so that numbers in a column are alike: 8.4 -> "8.40". */
export function inColumn(x: number, digits = 3): string {
  const size = Math.abs(x);
  if (!(size >= 1e-3 && size < 10 ** (digits - 1))) return three(x, digits);
  return x.toPrecision(digits).replace("-", MINUS);
}

/** A count or a number that must not be rounded, with its thousands apart. */
export function whole(n: number): string {
  return `${n < 0 ? MINUS : ""}${grouped(String(Math.abs(Math.round(n))))}`;
}

/** A number with its unit, which do not part at the end of a line. */
export function withUnit(x: number, unit: string): string {
  return `${three(x)}${NO_BREAK}${unit}`;
}

/** With a sign, also for positive numbers, and always as many decimals; no sign when it rounds to nothing. */
export function signed(x: number, decimals = 1): string {
  const rounded = Number(x.toFixed(decimals));
  const size = Math.abs(rounded).toFixed(decimals);
  return rounded === 0 ? size : `${rounded > 0 ? "+" : MINUS}${size}`;
}

export const hertz = (f: number): string => withUnit(f, "Hz");
export const rpm = (omega: number): string => `${three(toRpm(omega))}${NO_BREAK}rpm`;
/** Lengths below 0.05 mm are nothing on a frame. */
export const inMillimetres = (x: number): string => (Math.abs(x) < 5e-5 ? "0" : three(x * 1e3));
export const millimetres = (x: number): string => `${inMillimetres(x)}${NO_BREAK}mm`;
export const grams = (m: number): string => withUnit(m * 1e3, "g");
export const degreesPerSecond = (w: number): string => withUnit(w, "deg/s");
export const percent = (x: number, digits = 3): string => `${three(x * 100, digits)}${NO_BREAK}%`;
export const milliseconds = (t: number): string => withUnit(t * 1e3, "ms");
export const inDegrees = (angle: number): string => three((angle * 180) / Math.PI);
export const degrees = (angle: number): string => {
  const shown = inDegrees(angle);
  return `${shown}${NO_BREAK}${shown === "1" ? "degree" : "degrees"}`;
};
export const decibels = (x: number): string => `${signed(x)}${NO_BREAK}dB`;
/** Mass in the unit that suits its size. */
export const mass = (m: number): string => (m < 1 ? grams(m) : withUnit(m, "kg"));

/** rad/s to revolutions per minute. */
export function toRpm(omega: number): number {
  return (omega * 30) / Math.PI;
}

/** The same number with few digits, for embedding; JSON has no infinities, so they become null. */
export function rounded(x: number, digits = 4): number | null {
  return Number.isFinite(x) ? Number(x.toPrecision(digits)) : null;
}

function plain(x: number): string {
  const text = String(x);
  return text.includes("e") ? x.toFixed(12).replace(/\.?0+$/, "") : text;
}

function grouped(digits: string): string {
  return digits.replace(/\B(?=(?:\d{3})+$)/g, NARROW_SPACE);
}

function scientific(x: number): string {
  const [mantissa, exponent] = x.toExponential().split("e");
  const power = [...exponent]
    .map((c) => (c === "-" ? "⁻" : c === "+" ? "" : SUPERSCRIPT[Number(c)]))
    .join("");
  return `${mantissa.replace("-", MINUS)}${NO_BREAK}×${NO_BREAK}10${power}`;
}
