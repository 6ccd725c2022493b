/**
 * Rectification: a sensor that is not quite linear, reading = x + c x^2 to second order, turns vibration
 * into a constant offset c times the mean square of it. Own low-pass and filters behind it take the
 * lines away but not the offset.
 */

/**
 * Offset at each speed, in the unit of the reading: deg/s of a gyro, g of an accelerometer.
 *
 * Datasheets shake along one axis at a time. The sum over the axes stands on the safe side of that.
 *
 * @param coefficient reading per g^2
 * @param acceleration mean square over all axes and orders, g^2, before any low-pass (size s)
 */
export function rectifiedOffset(coefficient: number, acceleration: Float64Array): Float64Array {
  return acceleration.map((power) => coefficient * power);
}

/**
 * The tilt that an offset of the accelerometer means to an attitude that follows it, rad: atan(offset/
 * 1 g) for an offset across gravity, which is the worst direction; along gravity it would mean none.
 *
 * @param offset g, of either sign
 */
export function falseTilt(offset: number): number {
  return Math.atan(Math.abs(offset));
}
