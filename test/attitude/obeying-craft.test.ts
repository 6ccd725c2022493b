/** A craft that obeys its filter: it holds the estimate level, so that the error becomes its true tilt. */

import { describe, expect, test } from "vitest";
import { leverArm } from "../../src/attitude/lever-arm.ts";
import { opposite, type Side, sideTowards } from "../../src/attitude/sides.ts";
import { settledYawTilt } from "../../src/attitude/yaw-rules.ts";
import type { Vec3 } from "../../src/model/types.ts";
import { DEGREE, G } from "./body-path.ts";
import { obeyedTilt } from "./simulated-filter.ts";

/** Spun up in 0.2 s, held until 2.2 s, stopped at 2.4 s. */
const turning = (rate: number) => (t: number) =>
  rate * Math.max(0, Math.min(1, t / 0.2, (2.4 - t) / 0.2));

const tiltAt = ({ up, step }: ReturnType<typeof obeyedTilt>, t: number) => {
  const [x, y] = up[Math.round(t / step) - 1];
  // nose up, the vertical lies towards the nose: up points to the side that is truly high
  return { size: Math.asin(Math.hypot(x, y)) / DEGREE, high: sideTowards(x, y) };
};

describe("a craft that holds a vector filter's estimate level", () => {
  test.each<readonly [number, Vec3, Side]>([
    [400, [-0.03, 0, 0], "left"],
    [-400, [-0.03, 0, 0], "right"],
    [400, [0.03, 0, 0], "right"],
    [200, [0, 0.063, 0], "front"],
    [-200, [0, 0.063, 0], "rear"],
  ])(
    "turns at %d deg/s with the sensor at %j: tilts by about rate distance/(g tau), %s lifted",
    (degrees, r, lifted) => {
      const tau = 1;
      const rate = degrees * DEGREE;
      const flight = obeyedTilt(turning(rate), 2.4, r, tau, 60);
      const expected = (Math.abs(rate) * Math.hypot(...r)) / (G * tau) / DEGREE;
      for (const t of [0.2, 1, 2.2]) {
        const { size, high } = tiltAt(flight, t);
        expect(size / expected).toBeGreaterThan(0.85);
        expect(size / expected).toBeLessThan(1.1);
        // what the filter takes for low is lifted: the side that the sensor moves away from, within the
        // eighth by which the loop lags
        expect(high.split(" ")).toContain(lifted);
      }
      // the motion is over: so is the tilt, nearly
      expect(tiltAt(flight, 2.4).size).toBeLessThan(0.15 * expected);
      // far below the static reading, near what the filter settles at when the craft does not obey
      const { reading } = leverArm(r, { yawRate: rate });
      const settled = settledYawTilt(rate, Math.hypot(...r), tau).tilt / DEGREE;
      expect(settled / expected).toBeGreaterThan(0.9);
      expect(expected).toBeLessThan((0.31 * reading.tilt) / DEGREE);
    },
  );

  test("begins to do as the reading says when it turns already: the sensor's own side is lifted", () => {
    // 0.3 rad/s for 0.5 s: hardly any heading yet, so that the false reading has one direction
    for (const r of [
      [0.5, 0, 0],
      [0, -0.5, 0],
      [-0.4, 0.4, 0],
    ] as const) {
      const { selfLevel } = leverArm(r, { yawRate: 0.3 });
      const { high } = tiltAt(
        obeyedTilt(() => 0.3, 0.5, r, 0.2, 60),
        0.5,
      );
      expect(high).toBe(selfLevel.lifts);
      expect(opposite(high)).toBe(selfLevel.driftsTo);
    }
  });
});
