/** What every page is set in: head, policy, style, contents, data and scripts. One file that stands alone. */

import type { PageData } from "./client/types.ts";
import { contentPolicy, dataElement, inlineScript } from "./embed.ts";
import { type Html, html, type Part, raw } from "./html.ts";
import { clientScript } from "./script.ts";
import { styleSheet } from "./style.ts";
import type { PageInput } from "./types.ts";

/** A section with its title in the contents; absent where it has nothing to say. */
export type Entry = readonly [id: string, title: string, body: Html | undefined];

export interface PageParts {
  /** of the window */
  readonly title: string;
  /** what the page is about, and what it says of it */
  readonly name: Part;
  readonly tagline: string;
  /** words of the link that leads past the contents */
  readonly skip: string;
  /** "by ... from ..." under the page */
  readonly source: Part;
  readonly sections: readonly Entry[];
  readonly data: PageData;
}

/** The whole HTML page. The same parts and input give the same bytes. */
export function framedPage(parts: PageParts, input: PageInput): string {
  const sections = parts.sections.filter(([, , body]) => body !== undefined);
  const scripts = [inlineScript(input.plotly), inlineScript(clientScript())];
  const page = html`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="generator" content="stillpoint">
<meta http-equiv="Content-Security-Policy" content="${contentPolicy(scripts)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
<title>${parts.title}</title>
<style>${raw(styleSheet())}</style>
</head>
<body>
<a class="skip" href="#main">${parts.skip}</a>
${heading(parts, sections)}
<main id="main">
${sections.map(([, , body]) => html`${body}\n`)}</main>
<footer><p>Made by stillpoint ${input.version} from ${parts.source}. This page carries everything it needs and asks no network for anything.</p></footer>
${dataElement("report-data", parts.data)}
${scripts.map((s) => html`${s.tag}\n`)}</body>
</html>
`;
  return page.html;
}

function heading({ name, tagline }: PageParts, sections: readonly Entry[]): Html {
  const links = sections.map(([id, title]) => html`<li><a href="#${id}">${title}</a></li>`);
  return html`<header>
<h1>${name}</h1><p>${tagline}</p>
<nav aria-label="contents"><ul>${links}</ul></nav>
</header>`;
}
