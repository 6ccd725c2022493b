/** Things that are made again and again from the same sizes, as the variants of one frame are. */

/** What is kept under a name, or made now and kept. */
export type Memo<V> = (name: string, make: () => V) => V;

/**
 * A memo of so many things at most; the one that came first goes first. What is kept must not depend on
 * anything that its name leaves out, and nobody may change it.
 */
export function memo<V>(most: number): Memo<V> {
  const kept = new Map<string, V>();
  return (name, make) => {
    const found = kept.get(name);
    if (found !== undefined) return found;
    const made = make();
    const [first] = kept.keys();
    if (kept.size >= most) kept.delete(first);
    kept.set(name, made);
    return made;
  };
}
