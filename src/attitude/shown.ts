/** Numbers as the sentences about attitude say them. */

const DEGREE = Math.PI / 180;

/** Below this nothing is worth a number, degrees. */
const LITTLE = 0.05;

/** An angle (rad) to two digits: "1 degree", "2.2 degrees", "less than 0.05 degrees". */
export function degrees(angle: number): string {
  const size = Math.abs(angle) / DEGREE;
  if (size < LITTLE) return `less than ${LITTLE} degrees`;
  const shown = twoDigits(size);
  return `${shown} ${shown === "1" ? "degree" : "degrees"}`;
}

/** A rate (rad/s), without its sign: "200 deg/s". */
export function perSecond(rate: number): string {
  return `${Number((Math.abs(rate) / DEGREE).toFixed(1))} deg/s`;
}

/** A length (m) in millimetres, without its sign: "31 mm", "4.2 mm". */
export function millimetres(length: number): string {
  return `${twoDigits(Math.abs(length) * 1e3)} mm`;
}

/** Two digits, all digits from 100: "0.63", "4.2", "31", "163". */
export function twoDigits(value: number): string {
  return value >= 99.5 ? String(Math.round(value)) : String(Number(value.toPrecision(2)));
}
