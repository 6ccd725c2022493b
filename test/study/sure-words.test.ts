/** How sure the answer is, on made-up chances: what must be said, and that no winner is claimed too soon. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chancesOf } from "../../src/study/chances.ts";
import { leadOf } from "../../src/study/lead.ts";
import { frameWords, variantWords } from "../../src/study/sure-words.ts";
import { type MadeRival, madeChances } from "./made-chances.ts";

const words = (samples: number, rivals: readonly MadeRival[]) =>
  frameWords(madeChances(samples, rivals), "both");
const sentences = (text: string) => text.split(/\. (?=["A-Z])/).length;

describe("a clear winner", () => {
  test("is claimed with its chance and how often it is near", () => {
    const samples = [
      ...Array.from({ length: 93 }, () => [0, 5]),
      ...Array.from({ length: 6 }, () => [0.8, 0]),
      [4, 0],
    ];
    const chances = chancesOf(["centre", "rear"], samples);
    expect(leadOf(chances).kind).toBe("clear");
    expect(frameWords(chances, "both")).toBe(
      '"centre" is the best place in 93 % of frames built to these spreads, and within 1 dB of it in 99 %.',
    );
    expect(frameWords(chances, "rate")).toContain('"centre" is the quietest place in 93 %');
    expect(variantWords(chances)).toContain('"centre" is the quietest variant in 93 %');
  });

  test("in all samples is not called 100 %", () => {
    const text = words(64, [
      { name: "a", best: 64 },
      { name: "b", best: 0 },
    ]);
    expect(text).toBe('"a" is the best place in every frame tried within these spreads.');
    const nearly = words(999, [
      { name: "a", best: 998 },
      { name: "b", best: 1 },
    ]);
    expect(nearly).toContain("in more than 99 % of frames");
  });

  test("by less than matters is told to be so", () => {
    const text = words(64, [
      { name: "a", best: 64 },
      { name: "b", best: 0, behind: 0.3 },
      { name: "c", best: 0 },
    ]);
    expect(text).toMatch(
      /^"a" is the best.* The lead is small, though: "b" is within 1 dB of the best/,
    );
    expect(text).not.toContain('"c"');
  });
});

describe("no claim", () => {
  test("from few samples, however they fall: 90 % of 32 may be 76 %", () => {
    const chances = madeChances(32, [
      { name: "a", best: 29 },
      { name: "b", best: 3 },
    ]);
    expect(leadOf(chances).kind).toBe("probable");
    expect(frameWords(chances, "both")).not.toMatch(/is the best/);
    expect(
      leadOf(
        madeChances(320, [
          { name: "a", best: 290 },
          { name: "b", best: 30 },
        ]),
      ).kind,
    ).toBe("clear");
  });

  test("below nine in ten, but a likely one is called so, with its limits and the next", () => {
    const text = words(100, [
      { name: "front", best: 2 },
      { name: "centre", best: 78, behind: 0.8 },
      { name: "rear", best: 20 },
    ]);
    expect(text).toMatch(
      /^"centre" is probably the best place: it is so in 78 % of frames built to these spreads \(69 to 85 %\), "rear" in 20 %\. It is within 1 dB of the best in every frame tried\.$/,
    );
  });

  test("below nine in ten, however many samples", () => {
    const rivals = [
      { name: "a", best: 880 },
      { name: "b", best: 120 },
    ];
    expect(leadOf(madeChances(1000, rivals)).kind).toBe("probable");
  });

  test("from samples that are too few even for a majority", () => {
    const chances = madeChances(9, [
      { name: "a", best: 8 },
      { name: "b", best: 1 },
    ]);
    expect(leadOf(chances).kind).toBe("probable");
    expect(
      words(3, [
        { name: "a", best: 3 },
        { name: "b", best: 0 },
      ]),
    ).toBe("Too few samples to say which place is the best.");
  });

  test("when several share the lead: they are named, with their chances, and no more", () => {
    const text = words(100, [
      { name: "front", best: 17 },
      { name: "centre", best: 41 },
      { name: "top", best: 4 },
      { name: "rear", best: 38 },
    ]);
    expect(text).toMatch(/^"centre", "rear" and "front" cannot be told apart/);
    expect(text).toContain('("centre" in 41 %, "rear" in 38 %, "front" in 17 %)');
    expect(text).toContain('Even "centre" is within 1 dB of the best only in 41 %.');
    expect(text).not.toContain("top");
    expect(text).not.toMatch(/is (probably )?the best/);
  });

  test("when many share it: the rest are counted", () => {
    const text = words(
      100,
      Array.from({ length: 6 }, (_, j) => ({ name: `p${j}`, best: j < 4 ? 17 : 16 })),
    );
    expect(text).toMatch(/^"p0", "p1", "p2" and 3 others cannot be told apart/);
    expect(text).toContain("the others less often");
  });

  test("for mirrored places, of which it hardly matters which is taken", () => {
    const chances = chancesOf(
      ["left", "right"],
      Array.from({ length: 64 }, (_, i) => [0, i % 2 ? 1e-9 : -1e-9]),
    );
    const text = frameWords(chances, "both");
    expect(text).toContain('("left" in 50 %, "right" in 50 %)');
    expect(text).toContain(
      "It hardly matters which is taken: each is within 1 dB of the best in every frame tried.",
    );
  });

  test("but the one that is never far off is named", () => {
    const text = words(100, [
      { name: "a", best: 50 },
      { name: "b", best: 30 },
      { name: "c", best: 20, behind: 0.7 },
    ]);
    expect(text).toContain('"c" is seldom far off: within 1 dB of the best in every frame tried.');
  });
});

describe("places ruled out", () => {
  test("are told for those named, the worst of them", () => {
    const text = words(100, [
      { name: "a", best: 95, out: 5 },
      { name: "b", best: 5 },
    ]);
    expect(text).toMatch(/^"a" is the best place in 95 %.*"a" is ruled out in 5 % of frames\.$/);
    const rear = words(100, [
      { name: "a", best: 100 },
      { name: "b", best: 0, out: 40 },
    ]);
    expect(rear).not.toContain("ruled out");
  });

  test("all of them in some frames", () => {
    const text = words(100, [
      { name: "a", best: 60 },
      { name: "b", best: 0 },
    ]);
    expect(text).toMatch(
      /^"a" is probably the best.*in 60 %.*Every place is ruled out in 40 % of frames\.$/,
    );
  });

  test("all of them always", () => {
    expect(
      words(40, [
        { name: "a", best: 0 },
        { name: "b", best: 0 },
      ]),
    ).toBe("No place can be used: each is ruled out in every frame tried.");
  });
});

test("one place is compared with nothing", () => {
  expect(words(40, [{ name: "a", best: 40 }])).toBe('"a" is the only place looked at.');
  expect(words(40, [{ name: "a", best: 30 }])).toBe(
    '"a" is the only place looked at. It is ruled out in 25 % of frames.',
  );
});

test("a winner is claimed by the rule only, in at most three sentences and three digits", () => {
  const level = fc.option(fc.double({ min: -3, max: 3, noNaN: true }), { nil: undefined, freq: 9 });
  const samples = fc
    .tuple(fc.integer({ min: 1, max: 5 }), fc.double({ min: 0, max: 8, noNaN: true }))
    .chain(([rivals, lead]) =>
      fc
        .array(fc.array(level, { minLength: rivals, maxLength: rivals }), {
          minLength: 1,
          maxLength: 60,
        })
        .map((rows) =>
          rows.map((row) => row.map((v, j) => (v === undefined || j > 0 ? v : v - lead))),
        ),
    );
  fc.assert(
    fc.property(samples, (rows) => {
      const chances = chancesOf(
        rows[0].map((_, j) => `p${"abcde"[j]}`),
        rows,
      );
      const text = frameWords(chances, "both");
      const [first] = chances.rivals;
      const claimed = /is the best place/.test(text);
      const may = first.best.share >= 0.9 && first.best.lower > 0.8 && chances.rivals.length > 1;
      expect(claimed).toBe(may);
      if (/probably/.test(text))
        expect(first.best.share).toBeGreaterThan(0.5 * (1 - chances.none.share));
      expect(sentences(text)).toBeLessThanOrEqual(3);
      expect(text).not.toMatch(/\d{4}|in 100 %|NaN|undefined|Infinity/);
    }),
    { seed: 7, numRuns: 300 },
  );
});
