/** Input that the ranking cannot work with: one clear message each, before long computing. */

import { writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { analyse, prepare } from "../../src/analyse.ts";
import { InputError } from "../../src/errors.ts";
import { buildModel } from "../../src/model/build.ts";
import { findPlaces } from "../../src/ranking/candidates.ts";
import { stillpoint, useSandbox } from "../commands/sandbox.ts";
import { crossSections, frameOf, PROPULSION } from "../modes/toys.ts";
import { smallCross } from "../response/joined.ts";

useSandbox();

/** path: message of what is wrong with the small cross; fails where nothing is. */
function wrong(stack: object, more: object = {}): string {
  try {
    prepare(smallCross({}, stack, more));
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
  throw new Error("nothing is wrong");
}

describe("settings that cannot be", () => {
  test.each<[string, object, object, RegExp]>([
    ["no mass", { mass: 0 }, {}, /^stack\.mass: 0 .* must be more than zero/],
    [
      "mounts as stiff as screws",
      { isolators: { axial: "2000 kN/m" } },
      {},
      /^stack\.isolators\.axial: .*2000 kN\/m is as stiff as a screw.*Write less than 1000 kN\/m/,
    ],
    [
      "mounts that the stack would press flat",
      { isolators: { axial: "10 N/m" } },
      {},
      /^stack\.isolators\.axial: the stack of 20 g would sag .*give at least \d/,
    ],
    [
      "a hole pattern larger than the plate",
      { holes: { spacing: "200 mm" } },
      {},
      /^stack: its hole at \(100, 100\) mm lies off the plate "hub".*give the hole pattern that fits/,
    ],
    [
      "full speed below hover",
      {},
      { propulsion: { ...PROPULSION, speeds: { hover: "9000 rpm", full: "8000 rpm" } } },
      /^propulsion\.speeds\.full: .*higher than the hover speed/,
    ],
    [
      "idle above hover",
      {},
      { propulsion: { ...PROPULSION, speeds: { idle: "9500 rpm", hover: "9000 rpm" } } },
      /^propulsion\.speeds\.hover: .*higher than the idle speed/,
    ],
    [
      "a loop faster than what coupling is looked for",
      {},
      { control: { bandwidth: "90 Hz" } },
      /^control\.couplingBelow: .*80 Hz.*90 Hz: raise couplingBelow/,
    ],
    [
      "the same with the bandwidth that goes with the propellers",
      {},
      { control: { couplingBelow: "30 Hz" } },
      /^control\.couplingBelow: .*30 Hz.*40 Hz: raise couplingBelow, or give the "bandwidth"/,
    ],
    [
      "a false tilt that no place reads",
      {},
      { control: { attitudeError: "120 deg" } },
      /^control\.attitudeError: 120 deg is not possible: it must be below 90 deg/,
    ],
    [
      "a bad propeller on no motor",
      {},
      { excitation: { badPropeller: { motor: "front lef motor" } } },
      /^excitation\.badPropeller\.motor: .*"front lef motor"\. Did you mean "front left motor"\?/,
    ],
  ])("%s", (_, stack, more, message) => {
    expect(wrong(stack, more).replace(/\s+/g, " ")).toMatch(message);
  });
});

test.each([0, -1e-3, Number.NaN, Number.POSITIVE_INFINITY])("a map of pitch %d", (pitch) => {
  const file = smallCross();
  expect(() => findPlaces(file, buildModel(file), 100, pitch)).toThrow(
    /map\.pitch: the distance between places must be/,
  );
});

describe("a pattern that fits nowhere", () => {
  const { stack: _, candidates: __, ...rest } = crossSections({ armElements: 1 }) as Sections;
  const outline = [
    [12, 12],
    [-12, 12],
    [-12, -12],
    [12, -12],
  ];
  const small = {
    ...rest,
    meshSize: 20,
    plates: { hub: { ...rest.plates.hub, outline } },
    arms: { arm: { ...rest.arms.arm, root: [6, 6] } },
  };

  test("and no place named: the command says so and what to do", async () => {
    writeFileSync("small.jsonc", JSON.stringify({ version: 1, name: "small", ...small }));
    const { code, out, err } = await stillpoint("rank", "small.jsonc", "--modes", "12");
    expect([code, out]).toEqual([2, ""]);
    const text = err.replace(/\s+/g, " ");
    expect(text).toContain("candidates: There is no place on this frame for a sensor stack");
    expect(text).toContain("its hole pattern fits on no plate. Name at least one place");
  });

  test("at a place that is named rules it out, the only one there is", () => {
    const candidates = { here: { plate: "hub", at: [0, 0], holes: { spacing: "200 mm" } } };
    const { ranking } = analyse(frameOf({ ...small, candidates }), { modes: 12 });
    const { candidates: ranked, verdict } = ranking ?? { candidates: [], verdict: undefined };
    expect(ranked.map((c) => c.candidate.name)).toEqual(["here"]);
    expect(ranked[0].flags.filter((f) => f.hard).map((f) => f.kind)).toEqual([
      "pattern off the plate",
    ]);
    expect(verdict?.headline).toMatch(/^The only place looked at is bad/);
  });
});

type Sections = Record<string, Record<string, object>>;

test("a frame without any damping is ranked with finite figures", () => {
  const { ranking } = analyse(smallCross({ lossFactor: 0 }), { modes: 12, map: { pitch: 0.05 } });
  for (const c of ranking?.candidates ?? []) {
    const gains = c.couplings.map((k) => k.gain);
    const all = [c.score, c.sensed.gyro, c.filter.without.delay, ...gains];
    expect(all.every(Number.isFinite)).toBe(true);
  }
  expect(ranking?.candidates.length).toBeGreaterThan(2);
});
