/** The interference diagram: speeds at which an order meets a natural frequency. */

import { analyse } from "../../../src/analyse.ts";
import { type Check, type Family, within } from "../case.ts";
import { block, read, TEN_HERTZ } from "./block.ts";

/** Free along x, y and z, on springs that give these frequencies (Hz); up to `fullSpeed` (turns/s). */
function threeWayBlock(frequencies: readonly [number, number, number], fullSpeed: number) {
  const [x, y, z] = frequencies.map((f) => `${(2 * Math.PI * f) ** 2} N/m`);
  const orders = [1, 2, 3].map((order) => ({ order, of: "thrust", fraction: 0.01 }));
  const frame = block(TEN_HERTZ, ["rx", "ry", "rz"], fullSpeed, { orders });
  const springs = { spring: { between: ["foot", "ground"], x, y, z } };
  return analyse(read({ ...frame, springs }), { modes: 3 });
}

const FREQUENCIES = [10, 15, 24] as const;

/** n = 60 f/k, rpm. */
const SPEEDS: readonly (readonly [mode: number, order: number, rpm: string])[] = [
  [1, 1, "600"],
  [1, 2, "300"],
  [1, 3, "200"],
  [2, 1, "900"],
  [2, 2, "450"],
  [2, 3, "300"],
  [3, 1, "1440"],
  [3, 2, "720"],
  [3, 3, "480"],
];

export const CROSSINGS: Family = {
  title: "Orders that meet natural frequencies",
  source: "closed form",
  cases: [
    {
      name: "Crossing speeds",
      source:
        "n = 60 f/k for the order k and a mode at f: the interference diagram of W. Campbell (1924, the year from memory).",
      model:
        "A block of 1 kg free along x, y and z on springs that give 10, 15 and 24 Hz; three orders, up to 1500 rpm.",
      why: "The block is not quite rigid: along z, where its deck bends, 2e-7 in frequency, else ten times less.",
      checks: SPEEDS.map(
        ([mode, order, reference]): Check => ({
          quantity: `${FREQUENCIES[mode - 1]} Hz meets order ${order}`,
          unit: "rpm",
          reference,
          tolerance: within(mode === 3 ? 5e-7 : 5e-8),
        }),
      ),
      solve: () => {
        const { ranking } = threeWayBlock(FREQUENCIES, 25);
        return SPEEDS.map(([mode, order]) => {
          const met = ranking?.crossings.filter(
            (c) => c.mode === mode && c.order === `order ${order} (thrust)`,
          );
          if (met?.length !== 1) throw new Error(`mode ${mode} meets order ${order} not once`);
          return met[0].rpm;
        });
      },
    },
  ],
};
