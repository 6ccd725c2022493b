import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { boxInertia } from "../../src/element/rigid-mass.ts";
import type { Vec3 } from "../../src/model/types.ts";
import { isolatorFlags, type MountedStack } from "../../src/response/isolator-flags.ts";
import { MOUNT_MOTIONS, mountFrequencies } from "../../src/response/mount-frequencies.ts";
import { mountStiffness } from "../../src/response/mount-stiffness.ts";
import { clearStiffness, suitableStiffness } from "../../src/response/suitable-stiffness.ts";
import { transmissibility } from "../../src/response/transmissibility.ts";

/** What a mount passes on, how stiff it may be, and what is said of one that does not suit. */

describe("transmissibility", () => {
  test.each([0.01, 0.2, 1])("loss factor %d: k* / (k* - m omega^2) in complex numbers", (eta) => {
    const [m, fn] = [0.024, 120];
    const k = m * (2 * Math.PI * fn) ** 2;
    for (const f of [0, 20, 100, 120, 170, 600]) {
      const [re, im] = [k - m * (2 * Math.PI * f) ** 2, k * eta];
      const ratio = Math.hypot(k, k * eta) / Math.hypot(re, im);
      expect(transmissibility(f, fn, eta)).toBeCloseTo(ratio, 12);
    }
  });

  test("steady motion of a shaken mass, integrated in time", () => {
    // At one frequency c = k eta / omega is structural damping; m x'' = k (y - x) + c (y' - x'), y = sin.
    const [fn, f, eta] = [100, 150, 0.2];
    const [w, w2] = [2 * Math.PI * f, (2 * Math.PI * fn) ** 2];
    const c = (w2 * eta) / w;
    const rate = (x: number, v: number, t: number) =>
      w2 * (Math.sin(w * t) - x) + c * (w * Math.cos(w * t) - v);
    const dt = 1 / f / 200;
    let [x, v, top] = [0, 0, 0];
    for (let i = 0; i < 200 * 60; i++) {
      const t = i * dt;
      // the midpoint rule: error about (w dt)^2 / 24 = 4e-5 a step in phase
      const [xm, vm] = [x + (dt / 2) * v, v + (dt / 2) * rate(x, v, t)];
      x += dt * vm;
      v += dt * rate(xm, vm, t + dt / 2);
      if (i > 200 * 50) top = Math.max(top, Math.abs(x));
    }
    expect(top / transmissibility(f, fn, eta)).toBeCloseTo(1, 2);
  });

  test("is 1 at sqrt 2 times the frequency whatever the loss, and peaks at the frequency itself", () => {
    for (const eta of [0.05, 0.2, 1]) {
      expect(transmissibility(Math.SQRT2 * 80, 80, eta)).toBeCloseTo(1, 12);
      const peak = transmissibility(80, 80, eta);
      expect(peak).toBeCloseTo(Math.sqrt(1 + eta * eta) / eta, 12);
      for (const f of [79, 81]) expect(transmissibility(f, 80, eta)).toBeLessThan(peak);
    }
  });
});

const SQUARE: Vec3[] = [
  [0.015, 0.015, 0],
  [0.015, -0.015, 0],
  [-0.015, 0.015, 0],
  [-0.015, -0.015, 0],
];

interface Mounted {
  readonly axial: number;
  readonly ratio: number;
  readonly height: number;
  readonly hover: number;
  readonly controlBandwidth: number;
}

/** 24 g on four mounts, `ratio` as stiff across as along. */
function mounted({ axial, ratio, height, ...limits }: Mounted): MountedStack {
  const K = mountStiffness(SQUARE, [0, 0, height], axial, ratio * axial);
  const modes = mountFrequencies(K, 0.024, boxInertia(0.024, 0.042, 0.042, 0.018));
  return { modes, axial, lossFactor: 0.2, ...limits };
}

describe("suitable stiffness", () => {
  test("24 g, 30 Hz of bandwidth, hover at 180 Hz: bounce from 75 to 126 Hz", () => {
    // by hand: 0.024 (2 pi 75)^2 / 4 and 0.024 (2 pi 126)^2 / 4
    const window = suitableStiffness(0.024, 4, { hover: 180, controlBandwidth: 30 });
    expect(window?.low).toBeCloseTo(1332.4, 1);
    expect(window?.high).toBeCloseTo(3760.6, 1);
  });

  test("is none where the loop reaches too far", () => {
    expect(suitableStiffness(0.024, 4, { hover: 180, controlBandwidth: 51 })).toBeUndefined();
    expect(suitableStiffness(0.024, 4, { hover: 180, controlBandwidth: 50 })).toBeDefined();
  });
});

/** Whole numbers scaled: doubles would crowd at one end. */
const from = (least: number, most: number, unit: number) =>
  fc.integer({ min: least, max: most }).map((v) => v * unit);
const anyMounts = fc.record({
  axial: from(2, 1000, 100),
  ratio: from(30, 300, 0.01),
  height: from(0, 120, 1e-4),
  hover: from(800, 3300, 0.1),
  controlBandwidth: from(50, 600, 0.1),
});

describe("clear stiffness", () => {
  const scaled = (c: Mounted, axial: number) => isolatorFlags(mounted({ ...c, axial }));
  const trial = (steps: number, from: number, to: number) =>
    Array.from({ length: steps }, (_, i) => from * (to / from) ** (i / (steps - 1)));

  test("mounts inside the window get no flag; without a window every stiffness gets one", () => {
    let [with_, without] = [0, 0];
    fc.assert(
      fc.property(anyMounts, (c) => {
        const clear = clearStiffness(mounted(c).modes, c.axial, c);
        if ("window" in clear) {
          with_++;
          const { low, high } = clear.window;
          for (const k of trial(5, low * (1 + 1e-9), high * (1 - 1e-9)))
            expect(scaled(c, k)).toEqual([]);
          expect(scaled(c, low * 0.999).length).toBeGreaterThan(0);
          expect(scaled(c, high * 1.001).length).toBeGreaterThan(0);
        } else {
          without++;
          for (const k of trial(25, 100, 1e6)) expect(scaled(c, k).length).toBeGreaterThan(0);
        }
      }),
      { seed: 31, numRuns: 120 },
    );
    expect(Math.min(with_, without)).toBeGreaterThan(20);
  });

  test("of two ranges on either side of a motion at hover the wider one is taken", () => {
    // at 6 kN/m: bounce 100 Hz, which may be 50 to 126; the rocking at twice that must be below 144 or
    // above 216 Hz, which leaves bounces of 50 to 72 and of 108 to 126 Hz
    const modes = at(100, 100, 100, 200, 200, 150).filter(({ motion }) => motion !== "twist");
    const clear = clearStiffness(modes, 6e3, { hover: 180, controlBandwidth: 20 });
    expect(clear).toEqual({
      window: { low: expect.closeTo(6e3 * 0.5 ** 2, 8), high: expect.closeTo(6e3 * 0.72 ** 2, 8) },
    });
    const faster = clearStiffness(modes, 6e3, { hover: 180, controlBandwidth: 27 });
    expect(faster).toEqual({
      window: {
        low: expect.closeTo(6e3 * 1.08 ** 2, 8),
        high: expect.closeTo(6e3 * 1.26 ** 2, 8),
      },
    });
  });

  test("does not depend on the mounts it starts from", () => {
    fc.assert(
      fc.property(anyMounts, (c) => {
        const here = clearStiffness(mounted(c).modes, c.axial, c);
        const there = clearStiffness(mounted({ ...c, axial: 1e4 }).modes, 1e4, c);
        expect(Object.keys(there)).toEqual(Object.keys(here));
        if ("window" in here && "window" in there) {
          expect(there.window.low / here.window.low).toBeCloseTo(1, 8);
          expect(there.window.high / here.window.high).toBeCloseTo(1, 8);
        }
      }),
      { seed: 37, numRuns: 50 },
    );
  });
});

/** Modes at given frequencies, in the order of the names. */
function at(...frequencies: number[]) {
  return MOUNT_MOTIONS.map((motion, i) => {
    const shares = new Float64Array(6);
    shares[i] = 1;
    return { motion, frequency: frequencies[i], shares };
  });
}

describe("flags", () => {
  const hover = 180;
  const stack = (modes: ReturnType<typeof at>, controlBandwidth: number, axial = 2e3) =>
    isolatorFlags({ modes, axial, lossFactor: 0.2, hover, controlBandwidth });

  test("none for mounts that suit", () => {
    expect(stack(at(90, 90, 100, 120, 120, 110), 30)).toEqual([]);
  });

  test("too soft: every motion below 2.5 times the bandwidth, and the stiffness that would do", () => {
    // 60 Hz must come up to 75: s^2 = 1.5625; the bounce may go from 90 to 126: 1.96, but the rocking at
    // 110 stays 20 % below hover only up to 144 Hz: 1.714. Of 2 kN/m: 3.125 and 3.427, ratio 1.097.
    expect(stack(at(60, 65, 90, 110, 110, 100), 30)).toEqual([
      {
        kind: "isolators too soft",
        brief:
          "2 of 6 motions below 75 Hz, 2.5 times the bandwidth of the rate loop; the lowest: sway fore-aft (60 Hz)",
        text: "sway fore-aft (60 Hz) and sway sideways (65 Hz) lie below 2.5 times the control bandwidth of 30 Hz (75 Hz): the stack moves on its mounts where the control loop works",
        advice:
          "take mounts of 3.3 kN/m each, no more than 4.8 % off, along the screw (now 2), with the same proportion across",
      },
    ]);
  });

  test("a wide range is told by both ends", () => {
    // s^2 from (75/60)^2 to (126/90)^2, nothing near hover: 3.1 to 3.9 of 2 kN/m
    const [{ advice }] = stack(at(60, 65, 90, 90, 90, 90), 30);
    expect(advice).toContain("take mounts of 3.1 to 3.9 kN/m each along the screw (now 2)");
  });

  test.each([
    [161, "isolators close to resonance at hover"],
    [162.1, "isolators in resonance at hover"],
    [197.9, "isolators in resonance at hover"],
    [199, "isolators close to resonance at hover"],
    [215.9, "isolators close to resonance at hover"],
  ])("rocking at %d Hz and hover at 180 Hz: %s", (f, kind) => {
    const flags = stack(at(90, 90, 100, 120, f, 110), 30);
    expect(flags.map((flag) => flag.kind)).toEqual([kind]);
    expect(flags[0].text).toContain(`pitch rocking (${Math.round(f)} Hz)`);
  });

  test("further than 20 % from hover is clear", () => {
    for (const f of [143.9, 216.1]) expect(stack(at(90, 90, 100, 120, f, 110), 30)).toEqual([]);
  });

  test("no isolation: what is passed on at hover", () => {
    // |T| at r = 180/250: sqrt(1.04 / ((1 - 0.5184)^2 + 0.04)) = 1.96
    const [flag, ...more] = stack(at(220, 220, 250, 300, 300, 280), 30);
    expect(more).toEqual([]);
    expect(flag.kind).toBe("isolators do not isolate");
    expect(flag.text).toBe(
      "the bounce at 250 Hz lies above 0.7 of hover (126 Hz of 180 Hz): at hover the mounts pass 1.96 times the vibration on, where screws pass it on as it is",
    );
  });

  test("where the two rules exclude each other, the advice says so with both limits", () => {
    // the sway is at 0.9 of the bounce, so 2.5 times the bandwidth may be 0.9 x 126 Hz
    const [{ advice }] = stack(at(90, 90, 100, 120, 120, 110), 60);
    expect(advice).toBe(
      "no mounts suit: the bounce would have to lie above 150 Hz for the control loop and below 126 Hz to isolate at hover; lower the control bandwidth to less than 45.4 Hz, or screw the stack down",
    );
  });

  test("where one motion is too slow for any stiffness, it is named", () => {
    const [{ advice }] = stack(at(50, 55, 100, 120, 120, 110), 40);
    expect(advice).toBe(
      "no stiffness suits mounts of these proportions: with the bounce at 126 Hz, low enough to isolate at hover, sway fore-aft is at 0.50 of that, and the control loop needs 100 Hz; take mounts that are stiffer across the screw, lower the control bandwidth to less than 25.2 Hz, or screw the stack down",
    );
  });

  test("where another motion is at hover whenever the bounce is right", () => {
    const flags = stack(at(125, 125, 120, 165, 165, 140), 48);
    expect(flags[0].kind).toBe("isolators in resonance at hover");
    expect(flags[0].advice).toMatch(
      /^no stiffness suits .* another motion is close to hover; take/,
    );
  });
});
