import {
  findNodeAtLocation,
  type Node,
  type ParseError,
  parseTree,
  printParseErrorCode,
} from "jsonc-parser";
import type { Finding } from "../errors.ts";
import { type FilePath, formatPath } from "./file-path.ts";
import type { PlacedFinding } from "./issue-findings.ts";
import { shown } from "./shown.ts";
import { syntaxMessage } from "./syntax-message.ts";

/** The text of a frame file as a tree that knows where everything stands. */
export interface SourceText {
  readonly root: Node;
  /** Plain values; objects without prototype, of two equal keys the first one. */
  readonly value: unknown;
  /** Offset of the first sign of each line (size: number of lines). */
  readonly lineStarts: readonly number[];
}

/** Either the tree, or the first thing that makes the text unreadable. */
export type SourceReading = { readonly source: SourceText } | { readonly finding: Finding };

/** A frame file has about six levels; the parser would run out of stack at some thousands. */
const DEEPEST = 40;

export function readSource(text: string): SourceReading {
  const lineStarts = findLineStarts(text);
  const fail = (offset: number, message: string): SourceReading => {
    return { finding: { path: "", message, ...position(lineStarts, offset) } };
  };
  const deep = tooDeepAt(text);
  if (deep !== undefined) return fail(deep, "Brackets are nested too deep here for a frame file.");
  const errors: ParseError[] = [];
  const root = parseTree(text, errors, { allowTrailingComma: true, allowEmptyContent: true });
  // after the first slip the parser guesses, and what it reports then only confuses
  const [first] = errors;
  if (first !== undefined) {
    return fail(first.offset, syntaxMessage(text, first.offset, printParseErrorCode(first.error)));
  }
  if (root === undefined) {
    const message = 'The file is empty. A frame file begins with { "version": 1, "name": "...".';
    return { finding: { path: "", message } };
  }
  return { source: { root, value: plainValue(root), lineStarts } };
}

function plainValue(node: Node): unknown {
  if (node.type === "array") return (node.children ?? []).map(plainValue);
  if (node.type !== "object") return node.value;
  const object: Record<string, unknown> = Object.create(null);
  for (const { children } of node.children ?? []) {
    const [key, value] = children as [Node, Node];
    if (!Object.hasOwn(object, key.value)) object[key.value] = plainValue(value);
  }
  return object;
}

/** Offset of the first bracket that is nested too deep; brackets inside texts and comments do not count. */
function tooDeepAt(text: string): number | undefined {
  let depth = 0;
  const pieces = /"(?:[^"\\\n]|\\.)*"|\/\/[^\n]*|\/\*[\s\S]*?\*\/|[[{]|[\]}]/g;
  for (const piece of text.matchAll(pieces)) {
    const sign = piece[0];
    if (sign === "[" || sign === "{") depth++;
    else if (sign === "]" || sign === "}") depth--;
    if (depth > DEEPEST) return piece.index;
  }
  return undefined;
}

/** Keys that stand twice in the same braces: the parser would silently keep the last. */
export function duplicateKeys(source: SourceText): Finding[] {
  const found: Finding[] = [];
  const visit = (node: Node, path: FilePath): void => {
    const children = node.children ?? [];
    if (node.type === "array") {
      children.forEach((child, i) => {
        visit(child, [...path, i]);
      });
    }
    if (node.type !== "object") return;
    const firstLine = new Map<string, number>();
    for (const property of children) {
      const [key, value] = property.children as [Node, Node];
      const name = key.value as string;
      const place = position(source.lineStarts, key.offset);
      const earlier = firstLine.get(name);
      if (earlier === undefined) {
        firstLine.set(name, place.line);
      } else {
        const message = `${shown(name)} stands here a second time, first in line ${earlier}: rename or remove one of them.`;
        found.push({ path: formatPath([...path, name]), message, ...place });
      }
      visit(value, [...path, name]);
    }
  };
  visit(source.root, []);
  return found;
}

/** Puts findings into the file: line and column of the key or value, or of the nearest part above. */
export function locate(source: SourceText, { path, message, atKey }: PlacedFinding): Finding {
  const offset = offsetOf(source.root, path, atKey === true);
  return { path: formatPath(path), message, ...position(source.lineStarts, offset) };
}

function offsetOf(root: Node, path: FilePath, atKey: boolean): number {
  const node = findNodeAtLocation(root, [...path]);
  if (node !== undefined) return atKey ? keyOffset(node) : node.offset;
  for (let length = path.length - 1; length > 0; length--) {
    const above = findNodeAtLocation(root, path.slice(0, length));
    if (above !== undefined) return keyOffset(above);
  }
  return root.offset;
}

function keyOffset(node: Node): number {
  return node.parent?.type === "property" ? node.parent.offset : node.offset;
}

function findLineStarts(text: string): number[] {
  const starts = [0];
  for (const end of text.matchAll(/\r\n|\n|\r/g)) starts.push(end.index + end[0].length);
  return starts;
}

interface Position {
  readonly line: number;
  readonly column: number;
}

function position(lineStarts: readonly number[], offset: number): Position {
  let low = 0;
  let high = lineStarts.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (lineStarts[middle] <= offset) low = middle;
    else high = middle - 1;
  }
  return { line: low + 1, column: offset - lineStarts[low] + 1 };
}
