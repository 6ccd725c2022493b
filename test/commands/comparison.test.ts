import { describe, expect, test } from "vitest";
import { bandPlot } from "../../src/commands/output/band-plot.ts";
import { comparisonJson } from "../../src/commands/output/comparison-json.ts";
import { comparisonText } from "../../src/commands/output/comparison-text.ts";
import { barSignsFor, DRAWN_SIGNS, PLAIN_SIGNS } from "../../src/commands/terminal/bar-signs.ts";
import { NO_INK } from "../../src/commands/terminal/ink.ts";
import { columnsOf } from "../../src/commands/terminal/printable.ts";
import { madeStudy, madeVariants } from "../study/made-study.ts";

const study = madeStudy();
const text = comparisonText(study, NO_INK, DRAWN_SIGNS);
const alone = madeStudy(madeVariants().slice(0, 1));
const section = (title: string, of = text) =>
  of.split(/\n\n/).find((s) => s.startsWith(title)) ?? "";

describe("a comparison in the terminal", () => {
  test("begins with the answer and fits the page", () => {
    const [title, answer] = text.split("\n\n");
    expect(title).toBe("Brindle");
    expect(answer.replace(/\s+/g, " ")).toBe(study.words.join(" ").replace(/\s+/g, " "));
    const lines = text.split("\n");
    expect(Math.max(...lines.map(columnsOf))).toBeLessThanOrEqual(80);
    expect(lines.length).toBeLessThan(85);
  });

  test("has a row for each variant, with mass, modes, noise, delay and chance", () => {
    const rows = section("Variants").split("\n");
    expect(rows[1]).toMatch(/Variant +Mass +Mode 2 +Mode 3 +Best spot +Gyro +Delay +Quietest/);
    expect(rows[3]).toMatch(/5 mm +641 +128 +176 +sandwich +2\.40 +2\.10 +\d+ %/);
    expect(rows[4]).toMatch(/4 mm +630 +97\.0 +134 +sandwich +3\.90 +3\.40 +0 %/);
    expect(rows[5]).toMatch(/6 mm +653 +158 +214 +sandwich +2\.20 +1\.70 +\d+ %/);
  });

  test("tells the modes that change with the likeness of their shapes", () => {
    // 97/128 = -24.2 %, 158/128 = +23.4 %, cos^2 0.3 = 0.91.
    expect(section('Modes against "5 mm"')).toMatch(
      /2 +arms flap, all together +128 +97\.0 +-24\.2 +1\.00 +158 +\+23\.4 +0\.91/,
    );
  });

  test("tells noise in dB and delay at every spot, and why a spot is ruled out", () => {
    // 20 lg(3.9/2.4) = 4.2 dB, 20 lg(2.2/2.4) = -0.8 dB.
    const spots = section("Noise and filter delay");
    expect(spots).toMatch(/sandwich +2\.40 +2\.10 +\+4\.2 +3\.40 +-0\.8 +1\.70/);
    expect(spots).toMatch(/tail +9\.80 +n\/a +-0\.6 +n\/a/);
    expect(spots).toContain("tail is ruled out with every variant: cantilevered");
  });

  test("tells which crossings come and go", () => {
    const near = section("Met near hover");
    expect(near).toMatch(/5 mm +met +-7 % +176 +arms flap, diagonal pairs +unbalance/);
    expect(near).toMatch(/4 mm +gone +-7 % +176/);
    expect(near).toMatch(/6 mm +new +-2 % +158 +arms flap, all together +unbalance/);
  });

  test("draws the bands over one axis: the louder the further right", () => {
    const lines = section("Noise with its spread").split("\n");
    const bars = lines.filter((l) => l.includes("●"));
    const at = (sign: string) => bars.map((l) => l.indexOf(sign));
    const [five, four, six] = at("●");
    expect(six).toBeLessThan(five);
    expect(five).toBeLessThan(four);
    for (const [i, from] of at("├").entries()) {
      expect(from).toBeLessThan(at("●")[i]);
      expect(at("●")[i]).toBeLessThan(at("┤")[i]);
    }
    expect(lines.at(-1)).toMatch(/\d.*\d.*deg\/s$/);
  });

  test("tells how sure it is, what was varied, warnings and heights", () => {
    const sure = section("How sure this is").replace(/\s+/g, " ");
    expect(sure).toContain(study.sure?.text ?? "-");
    expect(sure).toContain(
      "±3 % (common practice, no source): arms.arm.thickness, plates.top.thickness",
    );
    expect(sure).toContain("±10 % (from the file): materials.carbon.E1");
    expect(sure).toContain("could not be solved (1 sample): the arm would be thinner");
    expect(text).toContain("6 mm: the arms weigh more than the motors they carry");
    expect(text).toContain("4 mm: plate middle 1 mm down; plate bottom 1 mm up");
  });

  test("says so where nothing was varied, and draws nothing", () => {
    const plain = comparisonText(madeStudy(madeVariants(), 0), NO_INK, DRAWN_SIGNS);
    expect(plain).toContain("Nothing was varied");
    expect(plain).not.toContain("●");
    expect(plain).not.toContain("Quietest");
  });

  test("shows names that act on a terminal as escapes, in either alphabet of bars", () => {
    const names = ["\u001b[31mred", "4 mm", "6 mm"] as const;
    const made = madeStudy(madeVariants(names, "\u001b]0;x"));
    const shown = comparisonText(made, NO_INK, PLAIN_SIGNS);
    expect(shown).not.toContain("\u001b");
    expect(shown).toContain("\\u001b[31mred");
    expect(shown).toMatch(/\|-+o-+\|/);
    expect(shown).not.toMatch(/[├●┤─]/);
  });

  test("splits many variants over tables that fit", () => {
    const [a, b, c] = madeVariants();
    const many = [a, b, c, ...[7, 8, 9, 10].map((t) => ({ ...c, name: `${t} mm of carbon` }))];
    const wide = comparisonText(madeStudy(many, 40), NO_INK, DRAWN_SIGNS);
    expect(Math.max(...wide.split("\n").map(columnsOf))).toBeLessThanOrEqual(80);
    for (const { name } of many) expect(wide).toContain(name);
  });
});

describe("one frame's uncertainty in the terminal", () => {
  const shown = comparisonText(alone, NO_INK, DRAWN_SIGNS);

  test("has chances and bands of its spots, and bands of its modes", () => {
    expect(section("Spots", shown)).toMatch(/sandwich +middle +2\.40 +\d+ % +\d+ % +0 %/);
    expect(section("Spots", shown)).toMatch(/tail +middle +9\.80 +0 % +0 % +100 %/);
    expect(shown).toMatch(/under the top plate +├─+●─+┤ +\d\.\d\d \(/);
    expect(section("Modes", shown)).toMatch(/2 +128 +1\d\d to 1\d\d +arms flap, all together/);
    expect(shown).not.toContain("Variants");
    expect(Math.max(...shown.split("\n").map(columnsOf))).toBeLessThanOrEqual(80);
  });
});

describe("bars in text", () => {
  const row = (low: number, median: number, high: number) => ({
    name: "a",
    band: { low, median, high },
    note: "",
  });

  test("lie where their logarithms say", () => {
    const [first, second] = bandPlot([row(1, 10, 100), row(10, 10, 10)], "Hz", PLAIN_SIGNS).split(
      "\n",
    );
    const at = (sign: string) => first.indexOf(sign);
    expect(at("o") - at("|")).toBe(first.lastIndexOf("|") - at("o"));
    expect(second.indexOf("o")).toBe(at("o"));
  });

  test("are absent where there is nothing to draw", () => {
    expect(bandPlot([{ name: "a", note: "" }], "Hz", PLAIN_SIGNS)).toBe("");
  });

  test("are drawn where the locale takes UTF-8", () => {
    expect(barSignsFor({ LANG: "de_DE.UTF-8" })).toBe(DRAWN_SIGNS);
    expect(barSignsFor({ LC_ALL: "C", LANG: "de_DE.UTF-8" })).toBe(PLAIN_SIGNS);
    expect(barSignsFor({})).toBe(PLAIN_SIGNS);
  });
});

describe("a comparison as JSON", () => {
  const read = (t: string) => JSON.parse(t) as Record<string, never>;
  const document = read(comparisonJson(study, { report: "reports/x.html" }));

  test("has variants, differences and how sure they are, with units in the names", () => {
    expect(document).toMatchObject({
      kind: "comparison",
      report: "reports/x.html",
      reference: "5 mm",
      answer: study.words,
    });
    const [, thin] = document.variants as unknown as Record<string, never>[];
    expect(thin).toMatchObject({
      name: "4 mm",
      changes: ["arms.arm.thickness = 4 mm"],
      massKg: 0.6298,
      bestSpot: "sandwich",
    });
    expect(thin.spots[3]).toMatchObject({ avoidBecause: "cantilevered", delayLowPassAloneS: null });
    expect(thin.modes[1]).toMatchObject({ mode: 2, frequencyHz: 97 });
    const [pair] = (document.sure as { pairs: never[] }).pairs;
    expect(pair).toMatchObject({ first: "5 mm", second: "4 mm" });
    expect((pair as { bestSpots: unknown }).bestSpots).toMatchObject({ difference: "real" });
    expect(document.modesMatched[1]).toMatchObject({
      name: "arms flap, all together",
      byVariant: [{ mode: 2 }, { mode: 2, shapeLikeness: 1 }, { mode: 2 }],
    });
  });

  test("of one frame is its uncertainty", () => {
    const one = read(comparisonJson(alone, {}));
    expect(one).toMatchObject({ kind: "uncertainty", report: null, differences: [] });
    const [variant] = one.variants as unknown as { bestSpotOfSamples: { rivals: unknown[] } }[];
    expect(variant.bestSpotOfSamples.rivals.length).toBe(4);
  });

  test("tells what was not sampled as null", () => {
    const plain = read(comparisonJson(madeStudy(madeVariants(), 0), {}));
    expect(plain.sure).toBeNull();
    expect(plain.variants[0]).toMatchObject({ bestSpotOfSamples: null });
  });
});
