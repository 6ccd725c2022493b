import { describe, expect, test } from "vitest";
import { filterCostText } from "../../../src/commands/output/filter-cost.ts";
import { mountsText } from "../../../src/commands/output/mounts.ts";
import { otherStatesText } from "../../../src/commands/output/other-states.ts";
import { placesTable } from "../../../src/commands/output/places.ts";
import { selfLevelText } from "../../../src/commands/output/self-level.ts";
import { shownPlaces } from "../../../src/commands/output/shown-places.ts";
import { explainedPlaces, whyText } from "../../../src/commands/output/why.ts";
import { NO_INK } from "../../../src/commands/terminal/ink.ts";
import type { Flag, MountRow, Ranking } from "../../../src/ranking/types.ts";
import { type IsolatorFlag, isolatorFlags } from "../../../src/response/isolator-flags.ts";
import { MOUNT_MOTIONS } from "../../../src/response/mount-frequencies.ts";
import { BURDEN, CAUSES, MOUNTS, ranked, ranking } from "./ranking-fixture.ts";

const [first, second] = ranking.candidates;
const shown = shownPlaces(ranking.candidates);
const oneLine = (text: string): string => text.replace(/\s+/g, " ");
const withCandidates = (...candidates: Ranking["candidates"]) => ({ ...ranking, candidates });

describe("the table of places", () => {
  const text = placesTable(shown, ranking, NO_INK);

  test("has what the chip passes on, the delay over the best, false tilt and score", () => {
    expect(text).toMatch(
      /Place +Name +Plate +Gyro +Level +Delay +Tilt +Score +Flags\n +deg\/s +dB +ms +deg +dB\n/,
    );
    // false tilt: (200 deg/s)^2 x 5 mm/g = 0.36 degrees
    expect(text).toMatch(/\n {2}1 +centre +\S+ +2\.79 +0\.0 +0\.0 +0\.4 +0\.0\n/);
  });

  test("says n/a where no low-pass leaves what is wanted, and what that means", () => {
    expect(text).toMatch(/\n {2}2 .* 283 +\+40\.1 +n\/a +6\.9 +\+10\.0 +avoid\n/);
    expect(oneLine(text)).toContain('n/a: no low-pass leaves so little, see "Filter cost".');
    const reached = { ...second, filter: BURDEN };
    const told = placesTable(shownPlaces([first, reached]), withCandidates(first, reached), NO_INK);
    expect(told).toMatch(/\n {2}2 .* \+40\.1 +\+1\.1 +6\.9/);
    expect(told).not.toContain("n/a");
  });

  test("tells the weights of the score", () => {
    expect(oneLine(text)).toContain("Score: gyro noise 70 %, accelerometer 10 %, false tilt 20 %,");
  });

  test("leaves the tilt out where only rates are flown", () => {
    const told = placesTable(shown, { ...ranking, use: "rate" }, NO_INK);
    expect(told).not.toMatch(/[Tt]ilt/);
    expect(oneLine(told)).toContain("Score: gyro noise 100 %,");
  });

  test("marks where the file has the stack, undersides, and what the search found", () => {
    expect(text).toContain("\n         the file has the stack here\n");
    expect(text).toContain("\n         on the underside of the plate; found by the search\n");
  });
});

describe("why", () => {
  test("tells share, order, frequency, speed, parts and what would move it", () => {
    expect(oneLine(whyText([first]))).toMatch(
      /^ centre \(place 1\): 2\.79 deg\/s rms, 0\.698 in hover - 50 %: unbalance on 131 Hz \(arms flap, all together\), would meet at 7880 rpm, outside the speeds considered; it strains left arm 42 %, \S+ .* 30 %; arms 20 % thicker raise that frequency by up to 24 % - 30 %: torque ripple on 205 Hz \(top bends\), met at 12300 rpm - 10 %: unbalance; the whole craft moves as one, which no place avoids $/,
    );
  });

  test("takes orders together that meet a mode at the same speed", () => {
    const [cause] = CAUSES;
    const other = { ...cause, order: "blade difference", share: 0.17 };
    const twice = { ...cause, order: "blade pass", share: 0.1, rpm: cause.rpm / 3, met: true };
    const told = oneLine(whyText([{ ...first, causes: [cause, other, twice] }]));
    expect(told).toContain("- 67 %: unbalance (50 %) and blade difference (17 %) on 131 Hz");
    // the mode's parts are told once
    expect(told).toMatch(/- 10 %: blade pass on 131 Hz \([^)]*\), met at 2630 rpm $/);
  });

  test("is told of the first place, the drawn one, the noisiest and those to avoid", () => {
    const place = (name: string, n: number, gyro: number, designed = false, flags: Flag[] = []) => {
      const made = ranked(name, n, gyro, flags);
      return { ...made, candidate: { ...made.candidate, designed } };
    };
    const hard: Flag = { kind: "cantilevered", hard: true, text: "" };
    const places = [
      place("best", 1, 2),
      place("second", 2, 3),
      place("drawn", 3, 4, true),
      place("loud", 4, 90),
      place("never", 5, 20, false, [hard]),
    ];
    const names = explainedPlaces(places).map(({ candidate }) => candidate.name);
    expect(names).toEqual(["best", "drawn", "loud", "never"]);
    expect(explainedPlaces([])).toEqual([]);
  });
});

describe("the filter cost", () => {
  const text = filterCostText(shown, ranking, 3, NO_INK);

  test("begins with what is wanted", () => {
    expect(oneLine(text)).toMatch(
      /^Wanted: at most 1 deg\/s rms behind the filters, for a rate loop of 40 Hz; delay and lag are told at 40 Hz/,
    );
  });

  test("has the low-pass alone and the notches below it", () => {
    // 0.3189 rad = 18.27 degrees
    expect(text).toMatch(/\n {2}1 +centre +none +order 2, 90\.1 Hz +2\.54 +18\.3 +0\.966\n/);
    expect(text).toMatch(/\n {2}1 .*\n +1, 3 +none +1\.72 +12\.4 +0\.401\n/);
    expect(oneLine(text)).toContain("1 is once per turn, 3 the blade pass");
  });

  test("says what is left where the residual is out of reach", () => {
    expect(text).toMatch(/\n {2}2 .* none +not reached +n\/a +n\/a +1\.31\n/);
  });

  test("has one row where notches do not help", () => {
    const alone = { ...first, filter: { ...BURDEN, with: BURDEN.without } };
    const told = filterCostText(shownPlaces([alone]), withCandidates(alone), 3, NO_INK);
    expect(told.match(/\n {2}1 /g)).toHaveLength(1);
    expect(told).not.toContain("1, 3");
  });
});

describe("self-level", () => {
  const text = selfLevelText(shown, ranking, NO_INK);

  test("compares the places as the accelerometer has them", () => {
    // 0.0262 rad = 1.5 degrees
    expect(text).toMatch(/\n {2}1 +centre +5\.0 +0\.4 +0\.5 +0\.400 +1\.5 +25\n/);
    expect(text).toMatch(/\n {2}2 .* 98\.0 +6\.9 +\d\.\d +0\.400 +1\.5 +25\n/);
  });

  test("has the rule of thumb, and words on the first place and the drawn one", () => {
    expect(oneLine(text)).toContain(
      "Within 14 mm of the centre of gravity (in the plan) the error",
    );
    expect(oneLine(text)).toContain("- centre: 5 mm ahead of the centre of gravity: at 200 deg/s");
    expect(text.match(/^ {2}- /gm)).toHaveLength(1);
    const drawn = { ...second, candidate: { ...second.candidate, designed: true } };
    const told = selfLevelText(shown, withCandidates(first, drawn), NO_INK);
    expect(told.match(/^ {2}- /gm)).toHaveLength(2);
    expect(oneLine(told)).toContain(": 98 mm behind the centre of gravity: at 200 deg/s");
  });

  test("says once that rate flight is free of it", () => {
    expect(text.match(/rate flight/g)).toHaveLength(1);
    expect(oneLine(text)).toMatch(
      /In rate flight the distance from the centre of gravity has no effect: .* $/,
    );
  });

  test("says nothing else where only rates are flown", () => {
    expect(oneLine(selfLevelText(shown, { ...ranking, use: "rate" }, NO_INK))).toMatch(
      /^In rate flight the distance from the centre of gravity has no effect: [^.]*\. $/,
    );
  });
});

describe("other mounts", () => {
  const text = mountsText(ranking, 180, NO_INK);

  test("stand side by side with range, levels and delays", () => {
    expect(text).toMatch(/\n {2}screwed down +2\.79 +0\.400 +2\.54 +1\.72\n/);
    expect(text).toMatch(
      /\n {2}silicone grommets, usual +50\.0 to 116 +0\.123 +0\.0265 +n\/a +1\.72\n/,
    );
  });

  test("have their flags in short, each explained once", () => {
    expect(text).toContain("\n    too soft; no isolation\n");
    expect(oneLine(text)).toContain("- too soft: a motion lies below 100 Hz, 2.5 times");
    expect(oneLine(text)).toContain("- no isolation: the bounce lies above 126 Hz, 0.7 of");
    expect(text).not.toMatch(/in resonance|close to resonance/);
  });

  /** A stack on mounts, told by the program itself, so that a change of its words is seen here. */
  function flagged(name: string, axial: number, bounce: number): [MountRow, IsolatorFlag] {
    const stack = { hover: 180, controlBandwidth: 40, axial, lossFactor: 0.2 };
    const modes = MOUNT_MOTIONS.map((motion, i) => {
      return { motion, frequency: bounce * (1 + 0.01 * i), shares: new Float64Array(6) };
    });
    const found = isolatorFlags({ ...stack, modes });
    const flags = found.map(({ kind, text: what, advice }, i) => {
      return { kind, hard: false, text: i === 0 ? `${what}; ${advice}` : what };
    });
    return [{ ...MOUNTS[1], name, modes, flags }, found[0]];
  }

  test("have the advice once for all to which it applies, without what they are now", () => {
    const [soft, flag] = flagged("gel", 500, 44);
    const [softer] = flagged("more gel", 450, 41.742);
    const told = oneLine(mountsText({ ...ranking, mounts: [soft, softer] }, 180, NO_INK));
    expect(flag.advice).toContain(" (now ");
    expect(told).toContain(`- What to do: ${flag.advice.replace(/ \(now [\d.]+\)/, "")}`);
    expect(told.match(/take mounts of/g)).toHaveLength(1);
  });

  test("have each advice with its mounts where they differ", () => {
    const other = MOUNTS[1].flags.map((flag) => ({ ...flag, text: "wrong; do something else" }));
    const mounts = [...MOUNTS, { ...MOUNTS[1], name: "pads", flags: other.slice(0, 1) }];
    const told = mountsText({ ...ranking, mounts }, 180, NO_INK);
    expect(told).toContain("\n  - silicone grommets, usual: take stiffer ones\n");
    expect(told).toContain("\n  - pads: do something else\n");
  });
});

describe("other states", () => {
  const text = otherStatesText(first, NO_INK);

  test("have levels, times normal and the worst motor", () => {
    expect(text).toMatch(/\n {2}normal +2\.79\n/);
    expect(text).toMatch(/\n {2}one bad propeller +3\.74 +1\.3 +\S/);
    expect(text).toMatch(/\n {2}lost balance +34\.3 +12 +left motor\n/);
    expect(text).toContain("\n  - lost balance: a tip is gone\n");
  });

  test("are left out where none is known", () => {
    expect(otherStatesText({ ...first, cases: [] }, NO_INK)).toBe("");
  });
});
