/** Least time of some runs after one warm-up, s, and the last result. */
export function best<T>(f: () => T, runs = 3): { seconds: number; result: T } {
  let result = f();
  let seconds = Number.POSITIVE_INFINITY;
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    result = f();
    seconds = Math.min(seconds, (performance.now() - start) / 1e3);
  }
  return { seconds, result };
}

export const ms = (s: number) => `${(s * 1e3).toFixed(0).padStart(6)} ms`;
