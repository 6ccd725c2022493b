/**
 * What a verification case is: a published or closed-form answer, the model that should give it, and
 * how near it must come. Cases are data, so that the tests (`verify.ts`) and the table in the
 * documentation (`table.ts`) are made from the same words and numbers.
 */

/** How far `ours` may lie from the reference: `low` to `high`, relative or in the check's unit. */
export interface Tolerance {
  readonly kind: "relative" | "absolute";
  readonly low: number;
  readonly high: number;
}

/** One number of a case. */
export interface Check {
  /** what it is, unique within its case: "bending 2", "A11" */
  readonly quantity: string;
  /** "" where it has none */
  readonly unit: string;
  /** the digits as the source prints them, which a number would lose: "12.90", "1.739241e9" */
  readonly reference: string;
  readonly tolerance: Tolerance;
}

export interface Case {
  /** unique among all cases: "NAFEMS FV4, published" */
  readonly name: string;
  /** author, title, place; "from memory" or "as quoted elsewhere" where it was not seen in print */
  readonly source: string;
  /** the model in a sentence or two, and the formula where the reference is one */
  readonly model: string;
  /** why the tolerance is what it is */
  readonly why: string;
  /**
   * Where some cases of a family are headlines, the short table shows one of these: what was published
   * or measured, not what was computed for a tighter test.
   */
  readonly headline?: boolean;
  readonly checks: readonly Check[];
  /** one number for each check, in their order */
  readonly solve: () => readonly number[];
}

/** Cases that stand together: one line of the short table, one section of the long one. */
export interface Family {
  /** unique among all families */
  readonly title: string;
  /** for the short table: "NAFEMS R0015", "closed form" */
  readonly source: string;
  readonly cases: readonly Case[];
}

/** Within `relative` on either side of a reference that is not zero. */
export function within(relative: number): Tolerance {
  return { kind: "relative", low: -relative, high: relative };
}

/** Within `absolute`, in the unit of the check, on either side. */
export function withinAbsolute(absolute: number): Tolerance {
  return { kind: "absolute", low: -absolute, high: absolute };
}

/** Within one unit of the last digit of the printed reference, for sources that round or truncate. */
export function lastDigit(reference: string): Tolerance {
  return withinAbsolute(unitOfLastDigit(reference));
}

/** From above only, as consistent elements converge; 1e-9 below for rounding. */
export function justAbove(relative: number): Tolerance {
  return { kind: "relative", low: -1e-9, high: relative };
}

/** The reference is an upper bound: at most `relative` below it and never above. */
export function below(relative: number): Tolerance {
  return { kind: "relative", low: -relative, high: 0 };
}

/** Checks "mode 1", "mode 2", ... of a list of references with one tolerance. */
export function modes(
  references: readonly (string | number)[],
  unit: string,
  tolerance: Tolerance | ((reference: string, i: number) => Tolerance),
  name = "mode",
): Check[] {
  return references.map((value, i) => {
    const reference = String(value);
    return {
      quantity: `${name} ${i + 1}`,
      unit,
      reference,
      tolerance: typeof tolerance === "function" ? tolerance(reference, i) : tolerance,
    };
  });
}

/** The place value of the last digit written: 0.001 for "1.723", 1e3 for "1.739e6". */
export function unitOfLastDigit(text: string): number {
  const [mantissa, exponent = "0"] = text.toLowerCase().split("e");
  const decimals = mantissa.split(".")[1]?.length ?? 0;
  return 10 ** (Number(exponent) - decimals);
}

/** ours against the reference, in the terms of the check's tolerance. */
export function errorOf({ reference, tolerance }: Check, ours: number): number {
  const difference = ours - Number(reference);
  return tolerance.kind === "absolute" ? difference : difference / Math.abs(Number(reference));
}

/** Difference over the size of the reference, whatever the tolerance is in; 0 for a reference of 0. */
export function relativeError(check: Check, error: number): number {
  const size = Math.abs(Number(check.reference));
  return check.tolerance.kind === "relative" ? error : size > 0 ? error / size : 0;
}

/** Whether ours is as near as the check asks; never for a number that is not finite. */
export function passes(check: Check, ours: number): boolean {
  const error = errorOf(check, ours);
  return error >= check.tolerance.low && error <= check.tolerance.high;
}
