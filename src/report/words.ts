/** The terms of the page, said in short for builders, and links to them. */

import { type Html, html } from "./html.ts";
import { section } from "./section.ts";

/** One entry of the glossary. */
export interface Word {
  /** kebab-case; the entry stands at #word-ID */
  readonly id: string;
  readonly term: string;
  /** one to three short sentences */
  readonly says: string;
}

// In the order of the alphabet.
const ENTRIES = [
  {
    id: "antinode",
    term: "antinode",
    says: "A spot that moves most in a mode. The worst place for a sensor where that mode is excited.",
  },
  {
    id: "blade-pass",
    term: "blade pass",
    says: "The beat of the blades: motor turns per second times the number of blades, in Hz. Three blades at 200 turns per second beat at 600 Hz.",
  },
  {
    id: "cantilever",
    term: "cantilever",
    says: "A part held at one end and free at the other, like a diving board. Its free end swings and tilts most.",
  },
  {
    id: "centre-of-gravity",
    term: "centre of gravity",
    says: "The point where the craft balances, battery included. In the air it turns about this point.",
  },
  {
    id: "crossing",
    term: "crossing",
    says: "A motor speed, in rpm, at which an order’s frequency equals a mode’s. The frame rings there.",
  },
  {
    id: "damping",
    term: "damping",
    says: "How fast a vibration dies away, as a share of critical: the amount at which it no longer swings. A frame’s 1 % lets a resonance grow to about 50 times what the same force does slowly.",
  },
  {
    id: "db",
    term: "dB",
    says: "A ratio on a scale of steps: +6 dB is twice as much, +20 dB ten times, −6 dB half. For amplitudes, 20 lg of the ratio.",
  },
  {
    id: "deg-s-rms",
    term: "deg/s rms",
    says: "Unit of gyro noise here: degrees per second, root mean square over all speeds of the flight mix and all three axes.",
  },
  {
    id: "delay",
    term: "delay",
    says: "How late a filter passes the signal on, in ms. The rate loop reacts that much later, so it must be tuned softer.",
  },
  {
    id: "false-tilt",
    term: "false tilt",
    says: "The angle, in degrees, by which an accelerometer off the centre of gravity misreads level: turning adds centripetal and tangential acceleration to gravity.",
  },
  {
    id: "flight-mix",
    term: "flight mix",
    says: "The motor speeds of a flight and the share of time at each. All noise figures are averages over it.",
  },
  {
    id: "kappa",
    term: "kappa",
    says: "Stiffness of a bolted arm root against bending, as a number without unit: spring in N m/rad divided by E I/L of the arm. About 28 is tight, 5 is loose, infinite is a perfect clamp.",
  },
  {
    id: "lever-arm",
    term: "lever arm",
    says: "The distance, in mm, from the accelerometer to the centre of gravity. The longer, the more false tilt when the craft turns.",
  },
  {
    id: "loop-gain",
    term: "loop gain",
    says: "How much of a motion comes back through gyro, controller and motors. Above 1 the loop can feed a vibration instead of calming it.",
  },
  {
    id: "low-pass",
    term: "low-pass",
    says: "A filter that lets slow motion through and weakens what is faster than its cut-off, in Hz. The lower the cut-off, the longer its delay.",
  },
  {
    id: "mode",
    term: "mode",
    says: "One of the ways in which the frame likes to vibrate: a shape that swings at a frequency of its own. Any small vibration is a sum of modes.",
  },
  {
    id: "mode-shape",
    term: "mode shape",
    says: "Which parts move in a mode, which way, and how much compared with each other. It has no size: that comes from the force.",
  },
  {
    id: "modulus",
    term: "modulus",
    says: "How stiff a material is against stretching (E), in GPa. Frequencies go with its square root: 10 % stiffer is 5 % higher.",
  },
  {
    id: "natural-frequency",
    term: "natural frequency",
    says: "The frequency, in Hz, at which a mode swings when tapped and left alone. Stiffer is higher, heavier is lower.",
  },
  {
    id: "node",
    term: "node",
    says: "A spot or line that stands still in a mode. It may still tilt there, which a gyro feels.",
  },
  {
    id: "notch",
    term: "notch",
    says: "A filter that takes out one narrow band. Here it follows a motor’s speed, so it costs less delay than a low-pass.",
  },
  {
    id: "order",
    term: "order",
    says: "How often a force repeats per turn of the motor: 1 is once per turn, 3 the blade pass of three blades. Its frequency in Hz is order × rpm / 60.",
  },
  {
    id: "overhang",
    term: "overhang",
    says: "The part of a plate that reaches past its last support. A long one bends as a cantilever with modes of its own.",
  },
  {
    id: "phase-lag",
    term: "phase lag",
    says: "A delay told as an angle of the swing at one frequency: 360° × frequency × delay. The more at the rate loop’s bandwidth, the nearer it is to oscillating.",
  },
  {
    id: "quasi-isotropic",
    term: "quasi-isotropic",
    says: "Carbon plate with its fibres spread evenly over directions, so that it is equally stiff along all of them in its plane. In bending it need not be.",
  },
  {
    id: "rate-flight",
    term: "rate flight",
    says: "The sticks command rates of turn and only the gyro is used. Distance from the centre of gravity does not matter.",
  },
  {
    id: "receptance",
    term: "receptance",
    says: "How far a spot moves per newton of force, in m/N, at one frequency. It peaks at the natural frequencies.",
  },
  {
    id: "resonance",
    term: "resonance",
    says: "A force that repeats at a natural frequency, so that every push adds to the last. Only damping limits it.",
  },
  {
    id: "rms",
    term: "rms",
    says: "Root mean square: the steady value that has the same power. A sine’s is 0.71 of its peak.",
  },
  {
    id: "self-level-flight",
    term: "self-level flight",
    says: "The craft holds an angle by itself and needs the accelerometer to know what is level. False tilt matters.",
  },
  {
    id: "spread",
    term: "spread",
    says: "How much a value differs from one built frame to the next: modulus, masses, screws. Given as ± % or as a standard deviation.",
  },
  {
    id: "symmetric",
    term: "symmetric, antisymmetric",
    says: "Symmetric left to right: both sides move alike, as in a mirror. Antisymmetric: they move against each other.",
  },
  {
    id: "tap-test",
    term: "tap test",
    says: "Tap the frame, record how it rings, and read the natural frequencies off the spectrum. Compare them with the model’s.",
  },
  {
    id: "tie",
    term: "tie",
    says: "Places too close for one to be called the best: their scores come within 1 dB for natural frequencies within ±7 %.",
  },
  {
    id: "unbalance",
    term: "unbalance",
    says: "Mass off the axis of a rotor, in g mm. It pulls once per turn, with a force that grows with the square of the speed.",
  },
] as const satisfies readonly Word[];

export type WordId = (typeof ENTRIES)[number]["id"];

/** All entries, in the order of the alphabet. */
export const WORDS: readonly Word[] = ENTRIES;

/** A term in a sentence, as a link to its entry; `text` where the sentence needs another form. */
export function term(id: WordId, text?: string): Html {
  const shown = text ?? ENTRIES.find((w) => w.id === id)?.term ?? id;
  return html`<a class="term" href="#word-${id}">${shown}</a>`;
}

export function wordsSection(): Html {
  const entries = WORDS.map(
    ({ id, term, says }) => html`<div><dt id="word-${id}">${term}</dt><dd>${says}</dd></div>\n`,
  );
  return section(
    "words",
    "Words",
    { finding: `${WORDS.length} terms of these pages, each in a sentence or two.` },
    html`<dl class="words">${entries}</dl>`,
  );
}
