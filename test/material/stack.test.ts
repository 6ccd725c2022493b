import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { MAX_PLIES, parseStack } from "../../src/material/stack.ts";

// biome-ignore format: table
const STACKS: readonly (readonly [string, readonly number[]])[] = [
  ["[0]",                    [0]],
  ["[0/90]",                 [0, 90]],
  ["[0/90]s",                [0, 90, 90, 0]],
  ["[0/90]S",                [0, 90, 90, 0]],
  ["[0/90]T",                [0, 90]],
  ["[0/90]2",                [0, 90, 0, 90]],
  ["[0/90]2s",               [0, 90, 0, 90, 90, 0, 90, 0]],
  ["[0/90]_2s",              [0, 90, 0, 90, 90, 0, 90, 0]],
  ["[0/45/-45/90]s",         [0, 45, -45, 90, 90, -45, 45, 0]],
  ["[0_2/90]s",              [0, 0, 90, 90, 0, 0]],
  ["[+-45]s",                [45, -45, -45, 45]],
  ["[±45]2s",                [45, -45, 45, -45, -45, 45, -45, 45]],
  ["[+/-45]",                [45, -45]],
  ["[-+45/∓30]",             [-45, 45, -30, 30]],
  ["[0/+-45/90]s",           [0, 45, -45, 90, 90, -45, 45, 0]],
  ["[+-0]",                  [0, 0]],
  ["[+45/-45]",              [45, -45]],
  ["[(0/90)/(45/-45)]2s",    [0, 90, 45, -45, 0, 90, 45, -45, -45, 45, 90, 0, -45, 45, 90, 0]],
  ["[(0/90)2/45]",           [0, 90, 0, 90, 45]],
  ["[(0/(+-45)_2)2]",        [0, 45, -45, 45, -45, 0, 45, -45, 45, -45]],
  ["[0_2/90_2/0_2/90_2]s",   [0, 0, 90, 90, 0, 0, 90, 90, 90, 90, 0, 0, 90, 90, 0, 0]],
  ["[0/90~]s",               [0, 90, 0]],
  ["[0/45/90 ~ ] s",         [0, 45, 90, 45, 0]],
  ["[0~]s",                  [0]],
  [" [ 22.5° / -67.5 ] 2 ",  [22.5, -67.5, 22.5, -67.5]],
  ["[−30/180/-180]",         [-30, 180, -180]],
  ["[-0]",                   [0]],
];

/** Text, character counted from 1, what was found, what is allowed there. */
// biome-ignore format: table
const WRONG: readonly (readonly [string, number, string, string])[] = [
  ["",              1, "the end of the text",      '"["'],
  ["0/90",          1, '"0"',                      '"["'],
  ["[]",            2, '"]"',                      'an angle in degrees, "+-" or "("'],
  ["[0/]",          4, '"]"',                      'an angle in degrees, "+-" or "("'],
  ["[0/90",         6, "the end of the text",      '"/", "_" with a count, or "]"'],
  ["[0,90]s",       3, '","',                      '"/", "_" with a count, or "]"'],
  ["[0 90]s",       4, '"9"',                      '"/", "_" with a count, or "]"'],
  ["[0/(45/-45]",  11, '"]"',                      '"/", "_" with a count, or ")"'],
  ["[0/()]",        5, '")"',                      'an angle in degrees, "+-" or "("'],
  ["[0/90]x",       7, '"x"',                      'a count, "s", "T" or nothing'],
  ["[0/90]s2",      8, '"2"',                      "nothing (a count stands before the s)"],
  ["[0/90]ss",      8, '"s"',                      "nothing (a count stands before the s)"],
  ["[0/90]2s]",     9, '"]"',                      "nothing (a count stands before the s)"],
  ["[0_/90]",       4, '"/"',                      "a whole number of repeats"],
  ["[0_0/90]",      4, "the repeat count 0",       "1 to 500"],
  ["[0_501]",       4, "the repeat count 501",     "1 to 500"],
  ["[0/90]0s",      7, "the repeat count 0",       "1 to 500"],
  ["[0/90]1e9",     8, '"e"',                      'a count, "s", "T" or nothing'],
  ["[0/270]",       4, "the angle 270",            "-180 to 180 degrees"],
  ["[45./0]",       4, '"."',                      '"/", "_" with a count, or "]"'],
  ["[--45]",        3, '"-"',                      'an angle in degrees, "+-" or "("'],
  ["[warp]",        2, '"w"',                      'an angle in degrees, "+-" or "("'],
  ["[+-45_2]",      6, '"_" after a plus-minus pair', "(+-45)2 for 45/-45/45/-45, or 45_2/-45_2"],
  ["[0~/90]s",      4, '"/"',                      '"]" (only the last ply takes a "~")'],
  ["[0/90~]",       6, '"~" in a stack that does not end in a plain "]s"', "the middle ply of [0/90~]s"],
  ["[0/90~]2s",     6, '"~" in a stack that does not end in a plain "]s"', "the middle ply of [0/90~]s"],
];

describe("stack notation", () => {
  test.each(STACKS)("%s", (text, angles) => {
    expect(parseStack(text)).toEqual(angles);
  });

  test("the largest stack allowed is read in full", () => {
    expect(parseStack("[0_250]s")).toHaveLength(MAX_PLIES);
  });
});

describe("a stack that cannot be read", () => {
  test.each(WRONG)("%s at character %i: found %s, allowed %s", (text, at, found, allowed) => {
    const message = messageOf(text);
    expect(message).toContain(`The stack "${text}"`);
    expect(message).toContain(`found ${found}`);
    expect(message).toContain(`at character ${at};`);
    expect(message).toContain(`allowed here: ${allowed}.`);
    expect(message).toContain("A valid stack is [0/45/-45/90]2s.");
  });

  test("too many plies are refused before they are made", () => {
    expect(messageOf("[0_251]s")).toContain("found 502 plies");
    expect(messageOf("[0/90]500")).toContain(
      "found 1000 plies at character 7; allowed here: at most 500",
    );
    expect(messageOf("[((((0_500)500)500)500)500]500s")).toContain("found 250000 plies");
    expect(messageOf("[0_400/0_400]")).toContain("found 800 plies");
  });

  test("endless nesting is refused, not followed", () => {
    expect(messageOf("[".padEnd(100_000, "("))).toContain("inside too many groups at character 10");
  });

  test("a long text is shown shortened", () => {
    const message = messageOf(`[${"0/".repeat(200)}`);
    expect(message.length).toBeLessThan(300);
    expect(message).toContain("...");
  });

  test("carries the path of the field", () => {
    expect(() => parseStack("[0", "plates.top.stack")).toThrow(/^plates\.top\.stack: The stack/);
  });
});

function messageOf(text: string): string {
  try {
    parseStack(text);
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
  throw new Error(`The stack "${text}" was read without an error.`);
}
