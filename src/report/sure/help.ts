/** What would help: suggestions as bars, and each with the setting to copy. */

import { formatPath } from "../../frame/file-path.ts";
import { listed } from "../../ranking/words.ts";
import type { Suggestion, Suggestions } from "../../study/suggest-types.ts";
import { type BarWay, barsFigure, effect } from "../bars-figure.ts";
import { commandText } from "../command-text.ts";
import { chartBox, type Figure } from "../figure.ts";
import { type Html, html } from "../html.ts";
import { three } from "../numbers.ts";

const ID = "help-chart";
const WAY: BarWay = { name: "gyro noise", colour: "--series0", hatched: false };
/** Lighter or heavier by less is no change, kg. */
const SAME = 5e-5;

/** undefined where nothing was found that helps. */
export function helpFigure(suggested: Suggestions | undefined): Figure | undefined {
  if (!suggested || suggested.found.length === 0) return undefined;
  return barsFigure({
    ways: [WAY],
    title: `change of gyro noise at “${suggested.spot ?? ""}”, dB`,
    sides: ["quieter", "louder"],
    rows: suggested.found.map((s) => ({
      name: s.words,
      bars: [
        {
          way: 0,
          value: s.gyro,
          text: `${effect(s.gyro)} dB, ${gramsMore(s)}`,
          words: `${s.words}: ${effect(s.gyro)} dB at ${gramsMore(s)}`,
        },
      ],
    })),
  });
}

/** "+12 g", "no heavier" */
export function gramsMore({ mass }: Pick<Suggestion, "mass">): string {
  return Math.abs(mass) < SAME ? "no heavier" : `${effect(1e3 * mass)} g`;
}

export function helpFinding({ spot, found, none }: Suggestions): string {
  const [first] = found;
  if (!first) return none ?? "";
  const lighter = found.find((s) => s.mass < -SAME && s !== first);
  const told = (s: Suggestion) =>
    `${lowered(s.words)} (${effect(s.gyro)}\u00a0dB, ${gramsMore(s)})`;
  const also = lighter ? ` Quieter and lighter at once: ${told(lighter)}.` : "";
  return `Quietest at “${spot ?? ""}”: ${told(first)}.${also}`;
}

const lowered = (text: string) => `${text.slice(0, 1).toLowerCase()}${text.slice(1)}`;

/** What stands below the finding: charts and settings; undefined where nothing helps. */
export function helpPart(suggested: Suggestions, frame: string): Html | undefined {
  const { found, tried } = suggested;
  if (found.length === 0) return undefined;
  return html`<figure>${chartBox(ID, "bars named", helpFinding(suggested), found.length)}</figure>
<ul class="helps">${found.map((s) => html`<li><p>${s.text}${s.moved.length > 0 && ` Heights that follow: ${listed(s.moved)}.`}</p><p><code>${settingText(s, frame)}</code></p></li>`)}</ul>
<p class="notes">The best of ${three(tried)} changes that a builder could make, each solved anew. They look at vibration and weight alone, not at strength, and not at what is left undrawn. The command under each says whether it is more than what real frames differ by.</p>`;
}

function settingText({ changes }: Suggestion, frame: string): string {
  const settings = changes.flatMap(({ path, written }) => [
    "--set",
    `${formatPath(path)}=${written}`,
  ]);
  return commandText("compare", frame, ...settings);
}
