/**
 * Symmetric matrices as Matrix Market text ("coordinate real symmetric"), for other programs.
 *
 * R. F. Boisvert, R. Pozo & K. A. Remington, "The Matrix Market Exchange Formats: Initial Design",
 * NISTIR 5935 (1996), from memory.
 */

import { InputError } from "../errors.ts";
import { compressTriplets, type SymmetricSparse } from "./sparse.ts";

const BANNER = "%%MatrixMarket matrix coordinate real symmetric";

/**
 * The nonzero entries of the lower triangle, column by column, with 17 significant digits: reading
 * them back gives the same doubles.
 *
 * @param comments lines to put below the banner, e.g. what the matrix is and its units
 */
export function matrixMarket(
  { pattern, values }: SymmetricSparse,
  comments: readonly string[] = [],
): string {
  const { n, colPtr, rowIdx } = pattern;
  const lines = [BANNER];
  for (const comment of comments) {
    for (const line of comment.split("\n")) lines.push(`% ${line}`.trimEnd());
  }
  const size = lines.length;
  lines.push("");
  for (let j = 0; j < n; j++) {
    for (let p = colPtr[j]; p < colPtr[j + 1]; p++) {
      if (values[p] === 0) continue;
      lines.push(`${rowIdx[p] + 1} ${j + 1} ${values[p].toExponential(16)}`);
    }
  }
  lines[size] = `${n} ${n} ${lines.length - size - 1}`;
  return `${lines.join("\n")}\n`;
}

/**
 * Reads what matrixMarket writes, and other files of that kind.
 *
 * @throws InputError with the line, for anything else
 */
export function readMatrixMarket(text: string): SymmetricSparse {
  const lines = text.split(/\r?\n/);
  if (lines[0].trim().split(/\s+/).join(" ").toLowerCase() !== BANNER.toLowerCase()) {
    fail(1, `the first line must read "${BANNER}", but is "${lines[0].slice(0, 80)}"`);
  }
  let at = 1;
  while (at < lines.length && (lines[at].startsWith("%") || lines[at].trim() === "")) at++;
  const [n, columns, count] = numbers(lines[at] ?? "", 3, at + 1);
  if (!(Number.isInteger(n) && n >= 0 && columns === n && Number.isInteger(count) && count >= 0)) {
    fail(at + 1, `a symmetric matrix has sizes "n n entries", but found "${lines[at]}"`);
  }
  const rows = new Int32Array(count);
  const cols = new Int32Array(count);
  const values = new Float64Array(count);
  let read = 0;
  for (at++; at < lines.length; at++) {
    if (lines[at].trim() === "") continue;
    if (read === count) fail(at + 1, `${count} entries were announced, but there are more`);
    const [i, j, value] = numbers(lines[at], 3, at + 1);
    if (!(Number.isInteger(i) && i >= 1 && i <= n && Number.isInteger(j) && j >= 1 && j <= n)) {
      fail(at + 1, `(${i}, ${j}) lies outside the matrix: indices go from 1 to ${n}`);
    }
    rows[read] = i - 1;
    cols[read] = j - 1;
    values[read++] = value;
  }
  if (read < count) fail(lines.length, `${count} entries were announced, but there are ${read}`);
  const compressed = compressTriplets(n, count, rows, cols, [values]);
  return { pattern: compressed.pattern, values: compressed.values[0] };
}

function numbers(line: string, count: number, lineNumber: number): number[] {
  const words = line.trim().split(/\s+/);
  const found = words.map(Number);
  if (words.length !== count || words[0] === "" || !found.every(Number.isFinite)) {
    fail(lineNumber, `${count} numbers are expected, but found "${line.slice(0, 80)}"`);
  }
  return found;
}

function fail(line: number, message: string): never {
  throw new InputError([{ path: "", message: `line ${line}: ${message}`, line }]);
}
