/** The page of a comparison, or of one frame's uncertainty: one file that stands alone. */

import type { ComparisonStudy } from "../study/results.ts";
import type { PageData } from "./client/types.ts";
import { cautionsSection, FRAME_LIMITS, readable } from "./closing-sections.ts";
import { type Figure, thereOf, WIDE_ONLY } from "./figure.ts";
import { type Html, html, named } from "./html.ts";
import { type Chapter, framedPage } from "./page-frame.ts";
import { DARK, LIGHT } from "./palette.ts";
import { list, rows, section } from "./section.ts";
import { answerFigure, answerSection } from "./study/answer.ts";
import { frequenciesFigure } from "./study/frequencies-figure.ts";
import { crossingsSection, frequenciesSection } from "./study/frequencies-section.ts";
import { delaySection, noiseSection } from "./study/noise-section.ts";
import { delayFigure, spotsFigure } from "./study/spots-figure.ts";
import { chancesFigure, sureSection } from "./study/sure-section.ts";
import { changesSection, variantsSection } from "./study/variants-section.ts";
import type { PageInput } from "./types.ts";

/** The whole HTML page. The same study and input give the same bytes. */
export function renderComparison(study: ComparisonStudy, input: PageInput): string {
  const alone = study.variants.length === 1;
  const tagline = alone
    ? "How sure the figures of this frame are"
    : "What changes from variant to variant, and whether it is real";
  return framedPage(
    {
      title: `${study.title}: ${alone ? "how sure its figures are" : `${study.variants.length} variants compared`}`,
      name: named(study.title),
      tagline,
      skip: "To the answer",
      source: sources(study.files),
      chapters: chapters(study, input),
      data: chartsData(study.title, {
        "answer-chart": answerFigure(study),
        "frequencies-chart": frequenciesFigure(study),
        "noise-chart": alone ? undefined : spotsFigure(study),
        "delay-chart": alone ? undefined : delayFigure(study),
        "chances-chart": chancesFigure(study),
      }),
    },
    input,
  );
}

function chapters(study: ComparisonStudy, input: PageInput): Chapter[] {
  const alone = study.variants.length === 1;
  return [
    { title: "Answer", sections: [["answer", "Answer", answerSection(study)]] },
    {
      title: alone ? "Figures" : "Variants",
      sections: [
        ["variants", "Variants", variantsSection(study)],
        ["noise", "Noise", noiseSection(study)],
        ["delay", "Filtering", delaySection(study)],
      ],
    },
    {
      title: "Why",
      sections: [
        ["frequencies", "Modes", frequenciesSection(study)],
        ["crossings", "Near hover", crossingsSection(study)],
      ],
    },
    { title: "How sure", sections: [["sure", "How sure", sureSection(study)]] },
    {
      title: "Model",
      sections: [
        ["changes", alone ? "The frame" : "What they are", changesSection(study)],
        ["limits", "Limits", studyLimits(study.sure !== undefined)],
        ["cautions", "Cautions", cautionsSection()],
      ],
    },
    { title: "Inputs", sections: [["inputs", "Inputs", pageInputs(study.files, input)]] },
  ];
}

/** Data of a page that has plain charts only. */
export function chartsData(
  name: string,
  charts: Readonly<Record<string, Figure | undefined>>,
): PageData {
  return {
    name,
    themes: { light: LIGHT, dark: DARK },
    wideOnly: WIDE_ONLY,
    charts: thereOf(charts),
  };
}

type Files = ComparisonStudy["files"];

export function sources(files: Files): Html {
  return html`${files.map((f, i) => html`${i > 0 && ", "}<code>${f.path}</code>`)}`;
}

const STUDY_LIMITS: readonly string[] = [
  "A variant is the file with its changes and nothing else: screws, joints and wires stay as they are.",
  "Differences are known better than levels: what all variants share, such as the forces of the propellers, is wrong in all of them alike.",
];

const SPREAD_LIMITS: readonly string[] = [
  "Chances and bars are those of the spreads listed above. They know nothing of what the model lacks, and most of the spreads are common practice without a source.",
  "The drawn inputs are independent of each other, and alike in all variants of one sample: the comparison is between frames made from one batch.",
  "A difference is called real where nine of ten frames have it, also after the error of so many samples, and where it is 0.5 dB or more; both bounds are common practice, no source.",
];

export function studyLimits(sampled: boolean): Html {
  return section(
    "limits",
    "What to trust, and how far",
    {
      finding:
        "Trust differences between variants and the order of places more than levels: what all share is wrong in all alike.",
    },
    html`<div class="columns"><div><h3>Of this comparison</h3>${list([...STUDY_LIMITS, ...(sampled ? SPREAD_LIMITS : [])])}</div><div><h3>Of every frame</h3>${list(FRAME_LIMITS)}</div></div>`,
  );
}

export function pageInputs(files: Files, input: PageInput): Html {
  return section(
    "inputs",
    "Where this report comes from",
    "",
    rows([
      ...files.flatMap(
        ({ path, hash }) =>
          [
            ["frame file", html`<code>${path}</code>`],
            ["SHA-256 of the file", html`<code class="hash">${hash}</code>`],
          ] as const,
      ),
      ["program", html`stillpoint ${input.version}`],
      ["options", input.options === "" ? "none" : html`<code>${input.options}</code>`],
      ...(input.created === undefined
        ? []
        : ([
            ["written", html`<time datetime="${input.created}">${readable(input.created)}</time>`],
          ] as const)),
    ]),
  );
}
