import { describe, expect, test } from "vitest";
import { rankingText } from "../../../src/commands/output/ranking-text.ts";
import { inkFor, NO_INK } from "../../../src/commands/terminal/ink.ts";
import { columnsOf } from "../../../src/commands/terminal/printable.ts";
import type { Ranking } from "../../../src/ranking/types.ts";
import { analysis, excitation } from "./fixture.ts";
import { ranking } from "./ranking-fixture.ts";

const textOf = (changes: Partial<Ranking> = {}, askedPitch?: number): string =>
  rankingText(analysis, { ...ranking, ...changes }, excitation, NO_INK, askedPitch);
const oneLine = (text: string): string => text.replace(/\s+/g, " ");
const text = textOf();

test("keeps to 80 columns and cannot act on the terminal, whatever the names", () => {
  for (const line of text.split("\n")) expect(columnsOf(line)).toBeLessThanOrEqual(80);
  expect(text.replace(/[\n\u2068\u2069]/g, "")).not.toMatch(/[\p{Cc}\p{Cf}]/u);
});

test("has its sections in the order in which a reader needs them", () => {
  const titles = [
    'Put the stack at "centre"',
    "So.",
    "Places, best first",
    "Worth knowing",
    "Warnings",
    "Flags",
    "Why",
    "Filter cost",
    "Self-level",
    "Other mounts",
    "Other states",
    "Resonances met near hover",
    "Speeds and mass",
    "How sure this is",
    "Before you fly",
  ];
  const at = titles.map((title) => text.indexOf(`\n${title}`));
  expect(at.every((i) => i >= 0)).toBe(true);
  expect(at).toEqual(at.toSorted((a, b) => a - b));
});

test("has everything a decision needs", () => {
  for (const part of [
    '- Mind "\\u001b',
    "Hover 10800 rpm, full throttle 29600 rpm",
    "100 % around hover (10800 rpm, give or take 800 rpm)",
    "Mass 612 g; centre of gravity at x 0.0, y 0.0, z 24.3 mm",
    "for some error of the natural frequencies up to 7 % their scores come within 1 dB of the best",
    "If all frequencies were up to 7 % off, the first place would read 2.23 to 3.63 deg/s.",
    "8 modes below 1250 Hz, 6 of them the whole",
    "- no soft mount is in the figures",
    "Take the propellers off for every bench test.",
    "tap test",
    "Follow the rules that hold where you fly.",
  ]) {
    expect(oneLine(text)).toContain(part);
  }
});

test("leaves out sections with nothing to say", () => {
  const plain = ranking.candidates.map((c) => ({ ...c, flags: [], cases: [] }));
  const told = textOf({
    candidates: plain,
    verdict: { ...ranking.verdict, remarks: [] },
    overhangs: [],
  });
  for (const title of ["Worth knowing", "Flags", "Overhangs", "Other states"]) {
    expect(told).not.toContain(`\n${title}\n`);
  }
});

describe("flags", () => {
  test("say whether to avoid or to mind, and why", () => {
    expect(oneLine(text)).toMatch(/🚁 \(avoid\): "\S+ .* reaches 98 mm past its support -/);
  });

  test("of the lever arm are short and the same for all, since a section tells more", () => {
    const [first, second] = ranking.candidates;
    const flags = [second.flags[1]];
    const told = oneLine(textOf({ candidates: [{ ...first, flags }, second] }));
    // g tan(1 deg)/(200 deg/s)^2 = 14.05 mm
    expect(told).toMatch(
      /- centre, \S+ [^(]* \(mind\): further than 14 mm from the centre of gravity: the accelerometer reads more than 1 deg of false tilt in steady yaw of 200 deg\/s; see "Self-level"/,
    );
    expect(told).not.toContain("98 mm behind the centre");
  });
});

describe("overhangs", () => {
  const overhang = {
    plate: "deck",
    direction: "rear",
    length: 0.0981,
    thickness: 2e-3,
    supportAt: -0.05,
    endAt: -0.15,
    mass: 0.06,
    flagged: true,
    text: "deck reaches far",
  } as const;

  test("are told unless a flag has told them", () => {
    expect(textOf({ overhangs: [overhang] })).toContain("\nOverhangs\n  - deck reaches far\n");
    const told = ranking.candidates[1].flags[0].text;
    expect(textOf({ overhangs: [{ ...overhang, text: told }] })).not.toContain("\nOverhangs\n");
  });

  test("without harm are told by the longest", () => {
    const harmless = { ...overhang, flagged: false };
    const told = textOf({ overhangs: [{ ...harmless, length: 0.02 }, harmless] });
    expect(told).toContain("None worth a worry. The longest is 98.1 mm, at the rear of deck.");
  });
});

describe("resonances", () => {
  test("near hover stand with their distance", () => {
    expect(text).toMatch(/10000 +-8 % +2 +1230 .* unbalance\n/);
  });

  test("are said to be none, with the nearest", () => {
    const far = ranking.crossings.map((c) => ({ ...c, nearHover: false, fromHover: 0.4 }));
    expect(oneLine(textOf({ crossings: far }))).toContain("None. The nearest is +40 % from hover");
    expect(textOf({ crossings: [] })).toContain("None between the lowest and the highest speed.");
  });
});

describe("the search", () => {
  test("tells how far apart its places are", () => {
    for (const asked of [undefined, 8e-3]) {
      expect(oneLine(textOf({}, asked))).toContain(
        "Searched: 3 places all over the plates, 8 mm apart, then closer around the best.",
      );
    }
  });

  test("tells that it was asked for more than it did", () => {
    expect(oneLine(textOf({}, 1e-3))).toContain(
      "8 mm apart (1 mm would have been too many), then closer",
    );
  });

  test("tells no distance between one place and none", () => {
    const one = { pitch: 8e-3, places: ranking.map.places.slice(0, 1) };
    expect(oneLine(textOf({ map: one }))).toContain("Searched: 1 place all over the plates, then");
  });
});

test("tells a tie by its sign and the flag by its word, not by colour", () => {
  const tied = ranking.candidates.map((c) => ({ ...c, place: 1 }));
  expect(textOf({ candidates: tied }).match(/\n {2}1= /g)).toHaveLength(6);
  const coloured = rankingText(analysis, ranking, excitation, inkFor(true, {}));
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the codes are what is looked for
  expect(coloured.replace(/\u001b\[\d+m/g, "")).toBe(text);
  expect(coloured).not.toBe(text);
});

test("of very many places prints the best and those that the file names", () => {
  const many = Array.from({ length: 40 }, (_, i) => {
    const [first] = ranking.candidates;
    const named = i === 39;
    const candidate = { ...first.candidate, name: `spot ${i + 1}`, named, designed: false };
    return { ...first, place: i + 1, candidate };
  });
  const told = textOf({ candidates: many });
  expect(told).toMatch(/spot 10 /);
  expect(told).not.toMatch(/spot 11 /);
  expect(told).toMatch(/spot 40 /);
  expect(told).toContain("and 29 more places; the report has them all");
});
