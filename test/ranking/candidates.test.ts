/** Places found by the program, and whether a pattern fits. */

import { describe, expect, test } from "vitest";
import { analyse } from "../../src/analyse.ts";
import { buildModel } from "../../src/model/build.ts";
import type { Candidate, Model } from "../../src/model/types.ts";
import { findPlaces, namedCandidates, patternFits } from "../../src/ranking/candidates.ts";
import { crossSections, frameOf } from "../modes/toys.ts";
import { onMaterial } from "./on-material.ts";

type Sections = Record<string, Record<string, object>>;
const sections = crossSections() as Sections;

const MOST = 60;

interface Places {
  readonly model: Model;
  readonly named: readonly Candidate[];
  readonly found: readonly Candidate[];
}

function places(plate: object = {}, more: object = {}): Places {
  const hub = { ...sections.plates.hub, ...plate };
  const file = frameOf({ ...sections, plates: { hub }, candidates: {}, ...more });
  const model = buildModel(file);
  const named = namedCandidates(file, model);
  return { model, named, found: findPlaces(file, model, MOST).places };
}

describe("places found on a bare hub", () => {
  const { model, found } = places();

  test("are several, at most 60, each with its pattern on the plate", () => {
    expect(found.length).toBeGreaterThan(20);
    expect(found.length).toBeLessThanOrEqual(60);
    for (const c of found) {
      expect(onMaterial(model, c)).toBe(true);
      expect(c.named).toBe(false);
    }
  });

  test("lie the same to the left and right, front and rear", () => {
    const key = (x: number, y: number) => `${Math.round(x * 1e6)},${Math.round(y * 1e6)}`;
    const at = new Set(found.map((c) => key(c.x, c.y)));
    expect(at.size).toBe(found.length);
    for (const c of found) {
      expect(at.has(key(-c.x, c.y))).toBe(true);
      expect(at.has(key(c.x, -c.y))).toBe(true);
    }
  });

  test("reach as far as the pattern lets them", () => {
    // 30 mm pattern, 6 mm heads on 120 x 80: centres within 42 and 22
    expect(Math.max(...found.map((c) => c.x))).toBeGreaterThan(0.036);
    expect(Math.max(...found.map((c) => c.x))).toBeLessThanOrEqual(0.042);
    expect(Math.max(...found.map((c) => c.y))).toBeLessThanOrEqual(0.022);
  });

  test("a larger plate has no more of them, only further apart", () => {
    const big = 600;
    const outline = [
      [big, big],
      [-big, big],
      [-big, -big],
      [big, -big],
    ];
    const { stack: _, ...rest } = sections;
    const plates = { hub: { ...sections.plates.hub, outline } };
    const file = frameOf({ ...rest, plates, arms: {}, propulsion: undefined, candidates: {} });
    const many = findPlaces(file, buildModel(file), MOST).places;
    expect(many.length).toBeLessThanOrEqual(MOST);
    expect(many.length).toBeGreaterThan(20);
  });
});

describe("cut-outs", () => {
  const cut = [
    {
      outline: [
        [20, 14],
        [-20, 14],
        [-20, -14],
        [20, -14],
      ],
    },
  ];
  const { model, found } = places({ holes: cut });

  test("keep screws away: no head lies over the edge of one", () => {
    expect(found.length).toBeGreaterThan(0);
    expect(found.filter((c) => !onMaterial(model, c)).map((c) => c.name)).toEqual([]);
  });

  test("the screw's own hole under its head does not count as one", () => {
    const at = [15, -15].flatMap((x) => [15, -15].map((y) => [x, y]));
    const drilled = frameOf({
      ...sections,
      plates: { hub: { ...sections.plates.hub, holes: [{ at, diameter: "3.2 mm" }] } },
      candidates: { middle: { plate: "hub", at: [0, 0] } },
    });
    const withHoles = buildModel(drilled);
    expect(patternFits(withHoles.plates[0], withHoles.candidates[0])).toBe(true);
  });
});

describe("a pattern", () => {
  const one = (at: number[], holes: object) => {
    const { model } = places({}, { candidates: { here: { plate: "hub", at, holes } } });
    return patternFits(model.plates[0], model.candidates[0]);
  };

  test.each([
    ["in the middle", [0, 0], { spacing: 30 }, true],
    ["with its heads just touching the edge", [0, 22], { spacing: 30, footprint: 6 }, true],
    ["with its heads over the edge by half a millimetre", [0, 22.5], { spacing: 30 }, false],
    ["wholly off on one side", [0, 38], { spacing: 30 }, false],
    ["that only fits turned by 45 degrees", [0, 0], { spacing: [40, 70], turned: "90 deg" }, true],
    ["the same not turned far enough", [0, 0], { spacing: [40, 70], turned: "60 deg" }, true],
    ["too long across", [0, 0], { spacing: [40, 76] }, false],
  ])("%s", (_, at, holes, fits) => {
    expect(one(at, holes)).toBe(fits);
  });
});

describe("the place as drawn", () => {
  const placed = (candidates: object) =>
    places({}, { candidates }).named.map((c) => [c.name, c.designed]);

  test("is among the candidates, by its own name or by one of its own", () => {
    const nose = { plate: "hub", at: [30, 0] };
    expect(placed({ nose, middle: { plate: "hub", at: [0, 0] } })).toEqual([
      ["nose", false],
      ["middle", true],
    ]);
    expect(placed({ nose })).toEqual([
      ["as designed", true],
      ["nose", false],
    ]);
  });

  test("is not the place on the other side of the plate", () => {
    const below = { plate: "hub", at: [0, 0], side: "below" };
    expect(placed({ below })).toEqual([
      ["as designed", true],
      ["below", false],
    ]);
  });
});

describe("without named candidates the ranking looks everywhere", () => {
  const { ranking } = analyse(frameOf({ ...sections, candidates: {} }), { modes: 20 });
  const all = ranking?.candidates ?? [];

  test("and keeps ten at most, the noisiest and the place as drawn among them", () => {
    expect(all.length).toBeGreaterThan(3);
    expect(all.length).toBeLessThanOrEqual(11);
    expect(all.filter((c) => c.candidate.designed).length).toBeLessThanOrEqual(1);
    for (const c of all)
      expect(c.flags.some((f) => f.kind === "pattern off the plate")).toBe(false);
  });

  test("the quiet ones are at least 12 mm apart", () => {
    const quiet = all.slice(0, -1).filter((c) => !c.candidate.designed);
    const near = quiet.flatMap((a, i) =>
      quiet
        .slice(i + 1)
        .filter((b) => a.plate === b.plate)
        .map((b) => Math.hypot(a.candidate.x - b.candidate.x, a.candidate.y - b.candidate.y)),
    );
    expect(near.length).toBeGreaterThan(0);
    expect(Math.min(...near)).toBeGreaterThanOrEqual(0.012);
  });
});
