/** What a file says about how far its numbers are known, as read. */

/** A number in the field's own bare unit, or a text with a unit. */
export type WrittenNumber = number | string;

/**
 * Where 95 % of real frames lie: a share of the value to either side, from one value to another, or "none"
 * for a number taken as exact.
 */
export type SpreadDef = "none" | number | readonly [from: WrittenNumber, to: WrittenNumber];
