/**
 * How far consistent elements lie above the continuous member, relative, from the leading term of the
 * series (J. S. Przemieniecki, Theory of Matrix Structural Analysis, from memory) and a tenth more for
 * the next one. A member that moves together with other things has the member's share of the kinetic
 * energy times this.
 */

/** A uniform member, cut into elements. */
export interface Member {
  /** c = sqrt(E/rho), m/s */
  readonly speed: number;
  /** r = sqrt(I/A), m */
  readonly gyration: number;
  /** length of an element, m */
  readonly h: number;
}

/** (beta h)^4/1440 of a beam at a frequency in Hz, beta^4 = omega^2/(c r)^2. */
export function bendingError(frequency: number, { speed, gyration, h }: Member): number {
  const betaSquared = (2 * Math.PI * frequency) / (speed * gyration);
  return (1.1 * (betaSquared * h * h) ** 2) / 1440;
}

/** (k h)^2/24 of a rod or shaft at a frequency in Hz, k = omega over the speed of its waves. */
export function waveError(frequency: number, speed: number, h: number): number {
  const k = (2 * Math.PI * frequency) / speed;
  return (1.1 * (k * h) ** 2) / 24;
}

/** Rounding of the lowest modes with some forty elements. */
export const ROUNDING = 1e-9;
