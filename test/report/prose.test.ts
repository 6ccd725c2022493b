import { describe, expect, test } from "vitest";
import { prose, withProse } from "../../src/report/prose.ts";
import { shellWord } from "../../src/report/shell-word.ts";
import { movedSet } from "../../src/report/sure/set.ts";
import { madeSensitivity } from "../study/made-sensitivity.ts";
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

  test("keep the names that they hold as these are", () => {
    const names = [
      "O'Neil x^2",
      "12000 rpm",
      'bay "A" 5',
      "bay",
      "5",
      "rear 5 mm",
      "rear 5 mm deck",
    ];
    const set = (text: string) => prose(text, names);
    expect(set(`"O'Neil x^2" ties with "bay "A" 5" at 12000 Hz; the bay's D^4`)).toBe(
      `“O'Neil x^2” ties with “bay "A" 5” at 12\u202f000\u00a0Hz; the bay’s D⁴`,
    );
    expect(set(`the plate "12000 rpm" at 24300 rpm`)).toBe(
      "the plate “12000 rpm” at 24\u202f300\u00a0rpm",
    );
    expect(set(`"5" is 5 mm from "rear 5 mm deck", rear 5 mm's edge`)).toBe(
      "“5” is 5\u00a0mm from “rear 5 mm deck”, rear 5 mm’s edge",
    );
    expect(set("left rear 5 mm; farrear 5 mm")).toBe("left rear 5 mm; farrear 5\u00a0mm");
    expect(set(`the mode "with 'hub' bending"`)).toBe("the mode “with ‘hub’ bending”");
  });

  test("of an analysis and of what was sampled keep the names of the file", () => {
    const made = fixture();
    const [plate, body] = ["12000 rpm", "O'Neil x^2"];
    const model = {
      ...made.model,
      bodies: made.model.bodies.map((b, i) => (i === 0 ? { ...b, name: body } : b)),
    };
    const file = { ...made.file, plates: { [plate]: Object.values(made.file.plates)[0] } };
    const warnings = [`"${body}" hangs 2 mm above "${plate}" at 12000 rpm`];
    expect(withProse({ ...made, model, file, warnings }).warnings).toEqual([
      `“${body}” hangs 2\u00a0mm above “${plate}” at 12\u202f000\u00a0rpm`,
    ]);
    const moved = madeSensitivity(body);
    const text = `"${body}" 5 mm further back`;
    const suggested = { found: [], tried: 4, none: text };
    expect(movedSet({ ...moved, suggested }).suggested?.none).toBe(
      `“${body}” 5\u00a0mm further back`,
    );
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
