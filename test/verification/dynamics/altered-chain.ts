/** Five masses in a row, and what a further mass, a spring or a support does to their frequencies. */

import { type Case, type Family, modes, withinAbsolute } from "../case.ts";
import { frequencies } from "../frequencies.ts";

export type Alteration = "as it is" | "3 kg more" | "a spring of 2 N/m" | "a support";

const ALONG = ["y", "z", "rx", "ry", "rz"];
const MASSES = [1, 2, 3, 4, 5];

/** A massless member of 1 m and EA = 1 N: a spring of 1 N/m. */
const SECTION = {
  shape: "stiffness",
  EA: 1,
  EIy: 1,
  EIz: 1,
  GJ: 1,
  massPerLength: 0,
  inertiaPerLength: 0,
};

const record = (keys: readonly number[], entry: (i: number) => readonly [string, unknown]) =>
  Object.fromEntries(keys.map(entry));

function chainFrame(alteration: Alteration): object {
  const held = alteration === "a support" ? [3] : [];
  const extra = alteration === "3 kg more" ? { lump: { mass: "3 kg", on: "p3" } } : {};
  const springs =
    alteration === "a spring of 2 N/m"
      ? { springs: { tether: { between: ["p5", "ground"], x: "2 N/m" } } }
      : {};
  return {
    points: record([0, ...MASSES], (i) => [`p${i}`, [`${i} m`, 0, 0]]),
    members: record(MASSES, (i) => [
      `spring ${i}`,
      { from: `p${i - 1}`, to: `p${i}`, section: SECTION, elements: 1 },
    ]),
    bodies: { ...record(MASSES, (i) => [`mass ${i}`, { mass: "1 kg", on: `p${i}` }]), ...extra },
    supports: record([0, ...MASSES], (i) => [
      `guide ${i}`,
      { point: `p${i}`, fix: i === 0 || held.includes(i) ? "all" : ALONG },
    ]),
    ...springs,
  };
}

/** lambda = omega^2, ascending. */
export function chainEigenvalues(alteration: Alteration): number[] {
  const count = alteration === "a support" ? 4 : 5;
  return frequencies(chainFrame(alteration), { modes: count }).map((f) => (2 * Math.PI * f) ** 2);
}

const SOURCE =
  "Eigenvalues of the matrices written out by hand, computed with a general routine; the frequencies " +
  "interlace with those of the chain as it is (A. Cauchy, H. Poincare).";
const MODEL =
  "A frame file: five bodies of 1 kg on massless members of 1 N/m in a row, fixed at one end, free to " +
  "move along the row only";

// biome-ignore format: one chain, one row
const SPECTRA: readonly (readonly [Alteration, string, ...string[]])[] = [
  ["as it is", MODEL, "0.0810140528", "0.6902785321", "1.7153703235", "2.8308300260", "3.6825070657"],
  ["3 kg more", `${MODEL}; the third weighs 3 kg more`, "0.0485900296", "0.5372301584", "1.1629945401", "2.6906596078", "3.0605256641"],
  ["a spring of 2 N/m", `${MODEL}; the fifth on a spring to the ground besides`, "0.3174929343", "1.1691699740", "2.2846296765", "3.3097214679", "3.9189859472"],
  ["a support", `${MODEL}; the third held fast`, "0.3819660113", "1.0000000000", "2.6180339887", "3.0000000000"],
];

function alteredCase([alteration, model, ...lambda]: (typeof SPECTRA)[number]): Case {
  return {
    name: `Chain of five, ${alteration}`,
    source: SOURCE,
    model: `${model}.`,
    why: "Exact: the ten decimals printed.",
    checks: modes(lambda, "1/s^2", withinAbsolute(1e-10), "lambda"),
    solve: () => chainEigenvalues(alteration),
  };
}

export const ALTERED_CHAIN: Family = {
  title: "A mass, a spring, a support added",
  source: "computed",
  cases: [
    ...SPECTRA.map(alteredCase),
    {
      name: "Chain of five, sum of flexibilities",
      source:
        "trace(K^-1 M) = sum of i = 15: the flexibility of i springs in a row under each unit mass (exact).",
      model: `${MODEL}.`,
      why: "Exact but for rounding.",
      checks: [
        {
          quantity: "sum of 1/lambda",
          unit: "s^2",
          reference: "15",
          tolerance: withinAbsolute(1e-10),
        },
      ],
      solve: () => [chainEigenvalues("as it is").reduce((sum, lambda) => sum + 1 / lambda, 0)],
    },
  ],
};
