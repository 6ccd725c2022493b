import { describe, expect, test } from "vitest";
import { arm, BASE, findingsOf, modelOf, plateAt, post } from "./frame.ts";

const TWO = { plates: { base: plateAt(0), top: plateAt(20) } };

/** The frame has exactly one finding, at this path, and its message holds all of these. */
function expectFinding(sections: object, path: string, ...words: string[]) {
  const findings = findingsOf(sections);
  expect(findings.map((f) => f.path)).toEqual([path]);
  for (const w of words) expect(findings[0].message).toContain(w);
}

describe("plates", () => {
  test("an outline that crosses itself: which sides, in mm", () => {
    const outline = [
      [40, 20],
      [-40, -20],
      [-40, 20],
      [40, -20],
    ];
    const base = plateAt(0, { outline });
    expectFinding({ plates: { base } }, "plates.base.outline", "crosses itself", "(40, 20) mm");
  });

  test("an outline without area", () => {
    const outline = [
      [40, 20],
      [0, 0],
      [-40, -20],
    ];
    const base = plateAt(0, { outline });
    expectFinding({ plates: { base } }, "plates.base.outline", "encloses no area");
  });

  test("an outline closed by repeating its first corner does not cross itself", () => {
    const closed = [...plateAt(0).outline, plateAt(0).outline[0]];
    const findings = findingsOf({ plates: { base: plateAt(0, { outline: closed }) } });
    expect(findings.map((f) => f.message).join()).not.toContain("crosses itself");
  });

  test("holes that overlap, and one whose copy lies on it", () => {
    const holes = [
      { at: [5, 5], diameter: 6 },
      { at: [8, 5], diameter: 6 },
    ];
    expectFinding({ plates: { base: plateAt(0, { holes }) } }, "plates.base.holes#2", "overlaps");
    const across = {
      outline: [
        [-3, -3],
        [3, -3],
        [3, 3],
        [-3, 3],
      ],
      copies: "left and right",
    };
    const twice = { plates: { base: plateAt(0, { holes: [across] }) } };
    expectFinding(twice, "plates.base.holes#1", "onto itself");
  });

  test("a hole outside, and a hole that crosses itself", () => {
    const outside = plateAt(0, { holes: [{ at: [60, 0], diameter: 5 }] });
    expectFinding({ plates: { base: outside } }, "plates.base.holes#1", "reaches outside");
    const bow = [
      [0, 0],
      [5, 5],
      [5, 0],
      [0, 5],
    ];
    const crossed = plateAt(0, { holes: [{ outline: bow }] });
    expectFinding({ plates: { base: crossed } }, "plates.base.holes#1", "crosses itself");
  });
});

describe("arms", () => {
  test("one that misses its plate: how much of its end lies on it", () => {
    const arms = { arm: arm({ root: [55, 35], tip: [80, 60] }) };
    expectFinding({ ...BASE, arms }, "arms.arm", "misses its plate", '"base"', "0 %");
  });

  test("one that does not touch its plate: both heights and the gap", () => {
    const joint = { kind: "bolted", plates: ["base"], inserted: 12 };
    const arms = { arm: arm({ z: 8, joint }) };
    expectFinding({ ...BASE, arms }, "arms.arm", "z 8 mm", "z 0 mm", "6 mm apart");
  });

  test("one in one piece with a plate at another height", () => {
    expectFinding({ ...BASE, arms: { arm: arm({ z: 5 }) } }, "arms.arm", "5 mm apart in height");
  });

  test("one drawn into its plate", () => {
    const joint = { kind: "bolted", plates: ["base"], inserted: 12 };
    expectFinding({ ...BASE, arms: { arm: arm({ joint }) } }, "arms.arm", "into each other");
  });

  test("a fault of all four copies is told once", () => {
    const arms = { arm: arm({ z: 5, root: [18, 12], tip: [60, 50], copies: "all four corners" }) };
    expect(findingsOf({ ...BASE, arms }).length).toBe(1);
  });

  test("one whose root is not at the point that holds it", () => {
    const points = { hub: [0, 0, 0] };
    const joint = { kind: "point", point: "hub" };
    const arms = { arm: arm({ root: [10, 0], tip: [70, 0], joint }) };
    expectFinding({ points, arms }, "arms.arm", "hub");
  });

  test("touching within a millimetre is touching", () => {
    const joint = { kind: "bolted", plates: ["base"], inserted: 12 };
    expect(findingsOf({ ...BASE, arms: { arm: arm({ z: 2.9, joint }) } })).toEqual([]);
  });
});

describe("standoffs and joints", () => {
  test("no room between the faces", () => {
    const plates = { base: plateAt(0), top: plateAt(2) };
    const standoffs = { post: post([0, 0]) };
    expectFinding({ plates, standoffs }, "standoffs.post.between", "no room", "0 mm apart");
  });

  test("off one of its plates: which one and where", () => {
    const small = plateAt(20, {
      outline: [
        [10, 10],
        [-10, 10],
        [-10, -10],
        [10, -10],
      ],
    });
    const plates = { base: plateAt(0), top: small };
    const standoffs = { post: post([30, 10]) };
    expectFinding({ plates, standoffs }, "standoffs.post.at", "(30, 10) mm", '"top"');
  });

  test("a standoff whose foot still overlaps the edge is taken", () => {
    expect(findingsOf({ ...TWO, standoffs: { post: post([41, 0]) } })).toEqual([]);
    expect(findingsOf({ ...TWO, standoffs: { post: post([43, 0]) } }).length).toBe(2);
  });

  test("a joint off a plate", () => {
    const plates = { base: plateAt(0), top: plateAt(2) };
    const joints = { screw: { plates: ["base", "top"], at: [0, 30] } };
    const findings = findingsOf({ plates, joints });
    expect(findings.map((f) => f.path)).toEqual(["joints.screw.at", "joints.screw.at"]);
    expect(findings[1].message).toContain('"top"');
  });
});

describe("bodies, stack, candidates", () => {
  test("a body off its plate", () => {
    const bodies = { camera: { mass: 10, at: [60, 0, 10], on: "base" } };
    expectFinding({ ...BASE, bodies }, "bodies.camera.at", "off the plate", "(60, 0) mm");
  });

  test("a screw of a body off its plate", () => {
    const screws = [
      [0, 0],
      [10, 0],
      [0, 40],
    ];
    const bodies = { board: { mass: 10, at: [5, 5, 10], on: "base", screws } };
    expectFinding({ ...BASE, bodies }, "bodies.board.screws", "(0, 40) mm");
  });

  test("a body beyond the end of its arm", () => {
    const bodies = { light: { mass: 5, at: [90, 95, 0], on: "arm" } };
    expectFinding({ ...BASE, arms: { arm: arm() }, bodies }, "bodies.light.at", "beyond");
  });

  test("a hold that needs a plate", () => {
    const bodies = {
      light: { mass: 5, at: [60, 55, 0], size: [5, 5, 5], on: "arm", hold: "spread" },
    };
    expectFinding({ ...BASE, arms: { arm: arm() }, bodies }, "bodies.light.hold", "needs a plate");
  });

  const stack = {
    mass: 20,
    size: [36, 36, 15],
    plate: "base",
    at: [0, 0],
    height: 8,
    holes: { spacing: 30.5 },
  };

  test("a stack's hole pattern off the plate", () => {
    expectFinding({ ...BASE, stack: { ...stack, at: [0, 10] } }, "stack", "lies off the plate");
    const turned = { ...stack, holes: { spacing: 30.5, turned: 45, footprint: 3 } };
    expectFinding({ ...BASE, stack: turned }, "stack", "(0, 21.57) mm");
  });

  test("a candidate off the plate", () => {
    const candidates = { nose: { plate: "base", at: [50, 0] } };
    expectFinding({ ...BASE, candidates }, "candidates.nose.at", "(50, 0) mm");
  });
});

describe("members", () => {
  const member = { section: { shape: "rod", diameter: 5 }, material: "steel" };

  test("no length", () => {
    const points = { a: [0, 0, 0], b: [0, 0, 0] };
    const members = { rod: { from: "a", to: "b", ...member } };
    expectFinding({ points, members }, "members.rod", '"a" and "b" are the same place');
  });

  test('"up" along the member', () => {
    const points = { a: [0, 0, 0], b: [10, 0, 0] };
    const members = { rod: { from: "a", to: "b", ...member, up: [-2, 0, 0] } };
    expectFinding({ points, members }, "members.rod.up", "runs along the member");
  });

  test("an upright member needs no up of its own", () => {
    const points = { a: [0, 0, 0], b: [0, 0, 10] };
    const members = { rod: { from: "a", to: "b", ...member } };
    expect(modelOf({ points, members }).members[0].up).toEqual([1, 0, 0]);
  });
});

test("everything that is wrong is said at once", () => {
  const findings = findingsOf({
    plates: {
      base: plateAt(0),
      top: plateAt(1.5),
      flat: plateAt(50, {
        outline: [
          [0, 0],
          [5, 0],
          [9, 0],
        ],
      }),
    },
    arms: { arm: arm({ root: [55, 35], tip: [80, 60] }) },
    standoffs: { post: post([0, 0]) },
    joints: { screw: { plates: ["base", "top"], at: [0, 30] } },
    points: { a: [0, 0, 0], b: [0, 0, 0] },
    members: {
      rod: { from: "a", to: "b", section: { shape: "rod", diameter: 5 }, material: "steel" },
    },
    bodies: { camera: { mass: 10, at: [60, 0, 10], on: "base" } },
    candidates: { nose: { plate: "base", at: [50, 0] } },
  });
  expect(new Set(findings.map((f) => f.path))).toEqual(
    new Set([
      "plates.flat.outline",
      "arms.arm",
      "standoffs.post.between",
      "joints.screw.at",
      "members.rod",
      "bodies.camera.at",
      "candidates.nose.at",
    ]),
  );
  for (const f of findings) expect(f.message.length).toBeGreaterThan(20);
});

describe("bodies without mass", () => {
  test("only a rigid one may be pure inertia", () => {
    const bodies = { lump: { mass: 0, on: ["base"], hold: "smeared" } };
    expectFinding({ ...BASE, bodies }, "bodies.lump.mass", "needs a mass above zero");
  });
});
