import { describe, expect, test } from "vitest";
import { boxInertia } from "../../src/element/rigid-mass.ts";
import { ISOLATOR_PRESETS, resolveIsolators, staticSag } from "../../src/model/isolators.ts";
import { BASE, findingsOf, modelOf } from "./frame.ts";

/** The stack at a candidate place: where its mass would be, and on what it would ride. */

const where = { plate: "base", at: [0, 0] };
const stack = (more: object = {}) => ({
  mass: 24,
  size: [40, 36, 18],
  ...where,
  height: 9.5,
  chip: [8, -6, 2],
  holes: { spacing: 20 },
  ...more,
});
const candidates = (more: object = {}) => ({ here: { ...where, ...more } });
const place = (sections: object) => modelOf({ ...BASE, ...sections }).candidates[0];

describe("the stack at a candidate", () => {
  test("weighs and turns as the box in the file", () => {
    const { stack: body } = place({ stack: stack(), candidates: candidates() });
    expect(body.mass).toBeCloseTo(0.024, 15);
    // 24 g (36^2 + 18^2)/12 mm^2 and so on, g mm^2
    const gmm2 = (v: number) => v * 1e9;
    expect(gmm2(body.inertia.xx)).toBeCloseTo(3240, 8);
    expect(gmm2(body.inertia.yy)).toBeCloseTo(3848, 8);
    expect(gmm2(body.inertia.zz)).toBeCloseTo(5792, 8);
  });

  test("has its centre of gravity at its height over the face, on either side", () => {
    const at = (more: object) => place({ stack: stack(), candidates: candidates(more) });
    // the plate is 2 mm thick about z = 0
    const above = at({ at: [5, 3] });
    expect(above.cg.map((v) => v * 1e3)).toEqual([5, 3, 10.5].map((v) => expect.closeTo(v, 10)));
    expect(at({ side: "below", height: 7 }).cg[2]).toBeCloseTo(-0.008, 12);
    above.chip.forEach((v, i) => {
      expect((v - above.cg[i]) * 1e3).toBeCloseTo([8, -6, 2][i], 10);
    });
  });

  test("is a plain board of 9 g where the file has none", () => {
    const { stack: body, cg, isolators } = place({ candidates: candidates() });
    expect(body.mass).toBe(9e-3);
    expect(body.inertia).toEqual(boxInertia(9e-3, 0.03, 0.03, 0.015));
    expect(cg[2]).toBeCloseTo(0.009, 12);
    expect(isolators).toBeUndefined();
  });
});

describe("isolators of a candidate", () => {
  test("are those of the stack, unless it has its own or none", () => {
    const on = (more: object) =>
      place({ stack: stack({ isolators: { axial: 8 } }), candidates: candidates(more) });
    expect(on({}).isolators).toEqual({
      name: "mounts of 8 kN/m each",
      axial: 8e3,
      lateral: 4e3,
      lossFactor: 0.2,
      z: 0.001,
    });
    expect(on({ isolators: "none" }).isolators).toBeUndefined();
    expect(on({ isolators: "soft gel pads", side: "below" }).isolators).toMatchObject({
      name: "soft gel pads",
      axial: ISOLATOR_PRESETS["soft gel pads"].axial.usual,
      z: -0.001,
    });
  });

  test("on other mounts than in the file a place is not the one as designed", () => {
    const designed = (isolators: unknown) =>
      place({ stack: stack({ isolators: "rubber rings" }), candidates: candidates({ isolators }) })
        .designed;
    expect(designed(undefined)).toBe(true);
    expect(designed("rubber rings")).toBe(true);
    expect(designed("none")).toBe(false);
    expect(designed("soft gel pads")).toBe(false);
  });

  test("over-tightened grommets are worth a word, each place where they are written", () => {
    const warnings = (isolators: string) =>
      modelOf({
        ...BASE,
        stack: stack({ isolators }),
        candidates: candidates({ isolators }),
      }).warnings.filter((w) => w.includes("isolators"));
    expect(warnings("silicone grommets")).toEqual([]);
    expect(warnings("over-tightened grommets")).toEqual([
      expect.stringMatching(/^stack\.isolators: squeezed grommets are 3 to 10 times as stiff/),
      expect.stringMatching(/^candidates\.here\.isolators: /),
    ]);
  });
});

describe("sag", () => {
  test("24 g on four mounts of 1 kN/m: 0.235 N on 4 kN/m", () => {
    expect(staticSag(0.024, 1e3, 4)).toBeCloseTo(0.23536 / 4e3, 9);
  });

  const messages = (axial: string, lateral?: string) =>
    findingsOf({
      ...BASE,
      stack: stack({ isolators: { axial, ...(lateral && { lateral }) } }),
    }).map(({ path, message }) => `${path}: ${message}`);

  test("of more than 3 mm is refused, with the stiffness that would do", () => {
    // 0.23536 N / 4 / 3 mm = 19.6 N/m
    expect(messages("0.01 kN/m")).toEqual([
      "stack.isolators.axial: the stack of 24 g would sag 5.9 mm on 4 mounts of 0.01 kN/m, and 3 mm is the most that is let pass; give at least 0.02 kN/m each",
    ]);
    expect(messages("0.019 kN/m")).toHaveLength(1);
    expect(messages("0.02 kN/m")).toEqual([]);
  });

  test("sideways of more than 6 mm too", () => {
    expect(messages("1 kN/m", "0.005 kN/m")).toEqual([
      "stack.isolators.lateral: the stack of 24 g would sag 12 mm on 4 mounts of 0.005 kN/m when the craft lies on its side, and 6 mm is the most that is let pass; give at least 0.0099 kN/m each",
    ]);
    expect(messages("1 kN/m", "0.0099 kN/m")).toEqual([]);
  });

  test("on a candidate's own mounts is said there; a kind by name can be too soft for a payload", () => {
    const paths = (sections: object) => findingsOf({ ...BASE, ...sections }).map((f) => f.path);
    expect(paths({ candidates: candidates({ isolators: { axial: "0.001 kN/m" } }) })).toEqual([
      "candidates.here.isolators.axial",
    ]);
    expect(paths({ stack: stack({ mass: "600 g", isolators: "rubber rings" }) })).toEqual([
      "stack.isolators",
    ]);
  });
});

describe("kinds known by name", () => {
  test.each(Object.entries(ISOLATOR_PRESETS))("%s: bands and their marks", (_kind, preset) => {
    for (const { low, usual, high } of [preset.axial, preset.lossFactor]) {
      expect(low).toBeLessThan(usual);
      expect(usual).toBeLessThan(high);
    }
    const { low, usual, high } = preset.axial;
    expect(Math.abs(usual / Math.sqrt(low * high) - 1)).toBeLessThan(0.06);
    for (const field of ["axial", "lateralShare", "lossFactor"])
      expect(preset.facts.some((f) => f.fields.includes(field))).toBe(true);
  });

  test("squeezed grommets are 3 to 10 times as stiff as good ones", () => {
    const { low, high } = ISOLATOR_PRESETS["silicone grommets"].axial;
    expect(ISOLATOR_PRESETS["over-tightened grommets"].axial).toMatchObject({
      low: 3 * low,
      high: 10 * high,
    });
  });

  test("either end of a band can be had", () => {
    expect(resolveIsolators("silicone grommets", 0, "low")).toEqual({
      name: "silicone grommets",
      axial: 2e3,
      lateral: 1e3,
      lossFactor: 0.1,
      z: 0,
    });
    expect(resolveIsolators("silicone grommets", 0, "high")?.axial).toBe(20e3);
    expect(resolveIsolators("none", 0)).toBeUndefined();
  });
});
