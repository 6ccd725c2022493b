/** What vibration does to the chips themselves: offsets it leaves behind, and how near the ends it comes. */

import type { RankedCandidate, Ranking } from "../ranking/types.ts";
import type { Clipping } from "../sensing/clipping.ts";
import { type Html, html, type Part } from "./html.ts";
import { inDegrees, percent, rpm, three, withUnit } from "./numbers.ts";
import { type Labelled, labelled, placeName, quoted } from "./place-names.ts";
import { folded, table } from "./section.ts";

/** Rows that are shown before the table is folded away, where nothing clips. */
const SHORT = 3;

export function chipsPart({ candidates }: Pick<Ranking, "candidates">): Part {
  const clips = candidates.some(({ clipping: c }) =>
    [c.gyro, c.accelerometer, c.levelling].some((one) => one?.clipped),
  );
  const all = chipsTable(candidates);
  return html`<h3>What vibration does to the chips</h3>
<p class="finding">${chipsFinding(candidates)}</p>
<p class="lead">A chip clips where vibration and steady part together go beyond its range. And where it is not quite linear, vibration leaves an offset behind: the gyro’s at the loudest speed that is flown, the accelerometer’s at the loudest up to 1.5 times hover.</p>
${clips || candidates.length <= SHORT ? all : folded("Offsets and peaks, place by place", all)}`;
}

function chipsTable(candidates: readonly RankedCandidate[]): Html {
  return table(
    "Offsets and peaks at the worst speed, place by place",
    [
      { head: "place", names: true, cell: placeName },
      {
        head: html`gyro offset<br><small>deg/s</small>`,
        label: "gyro offset, deg/s",
        number: true,
        cell: ({ place: { rectified } }: Labelled) => three(rectified.gyro, 2),
      },
      {
        head: html`accelerometer offset<br><small>g, and the tilt it may mean</small>`,
        label: "accelerometer offset, g",
        number: true,
        cell: ({ place: { rectified } }: Labelled) =>
          html`${three(rectified.accelerometer, 2)} <small class="axis">${inDegrees(rectified.tilt)} degrees</small>`,
      },
      {
        head: html`gyro peak<br><small>of its range</small>`,
        label: "gyro peak",
        number: true,
        cell: ({ place: { clipping } }: Labelled) => peak(clipping.gyro, "deg/s"),
      },
      {
        head: html`accelerometer peak<br><small>of its range</small>`,
        label: "accelerometer peak",
        number: true,
        cell: ({ place: { clipping } }: Labelled) => peak(clipping.accelerometer, "g"),
      },
      {
        head: html`the same in self-level flight<br><small>of its range</small>`,
        label: "the same in self-level flight",
        number: true,
        cell: ({ place: { clipping } }: Labelled) => peak(clipping.levelling, "g"),
      },
    ],
    labelled(candidates),
    { className: "by-place", cards: true },
  );
}

/** "10.7 g, 67 %, along x at 16 900 rpm" */
function peak(c: Clipping | undefined, unit: string): Part {
  if (!c) return html`<span class="quiet">not flown</span>`;
  const clips = c.clipped && html`<strong class="hard">clips: </strong>`;
  return html`${clips}${withUnit(c.peak, unit)} <small>${percent(c.share, 2)}</small> <small class="axis">along ${"xyz"[c.axis]} at ${rpm(c.speed)}</small>`;
}

/** Where the accelerometer comes nearest to its end, or how many places clip. */
export function chipsFinding(candidates: readonly RankedCandidate[]): string {
  const of = (key: keyof RankedCandidate["clipping"], words: string) => {
    const all = candidates.filter((c) => c.clipping[key]);
    if (all.length === 0) return "";
    const share = (c: RankedCandidate) => c.clipping[key]?.share ?? 0;
    const worst = all.reduce((a, b) => (share(b) > share(a) ? b : a));
    const clipped = all.filter((c) => c.clipping[key]?.clipped).length;
    const count = clipped > 0 ? `, beyond it at ${clipped} of ${all.length} places` : "";
    return ` ${words} comes to ${percent(share(worst), 2)} of its range at most, at ${quoted(worst.candidate.name)}${count}.`;
  };
  const levelling = of("levelling", "In self-level flight the accelerometer");
  return `${of("gyro", "The gyro")}${of("accelerometer", "The accelerometer")}${levelling}`.trim();
}
