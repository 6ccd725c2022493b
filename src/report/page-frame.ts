/** What every page is set in: head, policy, style, contents, data and script. One file that stands alone. */

import type { PageData } from "./client/types.ts";
import { contentPolicy, dataElement, inlineScript, libraryElement } from "./embed.ts";
import { type Html, html, type Part, raw } from "./html.ts";
import { clientScript } from "./script.ts";
import { styleSheet } from "./style.ts";
import type { PageInput } from "./types.ts";
import { wordsSection } from "./words.ts";

/** A section with its title in the contents; absent where it has nothing to say. */
export type Entry = readonly [id: string, title: string, body: Html | undefined];

/** Sections that answer one question of the reader. */
export interface Chapter {
  /** in the contents */
  readonly title: string;
  readonly sections: readonly Entry[];
}

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
  readonly chapters: readonly Chapter[];
  readonly data: PageData;
}

/** The whole HTML page. The same parts and input give the same bytes. */
export function framedPage(parts: PageParts, input: PageInput): string {
  const chapters = [...parts.chapters, WORDS]
    .map((c) => ({ ...c, sections: c.sections.filter(([, , body]) => body !== undefined) }))
    .filter((c) => c.sections.length > 0);
  const script = inlineScript(clientScript());
  const page = html`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="generator" content="stillpoint">
<meta http-equiv="Content-Security-Policy" content="${contentPolicy(script, input.library)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
<title>${parts.title}</title>
<style>${raw(styleSheet())}</style>
</head>
<body>
<a class="skip" href="#main">${parts.skip}</a>
<header><h1>${parts.name}</h1><p>${parts.tagline}</p></header>
${contents(chapters)}
<main id="main">
${chapters.map((c) => html`${c.sections.map(([, , body]) => html`${body}\n`)}`)}</main>
<footer><p class="on-paper">Parts that were folded away on the screen are not printed.</p><p>Made by stillpoint ${input.version} from ${parts.source}. ${ABOUT_LIBRARY[input.library.kind]}</p></footer>
<aside id="word-note" class="word-note" popover tabindex="-1" aria-label="what the word means"><p id="word-says"></p><p><a id="word-more" href="#words">in the list of words</a></p></aside>
${dataElement("report-data", parts.data)}
${libraryElement(input.library)}
${script.tag}
</body>
</html>
`;
  return page.html;
}

const WORDS: Chapter = { title: "Words", sections: [["words", "Words", wordsSection()]] };

const ABOUT_LIBRARY = {
  inside: "This page carries everything it needs and asks no network for anything.",
  beside:
    "This page asks no network for anything; its figures need the plot library that lies in the same folder.",
};

/** Chapters, and under each its sections where there are several. */
function contents(chapters: readonly Chapter[]): Html {
  const link = ([id, title]: Entry) => html`<a href="#${id}">${title}</a>`;
  const items = chapters.map(({ title, sections }) => {
    const [first] = sections;
    const under =
      sections.length > 1 && html`<ul>${sections.map((s) => html`<li>${link(s)}</li>`)}</ul>`;
    return html`<li><a class="chapter" href="#${first[0]}">${title}</a>${under}</li>\n`;
  });
  return html`<nav aria-label="contents"><ul>${items}</ul></nav>`;
}
