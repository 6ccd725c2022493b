import { describe, expect, test } from "vitest";
import { findingsIn, read } from "./helpers.ts";

/** What a text that is not JSON with comments is answered with, and where. */

function first(text: string): string {
  const [finding] = findingsIn(text);
  const place = finding.line === undefined ? "" : `${finding.line}:${finding.column} `;
  return place + finding.message;
}

describe("slips of the pen", () => {
  test.each([
    [
      '{\n "version": 1,\n "name": \'x\'\n}',
      "3:10 Texts and names stand in double quotes: write \" and not '.",
    ],
    ["{\n version: 1\n}", '2:2 Names stand in quotes: write "version": ...'],
    ['{"meshSize": 2,5}', "1:16 A decimal comma cannot be read here: write 2.5 with a point."],
    ['{"meshSize": 5 mm}', '1:16 5 mm stands in quotes in a frame file: write "5 mm".'],
    ['{"name": five}', '1:10 five stands in quotes in a frame file: write "five".'],
    ['{"meshSize": .5}', "1:14 .5 cannot be read as a number: write it like 0.5 or -2."],
    ["# my frame\n{}", "1:1 A comment begins with // and not with #."],
    ['{"version": 1,\0}', "1:15 There is a zero byte here: save the file as plain text in UTF-8."],
    ['{"points": {"a": [0 -2 5]}}', "1:21 A comma is missing before this."],
    ['{"meshSize": NaN}', "1:14 NaN is not a number to work with."],
    ['{"name": “x”}', '1:10 These are printed quotes: write the straight sign ".'],
    ['{"version": 1 "name": "x"}', "1:15 A comma is missing before this."],
    ['{"version" 1}', "1:12 A colon is missing here, between the name and its value."],
    ['{"name": "x', "1:10 A text is not closed: its second quote is missing on this line."],
    ['{"name": "a\tb"}', "1:10 There is a tab or another invisible sign inside a text: remove it."],
    ['{"name": "C:\\models"}', "1:10 A backslash in a text is written twice: \\\\."],
    ['{"notes": ["x"}', "1:15 A closing ] is missing before this."],
    [
      '{"notes": ',
      "1:11 A value is missing here: a number, a text in quotes, a list in [ ] or a section in { }.",
    ],
    [
      "{}\n{}",
      "2:1 There is something after the end of the file's last }: remove it, or check the braces above.",
    ],
    ['{"version": 1 /* }', "1:15 This comment is not closed: */ is missing."],
  ])("%s", (text, line) => {
    expect(first(text)).toBe(line);
  });

  test("nothing at all, or only comments", () => {
    const line = 'The file is empty. A frame file begins with { "version": 1, "name": "...".';
    expect(first("")).toBe(line);
    expect(first(" \n// nothing yet\n")).toBe(line);
  });

  test("something that is not a section", () => {
    expect(first("[1]")).toBe("The file holds a list; a frame file is one section in { }.");
    expect(first("null")).toBe("The file holds null; a frame file is one section in { }.");
  });

  test("brackets without end are refused before the parser runs out of stack", () => {
    expect(first(`{"a": ${"[".repeat(100_000)}`)).toBe(
      "1:46 Brackets are nested too deep here for a frame file.",
    );
    expect(first(`{"name": "${"[".repeat(100)}", "version": 1}`)).not.toContain("nested");
  });
});

describe("what people write and may write", () => {
  const plates =
    '"plates": {"p": {"material": "steel", "thickness": 1, "z": 0, "outline": [[0,0],[1,0],[0,1],]},},';

  test("comments, trailing commas, a byte order mark, Windows line ends", () => {
    const text = `\uFEFF// a comment\r\n{"version": 1, /* another */ ${plates}\r\n"name": "x", // last\r\n}`;
    expect(read(text).name).toBe("x");
  });

  test("line and column count as editors do, whatever the line ends", () => {
    for (const end of ["\n", "\r\n", "\r"]) {
      const text = `\uFEFF{${end} "version": 1,${end}  "name": 5,${end} ${plates}${end}}`;
      expect(findingsIn(text)).toEqual([
        { path: "name", message: "5 was found: write a text in quotes.", line: 3, column: 11 },
      ]);
    }
  });
});

describe("a key that stands twice", () => {
  test("is an error with both lines", () => {
    const text = '{\n"version": 1,\n"name": "x",\n"plates": {},\n"name": "y"}';
    const doubled = findingsIn(text).find(({ path }) => path === "name");
    expect(doubled).toEqual({
      path: "name",
      message: '"name" stands here a second time, first in line 3: rename or remove one of them.',
      line: 5,
      column: 1,
    });
  });

  test("also inside lists and for names of parts", () => {
    const holes = '[{"at": [0,0], "at": [1,1], "diameter": 3}]';
    const plate = `{"material": "steel", "thickness": 1, "z": 0, "outline": [[0,0],[1,0],[0,1]], "holes": ${holes}}`;
    const text = `{"version": 1, "name": "x", "plates": {"rear deck": ${plate}, "rear deck": 5}}`;
    expect(findingsIn(text).map(({ path }) => path)).toEqual([
      'plates."rear deck".holes#1.at',
      'plates."rear deck"',
    ]);
  });
});
