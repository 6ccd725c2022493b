/** Which multiples of the motor speed are followed together. */

/** The most multiples that are followed at once. */
export const MOST_FOLLOWED = 3;

/**
 * All choices of up to `most` items, fewest first, then in the order of the items; the empty choice
 * leads.
 */
export function choicesOf<T>(items: readonly T[], most: number): readonly (readonly T[])[] {
  let latest: readonly (readonly number[])[] = [[]];
  const all = [...latest];
  for (let size = 1; size <= most; size++) {
    latest = latest.flatMap((choice) => {
      const next = (choice.at(-1) ?? -1) + 1;
      return [...items.keys()].slice(next).map((item) => [...choice, item]);
    });
    all.push(...latest);
  }
  return all.map((choice) => choice.map((item) => items[item]));
}
