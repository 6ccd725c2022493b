/** Names of variants for narrow columns and charts. */

/**
 * The names without the words that all of them begin or end with: "4 mm thickness" and "6 mm thickness"
 * as "4 mm" and "6 mm". A number keeps its unit. As they are where that leaves nothing of one, or makes
 * two the same.
 */
export function shortNames(names: readonly string[]): string[] {
  if (names.length < 2) return [...names];
  const words = names.map((n) => n.split(" "));
  const shortest = Math.min(...words.map((w) => w.length));
  const same = (at: (w: readonly string[]) => string | undefined) =>
    words.every((w) => at(w) === at(words[0]));
  let before = 0;
  while (before < shortest - 1 && same((w) => w[before])) before++;
  let after = 0;
  while (after < shortest - 1 - before && same((w) => w.at(-1 - after))) after++;
  const cut = words.map((w) => {
    const end = w.length - after;
    // a unit alone behind what is cut: it stays with its number
    const unit = after > 0 && end - before === 1 && NUMBER.test(w[end - 1]) ? 1 : 0;
    return w.slice(before, end + unit).join(" ");
  });
  const told = cut.every((n) => n !== "") && new Set(cut).size === names.length;
  return told ? cut : [...names];
}

const NUMBER = /^[+-]?\d[\d.,]*$/;
