/** The report: one page that stands alone. */

import { campbellData } from "./campbell.ts";
import { campbellSection } from "./campbell-section.ts";
import { casesSection } from "./cases-section.ts";
import { checkSection } from "./check-section.ts";
import type { PageData } from "./client/types.ts";
import { cautionsSection, inputsSection, limitsSection } from "./closing-sections.ts";
import { displayData } from "./display.ts";
import { thereOf, WIDE_ONLY } from "./figure.ts";
import { filtersFigure } from "./filters-figure.ts";
import { filtersSection } from "./filters-section.ts";
import { html, named } from "./html.ts";
import { levellingSection } from "./levelling-section.ts";
import { leverFigure } from "./lever-figure.ts";
import { mapsData } from "./map-data.ts";
import { mapSection } from "./map-section.ts";
import { massesSection } from "./masses-section.ts";
import { modelSection } from "./model-section.ts";
import { firstMode, modesSection, modeWords } from "./modes-section.ts";
import { mountsSection } from "./mounts-section.ts";
import { type Chapter, framedPage } from "./page-frame.ts";
import { DARK, LIGHT, motionScale } from "./palette.ts";
import { withProse } from "./prose.ts";
import { rankingSection } from "./ranking-section.ts";
import { spectraData } from "./spectra.ts";
import { spectraSection } from "./spectra-section.ts";
import { sureFigures, sureSection } from "./sure/sure-section.ts";
import type { Analysed, ReportInput } from "./types.ts";
import { verdictSection } from "./verdict-section.ts";

/** In the order in which a reader asks: what, where, why, how sure, of what, from what. */
function chapters(analysis: Analysed, input: ReportInput, words: readonly string[]): Chapter[] {
  return [
    { title: "Verdict", sections: [["verdict", "Verdict", verdictSection(analysis)]] },
    {
      title: "Places",
      sections: [
        ["ranking", "Ranking", rankingSection(analysis)],
        ["map", "Quiet map", mapSection(analysis)],
        ["filters", "Filtering", filtersSection(analysis)],
        ["levelling", "Self-level flight", levellingSection(analysis)],
      ],
    },
    {
      title: "Why",
      sections: [
        ["modes", "Mode shapes", modesSection(analysis, words)],
        ["interference", "Motor speed and modes", campbellSection(analysis)],
        ["spectra", "Noise and causes", spectraSection(analysis)],
        ["mounts", "Mounts", mountsSection(analysis)],
        ["cases", "Other states", casesSection(analysis)],
      ],
    },
    {
      title: "How sure",
      sections: [
        ["sure", "How sure", sureSection(analysis, input.fileName, input.sure)],
        ["check", "Tap test", checkSection(analysis)],
      ],
    },
    {
      title: "Model",
      sections: [
        ["model", "How it was worked out", modelSection(analysis)],
        ["masses", "Masses", massesSection(analysis)],
        ["limits", "Limits", limitsSection(analysis)],
        ["cautions", "Cautions", cautionsSection()],
      ],
    },
    { title: "Inputs", sections: [["inputs", "Inputs", inputsSection(analysis, input)]] },
  ];
}

/** The whole HTML page. The same analysis and input give the same bytes. */
export function renderReport(analysed: Analysed, input: ReportInput): string {
  const analysis = withProse(analysed);
  const data = pageData(analysis, input);
  return framedPage(
    {
      title: `${analysis.model.name}: where the sensor stack should sit`,
      name: named(analysis.model.name),
      tagline: "Where the sensor stack should sit, and why",
      skip: "To the verdict",
      source: html`<code>${input.fileName}</code>`,
      chapters: chapters(analysis, input, data.shapes?.words ?? []),
      data,
    },
    input,
  );
}

function pageData(analysis: Analysed, input: ReportInput): PageData {
  const campbell = campbellData(analysis);
  const spectra = spectraData(analysis);
  const maps = mapsData(analysis);
  const shapes = analysis.modes.described.length > 0 ? displayData(analysis) : undefined;
  return {
    name: analysis.model.name,
    themes: { light: LIGHT, dark: DARK },
    wideOnly: WIDE_ONLY,
    ...(campbell && { campbell }),
    ...(spectra && { spectra }),
    charts: thereOf({
      "filters-chart": filtersFigure(analysis),
      "lever-chart": leverFigure(analysis),
      ...sureFigures(analysis, input.sure),
    }),
    ...(maps && { maps }),
    ...(shapes && {
      shapes: {
        ...shapes,
        words: shapes.motions.map((_, i) => modeWords(analysis, i + 1, shapes.atMark?.[i])),
        first: firstMode(analysis, shapes.motions.length),
        scale: motionScale(),
      },
    }),
  };
}
