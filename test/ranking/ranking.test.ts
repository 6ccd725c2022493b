/** Order, ties and what the figures follow, on small frames. */

import { describe, expect, test } from "vitest";
import { analyse, analyseModes } from "../../src/analyse.ts";
import type { FrameFile } from "../../src/frame/types.ts";
import { causesOf } from "../../src/ranking/causes.ts";
import type { RankedCandidate, Ranking } from "../../src/ranking/types.ts";
import { crossSections, frameOf } from "../modes/toys.ts";
import { joined, placeOf, smallCross } from "../response/joined.ts";
import { assessed, judged } from "./judged.ts";

/** Few modes, and a map of a few places: what is found stays out of the way. */
const QUICK = { modes: 20, map: { pitch: 0.03 } };

function analysed(file: FrameFile) {
  const { ranking, ...rest } = analyse(file, QUICK);
  if (!ranking) throw new Error("nothing to rank");
  return { ...rest, ranking };
}

const isHard = (c: RankedCandidate) => c.flags.some((f) => f.hard);
/** Without what the search adds. */
const named = (r: Ranking) => r.candidates.filter((c) => !c.found);
const nameOf = (c: RankedCandidate) => c.candidate.name;

const STACK = (crossSections() as { stack: object }).stack;
const NONE = {
  balanceGrade: 0,
  bladeDifference: 0,
  thrustRipple: 0,
  torqueRipple: 0,
  thrustRippleDouble: 0,
  torqueRippleDouble: 0,
};

describe("places ruled out", () => {
  // The pattern is wider than the hub: it hangs over on both sides.
  const wide = { plate: "hub", at: [0, 0], holes: { spacing: [40, 86], footprint: 7 } };
  const corner = { plate: "hub", at: [46, 28], holes: { spacing: 16 } };
  const { ranking } = analysed(
    smallCross({}, {}, { candidates: { corner, wide }, control: { couplingBelow: "50 Hz" } }),
  );
  const [first] = ranking.candidates;
  const last = ranking.candidates[ranking.candidates.length - 1];

  test("never come before one that is open, however quiet they are", () => {
    const level = (name: string) =>
      ranking.candidates.find((c) => nameOf(c) === name)?.sensed.gyro ?? Number.NaN;
    expect(level("wide")).toBeLessThan(level("corner"));
    expect([nameOf(last), last.tied, isHard(last)]).toEqual(["wide", false, true]);
    expect(last.place).toBe(ranking.candidates.length);
    expect(last.flags.map((f) => f.kind)).toContain("pattern off the plate");
    expect(ranking.candidates.slice(0, -1).some(isHard)).toBe(false);
  });

  test("and the levels are measured against the quietest place that is open", () => {
    const open = ranking.candidates.filter((c) => !isHard(c));
    const quietest = Math.min(...open.map((c) => c.sensed.gyro));
    for (const c of ranking.candidates) {
      expect(c.decibel).toBeCloseTo(20 * Math.log10(c.sensed.gyro / quietest), 12);
      expect(c.scoreParts.gyro).toBeCloseTo(c.decibel, 12);
    }
    expect(Math.min(...open.map((c) => c.delayOver.without))).toBe(0);
    expect(first.place).toBe(1);
  });
});

describe("ties", () => {
  test("mirror places on a symmetric frame read the same and share the first place", () => {
    const holes = { spacing: 20 };
    const { ranking } = analysed(
      smallCross(
        { lopsided: false },
        { ...STACK, chip: [0, 0, 2] },
        {
          candidates: {
            middle: { plate: "hub", at: [0, 0] },
            left: { plate: "hub", at: [10, 22], holes },
            right: { plate: "hub", at: [10, -22], holes },
          },
        },
      ),
    );
    const [a, b] = named(ranking).filter((c) => nameOf(c) !== "middle");
    expect([nameOf(a), nameOf(b)].sort()).toEqual(["left", "right"]);
    for (const of of [
      (c: RankedCandidate) => c.gyro,
      (c: RankedCandidate) => c.accel,
      (c: RankedCandidate) => c.sensed.gyro,
      (c: RankedCandidate) => c.sensed.accel,
      (c: RankedCandidate) => c.fromCg,
      (c: RankedCandidate) => c.filter.without.delay,
      ...[0, 1].map((i) => (c: RankedCandidate) => c.cases[i].gyro),
    ]) {
      expect(of(a) / of(b)).toBeCloseTo(1, 6);
    }
    expect([a.tied, b.tied]).toEqual([b.tied, a.tied]);
    expect(a.score).toBeCloseTo(b.score, 6);
    // the bad propeller on the mirror side
    expect(a.cases[0].motor.replace("left", "?")).toBe(b.cases[0].motor.replace("right", "?"));
  });

  const candidates = {
    middle: { plate: "hub", at: [0, 0], holes: { spacing: 20 } },
    nose: { plate: "hub", at: [48, 0], holes: { spacing: 16 } },
    tail: { plate: "hub", at: [-48, 0], holes: { spacing: 16 } },
    corner: { plate: "hub", at: [46, 28], holes: { spacing: 16 } },
    "other corner": { plate: "hub", at: [-46, -28], holes: { spacing: 16 } },
  };
  const file = smallCross({}, {}, { candidates });
  const { ranking } = analysed(file);

  test("a level lies within its range, which frequencies a little off make wider than nothing", () => {
    // the five of the file, and the place as drawn, whose holes none of them has
    expect(named(ranking).length).toBe(6);
    for (const { gyroRange, sensed } of ranking.candidates) {
      expect(gyroRange[0]).toBeLessThanOrEqual(sensed.gyro);
      expect(gyroRange[1]).toBeGreaterThanOrEqual(sensed.gyro);
      expect(gyroRange[1] / gyroRange[0]).toBeGreaterThan(1.02);
    }
  });

  test("share place 1: those the file names, by flags that the score does not know, then by score", () => {
    const { candidates: all } = ranking;
    const ties = all.filter((c) => c.tied);
    const rest = all.filter((c) => !c.tied);
    expect(ties.length).toBeGreaterThan(1);
    expect(all).toEqual([...ties, ...rest]);
    expect(ties.every((c) => c.place === 1)).toBe(true);
    expect(rest.map((c) => c.place)).toEqual(rest.map((_, i) => ties.length + i + 1));
    const rank = (c: RankedCandidate) => 1e6 * +c.found + 1e3 * c.flags.length + c.score;
    expect(ties.map(rank)).toEqual(ties.map(rank).sort((a, b) => a - b));
    expect(rest.map((c) => c.score)).toEqual(rest.map((c) => c.score).sort((a, b) => a - b));
  });

  test("the chief cause is the mode at whose crossing the spectrum peaks", () => {
    const best = ranking.candidates.find((c) => c.candidate.designed);
    if (!best) throw new Error("the place as drawn is gone");
    const [cause] = best.causes;
    const frame = judged(file, 30, 1);
    const whole = joined(frame, best.candidate, 20).solved.modes.described[cause.mode - 1];
    expect(cause.frequency / whole.frequency).toBeCloseTo(1, 4);
    expect(cause.modeName).toBe(whole.name);
    // the spectrum of that order peaks there
    const gyro = best.spectra.find((s) => s.order === cause.order)?.gyro ?? new Float64Array(0);
    const peak = frame.excitation.grid[gyro.indexOf(Math.max(...gyro))];
    expect((peak * 30) / Math.PI / cause.rpm).toBeCloseTo(1, 1.5);
    expect(cause.share).toBeGreaterThan(0.5);
  });
});

test("a cause at blade pass is met at a third of its frequency", () => {
  const excitation = { ...NONE, thrustRipple: 0.03 };
  const frame = judged(smallCross({}, {}, { excitation }), 30, 2);
  for (const c of frame.model.candidates) {
    const causes = causesOf(frame.model, frame.bare, placeOf(frame, c));
    for (const cause of causes.filter((k) => k.mode > 0)) {
      expect(cause.order).toBe("blade pass");
      expect(cause.rpm).toBeCloseTo((60 * cause.frequency) / 3, 9);
    }
    expect(causes.some((k) => k.mode > 0)).toBe(true);
  }
});

describe("what the figures follow", () => {
  test("arm modes go with the thickness to the power of 1.5, and the levels change with them", () => {
    const hub = (thickness: number) => {
      const s = crossSections({ armElements: 4, armThickness: thickness }) as Record<
        string,
        Record<string, object>
      >;
      return judged(frameOf({ ...s, plates: { hub: { ...s.plates.hub, thickness: 8 } } }));
    };
    const [thin, thick] = [3, 4].map(hub);
    for (const pattern of ["diagonal pairs against each other", "all together"]) {
      const [f, g] = [thin, thick].map(
        ({ solved }) =>
          solved.modes.described.find((m) => m.name === `arms flap, ${pattern}`)?.frequency ?? 0,
      );
      // heavy tips: f ~ t^1.5; the arm's own mass and the hub take a little off
      const power = Math.log(g / f) / Math.log(4 / 3);
      expect(power).toBeGreaterThan(1.25);
      expect(power).toBeLessThan(1.5);
    }
    const [a, b] = [thin, thick].map((f) => assessed(f)[0].sensed.gyro);
    expect(Math.abs(b / a - 1)).toBeGreaterThan(0.1);
  });

  test("doubling the unbalance and the ripples doubles every level", () => {
    const [one, two] = [1, 2].map((k) => {
      const excitation = {
        balanceGrade: 10 * k,
        bladeDifference: 0.01 * k,
        thrustRipple: 0.02 * k,
        torqueRipple: 0.02 * k,
        thrustRippleDouble: 0.01 * k,
        torqueRippleDouble: 0.01 * k,
      };
      // a chip without a noise of its own
      const sensors = { accelerometer: { noiseDensity: 0 } };
      return assessed(judged(smallCross({}, {}, { excitation, sensors })));
    });
    two.forEach((p, i) => {
      for (const of of [
        (q: typeof p) => q.gyro,
        (q: typeof p) => q.accel,
        (q: typeof p) => q.sensed.gyro,
        (q: typeof p) => q.sensed.accel,
      ]) {
        expect(of(p) / of(one[i])).toBeCloseTo(2, 9);
      }
    });
  });

  test("more damping never makes it noisier", () => {
    const [less, more] = [0.01, 0.04].map((loss) =>
      assessed(judged(smallCross({ lossFactor: loss }))),
    );
    less.forEach((p, i) => {
      expect(more[i].sensed.gyro).toBeLessThan(p.sensed.gyro);
    });
  });
});

describe("nothing to rank", () => {
  test("without propulsion there are modes and no ranking", () => {
    const { propulsion: _, ...rest } = crossSections();
    const a = analyse(frameOf(rest), { modes: 6 });
    expect(a.ranking).toBeUndefined();
    expect(a.modes.lambda.length).toBe(6);
  });

  test("with only modes asked for there is no ranking", () => {
    expect(analyseModes(smallCross(), { modes: 6 }).ranking).toBeUndefined();
  });
});
