/** The first place screwed down and on soft mounts, side by side. */

import type { MountRow, Ranking } from "../ranking/types.ts";
import { delayWords, isFree } from "./filters-words.ts";
import { flagList } from "./flag-list.ts";
import { type Html, html } from "./html.ts";
import { decibels, degreesPerSecond, three } from "./numbers.ts";
import { quoted } from "./place-names.ts";
import { type Column, section, table } from "./section.ts";
import type { Analysed } from "./types.ts";

/** undefined without a ranking or mounts to compare. */
export function mountsSection({ ranking }: Analysed): Html | undefined {
  const [first] = ranking?.candidates ?? [];
  if (!ranking || !first || ranking.mounts.length === 0) return undefined;
  return section(
    "mounts",
    "Mounts",
    html`The first place, ${quoted(first.candidate.name)}, screwed down and on soft mounts. A soft mount takes away what shakes faster than its own frequencies and magnifies what meets them; too soft, and the stack moves where the rate loop works. ${mountsFinding(ranking)}`,
    table(
      `Mounts at ${quoted(first.candidate.name)}`,
      columns(ranking.mounts[0].gyro),
      ranking.mounts,
      { className: "mounts" },
    ),
  );
}

function columns(screwed: number): Column<MountRow>[] {
  return [
    { head: "mount", names: true, cell: (m) => m.name },
    {
      head: html`gyro<br><small>deg/s rms</small>`,
      number: true,
      cell: (m) =>
        html`<strong>${three(m.gyro)}</strong>${m.modes && html` <small class="axis">${decibels(20 * Math.log10(m.gyro / screwed))}</small>`}`,
    },
    {
      head: html`acceleration<br><small>g rms</small>`,
      number: true,
      cell: (m) => three(m.accel),
    },
    {
      head: "filter delay",
      number: true,
      cell: ({ filter }) =>
        html`${delayWords(filter.without)}${!isFree(filter.without) && html` <small class="axis">with notches: ${delayWords(filter.with)}</small>`}`,
    },
    {
      head: html`motions on the mounts<br><small>Hz</small>`,
      cell: ({ modes }) =>
        modes
          ? html`<ul class="plain">${modes.map((m) => html`<li>${m.motion} ${three(m.frequency)}</li>`)}</ul>`
          : html`<span class="quiet">none</span>`,
    },
    { head: "flags", long: true, cell: (m) => flagList(m.flags) },
  ];
}

/** Which mount is quietest, and which of those without a flag. */
export function mountsFinding({ mounts }: Pick<Ranking, "mounts">): string {
  const quietest = (rows: readonly MountRow[]) => rows.reduce((a, b) => (b.gyro < a.gyro ? b : a));
  const said = (m: MountRow) => `${quoted(m.name)}, ${degreesPerSecond(m.gyro)} rms`;
  const all = quietest(mounts);
  const clear = mounts.filter((m) => m.flags.length === 0);
  if (clear.length === 0) return `Every one has a flag; the quietest: ${said(all)}.`;
  const best = quietest(clear);
  if (best === all) return `The quietest has no flag: ${said(best)}.`;
  return `The quietest of those without a flag: ${said(best)}. Quieter still, but flagged: ${said(all)}.`;
}
