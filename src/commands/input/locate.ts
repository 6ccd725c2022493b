/** Lines and columns for findings of the later stages, which know parts but not the file's text. */

import { type Node, parseTree } from "jsonc-parser";
import type { Finding } from "../../errors.ts";

/** Adds line and column to the findings that have none, as far as their paths lead into the text. */
export function locateFindings(text: string, findings: readonly Finding[]): Finding[] {
  const root = parseTree(text, [], { allowTrailingComma: true });
  if (root === undefined) return [...findings];
  return findings.map((finding) => {
    if (finding.line !== undefined || finding.path === "") return finding;
    const offset = follow(root, finding.path);
    return offset === undefined ? finding : { ...finding, ...positionOf(text, offset) };
  });
}

/**
 * Offset of the part that `path` leads to, or of the nearest part above it. The path is the one of
 * the message: `plates.rear deck.holes#2`, names with or without quotes, list entries from 1.
 */
function follow(node: Node, path: string): number | undefined {
  const ways = (node.children ?? []).flatMap((child) => {
    const rest = node.type === "object" ? afterKey(child, path) : afterEntry(node, child, path);
    return rest === undefined ? [] : [{ child, rest }];
  });
  // names may have points in them: the longest that fits is meant
  const [way] = ways.sort((a, b) => a.rest.length - b.rest.length);
  if (way === undefined) return undefined;
  const value = way.child.type === "property" ? way.child.children?.[1] : way.child;
  const deeper = value && way.rest !== "" ? follow(value, way.rest) : undefined;
  return deeper ?? way.child.offset;
}

/** What remains of the path behind the property's key; undefined when it leads elsewhere. */
function afterKey(property: Node, path: string): string | undefined {
  const key = String(property.children?.[0]?.value);
  for (const written of [key, JSON.stringify(key)]) {
    if (!path.startsWith(written)) continue;
    const rest = path.slice(written.length);
    if (rest === "" || rest.startsWith("#")) return rest;
    if (rest.startsWith(".")) return rest.slice(1);
  }
  return undefined;
}

function afterEntry(list: Node, entry: Node, path: string): string | undefined {
  const written = /^#(\d+)\.?/.exec(path);
  if (written === null || list.children?.[Number(written[1]) - 1] !== entry) return undefined;
  return path.slice(written[0].length);
}

function positionOf(text: string, offset: number): { line: number; column: number } {
  const lines = text.slice(0, offset).split(/\r\n|\n|\r/);
  return { line: lines.length, column: (lines.at(-1)?.length ?? 0) + 1 };
}
