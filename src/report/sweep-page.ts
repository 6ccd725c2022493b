/** The page of a sweep: one file that stands alone. */

import type { SweepStudy } from "../study/results-sweep.ts";
import { cautionsSection } from "./closing-sections.ts";
import { named } from "./html.ts";
import { framedPage } from "./page-frame.ts";
import { branchesFigure, courseFigure, frontFigure, shownLine } from "./study/sweep-figures.ts";
import { chartsData, pageInputs, sources, studyLimits } from "./study-page.ts";
import {
  branchesSection,
  courseSection,
  findingsSection,
  frontSection,
  rowsSection,
} from "./sweep-section.ts";
import type { PageInput } from "./types.ts";

/** The whole HTML page. The same study and input give the same bytes. */
export function renderSweep(study: SweepStudy, input: PageInput): string {
  const line = shownLine(study);
  return framedPage(
    {
      title: `${study.title}: ${study.rows.length} variants`,
      name: named(study.title),
      tagline: `What ${study.parameters.map((p) => p.name).join(" and ")} does to noise and modes`,
      skip: "To the findings",
      source: sources(study.files),
      chapters: [
        { title: "Findings", sections: [["findings", "Findings", findingsSection(study)]] },
        {
          title: "Variants",
          sections: [
            ["front", "Light and quiet", frontSection(study)],
            ["course", "Noise", line && courseSection(study, line)],
            ["rows", "All variants", rowsSection(study)],
          ],
        },
        { title: "Why", sections: [["branches", "Modes", line && branchesSection(study, line)]] },
        {
          title: "Model",
          sections: [
            ["limits", "Limits", studyLimits(false)],
            ["cautions", "Cautions", cautionsSection()],
          ],
        },
        { title: "Inputs", sections: [["inputs", "Inputs", pageInputs(study.files, input)]] },
      ],
      data: chartsData(study.title, {
        "front-chart": frontFigure(study),
        "course-chart": line && courseFigure(study, line),
        "branches-chart": line && branchesFigure(study, line),
      }),
    },
    input,
  );
}
