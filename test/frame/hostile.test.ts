import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { starterFrame } from "../../src/frame/starter.ts";
import { fileWith, findingsIn, linesOf, PLATE, read } from "./helpers.ts";

/** Files that mean no good, and files that are merely odd. */

describe("names", () => {
  test("those of object properties are names like any other", () => {
    const plates = { constructor: PLATE, toString: { ...PLATE, z: 5 }, hasOwnProperty: PLATE };
    const frame = read(
      fileWith({ plates, candidates: { valueOf: { plate: "constructor", at: [0, 0] } } }),
    );
    expect(Object.keys(frame.plates)).toEqual(["constructor", "toString", "hasOwnProperty"]);
    expect(Object.values(frame.plates).map(({ z }) => z)).toEqual([0, 0.005, 0]);
    expect(frame.arms.constructor).toBeUndefined();
    expect(Object.values(frame.candidates)[0].plate).toBe("constructor");
  });

  test("a material that only objects have is unknown", () => {
    const [line] = linesOf(fileWith({ plates: { base: { ...PLATE, material: "constructor" } } }));
    expect(line).toContain('There is no material called "constructor".');
  });

  test("__proto__ is refused and changes nothing", () => {
    const text = `{"version": 1, "name": "x", "__proto__": {"z": 1}, "plates": {
      "__proto__": {"polluted": true}, "a": {"__proto__": {"polluted": true}}}}`;
    const lines = findingsIn(text).map(({ path, message }) => `${path}: ${message}`);
    expect(lines).toContain(
      'plates.__proto__: The name "__proto__" cannot be used: choose another one.',
    );
    expect(lines.filter((line) => line.includes('"__proto__" is not known for'))).toHaveLength(2);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  test.each([
    ["", 'plates."": A name cannot be empty.'],
    ["a".repeat(41), `plates.${"a".repeat(41)}: This name is too long: at most 40 characters.`],
    [" deck", 'plates." deck": The name " deck" begins or ends with a space: remove it.'],
    ["de\nck", 'plates."de\\nck": The name "de\\u000ack" has an invisible sign in it: remove it.'],
    [
      "de\u202eck",
      'plates."de\u202eck": The name "de\\u202eck" has an invisible sign in it: remove it.',
    ],
  ])("%j is refused", (name, line) => {
    expect(linesOf(fileWith({ plates: { [name]: PLATE } }))).toEqual([line]);
  });

  test("forty letters of any alphabet are fine", () => {
    expect(
      linesOf(fileWith({ plates: { ["ж".repeat(40)]: PLATE, "<b>deck</b>": PLATE } })),
    ).toEqual([]);
  });

  test("plates, arms and points do not share names", () => {
    expect(linesOf(fileWith({ points: { base: [0, 0, 0], ground: [0, 0, 0] } }))).toEqual([
      'points.base: "base" is also the name of something in plates: plates, arms and points need different names.',
      'points.ground: "ground" stands for the ground in springs: give this point another name.',
    ]);
  });

  const arm = {
    material: "steel",
    thickness: 5,
    root: [20, 10],
    tip: [80, 60],
    width: 16,
    joint: { kind: "bolted", plates: "base", inserted: 10 },
  };
  const copied = { ...arm, copies: "all four corners" };
  const corner = "front left arm";
  test.each<[string, object, string]>([
    [
      "the copy of an arm and an arm",
      { arms: { arm: copied, [corner]: arm } },
      `arms."${corner}": "${corner}" would name both a mirrored copy of the arm "arm" and the arm "${corner}": give one of the two another name.`,
    ],
    [
      "an arm and the copy of an arm after it",
      { arms: { [corner]: arm, arm: copied } },
      `arms.arm: "${corner}" would name both the arm "${corner}" and a mirrored copy of the arm "arm": give one of the two another name.`,
    ],
    [
      "copies of two arms",
      { arms: { arm: copied, "left arm": { ...arm, copies: "front and rear" } } },
      `arms."left arm": "${corner}" would name both a mirrored copy of the arm "arm" and a mirrored copy of the arm "left arm": give one of the two another name.`,
    ],
    [
      "a plate and the copy of an arm",
      {
        plates: { base: PLATE, "left arm": PLATE },
        arms: { arm: { ...arm, copies: "left and right" } },
      },
      'arms.arm: "left arm" would name both the plate "left arm" and a mirrored copy of the arm "arm": give one of the two another name.',
    ],
    [
      "the copy of an arm and a point",
      { arms: { arm: copied }, points: { "rear right arm": [0, 0, 0] } },
      'points."rear right arm": "rear right arm" would name both a mirrored copy of the arm "arm" and the point "rear right arm": give one of the two another name.',
    ],
  ])("%s do not share a name", (_case, sections, line) => {
    expect(linesOf(fileWith(sections))).toEqual([line]);
  });

  test("an arm without a copy of that name leaves it to others", () => {
    const arms = { arm: { ...arm, copies: "front and rear" }, [corner]: arm };
    expect(linesOf(fileWith({ arms }))).toEqual([]);
  });

  test("long and strange texts come out short and harmless", () => {
    const [line] = linesOf(fileWith({ flightMix: `\u001b[2J${"x".repeat(5000)}` }));
    expect(line.length).toBeLessThan(200);
    expect(line).toContain('"\\u001b[2Jxxx');
  });
});

/** Every place in a good file, as a path. */
function placesIn(value: unknown, path: readonly string[] = []): (readonly string[])[] {
  if (typeof value !== "object" || value === null) return [path];
  return [
    path,
    ...Object.entries(value).flatMap(([key, inner]) => placesIn(inner, [...path, key])),
  ];
}

function withValueAt(file: unknown, path: readonly string[], value: unknown): unknown {
  const copy = structuredClone(file) as Record<string, unknown>;
  let part = copy;
  for (const key of path.slice(0, -1)) part = part[key] as Record<string, unknown>;
  part[path[path.length - 1]] = value;
  return copy;
}

describe("any value anywhere", () => {
  const holes = [
    { at: [0, 0], diameter: 3 },
    {
      outline: [
        [0, 0],
        [1, 0],
        [0, 1],
      ],
    },
  ];
  const good = {
    ...fileWith({
      plates: { base: { ...PLATE, holes }, top: { ...PLATE, z: 20 } },
      materials: { m: { kind: "isotropic", E: 70, nu: 0.3, density: 2.7 } },
      points: { p: [0, 0, 0], q: [1, 0, 0] },
      members: { m: { from: "p", to: "q", section: { shape: "rod", diameter: 2 }, material: "m" } },
      links: { l: { point: "p", plate: "base", footprint: 6, ties: ["x"] } },
      supports: {
        s: {
          plate: "base",
          along: [
            [0, 0],
            [1, 0],
          ],
          fix: "all",
        },
      },
      flightMix: [{ speed: 3000, weight: 1 }],
      excitation: { orders: [{ order: 2, of: "thrust", fraction: 0.1 }] },
      arms: {
        arm: {
          material: "steel",
          thickness: 5,
          root: [20, 20],
          tip: [80, 80],
          width: [
            [0, 17],
            [1, 13],
          ],
          slots: [{ from: 0.2, to: 0.4, width: 3 }],
          joint: { kind: "bolted", plates: ["base"], inserted: 20 },
        },
      },
      bodies: { b: { mass: 1, at: [0, 0, 5], on: "base", hold: "soft", soft: { bounce: 60 } } },
    }),
  };
  const places = placesIn(good).slice(1);
  const odd = [
    null,
    true,
    -1,
    0,
    1e300,
    "",
    "x",
    "5 GPa",
    [],
    {},
    [[1]],
    [1, 2, 3],
    { kind: "rod" },
  ];

  test("the file is good to begin with", () => {
    expect(linesOf(good)).toEqual([]);
  });

  test("gives a frame or findings in our own words, never another error", () => {
    fc.assert(
      fc.property(fc.constantFrom(...places), fc.constantFrom(...odd), (path, value) => {
        for (const { message, line } of findingsIn(withValueAt(good, path, value) as object)) {
          expect(message).toMatch(/^(?!Invalid|Too |Unrecogni|Expected|\?).*\.$/s);
          expect(line).toBeGreaterThan(0);
        }
      }),
      { seed: 11, numRuns: 600 },
    );
  });

  test("any text gives a frame or an InputError", () => {
    const sign = fc.constantFrom(..."{}[]\",:/*\\ \n12.eE-+abmn'\u0000\u2028é".split(""));
    fc.assert(
      fc.property(fc.string({ unit: sign, maxLength: 40 }), (text) => {
        expect(() => read(text)).toThrow(InputError);
      }),
      { seed: 5, numRuns: 500 },
    );
  });

  test("a starter with any name is a file with that name", () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1, maxLength: 60, unit: "binary" }), (name) => {
        expect(read(starterFrame("5 inch", name)).name).toBe(name);
      }),
      { seed: 3, numRuns: 40 },
    );
  });
});
