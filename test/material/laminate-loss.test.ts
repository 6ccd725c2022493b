import { describe, expect, test } from "vitest";
import {
  bendingLossFactor,
  plateLossFactor,
  stretchingLossFactor,
} from "../../src/material/laminate-loss.ts";
import {
  type Layer,
  laminateCompliance,
  laminateLossStiffness,
  laminateStiffness,
  rotateLaminate,
} from "../../src/material/lamination.ts";
import type { Ply } from "../../src/material/ply.ts";
import { layers, T300_5208 } from "./plies.ts";

/** Loss factors of the size of a carbon ply's: small along the fibre, larger in the matrix. */
const LOSSY: Ply = {
  ...T300_5208,
  lossFactor: 0.5,
  lossFactor1: 0.0007,
  lossFactor2: 0.0067,
  lossFactor12: 0.0113,
};

describe("loss factors", () => {
  test.each(["[0]", "[30]", "[0/90]s", "[0/30/-45]", "[45/-45/0]2s"])(
    "%s of plies with one loss factor has that loss factor in every way",
    (stack) => {
      const { bend, stretch, plate } = losses(layers(T300_5208, stack));
      expect(bend / 0.01).toBeCloseTo(1, 12);
      expect(stretch / 0.01).toBeCloseTo(1, 12);
      expect(plate / 0.01).toBeCloseTo(1, 12);
    },
  );

  test("bending along and across the fibre uses the loss factor of that direction alone", () => {
    expect(losses(layers(LOSSY, "[0]")).bend / 0.0007).toBeCloseTo(1, 12);
    expect(losses(layers(LOSSY, "[90]")).bend / 0.0067).toBeCloseTo(1, 12);
  });

  test("off-axis: each direction's energy from the ply's stresses", () => {
    const { E1, E2, G12, nu12 } = LOSSY;
    for (const degrees of [10, 30, 45, 75]) {
      const c = Math.cos((degrees * Math.PI) / 180);
      const s = Math.sin((degrees * Math.PI) / 180);
      // Unit stress along x, seen in the ply's axes.
      const [s1, s2, t12] = [c * c, s * s, -c * s];
      const W1 = s1 * (s1 / E1 - (nu12 * s2) / E1);
      const W2 = s2 * (s2 / E2 - (nu12 * s1) / E1);
      const W12 = t12 ** 2 / G12;
      const expected = (0.0007 * W1 + 0.0067 * W2 + 0.0113 * W12) / (W1 + W2 + W12);
      const found = losses(layers(LOSSY, `[${degrees}]`));
      expect(found.bend / expected).toBeCloseTo(1, 10);
      expect(found.stretch / expected).toBeCloseTo(1, 10);
    }
  });

  test("outer plies count most in bending: with 0 outside the loss is lower than with 90 outside", () => {
    const inside = losses(layers(LOSSY, "[90_4/0_4]s"));
    const outside = losses(layers(LOSSY, "[0_4/90_4]s"));
    expect(outside.bend).toBeLessThan(inside.bend);
    expect(outside.stretch / inside.stretch).toBeCloseTo(1, 10);
  });

  test("an unsymmetric stack shares the energy of stretching and bending", () => {
    // [0/90] stretched: both plies bend as well; the loss lies between the two directions'.
    const { stretch, bend } = losses(layers(LOSSY, "[0/90]"));
    for (const eta of [stretch, bend]) {
      expect(eta).toBeGreaterThan(0.0007);
      expect(eta).toBeLessThan(0.0067);
    }
  });

  test("the plate's loss factor does not depend on the axes", () => {
    const list = layers(LOSSY, "[0/30/-45]");
    const stiffness = laminateStiffness(list);
    const loss = laminateLossStiffness(list);
    const turned = plateLossFactor(rotateLaminate(stiffness, 0.7), rotateLaminate(loss, 0.7));
    expect(turned / plateLossFactor(stiffness, loss)).toBeCloseTo(1, 10);
  });
});

function losses(list: readonly Layer[]) {
  const stiffness = laminateStiffness(list);
  const compliance = laminateCompliance(stiffness);
  const loss = laminateLossStiffness(list);
  return {
    bend: bendingLossFactor(compliance, loss),
    stretch: stretchingLossFactor(compliance, loss),
    plate: plateLossFactor(stiffness, loss),
  };
}
