import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { gridJobs, MOST_JOBS } from "../../src/runs/jobs.ts";
import { readShard, shardOf } from "../../src/runs/shard.ts";

const range = (n: number) => Array.from({ length: n }, (_, i) => i);

describe("gridJobs", () => {
  test("makes every combination once, the last parameter fastest", () => {
    const jobs = gridJobs([
      { name: "a", values: ["3 mm", "4 mm"] },
      { name: "b", values: [1, 2, 3] },
    ]);
    expect(jobs.map(({ index, inputs }) => [index, ...inputs.map((i) => i.written)])).toEqual([
      [0, "3 mm", 1],
      [1, "3 mm", 2],
      [2, "3 mm", 3],
      [3, "4 mm", 1],
      [4, "4 mm", 2],
      [5, "4 mm", 3],
    ]);
    expect(jobs[4].inputs.map(({ name }) => name)).toEqual(["a", "b"]);
  });

  test("makes as many as are allowed and says how many would be too many", () => {
    const [tens, tenThousand] = [range(10), range(MOST_JOBS / 10)];
    const jobs = gridJobs([
      { name: "a", values: tens },
      { name: "b", values: tenThousand },
    ]);
    expect(jobs).toHaveLength(MOST_JOBS);
    expect(jobs.at(-1)?.inputs.map(({ written }) => written)).toEqual([9, 9999]);
    const parameters = ["a", "b", "c"].map((name) => ({ name, values: tenThousand }));
    expect(() => gridJobs(parameters)).toThrow(
      "make 10000 x 10000 x 10000 = 1000000000000 variants; at most 100000",
    );
  });

  test.each([
    [[], "Nothing is varied"],
    [[{ name: "a.b", values: [] }], "a.b: has no values"],
    [
      [
        { name: "a", values: [1] },
        { name: "a", values: [2] },
      ],
      "a: is varied twice",
    ],
  ])("refuses %j", (parameters, message) => {
    expect(() => gridJobs(parameters)).toThrow(InputError);
    expect(() => gridJobs(parameters)).toThrow(message);
  });
});

describe("shards", () => {
  test.each([1, 2, 3, 7, 20])(
    "%i parts are the whole, without overlap and of like size",
    (parts) => {
      const all = range(20);
      const cut = range(parts).map((i) => shardOf(all, { part: i + 1, parts }));
      expect(cut.flat().toSorted((a, b) => a - b)).toEqual(all);
      const sizes = cut.map(({ length }) => length);
      expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
    },
  );

  test("take every n-th job, counted from one", () => {
    expect(shardOf(range(10), readShard("2/4"))).toEqual([1, 5, 9]);
    expect(readShard(" 5 / 5 ")).toEqual({ part: 5, parts: 5 });
  });

  test.each([
    ["0/5", "counted from 1, so the first is 1/5"],
    ["6/5", "there are 5 parts, so the last is 5/5"],
    ["2/0", "at least one part"],
    ["0/0", "at least one part"],
    ["two of five", '"two of five" is not a part of a sweep: write the number'],
    ["-1/5", "is not a part"],
    ["1.5/5", "is not a part"],
    ["2", "is not a part"],
    ["", '"" is not a part'],
    ["1/2/3", "is not a part"],
  ])("are not %j", (text, message) => {
    expect(() => readShard(text)).toThrow(InputError);
    expect(() => readShard(text)).toThrow(message);
  });

  test("are not more than there are jobs", () => {
    expect(() => shardOf(range(3), { part: 1, parts: 4 })).toThrow(
      "--shard: 1/4: the sweep has only 3 variants and cannot be cut into 4 parts.",
    );
  });
});
