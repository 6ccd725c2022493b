/** The order of places with ties, on a frame whose nose is so heavy that its quiet places lie off its centre. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Candidate } from "../../src/model/types.ts";
import type { Assessed } from "../../src/ranking/assess.ts";
import { FREQUENCY_BAND, figuresOf, orderOf, TIE_BAND } from "../../src/ranking/order.ts";
import type { Flag } from "../../src/ranking/types.ts";
import { score, scoreParts, USE_WEIGHTS, type Use } from "../../src/ranking/use.ts";
import { shaken, smallCross } from "../response/joined.ts";
import { assessed, type Judged, judged, withInstruments } from "./judged.ts";

const NOSE_HEAVY = {
  lump: { mass: "250 g", at: [45, 0, 12], size: [20, 40, 16], on: "hub" },
};
const holes = { spacing: "20 mm" };
const candidates = Object.fromEntries(
  [-40, -20, 0, 20, 40].map((x) => [`at ${x}`, { plate: "hub", at: [x, 0], holes }]),
);
const file = (use: Use) =>
  smallCross(
    { lopsided: false },
    { chip: [0, 0, 0] },
    { bodies: NOSE_HEAVY, candidates, control: { use } },
  );

const frame = judged(file("both"), 20, 10);
const flown = (use: Use): Judged => withInstruments({ ...frame, file: file(use) });
const places = assessed(frame);

const HARD: Flag = { kind: "gyro clips", hard: true, text: "" };
const SOFT: Flag = { kind: "near an antinode", hard: false, text: "" };
const named = (order: readonly number[], all: readonly Assessed[] = places) =>
  order.map((i) => all[i].candidate.name);
const unflagged = places.map((): Flag[] => []);

/** dB, with the frequencies as computed. */
const plain = (use: Use, among: readonly Assessed[] = places) => {
  const { attitudeError } = frame.instruments.control;
  const all = among.map((p) => figuresOf(p, attitudeError));
  return all.map((f) =>
    score(scoreParts(f, { gyro: 1, accelerometer: 1, tilt: 0 }), USE_WEIGHTS[use]),
  );
};

describe("self-level flight on a frame with a heavy nose", () => {
  test("is best over the centre of gravity, which lies ahead of the middle", () => {
    expect(frame.mass.cg[0]).toBeGreaterThan(0.015);
    const { bare, instruments } = flown("self-level");
    expect(named(orderOf(bare, instruments, places, unflagged).order)[0]).toBe("at 20");
    const tilts = places.map((p) => p.tilt);
    expect(tilts.indexOf(Math.min(...tilts))).toBe(3);
  });

  test("while in rate flight the quiet tail is", () => {
    const { bare, instruments } = flown("rate");
    const gyro = places.map((p) => p.sensed.gyro);
    expect(gyro.indexOf(Math.min(...gyro))).toBe(0);
    expect(named(orderOf(bare, instruments, places, unflagged).order)[0]).toBe("at -40");
  });

  test("by tilts worked out by hand: 200 deg/s and the stack's own share in the centre of gravity", () => {
    for (const p of places) {
      const total = frame.mass.mass + 0.02;
      const cg = (frame.mass.mass * frame.mass.cg[0] + 0.02 * p.candidate.x) / total;
      const r = Math.abs(p.candidate.x - cg);
      expect(Math.tan(p.tilt)).toBeCloseTo((3.490659 ** 2 * r) / 9.80665, 6);
    }
  });
});

describe("whatever the flags", () => {
  const uses = fc.constantFrom<Use>("rate", "self-level", "both");
  const flagging = fc.array(fc.constantFrom<readonly Flag[]>([], [HARD], [SOFT], [SOFT, HARD]), {
    minLength: places.length,
    maxLength: places.length,
  });

  test("places to avoid come last, the rest by score but for ties, and each place once", () => {
    fc.assert(
      fc.property(uses, flagging, (use, flags) => {
        const { bare, instruments } = flown(use);
        const { order, tied, reference } = orderOf(bare, instruments, places, flags);
        expect([...order].sort()).toEqual(places.map((_, i) => i));
        const hard = order.map((i) => flags[i].includes(HARD));
        expect(hard).toEqual([...hard].sort((a, b) => +a - +b));
        const scores = plain(use);
        const rest = order.filter((i) => !tied.has(i));
        for (const side of [true, false]) {
          const own = rest.filter((i) => flags[i].includes(HARD) === side).map((i) => scores[i]);
          expect(own).toEqual([...own].sort((a, b) => a - b));
        }
        // ties come first, and are all to be avoided or none of them
        order.slice(0, tied.size).forEach((i) => {
          expect(tied.has(i)).toBe(true);
          expect(flags[i].includes(HARD)).toBe(hard[0]);
        });
        expect(tied.size).not.toBe(1);
        // measured against the quietest that is open, or of all where none is
        const open = places.filter((_, i) => !flags[i].includes(HARD));
        const among = open.length > 0 ? open : places;
        expect(reference.gyro).toBe(Math.min(...among.map((p) => p.sensed.gyro)));
        expect(reference.accelerometer).toBe(Math.min(...among.map((p) => p.sensed.accel)));
        expect(reference.tilt).toBe(0);
      }),
      { seed: 53, numRuns: 12 },
    );
  });
});

describe("ties", () => {
  /** The same place once more, found by the program and somewhat noisier by what the chip reads. */
  const twin = (p: Assessed, more: Partial<Candidate>, louder = 1): Assessed => ({
    ...p,
    candidate: { ...p.candidate, ...more },
    sensed: { ...p.sensed, gyro: louder * p.sensed.gyro },
  });
  const best = places[3];
  const { bare, instruments } = flown("self-level");

  test("what the file names comes before what was found, though that is better", () => {
    const found = twin(best, { name: "found", named: false }, 0.99);
    const all = [found, best];
    const { order, tied } = orderOf(bare, instruments, all, [[], []]);
    expect(named(order, all)).toEqual(["at 20", "found"]);
    expect(tied.size).toBe(2);
  });

  test("then fewer flags count, then the score", () => {
    const all = [
      twin(best, { name: "flagged" }),
      twin(best, { name: "louder" }, 1.01),
      twin(best, { name: "quieter" }),
    ];
    const { order } = orderOf(bare, instruments, all, [[SOFT], [], []]);
    expect(named(order, all)).toEqual(["quieter", "louder", "flagged"]);
  });

  test("a flag decides between places that tie, whatever its kind", () => {
    const all = [twin(best, { name: "far" }), twin(best, { name: "louder" }, 1.01)];
    const far: Flag = { kind: "far from the centre of gravity", hard: false, text: "" };
    expect(named(orderOf(bare, instruments, all, [[far], []]).order, all)[0]).toBe("louder");
  });

  test("a hard flag ends a tie", () => {
    const all = [twin(best, { name: "ruled out" }, 0.99), best];
    const { order, tied } = orderOf(bare, instruments, all, [[HARD], []]);
    expect(named(order, all)).toEqual(["at 20", "ruled out"]);
    expect(tied.size).toBe(0);
  });

  test("are decided with the levels of the same frame, stiffer and softer by as much as is not known", () => {
    const { order, tied, shifted } = orderOf(bare, instruments, places, unflagged);
    const errors = [-1, -0.5, 0, 0.5, 1].map((s) => 1 + s * FREQUENCY_BAND);
    expect(shifted.length).toBe(errors.length);
    const gaps = errors.map((factor, k) => {
      const levels = assessed(stifferFrame(factor)).map((p) => p.sensed);
      levels.forEach(({ gyro, accel }, i) => {
        expect(shifted[k][i].gyro / gyro).toBeCloseTo(1, 4);
        expect(shifted[k][i].accel / accel).toBeCloseTo(1, 4);
      });
      // half of what sets the places apart in rotation, a fifth of that in acceleration, and false tilt
      const costs = plain("self-level").map(
        (cost, i) =>
          cost +
          0.5 * 20 * Math.log10(levels[i].gyro / places[i].sensed.gyro) +
          0.2 * 20 * Math.log10(levels[i].accel / places[i].sensed.accel),
      );
      return costs.map((c) => c - costs[order[0]]);
    });
    const expected = places.flatMap((_, i) => (gaps.some((g) => g[i] < TIE_BAND) ? [i] : []));
    expect([...tied].sort()).toEqual(expected.length > 1 ? expected : []);
    expect(expected).toContain(order[0]);
    expect(expected.length).toBeLessThan(places.length);
  });

  test("alone, a place ties with nobody", () => {
    const { order, tied } = orderOf(bare, instruments, [best], [[]]);
    expect([order, tied.size]).toEqual([[0], 0]);
  });
});

/** The frame of a metal that makes all frequencies higher by a factor, under the same forces. */
function stifferFrame(factor: number): Judged {
  const other = smallCross(
    { lopsided: false, E: 70 * factor ** 2 },
    { chip: [0, 0, 0] },
    { bodies: NOSE_HEAVY, candidates, control: { use: "self-level" } },
  );
  return withInstruments(shaken(judged(other, 20, 10), frame.excitation));
}
