/** What the numbers can and cannot say, cautions, and where the report comes from. */

import { type Html, html, type Part } from "./html.ts";
import { percent, three } from "./numbers.ts";
import { list, rows, section } from "./section.ts";
import { shellWord } from "./shell-word.ts";
import type { Analysed, ReportInput } from "./types.ts";
import { term } from "./words.ts";

/** What holds for every frame. */
export const FRAME_LIMITS: readonly string[] = [
  "Not validated on real frames: no published modal test of a multirotor frame with complete geometry, masses and materials was found. Checked against textbook cases and published beam and plate results.",
  "Frequencies rest on joints and material data. The modulus of carbon plate varies by 5 to 15 % between suppliers; ±10 % in modulus and ±3 % in thickness make about ±7 % in the arms’ frequencies (common practice, no source).",
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
    html`Bolted arm roots are springs of stiffness ${term("kappa")} E I / L with kappa ${[...new Set(kappas.map((k) => three(k)))].join(", ")}. Tight joints have about 28, loose ones about 5.3: against an ideal clamp the arm modes then fall by 5 % to 20 % (derived from a beam with a tip mass; the range of the drop is common practice, no source).`;
  const assumptions: Part[] = [
    "Small motions: everything is linear. Joints that slip, straps that creep and propellers that bend are not in the model.",
    excitation
      ? `All motors turn at about one speed, ${percent(excitation.motorSpread, 2)} apart from each other (standard deviation), and never in step, so their effects add as powers.`
      : "Motors never turn in step, so their effects add as powers.",
    "The air neither holds nor damps the frame. Gyroscopic moments of the propellers are left out; a rough estimate by hand puts them at a few per cent of an arm mode’s frequency.",
    joints || "The arms are joined as the file says, without play.",
  ];
  return section(
    "limits",
    "What to trust, and how far",
    {
      finding:
        "Trust the order of places most, frequencies to about ±7 % where the material is known, and levels least: they follow forces that are assumed.",
    },
    html`<div class="columns"><div><h3>Limits</h3>${list(FRAME_LIMITS)}</div><div><h3>Assumptions</h3>${list(assumptions)}</div></div>`,
  );
}

export function cautionsSection(): Html {
  return section(
    "cautions",
    "Cautions",
    {
      finding:
        "Propellers off for every bench test; this report replaces neither a tap test nor a careful first hover.",
      how: "Local rules, the makers’ instructions and qualified people come before anything said here.",
    },
    rows([
      [
        "Propellers",
        "Take them off for all work with power on. Secure the frame. Never test near people.",
      ],
      [
        "Lithium packs",
        "Charge them watched, on a surface that does not burn, with the charger set to their chemistry and cells. Use no puffed, hot or crashed pack. 3.2 to 4.2 V per cell in use, about 3.8 V to carry and store.",
      ],
      [
        "Carbon dust",
        "Cutting carbon plate makes dust that harms lungs and shorts electronics. Cut wet or extract at the source through a fine filter; wear a respirator (class P2 or P3), goggles and gloves.",
      ],
      [
        "Screws",
        "Thread lock on metal, and tighten again after the first flights: a loose arm changes every frequency and may come off.",
      ],
      [
        "Flying",
        "Away from people and animals, in sight, and by the local rules on registration, altitude, distances and airspace. After any change hover low first.",
      ],
    ]),
  );
}

/** "2026-11-25 10:00 UTC" of an ISO time that ends with Z */
export const readable = (time: string): string =>
  time.replace(/^([\d-]+)T(\d+:\d+)[\d:.]*Z$/, "$1 $2 UTC");

export function inputsSection(analysed: Analysed, input: ReportInput): Html {
  const command = ["stillpoint rank", shellWord(input.fileName), input.options];
  return section(
    "inputs",
    "Where this report comes from",
    {
      finding: html`Made by stillpoint ${input.version} from <code>${input.fileName}</code>.`,
      how: "The same version, file and command give the same figures.",
    },
    rows([
      ["command", html`<code>${command.filter((w) => w !== "").join(" ")}</code>`],
      ["SHA-256 of the file", html`<code class="hash">${input.fileHash}</code>`],
      ["modes computed", analysed.modes.described.length],
      ["file’s loss factor of the assembly", percent(analysed.file.assemblyLossFactor)],
      ...(input.created === undefined
        ? []
        : ([
            ["written", html`<time datetime="${input.created}">${readable(input.created)}</time>`],
          ] as const)),
    ]),
  );
}
