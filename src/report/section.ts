/** The parts that all sections are built of. */

import { type Html, html, type Part } from "./html.ts";

/** What a section begins with. */
export interface Lead {
  /** what came out, for this frame */
  readonly finding: Part;
  /** how to read what follows */
  readonly how?: Part;
}

/** A section with its heading; the finding comes first. */
export function section(
  id: string,
  title: string,
  lead: Part | Lead,
  ...body: readonly Part[]
): Html {
  return html`<section id="${id}" aria-labelledby="${id}-heading">
<h2 id="${id}-heading">${title}</h2>
${isLead(lead) ? [html`<p class="finding">${lead.finding}</p>\n`, lead.how !== undefined && html`<p class="lead">${lead.how}</p>`] : lead !== "" && html`<p class="lead">${lead}</p>`}
${body}
</section>
`;
}

function isLead(lead: Part | Lead): lead is Lead {
  return typeof lead === "object" && "finding" in lead;
}

/** One column of a table. */
export interface Column<Row> {
  readonly head: Part;
  /** the heading in plain words, for cells that stand as cards on a narrow page */
  readonly label?: string;
  /** numbers stand to the right */
  readonly number?: boolean;
  /** needs a card's whole width */
  readonly wide?: boolean;
  /** sentences, which need room */
  readonly long?: boolean;
  /** the cell that names the row */
  readonly names?: boolean;
  readonly cell: (row: Row, index: number) => Part;
}

export interface TableOptions<Row> {
  readonly className?: string;
  readonly boxId?: string;
  readonly rowClass?: (row: Row, i: number) => string;
  /** On a narrow page every row stands as a card, its cells under their headings. */
  readonly cards?: boolean;
  /** what stands under a row, across the whole table */
  readonly under?: (row: Row, i: number) => Part;
}

/** A table in a box of its own, which scrolls sideways where the page is narrow. */
export function table<Row>(
  caption: Part,
  columns: readonly Column<Row>[],
  rows: readonly Row[],
  options: TableOptions<Row> = {},
): Html {
  const label = (c: Column<Row>): Part => {
    const words = c.label ?? (options.cards && typeof c.head === "string" ? c.head : undefined);
    return words !== undefined && html` data-label="${words}"`;
  };
  const kind = (c: Column<Row>) => (c.number ? "number" : c.long ? "long" : c.wide ? "wide" : "");
  const head = columns.map((c) => html`<th scope="col" class="${kind(c)}">${c.head}</th>`);
  const body = rows.map((row, i) => {
    const cells = columns.map((c) =>
      c.names
        ? html`<th scope="row" class="${kind(c)}">${c.cell(row, i)}</th>`
        : html`<td class="${kind(c)}"${label(c)}>${c.cell(row, i)}</td>`,
    );
    const rowClass = options.rowClass?.(row, i) ?? "";
    const under = options.under?.(row, i);
    const below =
      under && html`<tr class="under"><td colspan="${columns.length}">${under}</td></tr>\n`;
    return html`<tr class="${rowClass}">${cells}</tr>\n${below}`;
  });
  const className = [options.className, options.cards && "cards"].filter(Boolean).join(" ");
  return html`<div class="table-box"${options.boxId !== undefined && html` id="${options.boxId}"`} tabindex="0" role="group" aria-label="table: ${caption}"><table class="${className}">
<caption>${caption}</caption>
<thead><tr>${head}</tr></thead>
<tbody>
${body}</tbody></table></div>`;
}

/** Name and value pairs. */
export function facts(pairs: readonly (readonly [name: Part, value: Part])[]): Html {
  return html`<dl class="facts">${pairs.map(([k, v]) => html`<div><dt>${k}</dt><dd>${v}</dd></div>`)}</dl>`;
}

/** The same, one pair per line, for long values. */
export function rows(pairs: readonly (readonly [name: Part, value: Part])[]): Html {
  return html`<dl class="rows">${pairs.map(([k, v]) => html`<div><dt>${k}</dt><dd>${v}</dd></div>`)}</dl>`;
}

export function list(items: readonly Part[]): Html {
  return html`<ul>${items.map((i) => html`<li>${i}</li>`)}</ul>`;
}

/** More of the same, folded away; opened for printing by the page's script. */
export function folded(summary: Part, ...body: readonly Part[]): Html {
  return html`<details><summary>${summary}</summary>${body}</details>`;
}
