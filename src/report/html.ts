/**
 * HTML that is safe by construction: whatever is put into the template is escaped unless it is HTML
 * made here. Names from a frame file may hold any visible sign, also tags and quotes.
 */

/** A piece of finished HTML (or SVG). */
export interface Html {
  readonly html: string;
}

/** What a template takes: text is escaped, HTML is not, lists are joined, nothing is left out. */
export type Part = Html | string | number | undefined | false | readonly Part[];

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
  "`": "&#96;",
};

/** Text as it may stand between tags and in quoted attributes. */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"'`]/g, (c) => ENTITIES[c]);
}

/** HTML from a template; attributes must be quoted. */
export function html(strings: TemplateStringsArray, ...parts: readonly Part[]): Html {
  return { html: strings.reduce((all, s, i) => all + write(parts[i - 1]) + s) };
}

/** Marks a text as finished HTML: only for what this program wrote itself. */
export function raw(text: string): Html {
  return { html: text };
}

function write(part: Part): string {
  if (part === undefined || part === false) return "";
  if (typeof part === "number") return String(part);
  if (typeof part === "string") return escapeHtml(part);
  if ("html" in part) return part.html;
  return part.map(write).join("");
}

/** A name from a file, kept from turning the direction of the text around it. */
export function named(name: string): Html {
  return html`<bdi>${name}</bdi>`;
}

/** Parts with a separator between them. */
export function joined(parts: readonly Html[], separator: string): Html {
  return raw(parts.map((p) => p.html).join(escapeHtml(separator)));
}

/**
 * Text for the plot library, which reads a few tags and entities in labels: every sign that could
 * begin one is written as an entity, which it shows as the sign itself.
 */
export function plotText(text: string): string {
  return text.replace(/[&<>]/g, (c) => ENTITIES[c]);
}
