/** The first place screwed down and on other mounts. */

import type { Flag, MountRow, Ranking } from "../../ranking/types.ts";
import type { IsolatorFlagKind } from "../../response/isolator-flags.ts";
import {
  CLOSE,
  CONTROL_MARGIN,
  IN_RESONANCE,
  ISOLATES_BELOW,
} from "../../response/suitable-stiffness.ts";
import type { Ink } from "../terminal/ink.ts";
import { digits, quantity, shortest, wholePercent } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { renderTable } from "../terminal/table.ts";
import { bullets, wrap } from "../terminal/wrap.ts";

const RIGHT = { align: "right" } as const;

/** @param hover of the motors, Hz */
export function mountsText(
  {
    mounts,
    candidates,
    controlBandwidth,
  }: Pick<Ranking, "mounts" | "candidates" | "controlBandwidth">,
  hover: number,
  ink: Ink,
): string {
  const columns = [
    { title: "Mount", least: 16 },
    { title: "Motions", unit: "Hz", ...RIGHT },
    { title: "Gyro", unit: "deg/s", ...RIGHT },
    { title: "Acc.", unit: "g", ...RIGHT },
    { title: "Delay", unit: "ms", ...RIGHT },
    { title: "Notches", unit: "ms", ...RIGHT },
  ];
  const rows = mounts.map(({ name, modes, gyro, accel, filter }) => [
    name,
    motionsText(modes),
    digits(gyro),
    digits(accel),
    delayText(filter.without),
    delayText(filter.with),
  ]);
  const name = printable(candidates[0]?.candidate.name ?? "");
  return (
    renderTable(columns, rows, {
      headingInk: ink.quiet,
      under: (r) => {
        const short = mounts[r].flags.map(({ kind }) => shortKind(kind));
        return short.length === 0 ? "" : wrap(short.join("; "), "    ");
      },
    }) +
    wrap(
      `All of them at "${name}". Motions: lowest and highest natural frequency of the stack on its mounts. Delay: of the least low-pass, Notches: with notches too.`,
    ) +
    bullets([...kindTexts(mounts, hover, controlBandwidth), ...adviceTexts(mounts)])
  );
}

function motionsText(modes: MountRow["modes"]): string {
  if (modes === undefined || modes.length === 0) return "";
  const frequencies = modes.map(({ frequency }) => frequency);
  return `${digits(Math.min(...frequencies))} to ${digits(Math.max(...frequencies))}`;
}

function delayText({ attainable, delay }: MountRow["filter"]["without"]): string {
  return attainable ? digits(1e3 * delay) : "n/a";
}

const SHORT: Readonly<Record<IsolatorFlagKind, string>> = {
  "isolators too soft": "too soft",
  "isolators in resonance at hover": "in resonance at hover",
  "isolators close to resonance at hover": "close to resonance at hover",
  "isolators do not isolate": "no isolation",
};

function isOfIsolators(kind: Flag["kind"]): kind is IsolatorFlagKind {
  return Object.hasOwn(SHORT, kind);
}

function shortKind(kind: Flag["kind"]): string {
  return isOfIsolators(kind) ? SHORT[kind] : kind;
}

/** What the short words mean, for those that stand in the table. */
function kindTexts(mounts: readonly MountRow[], hover: number, bandwidth: number): string[] {
  const turns = quantity(hover, "Hz");
  const meanings: Readonly<Record<IsolatorFlagKind, string>> = {
    "isolators too soft": `a motion lies below ${quantity(CONTROL_MARGIN * bandwidth, "Hz")}, ${CONTROL_MARGIN} times the bandwidth of the rate loop, which then moves the stack on its mounts`,
    "isolators in resonance at hover": `a motion lies within ${wholePercent(IN_RESONANCE)} of once per turn in hover (${turns})`,
    "isolators close to resonance at hover": `a motion lies within ${wholePercent(CLOSE)} of it (${turns}), and hover differs from motor to motor and with the battery`,
    "isolators do not isolate": `the bounce lies above ${quantity(ISOLATES_BELOW * hover, "Hz")}, ${shortest(ISOLATES_BELOW)} of once per turn in hover, so that at hover they pass on more than screws do`,
  };
  const found = new Set(mounts.flatMap(({ flags }) => flags.map(({ kind }) => kind)));
  return [...found].filter(isOfIsolators).map((kind) => `${SHORT[kind]}: ${meanings[kind]}`);
}

/** What to do, once for all mounts to which it applies; without their names where it is one for all. */
function adviceTexts(mounts: readonly MountRow[]): string[] {
  const holders = new Map<string, string[]>();
  for (const { name, flags } of mounts) {
    for (const { text } of flags) {
      const advice = adviceIn(text);
      if (advice !== "") holders.set(advice, [...(holders.get(advice) ?? []), name]);
    }
  }
  return [...holders].map(([advice, names]) => {
    const which = holders.size === 1 ? "What to do" : names.map(printable).join("; ");
    return `${which}: ${printable(advice)}`;
  });
}

/**
 * What stands behind the first semicolon of a flag of isolators; without the stiffness they have now,
 * which keeps the same advice apart.
 */
function adviceIn(text: string): string {
  const [, ...advice] = text.split("; ");
  return advice.join("; ").replace(/ \(now [^)]*\)/, "");
}
