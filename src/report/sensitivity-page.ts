/** The page of what moves a frame: one file that stands alone. */

import type { SensitivityStudy } from "../study/sensitivity-study.ts";
import { cautionsSection, FRAME_LIMITS } from "./closing-sections.ts";
import { type Html, html, named } from "./html.ts";
import { type Chapter, framedPage } from "./page-frame.ts";
import { list, section } from "./section.ts";
import { chartsData, pageInputs, sources } from "./study-page.ts";
import { helpFinding, helpPart } from "./sure/help.ts";
import { moversTable, movingSpot } from "./sure/movers.ts";
import { answerPart, modesPart, notesOf, sensitivityFigures } from "./sure/sensitivity-sections.ts";
import { movedSet } from "./sure/set.ts";
import type { ReportInput } from "./types.ts";

/** The whole HTML page. The same study and input give the same bytes. */
export function renderSensitivity(
  title: string,
  found: SensitivityStudy,
  input: ReportInput,
): string {
  const study = movedSet(found);
  const files = [{ path: input.fileName, hash: input.fileHash }];
  return framedPage(
    {
      title: `${title}: what moves its modes and its noise`,
      name: named(title),
      tagline: "Which numbers of the file move its modes and its noise, and what would help",
      skip: "To the answer",
      source: sources(files),
      chapters: chapters(study, input),
      data: chartsData(title, sensitivityFigures(study)),
    },
    input,
  );
}

function chapters(study: SensitivityStudy, input: ReportInput): Chapter[] {
  const files = [{ path: input.fileName, hash: input.fileHash }];
  return [
    { title: "Answer", sections: [["answer", "Answer", answerPart(study)]] },
    {
      title: "What would help",
      sections: [["help", "What would help", helpSection(study, input.fileName)]],
    },
    {
      title: "What moves it",
      sections: [
        ["figures", "The noise", figuresSection(study)],
        ["modes", "The modes", modesPart(study)],
      ],
    },
    {
      title: "Limits",
      sections: [
        ["limits", "Limits", limitsSection(study)],
        ["cautions", "Cautions", cautionsSection()],
      ],
    },
    { title: "Inputs", sections: [["inputs", "Inputs", pageInputs(files, input)]] },
  ];
}

function helpSection({ suggested }: SensitivityStudy, frame: string): Html | undefined {
  if (!suggested) return undefined;
  const finding = helpFinding(suggested);
  return section("help", "What would help", { finding }, helpPart(suggested, frame));
}

/** undefined where there is no spot. */
function figuresSection({ table, spot }: SensitivityStudy): Html | undefined {
  if (spot === undefined) return undefined;
  const movers = movingSpot(table, spot);
  const still = table.rows.length - movers.length;
  const { name } = table.spots[spot];
  const [count, inputs] = [movers.length, table.rows.length];
  return section(
    "figures",
    "All figures of the noise",
    {
      finding: `${count} of the ${inputs} numbers in the file that can be moved change the noise at “${name}”${still > 0 ? `; the other ${still === 1 ? "one does" : `${still} do`} less than 0.005\u00a0dB to it` : ""}.`,
      how: "Levels are those of frames computed at both ends; for one unit and for 1 % more they are means between the ends. Each path is written as --set and --vary take it.",
    },
    moversTable(`Inputs that move the noise at “${name}”, most first`, movers, "dB"),
  );
}

const LIMITS: readonly string[] = [
  "How the noise changes beyond the range that is shown is not known from it: levels rise and fall as resonances move.",
  "One input is moved at a time. What two of them do together is not their sum where a resonance lies between.",
  "Frequencies follow their slopes, straight from the drawing; far from it they bend.",
  "Suggestions look at vibration and weight alone, not at strength, and not at what is left undrawn.",
];

function limitsSection(study: SensitivityStudy): Html {
  const notes = notesOf(study.table);
  return section(
    "limits",
    "What to trust, and how far",
    {
      finding:
        "Trust which inputs matter, and which way they move the frame, more than by how much.",
    },
    html`<div class="columns"><div><h3>Of these figures</h3>${list([...LIMITS, ...notes])}</div><div><h3>Of every frame</h3>${list(FRAME_LIMITS)}</div></div>`,
  );
}
