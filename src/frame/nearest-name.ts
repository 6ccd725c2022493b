/**
 * Damerau-Levenshtein distance in its restricted form (optimal string alignment): insertions,
 * deletions, replacements and swaps of neighbours, each counting one. From memory.
 */
export function editDistance(a: string, b: string): number {
  // rows i - 2, i - 1 and i of the table, each of size b.length + 1
  let twoBack: number[] = [];
  let oneBack = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const replace = oneBack[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1);
      let least = Math.min(oneBack[j] + 1, row[j - 1] + 1, replace);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) least = Math.min(least, twoBack[j - 2] + 1);
      row.push(least);
    }
    twoBack = oneBack;
    oneBack = row;
  }
  return oneBack[b.length];
}

/** Capitals, hyphens, underscores and doubled spaces are what people mix up most. */
function fold(name: string): string {
  return name
    .toLowerCase()
    .replace(/[\s_-]+/g, " ")
    .trim();
}

const LONGEST_COMPARED = 80;

/**
 * The candidate somebody most likely meant by `name`, or undefined when none is near: at most one
 * slip in three letters, or a beginning in common ("carbon" for "carbon-ud"). The first of equals.
 */
export function nearestName(name: string, candidates: readonly string[]): string | undefined {
  const wanted = fold(name);
  if (wanted === "" || wanted.length > LONGEST_COMPARED) return undefined;
  let best: string | undefined;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    const folded = fold(candidate);
    const allowed = Math.floor(Math.max(wanted.length, folded.length) / 3);
    if (Math.abs(wanted.length - folded.length) > allowed) continue;
    const distance = editDistance(wanted, folded);
    if (distance <= allowed && distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  if (best !== undefined || wanted.length < 3) return best;
  return candidates.find((candidate) => {
    const folded = fold(candidate);
    return folded.startsWith(wanted) || (folded.length >= 3 && wanted.startsWith(folded));
  });
}
