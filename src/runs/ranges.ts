/** Numbers of rows in words. */

const MOST_RANGES = 8;

/** Ascending numbers as "3-17, 20"; what goes on for long ends with how many more there are. */
export function inRanges(numbers: readonly number[]): string {
  const ranges: [first: number, last: number][] = [];
  for (const n of numbers) {
    const range = ranges.at(-1);
    if (range !== undefined && n === range[1] + 1) range[1] = n;
    else ranges.push([n, n]);
  }
  const shown = ranges.slice(0, MOST_RANGES);
  const text = shown.map(([a, b]) => (a === b ? `${a}` : `${a}-${b}`)).join(", ");
  const left = ranges.slice(MOST_RANGES).reduce((sum, [a, b]) => sum + b - a + 1, 0);
  return left === 0 ? text : `${text} and ${left} more`;
}

/** "a", "a and b", "a, b and c". */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}
