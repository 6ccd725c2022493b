import { describe, expect, test } from "vitest";
import {
  checkSection,
  inputsSection,
  limitsSection,
  riseWithoutPropellers,
} from "../../src/report/closing-sections.ts";
import { agreement, massesSection } from "../../src/report/masses-section.ts";
import { evidenceWords, modelSection } from "../../src/report/model-section.ts";
import { firstMode, modesSection, modeWords } from "../../src/report/modes-section.ts";
import { causeWords, rankingSection } from "../../src/report/ranking-section.ts";
import { verdictSection } from "../../src/report/verdict-section.ts";
import { fixture, HOSTILE, INPUT, withoutMotors } from "./fixture.ts";

const analysed = fixture();
const SPEEDS = analysed.excitation!.speeds;

/** The text of a page without its tags. */
const text = ({ html }: { readonly html: string }) =>
  html
    .replace(/<br>/g, " ")
    .replace(/<[^>]*>/g, "")
    .replace(/\s+/g, " ");

describe("the verdict", () => {
  test("stands first, with every place and what is against it", () => {
    const words = text(verdictSection(analysed));
    expect(words).toMatch(/Put the stack at/);
    expect(words).toContain("2 deg/s (tie) – as drawn in the file");
    expect(words).toContain("12 deg/s, +15.6 dB – avoid: cantilevered");
    expect(words).toContain("10 000 rpm 167 Hz once per turn");
  });

  test("says in the list what to mind at a place", () => {
    const ranking = analysed.ranking!;
    const [best] = ranking.candidates;
    const kind = "far from the centre of gravity" as const;
    const flagged = { ...best, flags: [{ kind, hard: false, text: "made up" }] };
    const candidates = [flagged, ...ranking.candidates.slice(1)];
    const words = text(verdictSection({ ...analysed, ranking: { ...ranking, candidates } }));
    expect(words).toContain("as drawn in the file – mind: far from the centre of gravity");
    expect(text(verdictSection(analysed))).not.toContain("mind:");
  });

  test("without motors is the lowest mode", () => {
    expect(text(verdictSection(withoutMotors()))).toContain(
      "The lowest mode lies at 160 Hz: arms flap, all together. The file has no motors",
    );
  });
});

describe("the ranking", () => {
  test("has a row per place with its numbers, flags and causes", () => {
    const { html } = rankingSection(analysed);
    const rows = html.match(/<tr class="(best|fine|avoid)">.*?<\/tr>/gs) ?? [];
    expect(rows.length).toBe(3);
    const worst = text({ html: rows[2] });
    for (const part of [
      "12",
      "9.6 to 16.8",
      "at hover 3",
      "roll 9.6",
      "pitch 7.2",
      "+15.6 dB",
      "4.8",
      "70.1 mm",
    ]) {
      expect(worst).toContain(part);
    }
    expect(worst).toContain("avoid: cantilevered");
    expect(worst).toContain("62 % unbalance on mode 3");
  });

  test("tells modes from the motion of the whole craft among the causes", () => {
    const causes = analysed.ranking?.candidates[0].causes ?? [];
    expect(causes.map((c) => text(causeWords(c, SPEEDS)))).toEqual([
      `62 % unbalance on mode 2 (230 Hz, arms flap, diagonal pairs against each other; with &quot;${"&lt;img src=x onerror=document.title=&#39;p&#39;&gt;"}&quot; bending), met at 13 800 rpm`,
      "20 % unbalance, which shakes the whole craft as one",
    ]);
  });

  test.each([
    [24_100, "above full throttle"],
    [7400, "below the lowest speed"],
  ])("says where %d rpm lies when it is not flown", (rpm, words) => {
    const [cause] = analysed.ranking!.candidates[0].causes;
    const told = text(causeWords({ ...cause, rpm, met: false }, SPEEDS));
    expect(told).toMatch(new RegExp(`, ${words}$`));
    expect(told).not.toContain("rpm");
  });

  test("says why there is none", () => {
    expect(text(rankingSection(withoutMotors()))).toContain("The file has no motors");
    const { ranking: _, ...unplaced } = analysed;
    expect(text(rankingSection(unplaced))).toContain("names no place");
  });
});

describe("the modes", () => {
  test("begin with the one that causes most at the best place", () => {
    expect(firstMode(analysed)).toBe(2);
    expect(firstMode(withoutMotors())).toBe(1);
  });

  test("are told in words", () => {
    expect(modeWords(analysed, 1)).toBe(
      `Mode 1, 160\u00a0Hz: arms flap, all together (symmetric left to right). Most of the energy of motion: ${HOSTILE.plate} 50\u00a0%, front left arm 20\u00a0%. The best place, “${HOSTILE.best}”, turns 11\u00a0% as much as the place that turns most here.`,
    );
  });

  test("can be chosen by radio buttons, as far as their shapes are in the page", () => {
    const { html } = modesSection(analysed, 2);
    const radios = html.match(/<input type="radio"[^>]*>/g);
    expect(radios).toEqual([
      '<input type="radio" name="mode" value="1">',
      '<input type="radio" name="mode" value="2" checked>',
      '<input type="radio" name="mode" value="3" disabled>',
    ]);
  });
});

describe("the proof", () => {
  const { evidence } = analysed.modes;

  test("is told in words", () => {
    expect(evidenceWords(evidence)).toBe(
      "The equations were solved to a relative residual of 2.3\u00a0×\u00a010⁻¹⁰ at worst; the modes are orthogonal to each other within 1.1\u00a0×\u00a010⁻¹⁵. A factorisation at 700\u00a0Hz counts 9 modes below it, rigid-body motions included, and as many were found: none is missing.",
    );
  });

  test("of the masses compares the matrices with the drawing", () => {
    const { mass } = analysed;
    expect(agreement({ mass, assembledMass: mass })).toContain("to the last digits");
    expect(agreement({ mass, assembledMass: { ...mass, mass: 1.01 * mass.mass } })).toContain(
      "within 1\u00a0%",
    );
    expect(agreement({ mass })).toContain("held by supports");
  });

  test("stands beside materials, warnings and notes", () => {
    const words = text(modelSection(analysed));
    for (const part of [
      "a warning about",
      "10 mm",
      "1 234",
      "60 GPa",
      "kappa 12.8",
      "made up for tests",
    ]) {
      expect(words).toContain(part);
    }
  });
});

test("what holds the frame is told, supports or springs", () => {
  const support = { point: "p", fix: [] };
  const held = (supports: readonly object[]) => {
    const model = { ...analysed.model, supports } as unknown as typeof analysed.model;
    return text(modelSection({ ...analysed, model, held: true }));
  };
  expect(text(modelSection(analysed))).toContain("free, as in flight");
  expect(held([])).toContain("held by springs to the ground");
  expect(held([support])).toContain("held at one place");
  expect(held([support, support])).toContain("held at 2 places");
});

test("the masses list every part, heaviest first, and add up", () => {
  const { html } = massesSection(analysed);
  const listed = [...html.matchAll(/<tr class=""><th scope="row" class="">(.*?)<\/th>/g)];
  expect(listed.length).toBe(analysed.mass.parts.length);
  expect(listed[0][1]).toContain("onmouseover");
  expect(analysed.mass.parts.reduce((m, p) => m + p.mass, 0)).toBeCloseTo(analysed.mass.mass, 12);
});

describe("the closing sections", () => {
  test("say what the numbers cannot say", () => {
    const words = text(limitsSection(analysed));
    expect(words).toContain("not validated on real frames");
    expect(words).toMatch(/kappa 12\.8.*28.*5\.3.*5 % to 20 %/);
    expect(words).toContain("Comparing places on one frame is much surer");
  });

  test("tell how to check, propellers off", () => {
    const words = text(checkSection(analysed));
    expect(words).toContain("Take the propellers off");
    expect(words).toContain("160 Hz (mode 1");
    expect(words).toContain("(powered over USB, battery unplugged, propellers off)");
    // 32 g motor and 4 g propeller: sqrt(36 / 32) - 1.
    expect(words).toContain("modes about 6 % higher without propellers");
  });

  test("know what the arms' modes rise by without propellers", () => {
    const { bodies } = analysed.model;
    expect(riseWithoutPropellers({ bodies })).toBeCloseTo(Math.sqrt(36 / 32) - 1, 12);
    const heavier = bodies.map((b) => (b.role === "propeller" ? { ...b, mass: 3 * 0.032 } : b));
    expect(riseWithoutPropellers({ bodies: heavier })).toBeCloseTo(1, 12);
    const none = bodies.filter((b) => b.role === "body");
    expect(riseWithoutPropellers({ bodies: none })).toBeUndefined();
  });

  test("name the inputs, with a date only where there is one", () => {
    const plain = text(inputsSection(analysed, INPUT));
    expect(plain).toContain("ab".repeat(32));
    expect(plain).toContain("--modes 3 &quot;&lt;x&gt;&quot;");
    expect(plain).not.toContain("written");
    const dated = inputsSection(analysed, { ...INPUT, created: "2026-11-25T10:00:00Z" });
    expect(dated.html).toContain('<time datetime="2026-11-25T10:00:00Z">');
  });
});
