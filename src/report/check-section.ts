/** How to check the model with a screwdriver: what to do, and the frequencies to look for. */

import type { BodyPart } from "../model/types.ts";
import type { ModeDescription } from "../modes/types.ts";
import { FREQUENCY_BAND } from "../ranking/order.ts";
import { type Html, html, named, type Part } from "./html.ts";
import { modeLink } from "./mode-link.ts";
import { grams, hertz, inColumn, percent, rpm } from "./numbers.ts";
import { type Column, section, table } from "./section.ts";
import type { Analysed } from "./types.ts";
import { term } from "./words.ts";

/** Modes that a tap test is told to listen for, at most. */
const TAPPED = 6;

/** A mode as a tap test finds it. */
interface Tapped {
  readonly mode: ModeDescription;
  /** of the mode in flight, times what taking the propellers off makes of it, Hz */
  readonly expected: number;
}

export function checkSection(analysed: Analysed): Html {
  const { modes, model, excitation } = analysed;
  const propeller = model.bodies.find((b) => b.role === "propeller");
  const higher = riseWithoutPropellers(model) ?? 0;
  const heard = tappable(modes.described, propeller !== undefined).slice(0, TAPPED);
  const tapped = heard.map(
    (mode): Tapped => ({
      mode,
      expected: mode.frequency * (1 + (armsShare(mode) > 0.5 ? higher : 0)),
    }),
  );
  return section(
    "check",
    "Check it with a tap test",
    {
      finding: finding(tapped, propeller !== undefined),
      how: html`Ten minutes with a screwdriver tell how near the model is to your ${model.arms.length > 0 ? "frame" : "structure"}. The band is ±${percent(FREQUENCY_BAND)}, what modulus ±10 % and thickness ±3 % make of an arm (common practice, no source); loose joints lie lower.`,
    },
    tapped.length > 0 &&
      table(
        propeller ? "Frequencies to look for, propellers off" : "Frequencies to look for",
        columns(propeller !== undefined),
        tapped,
        { className: "taps", cards: true },
      ),
    propeller &&
      higher > 0 &&
      html`<p class="notes">Without its propeller each arm’s end is ${grams(propeller.mass)} lighter, so arms that flap do it about ${percent(higher, higher < 0.1 ? 1 : 2)} faster than in flight: an estimate from the mass alone, up to some 4 % too high. Modes that twist the arms are not listed: without the propellers they rise by far more and change their order.</p>`,
    html`<h3>How</h3><ol>${steps(excitation && rpm(excitation.speeds.hover)).map((s) => html`<li>${s}</li>`)}</ol>`,
    html`<h3>What the peaks say</h3><ul>${READING.map((s) => html`<li>${s}</li>`)}</ul>`,
  );
}

function finding([first]: readonly Tapped[], off: boolean): string {
  if (!first) return "No mode of the frame itself was computed, so there is nothing to tap for.";
  const [low, high] = band(first);
  return `Tapped${off ? " with its propellers off" : ""}, the frame should ring first at about ${hertz(first.expected)}, between ${low} and ${high}\u00a0Hz: ${first.mode.name}.`;
}

const band = ({ expected }: Tapped): readonly [string, string] => [
  inColumn(expected * (1 - FREQUENCY_BAND)),
  inColumn(expected * (1 + FREQUENCY_BAND)),
];

function columns(off: boolean): Column<Tapped>[] {
  const frequency: Column<Tapped> = {
    head: html`look for<br><small>Hz</small>`,
    label: "look for, Hz",
    number: true,
    cell: (t) => html`<strong>${inColumn(t.expected)}</strong>`,
  };
  const inFlight: Column<Tapped> = {
    head: html`in flight<br><small>Hz, propellers on</small>`,
    label: "in flight, Hz",
    number: true,
    cell: ({ mode }) => inColumn(mode.frequency),
  };
  return [
    {
      head: "what moves",
      names: true,
      cell: ({ mode }) =>
        html`${mode.name} <small>mode ${modeLink(mode.number, String(mode.number))}</small>`,
    },
    { head: "tap at", cell: ({ mode }) => tapAt(mode) },
    frequency,
    {
      head: html`fits the model<br><small>Hz</small>`,
      label: "fits the model, Hz",
      number: true,
      cell: (t) => band(t).join(" to "),
    },
    {
      head: html`nearest note<br><small>A4 = 440 Hz</small>`,
      label: "nearest note",
      cell: ({ expected }) => noteOf(expected),
    },
    ...(off ? [inFlight] : []),
  ];
}

function tapAt({ shares, motion }: ModeDescription): Part {
  const most = shares
    .filter((s) => s.kind === "arm" || s.kind === "plate")
    .toSorted((a, b) => b.strain - a.strain)[0];
  if (!most) return "any part";
  if (most.kind === "plate") return html`${named(most.part)}, near its edge`;
  return motion.armTorsion > motion.armFlat
    ? "an arm’s end, beside its middle line"
    : "an arm’s end, upwards";
}

/**
 * Modes whose frequency without propellers can be told from the mass of the arm's end: up to the first
 * that twists the arms or swings them in their plane, for which the end's rotary inertia counts. On the
 * five-inch sample a twisting mode at 456 Hz lies at 584 Hz without propellers.
 */
function tappable(modes: readonly ModeDescription[], propellers: boolean): ModeDescription[] {
  const frame = modes.filter((m) => m.motion.softMount <= 0.5);
  if (!propellers) return frame;
  const turned = frame.findIndex(
    (m) => armsShare(m) > 0.5 && m.motion.armFlat <= 0.5 * armsShare(m),
  );
  return turned < 0 ? frame : frame.slice(0, turned);
}

const armsShare = ({ motion: m }: ModeDescription): number =>
  m.armFlat + m.armEdge + m.armTorsion + m.joint;

const NOTES = ["C", "C♯", "D", "D♯", "E", "F", "F♯", "G", "G♯", "A", "A♯", "B"] as const;

/** Nearest note of equal temperament, A4 at 440 Hz (ISO 16): what a tuner shows. */
export function noteOf(frequency: number): string {
  const key = Math.round(69 + 12 * Math.log2(frequency / 440));
  return `${NOTES[((key % 12) + 12) % 12]}${Math.floor(key / 12) - 1}`;
}

function steps(hover: string | undefined): Part[] {
  return [
    html`<strong>Take the propellers off</strong> and unplug the battery, but leave it and all other parts in place.`,
    "Hang the craft on a long thin thread or rubber band near its centre of gravity, so that it swings slower than once a second.",
    "Tap with a screwdriver’s handle where the table says.",
    "Record with a phone’s microphone held close, a small accelerometer of a gram or less (it lowers what it measures), or the craft’s own gyro, powered over USB through a thin, slack cable (battery unplugged, propellers off).",
    "Look at the spectrum for the lowest peaks that are not a battery or a camera on its soft mount. A peak that only one tap raises belongs to the part tapped.",
    ...(hover === undefined
      ? []
      : [
          `Later, propellers on and away from people, hover carefully at ${hover} and compare the gyro’s own record with the ranking.`,
        ]),
  ];
}

const READING: readonly Part[] = [
  "All peaks inside their bands: the model fits.",
  html`All off by one common factor: multiply the ${term("modulus")} in the file by the square of that factor. 5 % low is a factor of 0.95, squared 0.9.`,
  html`Only the arms’ peaks low: lower ${term("kappa")} of their joints, or tighten the screws.`,
  "Then run the program again.",
];

/**
 * How much higher the arms' modes lie without propellers, as a share: an arm is a spring with a mass
 * at its tip, f ~ 1/sqrt(m), with m = motor and screws, and propeller and nut where it is on. The
 * arm's own mass is left out. undefined without motors that weigh anything.
 */
export function riseWithoutPropellers({
  bodies,
}: Pick<Analysed["model"], "bodies">): number | undefined {
  const sum = (role: BodyPart["role"]) =>
    bodies.filter((b) => b.role === role).reduce((m, b) => m + b.mass, 0);
  const [motors, propellers] = [sum("motor"), sum("propeller")];
  return motors > 0 ? Math.sqrt((motors + propellers) / motors) - 1 : undefined;
}
