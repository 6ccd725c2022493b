/** What the numbers can and cannot say, how to check them, cautions, and where the report comes from. */

import type { BodyPart } from "../model/types.ts";
import { type Html, html, type Part } from "./html.ts";
import { grams, hertz, percent, rpm, three } from "./numbers.ts";
import { list, rows, section } from "./section.ts";
import type { Analysed, ReportInput } from "./types.ts";

/** Modes that a tap test is told to listen for. */
const TAPPED = 4;

/** What holds for every frame. */
export const FRAME_LIMITS: readonly string[] = [
  "No published modal test of a multirotor frame with complete geometry, masses and materials was found, so the program is not validated on real frames. It is checked against textbook cases and published beam and plate results.",
  "Frequencies of a real frame rest on its joints and on the material data. The modulus of carbon plate varies by 5 to 15 % between suppliers (common practice, no source); ±10 % in modulus and ±3 % in thickness make about ±7 % in the arms' frequencies (common practice, no source).",
  "Comparing places on one frame is much surer than any single number, because errors in the forces change all places alike.",
  "Levels follow the assumed unbalance and thrust ripple in proportion: a nicked propeller multiplies them.",
];

export function limitsSection(analysed: Analysed): Html {
  const { excitation } = analysed;
  const kappas = analysed.model.arms.flatMap((a) =>
    a.held.kind === "bolted" && Number.isFinite(a.held.kappa) ? [a.held.kappa] : [],
  );
  const joints =
    kappas.length > 0 &&
    html`Bolted arm roots are springs of stiffness kappa E I / L with kappa ${[...new Set(kappas)].map((k) => three(k)).join(", ")}. Tight joints have about 28, loose ones about 5.3: against an ideal clamp the arm modes then fall by 5 % to 20 % (derived from a beam with a tip mass; the range of the drop is common practice, no source).`;
  const assumptions: Part[] = [
    "Small motions: everything is linear. Joints that slip, straps that creep and propellers that bend are not in the model.",
    excitation
      ? `All motors turn at about one speed, ${percent(excitation.motorSpread, 2)} apart from each other (standard deviation), and never in step, so their effects add as powers.`
      : "Motors never turn in step, so their effects add as powers.",
    "The air neither holds nor damps the frame. Gyroscopic moments of the propellers are left out.",
    joints || "The arms are joined as the file says, without play.",
  ];
  return section(
    "limits",
    "What to trust, and how far",
    "",
    html`<div class="columns"><div><h3>Limits</h3>${list(FRAME_LIMITS)}</div><div><h3>Assumptions</h3>${list(assumptions)}</div></div>`,
  );
}

export function checkSection({ modes, model, excitation }: Analysed): Html {
  const mounts = new Set(
    modes.described.filter((m) => m.motion.softMount > 0.5).map((m) => m.number),
  );
  const heard = modes.described.filter((m) => !mounts.has(m.number)).slice(0, TAPPED);
  const frequencies = heard
    .map((m) => `${hertz(m.frequency)} (mode ${m.number}, ${m.name})`)
    .join("; ");
  const hover =
    excitation &&
    ` Then hover carefully at ${rpm(excitation.speeds.hover)} and compare the gyro's own record with the table.`;
  const off = model.bodies.find((b) => b.role === "propeller");
  const higher = riseWithoutPropellers(model);
  const propellers =
    off &&
    higher !== undefined &&
    ` These are with propellers on: expect the arms' modes about ${percent(higher, higher < 0.1 ? 1 : 2)} higher without propellers, which take ${grams(off.mass)} off each arm's end.`;
  const steps: Part[] = [
    html`<strong>Take the propellers off</strong> and unplug the battery, but leave it and all other parts in place. Where the craft's own gyro records, it is powered over USB through a thin, slack cable.`,
    "Hang the craft on a long thin thread or rubber band near its centre of gravity, so that it swings slower than once a second.",
    "Tap an arm's end upwards with a screwdriver's handle. Record with a small accelerometer of a gram or less on the arm (it lowers what it measures), with the craft's own gyro (powered over USB, battery unplugged, propellers off), or with a phone's microphone held close.",
    html`Look at the spectrum for the lowest peaks that are not the battery on its straps: the model expects ${frequencies}.${propellers}`,
    "Tap plates and decks too; a peak that only one tap raises belongs to that part.",
    html`If all peaks are off by one common factor, change the modulus in the file by the square of that factor; if only the arms' peaks are low, lower kappa of their joints. Run again.${hover}`,
  ];
  return section(
    "check",
    "Check it with a tap test",
    html`Ten minutes with a screwdriver tell how near the model is to your ${model.arms.length > 0 ? "frame" : "structure"}.`,
    html`<ol>${steps.map((s) => html`<li>${s}</li>`)}</ol>`,
  );
}

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

export function cautionsSection(): Html {
  return section(
    "cautions",
    "Cautions",
    "",
    list([
      "Propellers off for every bench test with power. Secure the frame; never test near people.",
      "Lithium-polymer packs: charge them watched, in a fire-resistant place, with the right program; use no puffed, hot or crashed pack; 3.2 to 4.2 V per cell; carry and store at about 3.8 V per cell.",
      "Cutting carbon plate makes dust that can be breathed in and that shorts electronics. Cut wet or extract at the source with a fine filter, and wear a respirator (class P2 or P3), goggles and gloves.",
      "Thread lock on metal, and tighten screws again after the first flights: a loose arm changes every frequency.",
      "Follow the local rules on aviation, registration, altitude and distances.",
      "This report compares places. It replaces neither a tap test nor a careful first hover.",
    ]),
  );
}

export function inputsSection(analysed: Analysed, input: ReportInput): Html {
  return section(
    "inputs",
    "Where this report comes from",
    "",
    rows([
      ["frame file", html`<code>${input.fileName}</code>`],
      ["SHA-256 of the file", html`<code class="hash">${input.fileHash}</code>`],
      ["program", html`stillpoint ${input.version}`],
      ["options", input.options === "" ? "none" : html`<code>${input.options}</code>`],
      ["modes computed", analysed.modes.described.length],
      ["file's loss factor of the assembly", percent(analysed.file.assemblyLossFactor)],
      ...(input.created === undefined
        ? []
        : ([
            ["written", html`<time datetime="${input.created}">${input.created}</time>`],
          ] as const)),
    ]),
  );
}
