/** Why a place is noisy: the modes and orders that cause most of it, with the stack in place. */

import type { Mesh } from "../mesh/types.ts";
import type { Model } from "../model/types.ts";
import { describeModes } from "../modes/describe.ts";
import type { ModeDescription } from "../modes/types.ts";
import type { BareFrame } from "../response/bare-frame.ts";
import type { CoupledModes } from "../response/coupled-modes.ts";
import { type ModeShares, modeShares } from "../response/mode-shares.ts";
import type { Place } from "../response/place.ts";
import { remedy } from "./remedy.ts";
import type { Cause } from "./types.ts";

/** Causes listed per candidate. */
const CAUSES = 3;
/** Parts listed per cause, and the least share of the mode's strain that is worth a word. */
const PARTS = 3;
const LEAST_PART = 0.05;
/** Above this share of the strain in the stack's isolators, the mode is theirs. */
const ISOLATORS = 0.5;

const WHOLE = "the whole craft moves as one";

/**
 * The modes and orders with the largest shares of the gyro's noise power over the flight mix, each
 * taken alone, largest first.
 *
 * @param model without the stack, as the bare frame
 * @param passed share of the power that the chip's own low-pass passes, by order and speed; all where not given
 */
export function causesOf(
  model: Model,
  bare: BareFrame,
  place: Place,
  passed?: readonly Float64Array[],
): Cause[] {
  const { h, modes } = bare;
  const shares = modeShares(h, modes, place, passed);
  const all = shares.power.flatMap((power, order) =>
    Array.from(power, (p, mode) => ({ order, mode, p })),
  );
  const total = all.reduce((sum, c) => sum + c.p, 0);
  const { low, full } = h.excitation.speeds;
  return all
    .filter((c) => c.p > 0)
    .sort((a, b) => b.p - a.p)
    .slice(0, CAUSES)
    .map(({ order, mode, p }): Cause => {
      const force = h.orders[order];
      const share = p / total;
      if (mode === 0) {
        const none = { frequency: 0, rpm: 0, met: false, parts: [], remedy: "" };
        return { mode, modeName: WHOLE, order: force.name, share, ...none };
      }
      const { frequency, ...told } = describe(model, bare, shares, mode);
      const speed = (2 * Math.PI * frequency) / force.order;
      return {
        mode,
        frequency,
        ...told,
        order: force.name,
        share,
        met: speed >= low && speed <= full,
        rpm: (frequency * 60) / force.order,
      };
    });
}

/** Mirrored parts differ by rounding: their names decide, so that the order is always the same. */
const alike = (share: number) => Math.round(1e4 * share);

/** One coupled mode in words; `mode` counts from 1, rigid motions left out. */
function describe(model: Model, bare: BareFrame, { coupled, rigid }: ModeShares, mode: number) {
  const { mesh, system, h } = bare;
  const k = rigid + mode - 1;
  const frequency = Math.sqrt(coupled.lambda[k]) / (2 * Math.PI);
  const soft = coupled.isolatorShare[k];
  const shape = meshShape(mesh, h.shapes, coupled.amplitudes, k);
  const lambda = coupled.lambda.subarray(k, k + 1);
  const [ofFrame] = describeModes(model, mesh, system, lambda, [shape]);
  const described = shareOfFrame(ofFrame, 1 - soft, kineticOfFrame(coupled, h.shapes.length, k));
  const isolators = { name: "the stack's isolators", share: soft };
  const parts = [
    ...described.shares.map((s) => ({ name: s.part, share: s.strain })),
    ...(soft > 0 ? [isolators] : []),
  ]
    .filter((p) => p.share >= LEAST_PART)
    .sort((a, b) => alike(b.share) - alike(a.share) || (a.name < b.name ? -1 : 1))
    .slice(0, PARTS);
  return {
    frequency,
    modeName: soft > ISOLATORS ? "the stack moves on its isolators" : described.name,
    parts,
    remedy: remedy(described, soft),
  };
}

/** Shares of the energies of the bare frame as shares of those of frame and stack together. */
function shareOfFrame(mode: ModeDescription, strain: number, kinetic: number): ModeDescription {
  const motion = Object.entries(mode.motion).map(([kind, share]) => [kind, strain * share]);
  return {
    ...mode,
    shares: mode.shares.map((s) => ({
      ...s,
      strain: strain * s.strain,
      kinetic: kinetic * s.kinetic,
    })),
    motion: Object.fromEntries(motion),
  };
}

/** Amplitudes are those of M-normalised terms: their squares and those of the stack sum to 1. */
function kineticOfFrame({ amplitudes }: CoupledModes, terms: number, k: number): number {
  return amplitudes.subarray(k * terms, (k + 1) * terms).reduce((sum, q) => sum + q * q, 0);
}

/** A coupled mode as a motion of the bare frame's mesh. */
function meshShape(
  mesh: Mesh,
  shapes: readonly Float64Array[],
  amplitudes: Float64Array,
  k: number,
): Float64Array {
  const out = new Float64Array(2 * mesh.xyz.length);
  shapes.forEach((shape, t) => {
    const a = amplitudes[k * shapes.length + t];
    for (let i = 0; i < out.length; i++) out[i] += a * shape[i];
  });
  return out;
}
