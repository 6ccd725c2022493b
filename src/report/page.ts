/** The report: one page that stands alone. */

import { campbellFigure } from "./campbell.ts";
import { campbellSection, spectraSection } from "./charts-sections.ts";
import type { PageData } from "./client/types.ts";
import { cautionsSection, checkSection, inputsSection, limitsSection } from "./closing-sections.ts";
import { displayData } from "./display.ts";
import { contentPolicy, dataElement, inlineScript } from "./embed.ts";
import { WIDE_ONLY } from "./figure.ts";
import { type Html, html, named, raw } from "./html.ts";
import { massesSection } from "./masses-section.ts";
import { modelSection } from "./model-section.ts";
import { firstMode, modesSection, modeWords } from "./modes-section.ts";
import { DARK, LIGHT, motionScale } from "./palette.ts";
import { rankingSection } from "./ranking-section.ts";
import { clientScript } from "./script.ts";
import { spectraFigures } from "./spectra.ts";
import { styleSheet } from "./style.ts";
import type { Analysed, ReportInput } from "./types.ts";
import { verdictSection } from "./verdict-section.ts";

const CONTENTS: readonly (readonly [id: string, title: string])[] = [
  ["verdict", "Verdict"],
  ["ranking", "Ranking"],
  ["modes", "Mode shapes"],
  ["interference", "Motor speed and modes"],
  ["spectra", "Noise"],
  ["masses", "Masses"],
  ["model", "Model"],
  ["limits", "Limits"],
  ["check", "Tap test"],
  ["cautions", "Cautions"],
  ["inputs", "Inputs"],
];

/** The whole HTML page. The same analysis and input give the same bytes. */
export function renderReport(analysis: Analysed, input: ReportInput): string {
  const data = pageData(analysis);
  const drawn = data.shapes?.shapes.length ?? 0;
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
${heading(analysis)}
<main id="main">
${verdictSection(analysis)}
${rankingSection(analysis)}
${modesSection(analysis, drawn)}
${campbellSection(analysis)}
${spectraSection(analysis)}
${massesSection(analysis)}
${modelSection(analysis)}
${limitsSection(analysis)}
${checkSection(analysis)}
${cautionsSection()}
${inputsSection(analysis, input)}
</main>
<footer><p>Made by stillpoint ${input.version} from <code>${input.fileName}</code>. This page carries everything it needs and asks no network for anything.</p></footer>
${dataElement("report-data", data)}
${scripts.map((s) => html`${s.tag}\n`)}</body>
</html>
`;
  return page.html;
}

function heading({ model }: Analysed): Html {
  const links = CONTENTS.map(([id, title]) => html`<li><a href="#${id}">${title}</a></li>`);
  return html`<header>
<h1>${named(model.name)}</h1><p>Where the sensor stack should sit, and why</p>
<nav aria-label="contents"><ul>${links}</ul></nav>
</header>`;
}

function pageData(analysis: Analysed): PageData {
  const campbell = campbellFigure(analysis);
  const spectra = spectraFigures(analysis);
  const shapes = analysis.modes.described.length > 0 ? displayData(analysis) : undefined;
  return {
    themes: { light: LIGHT, dark: DARK },
    wideOnly: WIDE_ONLY,
    ...(campbell && { campbell }),
    ...(spectra && { spectra }),
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
