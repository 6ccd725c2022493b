/**
 * Share of the base's motion at f that reaches a mass on a mount with structural damping, a ratio of
 * amplitudes: |T| = sqrt((1 + eta^2)/((1 - r^2)^2 + eta^2)), r = f/fn, from k (1 + i eta)/(k (1 + i eta) -
 * m omega^2). Above r = sqrt 2 it is below 1 whatever eta. Textbook formula, from memory: Nashif, Jones,
 * Henderson, "Vibration Damping".
 *
 * @param f of the base's motion, Hz
 * @param fn natural frequency of the mass on its mount, Hz
 * @param eta loss factor
 */
export function transmissibility(f: number, fn: number, eta: number): number {
  const r2 = (f / fn) ** 2;
  return Math.sqrt((1 + eta * eta) / ((1 - r2) ** 2 + eta * eta));
}
