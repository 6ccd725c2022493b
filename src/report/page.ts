/** The report: one page that stands alone. */

import { campbellFigure } from "./campbell.ts";
import { casesSection } from "./cases-section.ts";
import { campbellSection, spectraSection } from "./charts-sections.ts";
import type { PageData } from "./client/types.ts";
import { cautionsSection, checkSection, inputsSection, limitsSection } from "./closing-sections.ts";
import { displayData } from "./display.ts";
import { contentPolicy, dataElement, inlineScript } from "./embed.ts";
import { WIDE_ONLY } from "./figure.ts";
import { filtersFigure } from "./filters-figure.ts";
import { filtersSection } from "./filters-section.ts";
import { type Html, html, named, raw } from "./html.ts";
import { levellingSection } from "./levelling-section.ts";
import { mapsData } from "./map-data.ts";
import { mapSection } from "./map-section.ts";
import { massesSection } from "./masses-section.ts";
import { modelSection } from "./model-section.ts";
import { firstMode, modesSection, modeWords } from "./modes-section.ts";
import { mountsSection } from "./mounts-section.ts";
import { DARK, LIGHT, motionScale } from "./palette.ts";
import { rankingSection } from "./ranking-section.ts";
import { clientScript } from "./script.ts";
import { spectraFigures } from "./spectra.ts";
import { styleSheet } from "./style.ts";
import type { Analysed, ReportInput } from "./types.ts";
import { verdictSection } from "./verdict-section.ts";

/** A section with its title in the contents; absent where it has nothing to say. */
type Entry = readonly [id: string, title: string, body: Html | undefined];

function entries(analysis: Analysed, input: ReportInput, drawn: number): Entry[] {
  const all: Entry[] = [
    ["verdict", "Verdict", verdictSection(analysis)],
    ["ranking", "Ranking", rankingSection(analysis)],
    ["filters", "Filtering", filtersSection(analysis)],
    ["map", "Quiet map", mapSection(analysis)],
    ["levelling", "Self-level flight", levellingSection(analysis)],
    ["mounts", "Mounts", mountsSection(analysis)],
    ["cases", "Other states", casesSection(analysis)],
    ["modes", "Mode shapes", modesSection(analysis, drawn)],
    ["interference", "Motor speed and modes", campbellSection(analysis)],
    ["spectra", "Noise and causes", spectraSection(analysis)],
    ["masses", "Masses", massesSection(analysis)],
    ["model", "Model", modelSection(analysis)],
    ["limits", "Limits", limitsSection(analysis)],
    ["check", "Tap test", checkSection(analysis)],
    ["cautions", "Cautions", cautionsSection()],
    ["inputs", "Inputs", inputsSection(analysis, input)],
  ];
  return all.filter(([, , body]) => body !== undefined);
}

/** The whole HTML page. The same analysis and input give the same bytes. */
export function renderReport(analysis: Analysed, input: ReportInput): string {
  const data = pageData(analysis);
  const drawn = data.shapes?.shapes.length ?? 0;
  const sections = entries(analysis, input, drawn);
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
<title>${analysis.model.name}: where the sensor stack should sit</title>
<style>${raw(styleSheet())}</style>
</head>
<body>
<a class="skip" href="#main">To the verdict</a>
${heading(analysis, sections)}
<main id="main">
${sections.map(([, , body]) => html`${body}\n`)}</main>
<footer><p>Made by stillpoint ${input.version} from <code>${input.fileName}</code>. This page carries everything it needs and asks no network for anything.</p></footer>
${dataElement("report-data", data)}
${scripts.map((s) => html`${s.tag}\n`)}</body>
</html>
`;
  return page.html;
}

function heading({ model }: Analysed, sections: readonly Entry[]): Html {
  const links = sections.map(([id, title]) => html`<li><a href="#${id}">${title}</a></li>`);
  return html`<header>
<h1>${named(model.name)}</h1><p>Where the sensor stack should sit, and why</p>
<nav aria-label="contents"><ul>${links}</ul></nav>
</header>`;
}

function pageData(analysis: Analysed): PageData {
  const campbell = campbellFigure(analysis);
  const spectra = spectraFigures(analysis);
  const filters = filtersFigure(analysis);
  const maps = mapsData(analysis);
  const shapes = analysis.modes.described.length > 0 ? displayData(analysis) : undefined;
  return {
    themes: { light: LIGHT, dark: DARK },
    wideOnly: WIDE_ONLY,
    ...(campbell && { campbell }),
    ...(spectra && { spectra }),
    ...(filters && { filters }),
    ...(maps && { maps }),
    ...(shapes && {
      shapes: {
        ...shapes,
        words: shapes.shapes.map((_, i) => modeWords(analysis, i + 1)),
        first: Math.min(firstMode(analysis), shapes.shapes.length),
        scale: motionScale(),
      },
    }),
  };
}
