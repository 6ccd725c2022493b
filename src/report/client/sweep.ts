/** Levels against motor speed and frequency. Runs in the page: every function stands alone. */

/** What the lines at one place hold: mean squares by order, all motors at the grid's speeds exactly. */
export interface SweptOrders {
  /** lowest and highest speed, rpm; the powers stand evenly between them */
  readonly rpm: readonly [low: number, high: number];
  /** multiples of the motors' speed (size o) */
  readonly multiples: readonly number[];
  /** (o, each size s) */
  readonly powers: readonly Float64Array[];
  /** standard deviation of the motors' speeds from each other, as a share of the speed */
  readonly spread: number;
}

/** Mean squares from numbers of -1 to 1: 5.12 decades below `top` to each side of zero; -1 is nothing. */
export function powersFrom(units: Float64Array, top: number): Float64Array {
  return units.map((u) => (u <= -1 ? 0 : top * 10 ** (5.12 * (u - 1))));
}

/**
 * The mean of a power over the motors' differences in speed, delta normal with the spread s and cut at
 * 3 s: L(w) = sum of p(w (1 + s z)) phi(z) dz, by the trapezoidal rule, which is not
 * thrown by resonances narrower than its steps; p straight between the grid's speeds, constant beyond.
 *
 * @returns at the grid's speeds (size s)
 */
export function spreadLevels(
  rpm: readonly [low: number, high: number],
  power: Float64Array,
  spread: number,
): Float64Array {
  const last = power.length - 1;
  const step = (rpm[1] - rpm[0]) / last;
  const nodes = Array.from({ length: 121 }, (_, k) => -3 + k / 20);
  const weights = nodes.map((z, k) => (k % 120 === 0 ? 0.5 : 1) * Math.exp(-0.5 * z * z));
  const whole = weights.reduce((a, b) => a + b, 0);
  return power.map((_, i) => {
    const speed = rpm[0] + i * step;
    let sum = 0;
    for (let k = 0; k < nodes.length; k++) {
      const at = Math.min(last, Math.max(0, i + (speed * spread * nodes[k]) / step));
      const j = Math.min(last - 1, Math.floor(at));
      sum += weights[k] * (power[j] + (at - j) * (power[j + 1] - power[j]));
    }
    return sum / whole;
  });
}

/**
 * What a recording of a slow sweep of the throttle holds, per hertz. With the motors meant to turn at w,
 * a motor that turns at w' sends its order n at f = n w'/60 (w in rpm). Its speed is normal about w with
 * the standard deviation s w, so that the lines of order n are spread over frequency by
 *
 *   S_n(f; w) = p_n(60 f/n) phi((f - n w/60)/sigma)/sigma,   sigma = s n w/60,
 *
 * p_n(w') the mean square with all motors at w', phi the normal density cut at 3 and brought back to 1.
 * Its integral over f is the level L_n(w) of `spreadLevels`. It is the mean over craft: a recording of
 * one has a thin line for each of its motors within this width.
 *
 * @param speeds rpm (size c)
 * @param frequencies Hz (size r)
 * @returns mean square per hertz, row by row (r, each size c)
 */
export function sweepDensity(
  { rpm, multiples, powers, spread }: SweptOrders,
  speeds: ArrayLike<number>,
  frequencies: ArrayLike<number>,
): Float64Array[] {
  // Of motors that all turn alike a line has no width; half a per cent can be seen.
  const width = Math.max(spread, 0.005);
  // Of the normal density within 3 standard deviations, from memory of its table: 0.9973.
  const scale = 1 / (0.9973002 * Math.sqrt(2 * Math.PI));
  const rows = Array.from(frequencies, () => new Float64Array(speeds.length));
  powers.forEach((power, o) => {
    const last = power.length - 1;
    const step = (rpm[1] - rpm[0]) / last;
    const own = Array.from(frequencies, (f) => {
      const at = Math.min(last, Math.max(0, ((60 * f) / multiples[o] - rpm[0]) / step));
      const j = Math.min(last - 1, Math.floor(at));
      return power[j] + (at - j) * (power[j + 1] - power[j]);
    });
    for (let c = 0; c < speeds.length; c++) {
      const centre = (multiples[o] * speeds[c]) / 60;
      const sigma = width * centre;
      rows.forEach((row, r) => {
        const z = (frequencies[r] - centre) / sigma;
        if (Math.abs(z) <= 3) row[c] += (own[r] * scale * Math.exp(-0.5 * z * z)) / sigma;
      });
    }
  });
  return rows;
}

/**
 * Places of labels along an axis, moved apart where they would lie on each other, in their order.
 *
 * @param gap least distance
 * @param low ends of the room
 */
export function labelPlaces(
  values: readonly number[],
  gap: number,
  low: number,
  high: number,
): number[] {
  const order = values.map((_, i) => i).sort((a, b) => values[a] - values[b]);
  const places = values.slice();
  let free = low;
  for (const i of order) {
    places[i] = Math.max(free, values[i]);
    free = places[i] + gap;
  }
  let roof = high;
  for (const i of order.reverse()) {
    places[i] = Math.min(roof, places[i]);
    roof = places[i] - gap;
  }
  return places;
}
