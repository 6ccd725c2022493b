/** The answer in words, on made-up figures: what must be said, not how. */

import { describe, expect, test } from "vitest";
import { boxInertia } from "../../src/element/rigid-mass.ts";
import type { Flag, Overhang, RankedCandidate } from "../../src/ranking/types.ts";
import { writeVerdict } from "../../src/ranking/verdict.ts";

interface Made {
  readonly name: string;
  readonly gyro: number;
  readonly tied?: boolean;
  readonly flags?: readonly Flag[];
  readonly designed?: boolean;
  readonly rigid?: boolean;
}

const CANTILEVERED: Flag = { kind: "cantilevered", hard: true, text: "reaches far" };
const OFF: Flag = { kind: "pattern off the plate", hard: true, text: "does not fit" };
const FAR: Flag = { kind: "far from the centre of gravity", hard: false, text: "far" };

/** In order; levels against the quietest without a hard flag, or of all. */
function ranked(made: readonly Made[]): RankedCandidate[] {
  const open = made.filter((m) => !(m.flags ?? []).some((f) => f.hard));
  const quietest = Math.min(...(open.length > 0 ? open : made).map((m) => m.gyro));
  const nothing = new Float64Array(0);
  return made.map((m, i) => ({
    candidate: {
      name: m.name,
      plate: 0,
      x: 0,
      y: 0,
      side: 1,
      holes: [],
      footprint: 6e-3,
      cg: [0, 0, 0],
      chip: [0, 0, 0],
      stack: { mass: 9e-3, inertia: boxInertia(9e-3, 0.03, 0.03, 0.015) },
      designed: m.designed ?? false,
      named: true,
      note: "",
    },
    plate: "deck",
    place: m.tied ? 1 : i + 1,
    tied: m.tied ?? false,
    gyro: m.gyro,
    gyroAxes: [m.gyro, 0, 0],
    accel: 1,
    accelAxes: [1, 0, 0],
    gyroAtHover: m.gyro / 4,
    fast: { flight: 0.1, power: 0.5 },
    gyroRange: [m.gyro, m.gyro],
    decibel: 20 * Math.log10(m.gyro / quietest),
    accelDecibel: 0,
    fromCg: 0,
    fromCg3d: 0,
    flags: m.flags ?? [],
    causes: [
      {
        mode: m.rigid ? 0 : 7,
        frequency: 181.4,
        modeName: "arms flap, all together",
        order: "unbalance",
        share: 0.62,
        parts: [],
        remedy: "",
        met: true,
        rpm: 10884,
      },
    ],
    motion: [],
    spectra: [],
    gyroTotal: nothing,
    accelTotal: nothing,
  }));
}

const OVERHANG: Overhang = {
  plate: "deck",
  direction: "rear",
  length: 0.09,
  thickness: 0.002,
  supportAt: -0.05,
  endAt: -0.14,
  mass: 0.03,
  mode: 3,
  frequency: 70,
  flagged: true,
  text: '"deck" reaches 90 mm past its last support to the rear',
};

const verdict = (made: readonly Made[], overhangs: readonly Overhang[] = []) => {
  const v = writeVerdict(ranked(made), overhangs);
  return { ...v, all: [v.headline, ...v.sentences].join(" ") };
};

test("one candidate: its level, and no comparison", () => {
  const v = verdict([{ name: "A", gyro: 12.34 }]);
  expect(v.headline).toMatch(/only candidate.*"A".*12 deg\/s/);
  expect(v.all).not.toMatch(/tie|worst|next/);
});

describe("one clear winner", () => {
  const v = verdict([
    { name: "A", gyro: 10 },
    { name: "B", gyro: 20 },
    { name: "C", gyro: 60, designed: true },
  ]);

  test("is named with its plate, level and margin", () => {
    expect(v.headline).toContain('Put the stack at "A" on the plate "deck"');
    expect(v.headline).toContain("10 deg/s rms");
    expect(v.headline).toMatch(/6\.0 dB less than the next best, "B"/);
  });

  test("it matters: the worst place, in times and in decibels", () => {
    expect(v.all).toMatch(/It matters.*"C".*60 deg\/s[^0-9]* 6 times[^0-9]*16 dB/);
  });

  test("the place as built is told how it does", () => {
    expect(v.all).toMatch(/The file puts the stack at "C", place 3: 16 dB/);
  });

  test("the chief cause is named with mode, frequency and speed", () => {
    expect(v.all).toContain("62 %");
    expect(v.all).toContain("unbalance on mode 7 (181 Hz");
    expect(v.all).toContain("10900 rpm");
  });
});

test("a whole craft that moves as one is no mode", () => {
  const v = verdict([{ name: "A", gyro: 10, rigid: true }]);
  expect(v.all).toMatch(/whole craft/);
  expect(v.all).not.toContain("mode 0");
});

describe("ties", () => {
  const v = verdict([
    { name: "A", gyro: 10.4, tied: true },
    { name: "B", gyro: 10, tied: true, flags: [FAR] },
    { name: "C", gyro: 10.2, tied: true, flags: [FAR], designed: true },
  ]);

  test("all are named, and what tells them apart", () => {
    expect(v.headline).toContain('Put the stack at "A"');
    expect(v.headline).not.toContain("less than");
    expect(v.sentences[0]).toMatch(/^It ties with "B" and "C" .*it alone has no flag\.$/);
    expect(v.all).toMatch(/"C", ties/);
    expect(v.all).not.toMatch(/place 1: /);
  });

  test("it hardly matters, and the worst is not called worse than it is", () => {
    expect(v.all).toMatch(/no place is better than another, .*: all within 0\.3 dB/);
    expect(v.all).not.toMatch(/noisiest|worst/);
  });

  test("with as few flags, the accelerometer decides, and it says so", () => {
    const w = verdict([
      { name: "A", gyro: 10, tied: true },
      { name: "B", gyro: 10, tied: true },
    ]);
    expect(w.sentences[0]).toMatch(/quietest accelerometer/);
  });

  test("a long list of ties is counted, not read out", () => {
    const names = ["A", "B", "C", "D", "E", "F"];
    const w = verdict(names.map((name) => ({ name, gyro: 10, tied: true })));
    expect(w.sentences[0]).toContain('It ties with "B", "C", "D" and 2 others');
  });
});

describe("places ruled out", () => {
  test("are refused by name, with the reason and the level", () => {
    const v = verdict([
      { name: "A", gyro: 10 },
      { name: "B", gyro: 100, flags: [CANTILEVERED] },
      { name: "C", gyro: 11, flags: [OFF, FAR] },
    ]);
    expect(v.all).toMatch(/Not at "B": cantilevered \(100 deg\/s rms, 20 dB more/);
    expect(v.all).toMatch(/Not at "C": pattern off the plate/);
    expect(v.headline).toContain('"A"');
    expect(v.all).not.toMatch(/It matters.*"B"/);
  });

  test("all of them: none is good, the least noisy is named", () => {
    const v = verdict([
      { name: "B", gyro: 30, flags: [CANTILEVERED] },
      { name: "C", gyro: 40, flags: [OFF] },
    ]);
    expect(v.headline).toMatch(/No candidate is good.*"B".*30 deg\/s/);
    expect(v.headline).not.toContain("Put the stack");
    expect(v.all).toContain('Not at "B"');
    expect(v.all).toContain('Not at "C"');
  });

  test("a quieter place that is ruled out does not read as louder", () => {
    const v = verdict([
      { name: "A", gyro: 20 },
      { name: "B", gyro: 10, flags: [OFF] },
    ]);
    expect(v.all).not.toMatch(/-\d/);
    expect(v.all).not.toMatch(/6\.0 dB more/);
  });
});

describe("overhangs", () => {
  test("that are lively are named even where no candidate sits on them", () => {
    const v = verdict([{ name: "A", gyro: 10 }], [OVERHANG]);
    expect(v.all).toContain("Keep the stack off the overhang");
    expect(v.all).toContain("90 mm");
  });

  test("also beside a place that is ruled out for another reason", () => {
    const v = verdict(
      [
        { name: "A", gyro: 10 },
        { name: "C", gyro: 11, flags: [OFF] },
      ],
      [OVERHANG],
    );
    expect(v.all).toContain('Not at "C"');
    expect(v.all).toContain("Keep the stack off the overhang");
  });

  test("that nothing shakes are not", () => {
    const v = verdict([{ name: "A", gyro: 10 }], [{ ...OVERHANG, flagged: false }]);
    expect(v.all).not.toContain("overhang");
  });
});

test("every sentence ends, and none has a number that is none", () => {
  const v = verdict([
    { name: "A", gyro: 0.0123 },
    { name: "B", gyro: 0.5, flags: [CANTILEVERED] },
  ]);
  for (const s of [v.headline, ...v.sentences]) {
    expect(s).toMatch(/\.$/);
    expect(s).not.toMatch(/NaN|Infinity|undefined|\de[+-]\d/);
  }
});
