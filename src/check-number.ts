/** What is wrong with a number given for a filter or a motion, said in one way. */

import { type Finding, InputError } from "./errors.ts";

/** Throws InputError with all findings; returns where there are none. */
export function throwIfAny(...findings: readonly (readonly Finding[])[]): void {
  const all = findings.flat();
  if (all.length > 0) throw new InputError(all);
}

/** A finding unless `value` is finite and above zero. `what` begins the sentence, `unit` may be "". */
export function notPositive(path: string, what: string, value: number, unit: string): Finding[] {
  return value > 0
    ? notFinite(path, what, value, unit)
    : [broken(path, what, "above 0", value, unit)];
}

/** A finding unless `value` is finite and zero or more. */
export function negative(path: string, what: string, value: number, unit: string): Finding[] {
  return value >= 0
    ? notFinite(path, what, value, unit)
    : [broken(path, what, "0 or more", value, unit)];
}

/** A finding unless `value` is finite. */
export function notFinite(path: string, what: string, value: number, unit: string): Finding[] {
  return Number.isFinite(value) ? [] : [broken(path, what, "a finite number", value, unit)];
}

function broken(path: string, what: string, rule: string, value: number, unit: string): Finding {
  return { path, message: `${what} must be ${rule}, but is ${`${value} ${unit}`.trimEnd()}.` };
}
