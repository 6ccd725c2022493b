import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { buildMesh } from "../../src/mesh/build.ts";
import { arm, modelOf, plateAt, post } from "../model/frame.ts";

function looseParts(sections: object): string[] {
  try {
    buildMesh(modelOf(sections));
  } catch (error) {
    if (error instanceof InputError) return error.findings.map((f) => `${f.path}: ${f.message}`);
    throw error;
  }
  return [];
}

const PLATES = { base: plateAt(0), top: plateAt(20) };
const member = (from: string, to: string) => ({
  from,
  to,
  section: { shape: "rod", diameter: 4 },
  material: "steel",
});

describe("everything must hang together", () => {
  test("a loose plate is named", () => {
    const [finding, ...more] = looseParts({ plates: PLATES, arms: { arm: arm() } });
    expect(finding).toMatch(/^plates\.top: this plate is not connected/);
    expect(more).toEqual([]);
    expect(looseParts({ plates: PLATES, standoffs: { post: post([0, 0]) } })).toEqual([]);
  });

  test("every loose part is named, those that hang on it too", () => {
    const points = { a: [0, 0, 50], b: [10, 0, 50] };
    const small = plateAt(20, {
      outline: [
        [20, 20],
        [-20, 20],
        [-20, -20],
      ],
    });
    const frame = {
      plates: { base: plateAt(0), top: small },
      points,
      members: { rod: member("a", "b") },
      bodies: {
        cap: { mass: 3, on: "a" },
        plugs: { mass: 5, at: [0, 0, 25], size: [8, 8, 4], on: "top" },
      },
    };
    const loose = looseParts(frame).map((line) => line.split(":")[0]);
    expect(loose.toSorted()).toEqual(["bodies.cap", "bodies.plugs", "members.rod", "plates.top"]);
  });

  test.each([
    { by: "a joint", more: { joints: { screw: { plates: ["base", "lid"], at: [0, 0] } } } },
    {
      by: "a member and two links",
      more: {
        points: { a: [0, 0, 0], b: [0, 0, 2] },
        members: { rod: member("a", "b") },
        links: {
          low: { point: "a", plate: "base", footprint: 5 },
          high: { point: "b", plate: "lid", footprint: 5 },
        },
      },
    },
    {
      by: "a spring",
      more: {
        points: { a: [5, 5, 0], b: [5, 5, 2] },
        links: {
          low: { point: "a", plate: "base", footprint: 5 },
          high: { point: "b", plate: "lid", footprint: 5 },
        },
        springs: { foam: { between: ["a", "b"], x: 1, y: 1, z: 1, rx: 1, ry: 1, rz: 1 } },
      },
    },
  ])("joined by $by", ({ more }) => {
    expect(looseParts({ plates: { base: plateAt(0), lid: plateAt(2) }, ...more })).toEqual([]);
  });

  test("with supports, the part that stands on the ground is the frame, however small", () => {
    const frame = {
      plates: PLATES,
      points: { foot: [0, 0, -30], toe: [0, 0, -20] },
      members: { leg: member("foot", "toe") },
      supports: { ground: { point: "foot", fix: "all" } },
    };
    const loose = looseParts(frame).map((line) => line.split(":")[0]);
    expect(loose.toSorted()).toEqual(["plates.base", "plates.top"]);
  });
});

describe("places without material", () => {
  test("a standoff in the middle of a cut-out: where, and on which plate", () => {
    const hole = {
      outline: [
        [-15, -15],
        [15, -15],
        [15, 15],
        [-15, 15],
      ],
    };
    const plates = { base: plateAt(0, { holes: [hole] }), top: plateAt(20) };
    const [finding] = looseParts({ plates, standoffs: { post: post([0, 0]) } });
    expect(finding).toContain("standoffs.post");
    expect(finding).toContain('no material of the plate "base"');
  });

  test("a support that meets no grid point", () => {
    const supports = {
      clamp: {
        plate: "base",
        along: [
          [-40, 3.21],
          [40, 3.21],
        ],
        fix: "all",
      },
    };
    const [finding] = looseParts({ plates: { base: plateAt(0) }, supports });
    expect(finding).toContain("supports.clamp");
    expect(finding).toMatch(/cut into \d+ x \d+ cells/);
  });
});
