/** A stack on isolators as a second mass on a spring: tuned absorber, and what the mounts pass on. */

import { analyse, analyseModes } from "../../../src/analyse.ts";
import { type Check, type Family, within } from "../case.ts";
import { block, feather, here, read, TEN_HERTZ } from "./block.ts";

/** Stiffness along each of four mounts that lets a mass (kg) bounce at 10 Hz, N/m. */
const each = (mass: number) => (mass * TEN_HERTZ.k) / TEN_HERTZ.m / 4;

/** The block on its spring along z only, with a stack (kg) on the deck that bounces at 10 Hz. */
function withAbsorber(mass: number, lossFactor: number) {
  const guides = ["x", "y", "rx", "ry", "rz"];
  const frame = block(TEN_HERTZ, guides, 30, {
    orders: [{ order: 1, of: "thrust", fraction: 0.01 }],
  });
  const axial = `${each(mass)} N/m`;
  const isolators = { axial, lateral: `${3 * each(mass)} N/m`, lossFactor };
  return {
    ...frame,
    springs: { spring: { between: ["foot", "ground"], z: `${TEN_HERTZ.k} N/m` } },
    stack: { ...feather([0, 0]), mass: `${mass} kg`, isolators },
    candidates: {
      soft: here("deck"),
      hard: { ...here("deck"), isolators: "none" },
    },
  };
}

/** (omega/omega0)^2 = 1 + mu/2 -+ sqrt(mu + mu^2/4) for equal tuning. */
const PAIRS: readonly (readonly [share: number, low: string, high: string])[] = [
  [0.05, "8.944271910", "11.18033989"],
  [0.1, "8.543089536", "11.70536720"],
  [0.2, "8.010882788", "12.48301874"],
];

/** Of the modes, the one nearest to a frequency: those of the stack's other motions lie elsewhere. */
function nearest(frequencies: readonly number[], to: number): number {
  return frequencies.reduce((a, b) => (Math.abs(b - to) < Math.abs(a - to) ? b : a));
}

const SPEEDS = { idle: "5 cycle/s", hover: "7 cycle/s", full: "34.9 cycle/s" };
/** r = f/10 Hz and sqrt((1 + eta^2)/((1 - r^2)^2 + eta^2)), eta = 0.2; the grid's speeds are 0.1 turns/s apart. */
const PASSED: readonly (readonly [r: number, value: string])[] = [
  [0.5, "1.313826883"],
  [0.9, "3.696786259"],
  [1, "5.099019514"],
  [1.4, "1.039966722"],
  [2, "0.3391817327"],
  [3, "0.1274356704"],
];

function passed(): number[] {
  const frame = withAbsorber(1e-9, 0.2);
  const propulsion = { ...frame.propulsion, speeds: SPEEDS };
  const { ranking } = analyse(read({ ...frame, propulsion }), { modes: 3 });
  const accel = (name: string) => {
    const found = ranking?.candidates.find((c) => c.candidate.name === name);
    if (!found) throw new Error(`no place called ${name}`);
    return found.spectra[0].accel;
  };
  const [soft, hard] = [accel("soft"), accel("hard")];
  return PASSED.map(([r]) => {
    const at = Math.round((10 * r - 5) / 0.1);
    return soft[at] / hard[at];
  });
}

export const ABSORBER: Family = {
  title: "Stack on isolators",
  source: "closed form; Den Hartog",
  cases: [
    {
      name: "Tuned absorber",
      source:
        "Two masses, each tuned to 10 Hz by itself: (omega/omega0)^2 = 1 + mu/2 -+ sqrt(mu + mu^2/4) (J. P. Den Hartog, Mechanical Vibrations, chapter on the dynamic absorber, from memory; there 0.80 and 1.25 for mu = 1/5). Ten digits of the formula.",
      model:
        "A block of 1 kg guided along z on a spring, 10 Hz; on its deck a stack of mu kg on four isolators that let it bounce at 10 Hz, in the mesh.",
      why: "The deck and the screws' feet are not quite rigid.",
      checks: PAIRS.flatMap(([share, low, high]): Check[] => [
        { quantity: `mu ${share}, lower`, unit: "Hz", reference: low, tolerance: within(1e-7) },
        { quantity: `mu ${share}, upper`, unit: "Hz", reference: high, tolerance: within(1e-7) },
      ]),
      solve: () =>
        PAIRS.flatMap(([share, low, high]) => {
          const { modes } = analyseModes(read(withAbsorber(share, 0.1)), { modes: 8 });
          const all = modes.described.map((m) => m.frequency);
          return [Number(low), Number(high)].map((f) => nearest(all, f));
        }),
    },
    {
      name: "Transmissibility of isolators",
      source:
        "T = sqrt((1 + eta^2)/((1 - r^2)^2 + eta^2)), structural damping, eta = 0.2 (textbook form). Ten digits of the formula.",
      model:
        "The same block with a stack of no weight to speak of: accelerometer on isolators over accelerometer screwed down, both by receptance coupling, at r times 10 Hz.",
      why: "The deck and the screws' feet are not quite rigid.",
      checks: PASSED.map(
        ([r, reference]): Check => ({
          quantity: `r ${r}`,
          unit: "",
          reference,
          tolerance: within(1e-6),
        }),
      ),
      solve: passed,
    },
  ],
};
