import { describe, expect, test } from "vitest";
import { checkSection, noteOf, riseWithoutPropellers } from "../../src/report/check-section.ts";
import {
  cautionsSection,
  inputsSection,
  limitsSection,
} from "../../src/report/closing-sections.ts";
import { agreement, massesSection } from "../../src/report/masses-section.ts";
import { evidenceWords, modelSection } from "../../src/report/model-section.ts";
import { firstMode, modesSection, modeWords } from "../../src/report/modes-section.ts";
import { modesThatMatter } from "../../src/report/modes-that-matter.ts";
import { rankingSection } from "../../src/report/ranking-section.ts";
import { rankingFinding } from "../../src/report/ranking-words.ts";
import { verdictSection } from "../../src/report/verdict-section.ts";
import { fixture, HOSTILE, INPUT, withoutMotors } from "./fixture.ts";
import { tableRows, text } from "./text.ts";

const analysed = fixture();

describe("the verdict", () => {
  test("stands first, with every place and what is against it", () => {
    const words = text(verdictSection(analysed));
    expect(words).toMatch(/Put the stack at/);
    expect(words).toContain("1.8 deg/s (tie) – as drawn in the file");
    expect(words).toContain("1.89 deg/s, +0.4 dB (tie) – found by the search");
    expect(words).toContain("10.8 deg/s, +15.6 dB – avoid: cantilevered");
    expect(words).toContain("10 000 rpm 167 Hz once per turn");
  });

  test("has what else is worth knowing as a list below", () => {
    const { html } = verdictSection(analysed);
    expect(html).toMatch(/<\/ol>.*<div class="remarks"><ul><li>Notches help at/s);
    const ranking = analysed.ranking!;
    const verdict = { ...ranking.verdict, remarks: [] };
    expect(verdictSection({ ...analysed, ranking: { ...ranking, verdict } }).html).not.toContain(
      "remarks",
    );
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
  test("has a row per place: what the chips pass on, what it costs, and the flags", () => {
    const [best, second, worst, flags] = tableRows(rankingSection(analysed));
    expect([best, second, worst].map((r) => r.length)).toEqual([7, 7, 7]);
    expect(best[0]).toContain("best, as drawn in the file");
    expect(best.slice(1)).toEqual([
      "1.80 1.60 to 2.80",
      "0.0 dB",
      "2.1 ms with notches: 1.2 ms",
      "0.700",
      "0.4° 5 mm from c. of g.",
      "+0.3 tie",
    ]);
    expect(second[0]).toContain("found by the search");
    expect(second[3]).toBe("2.34 ms with notches: none needed");
    expect(worst.slice(1)).toEqual([
      "10.8 9.60 to 16.8",
      "+15.6 dB",
      "out of reach with notches: 5.5 ms",
      "4.20",
      "5.0° 70 mm from c. of g.",
      "+17.3",
    ]);
    expect(flags).toHaveLength(1);
    expect(flags[0]).toContain("avoid: cantilevered");
  });

  test("has all axes and the true motion in a table of its own, folded", () => {
    const rows = tableRows(rankingSection(analysed)).slice(4);
    expect(rows.map((r) => r.length)).toEqual([10, 10, 10]);
    expect(rows[0].slice(1)).toEqual([
      ...["0.400", "2.00", "1.60", "1.20", "0.0100"],
      ...["0.800", "0.100", "0.100", "0.760"],
    ]);
    expect(rankingSection(analysed).html).toMatch(/<details><summary>Axis by axis/);
  });

  test("shows the numbers of a flag, and folds what explains them", () => {
    const ranking = analysed.ranking!;
    const [best] = ranking.candidates;
    const flag = { kind: "near an antinode", hard: false, text: "long", brief: "short" } as const;
    const candidates = [{ ...best, flags: [flag] }];
    const { html } = rankingSection({ ...analysed, ranking: { ...ranking, candidates } });
    expect(html).toMatch(/near an antinode<\/strong> <span>short<\/span>/);
    expect(html).toMatch(/<summary>Explained<\/summary>.*near an antinode<\/strong>: long\./);
  });

  test("begins with who wins, by how much, and what is ruled out", () => {
    const { best, second, third } = HOSTILE;
    expect(rankingFinding(analysed.ranking!)).toBe(
      `“${best}” comes first: score +0.3\u00a0dB, gyro noise 1.8\u00a0deg/s rms. It ties with “${second}” (+0.1\u00a0dB): for some shift of the natural frequencies up to 7 % they come within 1 dB, too close to call. To avoid, whatever the score: “${third}” (cantilevered).`,
    );
    const [a, b, c] = analysed.ranking!.candidates;
    const apart = {
      candidates: [
        { ...a, tied: false },
        { ...b, tied: false, score: 2.35 },
      ],
    };
    expect(rankingFinding(apart)).toMatch(/The next, “.*”, is 2\.0\sdB worse\.$/);
    expect(rankingFinding({ candidates: [c] })).toMatch(/^Every place has a reason to avoid it/);
  });

  test("says what the score is made of", () => {
    expect(text(rankingSection(analysed))).toContain(
      "Score: gyro noise 70 %, accelerometer 10 %, false tilt 20 %; less is better",
    );
  });

  test("says why there is none", () => {
    expect(text(rankingSection(withoutMotors()))).toContain("The file has no motors");
    const { ranking: _, ...unplaced } = analysed;
    expect(text(rankingSection(unplaced))).toContain("names no place");
  });
});

/** With one mode as the cause of all noise at the best place, with the stack there. */
function causedAt(frequency: number, modeName: string) {
  const ranking = analysed.ranking!;
  const [best, ...rest] = ranking.candidates;
  const causes = best.causes.map((c) => ({ ...c, mode: c.mode && 1, frequency, modeName }));
  return { ...analysed, ranking: { ...ranking, candidates: [{ ...best, causes }, ...rest] } };
}

const modesMattering = (of: Parameters<typeof modesThatMatter>[0]) =>
  modesThatMatter(of).flatMap((m) => (m.causes.includes("at 1") ? [m.mode.number] : []));

describe("the modes", () => {
  test("begin with the one that causes most at the best place", () => {
    expect(firstMode(analysed, 3)).toBe(2);
    expect(firstMode(withoutMotors(), 3)).toBe(1);
  });

  test("find it by its frequency: causes are counted with the stack at the best place", () => {
    expect(firstMode(causedAt(442, ""), 3)).toBe(3);
    // 230 Hz is the nearest, but far off
    expect(firstMode(causedAt(300, ""), 3)).toBe(1);
  });

  test("find it by its name where two are near", () => {
    const [first, ...others] = analysed.modes.described;
    const near = { ...first, frequency: 224 };
    const { ranking } = causedAt(229, near.name);
    const modes = { ...analysed.modes, described: [near, ...others] };
    expect(firstMode({ ranking, modes }, 3)).toBe(1);
    expect(modesMattering({ ranking, modes })).toContain(1);
  });

  test("say it where its shape is not in the page, and name the one that is shown", () => {
    const { html } = modesSection(causedAt(442, ""), ["first", "second"]);
    const finding = /<p class="finding">(.*?)<\/p>/s.exec(html)?.[1] ?? "";
    expect(text({ html: finding })).toMatch(
      /most noise comes through the shape of mode 3 at 450.Hz: .* It is not among the shapes in this page; the picture begins with mode 1 at 160.Hz\.$/,
    );
    expect(finding.match(/data-mode="\d+"/g)).toEqual(['data-mode="1"']);
    expect(html).toContain('<input type="radio" name="mode" value="1" checked>');
    expect(html).toContain('<p class="waiting">first</p>');
  });

  test("are told in words", () => {
    expect(modeWords(analysed, 1, { move: 0.213, turn: 0.052 })).toBe(
      `Mode 1, 160\u00a0Hz: arms flap, all together (symmetric left to right). Largest shares of the energy of motion: ${HOSTILE.plate} 50\u00a0%, front left arm 20\u00a0%. The best place, “${HOSTILE.best}”, moves 21\u00a0% and turns 5.2\u00a0% as much as what moves and turns most.`,
    );
  });

  test("can be chosen by radio buttons, as far as their shapes are in the page", () => {
    const { html } = modesSection(analysed, ["first", "second"]);
    const radios = html.match(/<input type="radio" name="mode"[^>]*>/g);
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
    expect(words).toContain("Not validated on real frames");
    expect(words).toMatch(/kappa 12\.8.*28.*5\.3.*5 % to 20 %/);
    expect(words).toContain("Comparing places on one frame is much surer");
  });

  test("tell how to check, propellers off", () => {
    const words = text(checkSection(analysed));
    expect(words).toContain("Take the propellers off");
    expect(words).toContain(
      "powered over USB through a thin, slack cable (battery unplugged, prop",
    );
    // 32 g motor and 4 g propeller: sqrt(36 / 32) - 1.
    expect(words).toContain("arms that flap do it about 6 % faster than in flight");
  });

  test("list no mode for which the mass of an arm's end tells too little", () => {
    const [flap, ...rest] = analysed.modes.described;
    const motion = { ...flap.motion, armFlat: 0.2, armTorsion: 0.6 };
    const twist = { ...flap, number: 2, motion, name: "arms twist, all together" };
    const modes = { ...analysed.modes, described: [flap, twist, ...rest] };
    const told = checkSection({ ...analysed, modes }).html;
    expect(told).toContain('data-mode="1"');
    expect(told).not.toContain("arms twist, all together");
    expect(told.match(/data-mode=/g)?.length).toBe(1);
  });

  test("name the frequencies to look for: those of arms without propellers", () => {
    // 160 sqrt(36 / 32) = 169.7 Hz, 7 % less and more; the plate's stay.
    const rows = tableRows(checkSection(analysed));
    expect(rows[0].slice(1)).toEqual([
      ...["an arm’s end, upwards", "170", "158 to 182", "F3", "160"],
    ]);
    expect(rows[2].slice(2)).toEqual(["450", "419 to 482", "A4", "450"]);
  });

  test("know what a tuner shows", () => {
    // Handbook frequencies: C4 261.6, E2 82.41 (a guitar's lowest string), A0 27.5 Hz.
    expect([440, 261.6, 82.4, 27.5, 466].map(noteOf)).toEqual(["A4", "C4", "E2", "A0", "A♯4"]);
  });

  test("warn of what hurts, and defer to rules and qualified people", () => {
    const words = text(cautionsSection());
    for (const part of ["Propellers off", "Lithium packs", "Carbon dust", "Local rules"]) {
      expect(words).toContain(part);
    }
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
    expect(plain).toContain("stillpoint rank ");
    expect(plain).not.toContain("written");
    const dated = inputsSection(analysed, { ...INPUT, created: "2026-11-25T10:00:00Z" });
    expect(dated.html).toContain(
      '<time datetime="2026-11-25T10:00:00Z">2026-11-25 10:00 UTC</time>',
    );
  });
});
