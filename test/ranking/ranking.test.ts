/** Order, ties and what the figures follow, on small frames. */

import { describe, expect, test } from "vitest";
import { analyse, analyseModes } from "../../src/analyse.ts";
import type { FrameFile } from "../../src/frame/types.ts";
import { FREQUENCY_BAND, TIE_BAND } from "../../src/ranking/rank.ts";
import type { RankedCandidate, Ranking } from "../../src/ranking/types.ts";
import { crossFrame, crossSections, frameOf, stiffer } from "../modes/toys.ts";

function rankingOf(file: FrameFile, modes = 40): Ranking {
  const { ranking } = analyse(file, { modes });
  if (!ranking) throw new Error("nothing to rank");
  return ranking;
}

const isHard = (c: RankedCandidate) => c.flags.some((f) => f.hard);
const names = (r: Ranking) => r.candidates.map((c) => c.candidate.name);
const level = (r: Ranking, name: string) =>
  r.candidates.find((c) => c.candidate.name === name)?.gyro ?? Number.NaN;

const HUB = crossSections() as { stack: object };

describe("places ruled out", () => {
  // The pattern is wider than the hub: it hangs over on both sides.
  const wide = { plate: "hub", at: [0, 0], holes: { spacing: [40, 86], footprint: 7 } };
  const file = crossFrame(
    { lopsided: true },
    { candidates: { corner: { plate: "hub", at: [46, 28], holes: { spacing: 16 } }, wide } },
  );
  const ranking = rankingOf(file);

  test("never come before one that is open, however quiet they are", () => {
    expect(level(ranking, "wide")).toBeLessThan(level(ranking, "corner"));
    expect(names(ranking)).toEqual(["corner", "wide"]);
    const [corner, hard] = ranking.candidates;
    expect([corner.place, corner.tied, isHard(corner)]).toEqual([1, false, false]);
    expect([hard.place, hard.tied, isHard(hard)]).toEqual([2, false, true]);
    expect(hard.flags.map((f) => f.kind)).toContain("pattern off the plate");
  });

  test("and the levels are measured against the quietest place that is open", () => {
    const [corner, hard] = ranking.candidates;
    expect(corner.decibel).toBe(0);
    expect(hard.decibel).toBeLessThan(0);
  });

  test("when all are ruled out, the least noisy of them is named all the same", () => {
    const all = rankingOf(crossFrame({ lopsided: true }, { candidates: { wide } }));
    expect(names(all)).toEqual(["wide"]);
    expect(all.verdict.headline).toMatch(/^No candidate is good/);
    expect(all.verdict.headline).toContain('"wide"');
  });
});

describe("ties", () => {
  test("mirror places on a symmetric frame read the same and share the first place", () => {
    const holes = { spacing: 20 };
    const stack = { ...HUB.stack, chip: [0, 0, 2] };
    const ranking = rankingOf(
      crossFrame(
        {},
        {
          stack,
          candidates: {
            middle: { plate: "hub", at: [0, 0] },
            left: { plate: "hub", at: [10, 22], holes },
            right: { plate: "hub", at: [10, -22], holes },
          },
        },
      ),
    );
    const [a, b] = ranking.candidates.filter((c) => c.candidate.name !== "middle");
    expect([a.candidate.name, b.candidate.name].sort()).toEqual(["left", "right"]);
    expect(a.gyro / b.gyro).toBeCloseTo(1, 6);
    expect(a.accel / b.accel).toBeCloseTo(1, 6);
    expect([a.place, b.place, a.tied, b.tied]).toEqual([1, 1, true, true]);
    expect(ranking.verdict.sentences[0]).toContain("It ties with");
  });

  const shape = { lopsided: true };
  const candidates = {
    middle: { plate: "hub", at: [0, 0], holes: { spacing: 20 } },
    nose: { plate: "hub", at: [48, 0], holes: { spacing: 16 } },
    tail: { plate: "hub", at: [-48, 0], holes: { spacing: 16 } },
    corner: { plate: "hub", at: [46, 28], holes: { spacing: 16 } },
    "other corner": { plate: "hub", at: [-46, -28], holes: { spacing: 16 } },
  };
  const file = crossFrame(shape, { candidates });
  const ranking = rankingOf(file);
  /** Levels of whole new solutions with the frame's stiffness changed. */
  const again = [-1, -0.5, 0, 0.5, 1].map((s) =>
    rankingOf(stiffer(file, (1 + s * FREQUENCY_BAND) ** 2)),
  );

  test("the range of a level is that of frames stiffer and softer, solved anew", () => {
    for (const c of ranking.candidates) {
      const levels = again.map((r) => level(r, c.candidate.name));
      expect(Math.min(...levels) / c.gyroRange[0]).toBeCloseTo(1, 2);
      expect(Math.max(...levels) / c.gyroRange[1]).toBeCloseTo(1, 2);
    }
  });

  test("a place ties if for some such frame it comes within the band of the quietest", () => {
    const quietest = ranking.candidates.reduce((a, b) => (b.gyro < a.gyro ? b : a)).candidate.name;
    const closest = new Map(
      names(ranking).map((name) => [
        name,
        Math.min(...again.map((r) => 20 * Math.log10(level(r, name) / level(r, quietest)))),
      ]),
    );
    const tied = ranking.candidates.filter((c) => c.tied).map((c) => c.candidate.name);
    const expected = names(ranking).filter((n) => (closest.get(n) ?? 99) < TIE_BAND);
    expect(tied).toEqual(expected.length > 1 ? expected : []);
    expect(expected.length).toBeGreaterThan(1);
  });

  test("those that tie share place 1 and go by flags, then by the accelerometer; the rest by noise", () => {
    const { candidates: all } = ranking;
    const ties = all.filter((c) => c.tied);
    const rest = all.filter((c) => !c.tied);
    expect(all).toEqual([...ties, ...rest]);
    expect(ties.every((c) => c.place === 1)).toBe(true);
    expect(rest.map((c) => c.place)).toEqual(rest.map((_, i) => ties.length + i + 1));
    for (let i = 1; i < ties.length; i++) {
      const [a, b] = [ties[i - 1], ties[i]];
      const fewer = a.flags.length < b.flags.length;
      expect(fewer || (a.flags.length === b.flags.length && a.accel <= b.accel)).toBe(true);
    }
    expect(rest.map((c) => c.gyro)).toEqual(rest.map((c) => c.gyro).sort((a, b) => a - b));
  });
});

describe("what the figures follow", () => {
  const base = { armElements: 4 };
  const hub = (thickness: number) => {
    const s = crossSections({ ...base, armThickness: thickness }) as Record<
      string,
      Record<string, object>
    >;
    return frameOf({ ...s, plates: { hub: { ...s.plates.hub, thickness: 8 } } });
  };

  test("arm modes go with the thickness to the power of 1.5, and the levels change with them", () => {
    const [thin, thick] = [3, 4].map((t) => analyse(hub(t), { modes: 20 }));
    for (const pattern of ["diagonal pairs against each other", "all together"]) {
      const f = [thin, thick].map(
        (a) => a.modes.described.find((m) => m.name === `arms flap, ${pattern}`)?.frequency ?? 0,
      );
      // heavy tips: f ~ t^1.5; the arm's own mass and the hub take a little off
      const power = Math.log(f[1] / f[0]) / Math.log(4 / 3);
      expect(power).toBeGreaterThan(1.25);
      expect(power).toBeLessThan(1.5);
    }
    const change =
      (thick.ranking?.candidates[0].gyro ?? 0) / (thin.ranking?.candidates[0].gyro ?? 1);
    expect(Math.abs(change - 1)).toBeGreaterThan(0.1);
  });

  test("doubling the balance grade and the ripples doubles every level", () => {
    const [one, two] = [1, 2].map((k) =>
      rankingOf(
        crossFrame(
          {},
          {
            excitation: {
              balanceGrade: 10 * k,
              bladeDifference: 0.01 * k,
              thrustRipple: 0.02 * k,
              torqueRipple: 0.02 * k,
              thrustRippleDouble: 0.01 * k,
              torqueRippleDouble: 0.01 * k,
            },
          },
        ),
        20,
      ),
    );
    expect(names(two)).toEqual(names(one));
    two.candidates.forEach((c, i) => {
      expect(c.gyro / one.candidates[i].gyro).toBeCloseTo(2, 9);
    });
  });

  test("more damping never makes it noisier", () => {
    const [less, more] = [0.01, 0.04].map((lossFactor) =>
      rankingOf(crossFrame({ lossFactor }), 20),
    );
    for (const name of names(less)) expect(level(more, name)).toBeLessThan(level(less, name));
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
    expect(analyseModes(crossFrame(), { modes: 6 }).ranking).toBeUndefined();
  });
});

test("the chief cause is the mode at whose crossing the spectrum peaks", () => {
  const { ranking, modes, excitation } = analyse(crossFrame({ lopsided: true }));
  const [best] = ranking?.candidates ?? [];
  const [cause] = best.causes;
  const mode = modes.described[cause.mode - 1];
  // the stack stays where it is drawn, joined to the frame by its modes
  expect(cause.frequency / mode.frequency).toBeCloseTo(1, 6);
  const order = excitation?.orders.find((o) => o.name === cause.order)?.order ?? 0;
  expect(cause.rpm).toBeCloseTo((60 * cause.frequency) / order, 9);
  // the spectrum of that order peaks there
  const spectrum = best.spectra.find((s) => s.order === cause.order)?.gyro ?? new Float64Array(0);
  const grid = excitation?.grid ?? new Float64Array(0);
  const peak = grid[spectrum.indexOf(Math.max(...spectrum))];
  expect((peak * 30) / Math.PI / cause.rpm).toBeCloseTo(1, 1.5);
  expect(cause.share).toBeGreaterThan(best.causes[1].share);
  expect(cause.share).toBeGreaterThan(0.5);
});

test("a cause at blade pass is met at a third of its frequency", () => {
  const { ranking, modes } = analyse(
    crossFrame(
      { lopsided: true },
      {
        excitation: {
          balanceGrade: 0,
          bladeDifference: 0,
          torqueRipple: 0,
          thrustRippleDouble: 0,
          torqueRippleDouble: 0,
        },
      },
    ),
  );
  const [best] = ranking?.candidates ?? [];
  for (const cause of best.causes.filter((c) => c.mode > 0)) {
    expect(cause.order).toBe("blade pass");
    expect(cause.rpm).toBeCloseTo((60 * cause.frequency) / 3, 9);
    expect(modes.described[cause.mode - 1].frequency / cause.frequency).toBeCloseTo(1, 6);
  }
  expect(best.causes.some((c) => c.mode > 0)).toBe(true);
});
