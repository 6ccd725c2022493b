import { describe, expect, test } from "vitest";
import { html } from "../../src/report/html.ts";
import { type Column, table } from "../../src/report/section.ts";
import { tableRows } from "./text.ts";

const columns: readonly Column<number>[] = [
  { head: "name", names: true, cell: (n) => `row ${n}` },
  { head: "plain", number: true, cell: (n) => n },
  { head: html`two<br>lines`, label: "two lines", cell: (n) => 2 * n },
];

describe("a table", () => {
  test("that may stand as cards carries its headings in its cells", () => {
    const { html: cards } = table("t", columns, [1], { className: "x", cards: true });
    expect(cards).toContain('<table class="x cards">');
    expect([...cards.matchAll(/data-label="([^"]*)"/g)].map((m) => m[1])).toEqual([
      "plain",
      "two lines",
    ]);
    const { html: plain } = table("t", columns, [1]);
    expect(plain).toContain('<table class="">');
    expect(plain.match(/data-label/g)).toHaveLength(1);
  });

  test("has what belongs to a row under it, across all columns", () => {
    const made = table("t", columns, [1, 2], { under: (n) => n === 2 && html`<b>more</b>` });
    expect(tableRows(made)).toEqual([["row 1", "1", "2"], ["row 2", "2", "4"], ["more"]]);
    expect(made.html.match(/<tr class="under"><td colspan="3">/g)).toHaveLength(1);
  });
});
