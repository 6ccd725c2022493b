/**
 * A generator of numbers with a fixed seed.
 *
 * The iteration needs start vectors that lean towards no mode, and must give the same bytes for
 * the same input on every machine: so neither ones, nor Math.random.
 *
 * Mulberry32 (T. Ettinger, public domain, from memory); about 32 bits each, uniform in -1 .. 1.
 */
export function fixedSeedGenerator(seed = 0x5eed): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2147483648 - 1;
  };
}
