import { describe, expect, test } from "vitest";
import { prose, withProse } from "../../src/report/prose.ts";
import { shellWord } from "../../src/report/shell-word.ts";
import { fixture, HOSTILE } from "./fixture.ts";

describe("sentences", () => {
  test("have curly quotes, apostrophes and numbers that stay with their units", () => {
    expect(prose(`the stack's box would cut "camera" of "top"`)).toBe(
      "the stack’s box would cut “camera” of “top”",
    );
    expect(prose("order 3 at 24300 rpm, 2.5 deg/s, 6 % and 40 mm; 12 motors, 3 g/cm")).toBe(
      "order 3 at 24\u202f300\u00a0rpm, 2.5\u00a0deg/s, 6\u00a0% and 40\u00a0mm; 12 motors, 3 g/cm",
    );
    expect(prose("CT rho n^2 D^4, air at 1.2 kg/m3, 2^24")).toBe(
      "CT rho n² D⁴, air at 1.2 kg/m³, 2^24",
    );
    expect(prose("ISO 21940-11, chip 2026")).toBe("ISO 21940-11, chip 2026");
  });

  test("are set so all through the analysis, and names are left alone", () => {
    const analysed = withProse(fixture());
    const ranking = analysed.ranking!;
    const { verdict, candidates, overhangs, mounts } = ranking;
    const all = [verdict.headline, ...verdict.sentences, ...verdict.remarks];
    for (const c of candidates) {
      all.push(...c.flags.map((f) => f.text), ...c.causes.map((x) => x.remedy));
    }
    all.push(...overhangs.map((o) => o.text), ...mounts.flatMap((m) => m.flags.map((f) => f.text)));
    expect(all.filter((t) => t.includes('"'))).toEqual([]);
    expect(verdict.headline).toContain(`“${HOSTILE.best}”`);
    expect(candidates.map((c) => c.candidate.name)).toContain(HOSTILE.second);
    expect(analysed.model.plates[0].name).toBe(HOSTILE.plate);
  });
});

test("a name of a file stands as one word in a command", () => {
  expect(shellWord("frames/five-inch.jsonc")).toBe("frames/five-inch.jsonc");
  expect(shellWord("my 5' frame.jsonc")).toBe("'my 5'\\'' frame.jsonc'");
});
