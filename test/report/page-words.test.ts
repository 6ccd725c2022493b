/** The words of a whole page made from a sample: findings first, few digits, one style of quotes. */

import path from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { analyse } from "../../src/analyse.ts";
import { readFrame } from "../../src/frame/read.ts";
import { renderReport } from "../../src/report/page.ts";
import { INPUT } from "./fixture.ts";

/** Sections that begin with what came out. */
const WITH_FINDING = [
  ...["ranking", "mounts", "cases", "check", "model", "masses", "limits", "cautions"],
  ...["inputs", "words", "map", "modes", "interference", "spectra", "sure", "filters", "levelling"],
] as const;

/** What may have more digits: text that is left out before numbers are counted, and why. */
const EXCEPTIONS: readonly (readonly [reason: string, text: RegExp])[] = [
  ["names of files, options and hashes are given as they are", /<code\b.*?<\/code>/gs],
  ["dates", /<time\b.*?<\/time>/gs],
  ["names of parts and places are the user's own", /<bdi\b.*?<\/bdi>/gs],
  ["drawings have labels of their own", /<svg\b.*?<\/svg>/gs],
  ["a count is exact or wrong", /\d[\d\u202f]*(?= unknowns)/g],
  ["air of the standard atmosphere is 1.225 kg/m^3 by definition", /\b1\.225(?=\s*kg)/g],
  ["names of standards", /\bISO \d+(?:-\d+)?/g],
];

const sections = new Map<string, string>();

beforeAll(() => {
  const sample = path.join(import.meta.dirname, "../../frames/three-inch.jsonc");
  const analysis = analyse(readFrame(sample), { modes: 12, meshSize: 20e-3 });
  const page = renderReport(analysis, { ...INPUT, options: "" });
  for (const [whole, id] of page.matchAll(/<section id="([^"]*)".*?<\/section>/gs)) {
    sections.set(id, whole);
  }
});

function wordsOf(id: string): string {
  const section = sections.get(id) ?? "";
  return EXCEPTIONS.reduce((s, [, text]) => s.replace(text, " "), section)
    .replace(/<[^>]*>/g, " ")
    .replace(/\s+/g, " ");
}

/** Digits that say something: not the zeros before, nor those after in a whole number. */
function meaningful(number: string): number {
  const digits = number.replace(/\D/g, "").replace(/^0+/, "");
  return (number.includes(".") ? digits : digits.replace(/0+$/, "")).length;
}

describe.each(WITH_FINDING)("section %s", (id) => {
  test("is there and begins with what came out", () => {
    expect(sections.get(id)).toMatch(/<h2[^>]*>[^<]*<\/h2>\s*<p class="finding">[^\s]/);
  });

  test("has curly quotes and apostrophes", () => {
    expect(wordsOf(id).match(/.{0,30}(?:&quot;|&#39;|["']).{0,30}/g) ?? []).toEqual([]);
  });
});

test("all sections write numbers with at most three meaningful digits", () => {
  const long = [...sections.keys()].flatMap((id) => {
    const numbers = wordsOf(id).match(/\d[\d\u202f]*(?:\.\d+)?/g) ?? [];
    return numbers.filter((n) => meaningful(n) > 3).map((n) => `${id}: ${n}`);
  });
  expect(long).toEqual([]);
});

test("four digits are found out", () => {
  const found = ["1\u202f234", "0.01234", "12.34", "24\u202f300", "0.0120", "100"].map(meaningful);
  expect(found).toEqual([4, 4, 4, 3, 3, 1]);
});
