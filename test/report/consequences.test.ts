/** What follows from the place: self-level flight, mounts, other states, causes, chips. */

import { describe, expect, test } from "vitest";
import { leverArm } from "../../src/attitude/lever-arm.ts";
import { fedModes } from "../../src/ranking/fed-modes.ts";
import { casesFinding, casesSection } from "../../src/report/cases-section.ts";
import { causesFinding, causesPart, whereMet } from "../../src/report/causes-table.ts";
import { chipsFinding, chipsPart } from "../../src/report/chips-table.ts";
import { levellingFinding, levellingSection } from "../../src/report/levelling-section.ts";
import { motionsWords, mountsFinding, mountsSection } from "../../src/report/mounts-section.ts";
import { fixture, HOSTILE, withoutMotors } from "./fixture.ts";
import { tableRows, text } from "./text.ts";

const analysed = fixture();
const ranking = analysed.ranking!;
const [best, , third] = ranking.candidates;
const SPEEDS = analysed.excitation!.speeds;

test("without a ranking they are left out", () => {
  const bare = withoutMotors();
  for (const section of [levellingSection, mountsSection, casesSection]) {
    expect(section(bare)).toBeUndefined();
  }
});

describe("self-level flight", () => {
  const section = levellingSection(analysed)!;

  test("has the lever arms and what they do, from the ranking", () => {
    const [first, , last] = tableRows(section);
    // atan(w^2 r/g) at 200 deg/s: 5.2 mm and 70.1 mm from the centre of gravity.
    const tilt = (r: number) =>
      ((Math.atan((((200 * Math.PI) / 180) ** 2 * r) / 9.80665) * 180) / Math.PI).toPrecision(3);
    expect(first.slice(1, 4)).toEqual([
      "5.2 mm behind and left of it 11.2 mm in all",
      "kept",
      `${Number(tilt(0.0052))} nose up and left side down`,
    ]);
    expect(last.slice(1, 5)).toEqual([
      "70 mm behind it 71.2 mm in all",
      "outside",
      `${tilt(0.0701)} nose up`,
      "lift the tail and drift forwards with 0.087 g",
    ]);
    const { worst } = third.leverArm;
    expect(Number(last[5].split(" ")[0])).toBeCloseTo((worst.believed.tilt * 180) / Math.PI, 2);
    expect(last[6]).toBe(worst.motion);
  });

  test("has the rule of thumb and that rate flight does not care", () => {
    expect(text(section)).toContain(
      "Rule of thumb: within 14 mm of the centre of gravity (in the plan) the error stays below 1 degree at 200 deg/s of steady yaw.",
    );
    expect(text(section)).toContain("In rate flight it has no effect");
    expect(text(section)).not.toContain("This craft is flown on rates");
    const rate = { ...analysed, ranking: { ...ranking, use: "rate" as const } };
    expect(text(levellingSection(rate)!)).toContain("This craft is flown on rates");
  });

  test("is told in a sentence", () => {
    expect(levellingFinding(ranking)).toMatch(
      /^At 200 deg\/s of steady yaw it reads from 0\.37\sdegrees at “.*” to 4\.98\sdegrees at “.*”\. Within the rule of thumb: 2 of 3 places\.$/,
    );
  });

  test("calls nothing what is nothing", () => {
    const arm = leverArm([0, 0, 0]);
    const centred = {
      ...analysed,
      ranking: { ...ranking, candidates: [{ ...best, leverArm: arm }] },
    };
    const [row] = tableRows(levellingSection(centred)!);
    expect(row.slice(3)).toEqual([
      "less than 0.05",
      "stay as good as level",
      "less than 0.05",
      "–",
    ]);
  });
});

describe("the mounts", () => {
  test("stand side by side with their motions, delays and flags", () => {
    expect(tableRows(mountsSection(analysed)!)).toEqual([
      ["screwed down", "1.80", "", "0.700", "2.1 ms", "1.2 ms", "none"],
      [
        "made-up pads",
        "0.900",
        "−6.0 dB",
        "0.310",
        "2.34 ms",
        "none needed",
        "sway fore-aft 52.0, sway sideways 62.0, bounce 72.0, roll rocking 82.0, pitch rocking 92.0, twist 102",
      ],
      ["mind: isolators too soft made up"],
    ]);
  });

  test("of symmetric boards have one word for both directions", () => {
    const motions = [
      { motion: "twist", frequency: 148.2 },
      { motion: "pitch rocking", frequency: 227.4 },
      { motion: "sway fore-aft", frequency: 101.2 },
      { motion: "roll rocking", frequency: 227.3 },
      { motion: "sway sideways", frequency: 101.3 },
    ];
    expect(motionsWords(motions)).toBe("sway 101, twist 148, rocking 227");
  });

  test("say what to do once, for all mounts that it is about", () => {
    const flag = {
      kind: "isolators too soft",
      hard: false,
      brief: "bounce",
      text: "made up",
    } as const;
    const mounts = [
      ranking.mounts[0],
      ...["a", "b"].map((name, i) => ({
        ...ranking.mounts[1],
        name,
        flags: [{ ...flag, advice: `take 3 kN/m each (now ${i})` }],
      })),
    ];
    const words = text(mountsSection({ ...analysed, ranking: { ...ranking, mounts } })!);
    expect(words.match(/take 3 kN\/m each/g)).toHaveLength(1);
    expect(words).toContain("“a” and “b”: take 3 kN/m each.");
    expect(words).toContain("isolators too soft: a motion lies where the rate loop works");
  });

  test("are weighed with their flags", () => {
    expect(mountsFinding(ranking)).toBe(
      "The quietest of those without a flag: “screwed down”, 1.8\u00a0deg/s rms. Quieter still, but flagged: “made-up pads”, 0.9\u00a0deg/s rms (too soft).",
    );
    const [screwed, pads] = ranking.mounts;
    expect(mountsFinding({ mounts: [screwed, { ...pads, flags: [] }] })).toBe(
      "The quietest has no flag: “made-up pads”, 0.9\u00a0deg/s rms.",
    );
    expect(mountsFinding({ mounts: [pads] })).toContain("Every one has a flag");
    const hard = pads.flags.map((f) => ({ ...f, hard: true }));
    expect(mountsFinding({ mounts: [{ ...pads, flags: hard }] })).toContain(
      "Every one is to be avoided",
    );
  });
});

describe("other states", () => {
  test("have the readings of the ranking and the motor that is worst", () => {
    const section = casesSection(analysed)!;
    const [first] = tableRows(section);
    expect(first.slice(1)).toEqual([
      "1.80",
      "2.50 1.4 times, front left motor",
      "16.0 8.9 times, rear right motor",
    ]);
    expect(text(section)).toContain("one bad propeller: one made-up propeller");
  });

  test("say whether the first place stays the quietest", () => {
    expect(casesFinding(ranking)).toBe(
      `One bad propeller: 2.5\u00a0deg/s rms at the first place, 1.4 times as much; the least is 2.45\u00a0deg/s at “${HOSTILE.second}” of those not to be avoided. Lost balance: 16\u00a0deg/s rms at the first place, 8.9 times as much; still the least of those not to be avoided.`,
    );
  });

  test("are left out where the file has none", () => {
    const candidates = ranking.candidates.map((c) => ({ ...c, cases: [] }));
    expect(casesSection({ ...analysed, ranking: { ...ranking, candidates } })).toBeUndefined();
  });
});

describe("the causes", () => {
  const part = (r: typeof ranking) => {
    const made = causesPart({ ...analysed, ranking: r });
    if (typeof made !== "object" || !("html" in made)) throw new Error("not one piece of HTML");
    return made;
  };

  test("have force, mode, speed, parts and what would move them", () => {
    const rows = tableRows(part(ranking));
    expect(rows.length).toBe(6);
    expect(rows[0].slice(1)).toEqual([
      "62 %",
      "unbalance",
      expect.stringMatching(/^230 Hz arms flap, diagonal pairs/),
      "at 13 800 rpm",
      expect.stringMatching(/60 %, front left arm 30 %$/),
      "plates 20 % thicker raise that frequency by up to 12 %",
    ]);
    expect(rows[1].slice(1)).toEqual([
      "20 %",
      "unbalance",
      "the whole craft as one, which no place avoids",
      "at all speeds",
      "nothing",
      "–",
    ]);
  });

  test("of further places are folded away", () => {
    const { html } = part(ranking);
    expect(html).toContain("<summary>Causes at the other 2 places</summary>");
    expect(tableRows({ html }).length).toBe(6);
    const [one] = ranking.candidates;
    expect(part({ ...ranking, candidates: [one] }).html).not.toContain("<details>");
  });

  test("say the first in a sentence", () => {
    expect(causesFinding(ranking.candidates, SPEEDS)).toMatch(
      /^At “.*” 62\s% of the noise is unbalance on 230\sHz \(arms flap, .*\), met at 13\s800\srpm\. Plates 20 % thicker raise that frequency by up to 12 %\.$/,
    );
    const [, whole] = best.causes;
    expect(causesFinding([{ ...best, causes: [whole] }], SPEEDS)).toContain(
      "20\u00a0% of the noise is the whole craft shaken as one by unbalance",
    );
    expect(causesFinding([], SPEEDS)).toContain("Nothing");
  });

  test("of the same mode and speed are told together", () => {
    const [cause, whole] = best.causes;
    const both = [cause, { ...cause, order: "blade difference", share: 0.3 }, whole];
    const fed = fedModes(both);
    expect(fed.map((f) => [f.forces.length, f.share])).toEqual([
      [2, expect.closeTo(0.92, 9)],
      [1, 0.2],
    ]);
    const candidates = [{ ...best, causes: both }];
    const [row] = tableRows(part({ ...ranking, candidates }));
    expect(row.slice(1, 3)).toEqual(["92 %", "unbalance (62 %), blade difference (30 %)"]);
  });

  test("lead to the modes of the frame as drawn", () => {
    const { html } = part(ranking);
    expect(html).toContain('<a href="#modes" data-mode="2"');
    expect(html).not.toContain('data-mode="0"');
  });

  test.each([
    [24_100, "above full throttle"],
    [7400, "below the lowest speed"],
  ])("say where %d rpm lies when it is not flown", (rpm, words) => {
    expect(whereMet({ ...best.causes[0], rpm, met: false }, SPEEDS)).toBe(words);
  });
});

describe("the chips", () => {
  test("have their offsets and peaks", () => {
    const made = chipsPart(ranking);
    if (typeof made !== "object" || !("html" in made)) throw new Error("not one piece of HTML");
    const [first, , last] = tableRows(made);
    expect(first.slice(1)).toEqual([
      "0.02",
      "0.04 2.29 degrees",
      "200 deg/s 10 % along x at 24 000 rpm",
      "4 g 25 % along z at 24 000 rpm",
      "not flown",
    ]);
    expect(last[4]).toBe("clips: 24 g 150 % along z at 24 000 rpm");
  });

  test("are told in a sentence", () => {
    expect(chipsFinding(ranking.candidates)).toBe(
      `The gyro comes to 60\u00a0% of its range at most, at “${HOSTILE.third}”. The accelerometer comes to 150\u00a0% of its range at most, at “${HOSTILE.third}”, beyond it at 1 of 3 places.`,
    );
  });
});
