import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { frameJsonSchema } from "../../src/frame/json-schema.ts";
import { ISOLATOR_KINDS } from "../../src/frame/schema-stack.ts";
import { fileWith, findingsIn, linesOf, read } from "./helpers.ts";
import { misfits } from "./json-schema-check.ts";

/** Soft mounts in the frame file. */

const where = { plate: "base", at: [0, 0] };
const file = (stack: object, candidate: object = {}) =>
  fileWith({
    stack: {
      mass: 24,
      size: [42, 42, 18],
      ...where,
      height: 9.5,
      holes: { spacing: 30.5 },
      ...stack,
    },
    candidates: { here: { ...where, ...candidate } },
  });
const readBack = (stack: object, candidate: object = {}) => {
  const frame = read(file(stack, candidate));
  return [frame.stack, frame.candidates.here];
};

describe("isolators", () => {
  test("left out, there is no such key", () => {
    for (const part of readBack({})) expect(Object.keys(part ?? {})).not.toContain("isolators");
  });

  test.each(["none", ...ISOLATOR_KINDS])("%s", (isolators) => {
    expect(readBack({ isolators })[0]).toMatchObject({ isolators });
    expect(readBack({}, { isolators })[1]).toMatchObject({ isolators });
    expect(misfits(file({ isolators }, { isolators }), frameJsonSchema())).toEqual([]);
  });

  test("one's own: N/m, half as stiff across, loss factor 0.2", () => {
    const isolators = { axial: "8 kN/m" };
    const [stack] = readBack({ isolators });
    expect(stack).toMatchObject({ isolators: { axial: 8e3, lateral: 4e3, lossFactor: 0.2 } });
    expect(misfits(file({ isolators }), frameJsonSchema())).toEqual([]);
  });

  test("a bare number is in N/mm, which is kN/m; all three given", () => {
    const isolators = { axial: 8, lateral: "12000 N/m", lossFactor: "35 %" };
    const [, candidate] = readBack({}, { isolators });
    expect(candidate).toMatchObject({
      isolators: { axial: 8e3, lateral: 12e3, lossFactor: expect.closeTo(0.35, 12) },
    });
  });
});

describe("what is wrong with them is said", () => {
  const words =
    '"none", "silicone grommets", "soft gel pads", "rubber rings" or "over-tightened grommets"';
  const own = 'or give one mount as { "axial": "8 kN/m" }.';
  test.each<[string, unknown, string]>([
    [
      "a slip of the pen",
      "silicon gromets",
      `: "silicon gromets" is not one of the choices. Did you mean "silicone grommets"? Write ${words}, ${own}`,
    ],
    ["a word", "springs", `: "springs" is not one of the choices. Write ${words}, ${own}`],
    ["a number", 8, `: 8 was found: write a kind of mount such as "silicone grommets", ${own}`],
    [
      "a list",
      ["none"],
      `: A list was found: write a kind of mount such as "silicone grommets", ${own}`,
    ],
    [
      "no stiffness",
      { lossFactor: 0.2 },
      '.axial: Missing: a stiffness is needed here, for example "10 N/mm".',
    ],
    [
      "zero stiffness",
      { axial: 0 },
      ".axial: 0 (read as 0 N/mm) is not possible: it must be more than zero.",
    ],
    [
      "negative stiffness",
      { axial: 8, lateral: "-4 kN/m" },
      '.lateral: "-4 kN/m" is not possible: it must be more than zero.',
    ],
    [
      "no loss at all",
      { axial: 8, lossFactor: 0 },
      ".lossFactor: 0 is not possible: it must be more than zero.",
    ],
    [
      "more loss than any rubber has",
      { axial: 8, lossFactor: 2.5 },
      ".lossFactor: 2.5 is not possible: it must be 2 or less.",
    ],
    [
      "newtons per metre without a unit",
      { axial: 8000 },
      '.axial: A mount of 8000 kN/m is as stiff as a screw: the stack is screwed down. Write less than 1000 kN/m, or leave "isolators" out (for a candidate: "none").',
    ],
    [
      "a pressure",
      { axial: "8 kPa" },
      '.axial: "8 kPa" is a pressure (kPa), a stiffness is needed here, for example "10 N/mm".',
    ],
    [
      "a typo",
      { axial: 8, latteral: 4 },
      '.latteral: "latteral" is not known for a mount. Did you mean "lateral"? Possible here: "axial", "lateral" or "lossFactor".',
    ],
  ])("%s", (_case, isolators, line) => {
    expect(linesOf(file({ isolators }))).toEqual([`stack.isolators${line}`]);
    expect(linesOf(file({}, { isolators }))).toEqual([`candidates.here.isolators${line}`]);
  });

  test("any odd value anywhere, in our own words", () => {
    const odd = fc.constantFrom<unknown>(
      ...[null, true, -1, 0, 1e300, "", "x", "5 GPa", "none", [], {}, [[1]], { kind: "rod" }],
    );
    const mount = fc.record({ axial: odd, lateral: odd, lossFactor: odd }, { requiredKeys: [] });
    fc.assert(
      fc.property(fc.oneof(odd, mount), (isolators) => {
        for (const { message, line } of findingsIn(file({ isolators }))) {
          expect(message).toMatch(/^(?!Invalid|Too |Unrecogni|Expected|\?).*\.$/s);
          expect(line).toBeGreaterThan(0);
        }
      }),
      { seed: 17, numRuns: 200 },
    );
  });
});
