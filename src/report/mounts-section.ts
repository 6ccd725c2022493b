/** The first place screwed down and on soft mounts, side by side. */

import type { FlagKind, MountRow, Ranking } from "../ranking/types.ts";
import { delayWords } from "./filters-words.ts";
import { flagLines } from "./flag-list.ts";
import { type Html, html, type Part } from "./html.ts";
import { decibels, degreesPerSecond, inColumn } from "./numbers.ts";
import { quoted } from "./place-names.ts";
import { listed } from "./ranking-words.ts";
import { type Column, folded, list, section, table } from "./section.ts";
import type { Analysed } from "./types.ts";
import { term } from "./words.ts";

/** What the flags of mounts are about, for those who ask. */
const MEANINGS: Partial<Readonly<Record<FlagKind, string>>> = {
  "in the control band":
    "the rate loop can drive a mode that turns the stack. A loop gain above 1 there is unstable where the phase is unlucky; 0.5 leaves the usual margin.",
  "isolators too soft":
    "a motion lies where the rate loop works, which then moves the stack on its mounts.",
  "isolators in resonance at hover":
    "a motion lies within 10 % of once per turn in hover, where the mounts magnify it.",
  "isolators close to resonance at hover":
    "a motion lies within 20 % of once per turn in hover, which differs by a few per cent from motor to motor and with the battery.",
  "isolators do not isolate":
    "mounts take away what shakes faster than 1.4 times their bounce; in hover the motors are slower than that, and screws pass on less.",
};

/** undefined without a ranking or mounts to compare. */
export function mountsSection({ ranking }: Analysed): Html | undefined {
  const [first] = ranking?.candidates ?? [];
  if (!ranking || !first || ranking.mounts.length === 0) return undefined;
  const { mounts } = ranking;
  return section(
    "mounts",
    "Mounts",
    {
      finding: mountsFinding(ranking),
      how: html`The first place, ${quoted(first.candidate.name)}, screwed down and on soft mounts. These take away what shakes well above their own motions’ frequencies and magnify what meets them (${term("resonance")}); too soft, and the stack moves where the rate loop works.`,
    },
    table(`Mounts at ${quoted(first.candidate.name)}`, columns(mounts), mounts, {
      className: "mounts",
      cards: true,
      under: ({ flags }) => flagLines(flags, { explained: false }),
    }),
    advice(mounts),
    meanings(mounts),
  );
}

function columns(mounts: readonly MountRow[]): Column<MountRow>[] {
  const [{ gyro: screwed }] = mounts;
  const loudest = Math.max(...mounts.map((m) => m.gyro));
  return [
    { head: "mount", names: true, cell: (m) => html`<strong>${m.name}</strong>` },
    {
      head: html`gyro noise<br><small>deg/s rms</small>`,
      label: "gyro noise, deg/s rms",
      cell: ({ gyro }) =>
        html`<span class="level"><strong>${inColumn(gyro)}</strong><span class="bar" style="--share: ${(gyro / loudest).toFixed(3)}" aria-hidden="true"></span></span>`,
    },
    {
      head: "against screws",
      number: true,
      cell: (m) => (m.modes ? decibels(20 * Math.log10(m.gyro / screwed)) : ""),
    },
    {
      head: html`acceleration<br><small>g rms</small>`,
      label: "acceleration, g rms",
      number: true,
      cell: (m) => inColumn(m.accel),
    },
    { head: "filter delay", number: true, cell: ({ filter }) => delayWords(filter.without) },
    {
      head: html`filter delay<br><small>with notches</small>`,
      label: "with notches",
      number: true,
      cell: ({ filter }) => delayWords(filter.with),
    },
    {
      head: html`motions on the mounts<br><small>Hz</small>`,
      label: "motions on the mounts, Hz",
      wide: true,
      cell: ({ modes }) => (modes ? motionsWords(modes) : html`<span class="quiet">none</span>`),
    },
  ];
}

/** "sway 101, twist 148, bounce 166, roll rocking 227, pitch rocking 230": low to high, pairs that are alike as one */
export function motionsWords(
  modes: readonly { readonly motion: string; readonly frequency: number }[],
): string {
  const shown = new Map<string, string[]>();
  for (const { motion, frequency } of modes.toSorted((a, b) => a.frequency - b.frequency)) {
    const at = inColumn(frequency);
    const pair = motion.startsWith("sway")
      ? "sway"
      : motion.endsWith("rocking")
        ? "rocking"
        : motion;
    const key = `${pair}@${at}`;
    shown.set(key, [...(shown.get(key) ?? []), motion]);
  }
  return [...shown]
    .map(([key, motions]) => {
      const [pair, at] = key.split("@");
      return `${motions.length > 1 ? pair : motions[0]} ${at}`;
    })
    .join(", ");
}

/** What to do, once for all mounts that it is about. */
function advice(mounts: readonly MountRow[]): Part {
  const holders = new Map<string, string[]>();
  for (const { name, flags } of mounts) {
    // Mounts of the same proportions differ in what they have now alone.
    for (const { advice: what } of flags) {
      const key = what?.replace(/ \(now [^)]*\)/, "");
      if (key) holders.set(key, [...(holders.get(key) ?? []), name]);
    }
  }
  const items = [...holders].map(
    ([what, names]) => html`<strong>${listed(names.map(quoted))}:</strong> ${what}.`,
  );
  return items.length > 0 && html`<h3>What to do about soft mounts here</h3>${list(items)}`;
}

function meanings(mounts: readonly MountRow[]): Part {
  const kinds = new Set(mounts.flatMap((m) => m.flags.map((f) => f.kind)));
  const items = [...kinds].flatMap((kind) => {
    const text = MEANINGS[kind];
    return text === undefined ? [] : [html`<strong>${kind}</strong>: ${text}`];
  });
  return items.length > 0 && folded("What the flags mean", list(items));
}

/** Which mount is quietest, and which of those without a flag. */
export function mountsFinding({ mounts }: Pick<Ranking, "mounts">): string {
  const quietest = (rows: readonly MountRow[]) => rows.reduce((a, b) => (b.gyro < a.gyro ? b : a));
  const said = (m: MountRow) => `${quoted(m.name)}, ${degreesPerSecond(m.gyro)} rms`;
  const all = quietest(mounts);
  const quieter = (than: MountRow) =>
    than === all ? "" : ` Quieter still, but flagged: ${said(all)} (${flagged(all)}).`;
  const clear = mounts.filter((m) => m.flags.length === 0);
  if (clear.length > 0) {
    const best = quietest(clear);
    return best === all
      ? `The quietest has no flag: ${said(best)}.`
      : `The quietest of those without a flag: ${said(best)}.${quieter(best)}`;
  }
  const usable = mounts.filter((m) => !m.flags.some((f) => f.hard));
  if (usable.length === 0) return `Every one is to be avoided; the quietest: ${said(all)}.`;
  const best = quietest(usable);
  return `Every one has a flag; the quietest that is not to be avoided: ${said(best)} (${flagged(best)}).${quieter(best)}`;
}

function flagged({ flags }: MountRow): string {
  return [...new Set(flags.map((f) => f.kind.replace(/^isolators /, "")))].join(", ");
}
