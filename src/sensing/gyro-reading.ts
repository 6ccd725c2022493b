/**
 * What a gyro reads: the true rate, and a little of the acceleration.
 *
 * Each axis reads s.a more, a the acceleration and s a vector of known length s (deg/s per g) and of a
 * direction that no datasheet gives. Over all directions s has the mean 0 and s s' the mean (s^2/3) I,
 * so that for rate w and acceleration a of one line, whatever their phases and directions,
 *
 *   mean of |w + s.a|^2 = |w|^2 + s^2 |a|^2/3
 *
 * for each axis: the cross term is linear in s and drops out, and powers add exactly. Three axes get
 * s^2 |a|^2 together.
 */

/**
 * Mean-square readings of the three axes together, (deg/s)^2: rate + s^2 acceleration, element by
 * element.
 *
 * @param rate true rates, (deg/s)^2, over all axes (size n: speeds, orders, or one)
 * @param acceleration g^2, over all axes (size n)
 * @param s sensitivity, deg/s per g
 */
export function gyroReading(
  rate: Float64Array,
  acceleration: Float64Array,
  s: number,
): Float64Array {
  return rate.map((power, i) => power + s * s * acceleration[i]);
}

/**
 * The same by axis: each gets a third of s^2 times the whole acceleration.
 *
 * @param rate true rates about x, y, z, (deg/s)^2, each of size n
 * @param acceleration along x, y, z, g^2, each of size n
 * @param s sensitivity, deg/s per g
 */
export function gyroAxes(
  rate: readonly Float64Array[],
  acceleration: readonly Float64Array[],
  s: number,
): Float64Array[] {
  const share = (s * s) / 3;
  return rate.map((axis) =>
    axis.map((power, i) => power + share * acceleration.reduce((sum, along) => sum + along[i], 0)),
  );
}
