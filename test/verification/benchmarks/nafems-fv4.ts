/**
 * NAFEMS FV4: bending in two planes, stretching and twisting all take part, an ideal test for a frame
 * with masses off its axes.
 */

import { type Family, justAbove, lastDigit, modes } from "../case.ts";
import { frequencies } from "../frequencies.ts";
import { bendingError, ROUNDING } from "./mesh-error.ts";

const frame = (beamTheory: string) => ({
  beamTheory,
  materials: {
    steel: { kind: "isotropic", E: "200 GPa", nu: 0.3, density: "8000 kg/m^3" },
  },
  points: {
    root: [0, 0, 0],
    tip: ["10 m", 0, 0],
    heavy: ["10 m", "2 m", 0],
    light: ["10 m", "-2 m", 0],
  },
  members: {
    beam: {
      from: "root",
      to: "tip",
      section: { shape: "rod", diameter: "0.5 m" },
      material: "steel",
      elements: 40,
    },
  },
  links: {
    "heavy arm": { points: ["tip", "heavy"] },
    "light arm": { points: ["tip", "light"] },
  },
  bodies: {
    "heavy mass": { mass: "10000 kg", on: "heavy" },
    "light mass": { mass: "1000 kg", on: "light" },
  },
  supports: { wall: { point: "root", fix: "all" } },
});

const BOOK =
  "F. Abbassian, D. J. Dawswell & N. C. Knowles, Selected Benchmarks for Natural Frequency Analysis, " +
  "NAFEMS R0015 (1987), test FV4";
const MODEL =
  "Solid round beam, 10 m long, 0.5 m thick, E = 200 GPa, nu = 0.3, rho = 8000 kg/m^3, clamped at one " +
  "end; at the other two rigid massless arms across it, 2 m each, with 10 000 kg and 1 000 kg. " +
  "40 elements.";

const MEMBER = { speed: Math.sqrt(200e9 / 8000), gyration: 0.5 / 4, h: 10 / 40 };
const aboveBeam = (reference: string) =>
  justAbove(bendingError(Number(reference), MEMBER) + ROUNDING);
const WHY_MESH =
  "40 consistent elements lie above the continuous beam by (beta h)^4/1440, a tenth more for the next " +
  "term and 1e-9 for rounding; the error of twisting and stretching counts for little, since the masses " +
  "have nearly all of their kinetic energy.";

export const FV4: Family = {
  title: "Cantilever with off-centre point masses (FV4)",
  source: "NAFEMS R0015",
  cases: [
    {
      name: "FV4, published",
      headline: true,
      source: `${BOOK}; data and values as quoted elsewhere, the diameter from memory (confirmed by all six values).`,
      model: `${MODEL} Rotary inertia of the section on, as in the published list.`,
      why: "One unit of the last digit printed; mode 4 is also quoted as 9.971.",
      checks: modes(["1.723", "1.727", "7.413", "9.972", "18.155", "26.957"], "Hz", lastDigit),
      solve: () => frequencies(frame("rayleigh"), { modes: 6 }),
    },
    {
      name: "FV4, exact with rotary inertia",
      source: "Exact tip dynamic stiffness and the 6 x 6 offset masses, 25-digit root search.",
      model: MODEL,
      why: WHY_MESH,
      checks: modes(
        [
          "1.7231172856",
          "1.7266920906",
          "7.4127491410",
          "9.9714822276",
          "18.155130000",
          "26.957173357",
          "52.735973579",
          "64.038474033",
        ],
        "Hz",
        aboveBeam,
      ),
      solve: () => frequencies(frame("rayleigh"), { modes: 8 }),
    },
    {
      name: "FV4, exact without rotary inertia",
      source:
        "The same for pure Euler-Bernoulli beams, by the count of W. H. Wittrick & F. W. Williams.",
      model: `${MODEL} Modes 5 and 6 rightly lie 0.15 % and 0.11 % above the published ones.`,
      why: WHY_MESH,
      checks: modes(
        [
          "1.723278337",
          "1.726843273",
          "7.413386840",
          "9.974766783",
          "18.181579573",
          "26.985471241",
          "52.943669586",
          "64.273125374",
        ],
        "Hz",
        aboveBeam,
      ),
      solve: () => frequencies(frame("euler-bernoulli"), { modes: 8 }),
    },
  ],
};
