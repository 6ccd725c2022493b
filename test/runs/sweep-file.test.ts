import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { runSweep, type SweepProgress } from "../../src/runs/sweep-file.ts";
import { readCsv } from "../commands/csv-reader.ts";
import { useFolder } from "./folder.ts";
import { toySweep } from "./sweep-task.ts";

const at = useFolder();
const text = (name: string) => readFileSync(at(name), "utf8");

test("a CSV file has one row per variant: which one, inputs, figures, why it failed", async () => {
  const end = await runSweep(toySweep(at("rows.csv")));
  expect(end).toEqual({ rows: 20, total: 20, before: 0, failed: 4 });
  const [header, ...rows] = readCsv(text("rows.csv"));
  expect(header).toEqual([
    ...["index", "of", "sweep", "bar.width_mm", "bar.height_mm"],
    ...["area_mm2", "note", "nothing", "failed"],
  ]);
  expect(rows).toHaveLength(20);
  const sweep = rows[0][2];
  expect(sweep).toMatch(/^s[0-9a-f]{12}$/);
  const widths = [1, 2, 3, 4.5, 5];
  const heights = [1, 2, 3, 0.1];
  for (const [i, row] of rows.entries()) {
    const [width, height] = [widths[Math.floor(i / 4)], heights[i % 4]];
    const identity = [i + 1, 20, sweep, width, height].map(String);
    const why = 'bar.width: must not be 3, "as agreed", but is';
    const note = width > height ? "wide, low" : "'=high";
    const figures = width === 3 ? ["", "", "", why] : [String(width * height), note, "", ""];
    expect(row).toEqual([...identity, ...figures]);
  }
});

test("a JSON Lines file says the same", async () => {
  await runSweep(toySweep(at("rows.csv")));
  await runSweep(toySweep(at("rows.jsonl")));
  const [header, ...rows] = readCsv(text("rows.csv"));
  const objects = text("rows.jsonl")
    .trimEnd()
    .split("\n")
    .map((line) => JSON.parse(line));
  for (const [i, object] of objects.entries()) {
    expect(Object.keys(object)).toEqual(header);
    // the apostrophe is for spreadsheets only
    const cells = Object.values(object).map((v) => String(v ?? "").replace(/^=/, "'="));
    expect(cells).toEqual(rows[i]);
    expect(typeof object["bar.width_mm"]).toBe("number");
  }
  expect(objects).toHaveLength(rows.length);
});

test("the bytes do not depend on the number of threads", async () => {
  await runSweep(toySweep(at("one.csv"), { workers: 1 }));
  await runSweep(toySweep(at("three.csv"), { workers: 3 }));
  expect(text("three.csv")).toBe(text("one.csv"));
});

describe.each(["rows.csv", "rows.jsonl"])("%s is continued", (name) => {
  test("wherever it was cut off", async () => {
    await runSweep(toySweep(at("whole", name)));
    const whole = readFileSync(at("whole", name));
    const lines = whole.toString().split("\n").length - 1;
    for (let size = 0; size < whole.length; size += size < 100 ? 9 : 97) {
      writeFileSync(at(name), whole.subarray(0, size));
      const left = whole.toString("utf8", size).split("\n").length - 1;
      const seen: SweepProgress[] = [];
      const end = await runSweep(toySweep(at(name), { onProgress: (p) => seen.push(p) }));
      expect(readFileSync(at(name)).equals(whole)).toBe(true);
      expect(end.failed).toBe(4);
      // every row that was whole is kept
      const before = 20 - Math.min(20, left);
      expect(seen.map(({ rows }) => rows)).toEqual(
        Array.from({ length: 21 - before }, (_, i) => before + i),
      );
      expect(end.before).toBe(before);
    }
    expect(lines).toBe(name.endsWith(".csv") ? 21 : 20);
  });

  test("behind the zeros that a power cut leaves", async () => {
    await runSweep(toySweep(at(name)));
    const whole = readFileSync(at(name));
    truncateSync(at(name), 700);
    truncateSync(at(name), 4096);
    await runSweep(toySweep(at(name)));
    expect(readFileSync(at(name)).equals(whole)).toBe(true);
  });

  test("after an abort, without a setup when nothing is left", async () => {
    const abort = new AbortController();
    const onProgress = ({ rows }: SweepProgress) => rows === 7 && abort.abort();
    const stopped = await runSweep(toySweep(at(name), { signal: abort.signal, onProgress }));
    expect(stopped).toEqual({ rows: 7, total: 20, before: 0, failed: 0 });
    const part = text(name);
    expect(part.endsWith("\n")).toBe(true);
    const rest = await runSweep(toySweep(at(name)));
    expect(rest).toEqual({ rows: 20, total: 20, before: 7, failed: 4 });
    expect(text(name).startsWith(part)).toBe(true);

    const setup = () => {
      throw new Error("must not be called");
    };
    const again = await runSweep(toySweep(at(name), { setup }));
    expect(again).toEqual({ rows: 20, total: 20, before: 20, failed: 4 });
  });

  test("as the part that it is", async () => {
    const abort = new AbortController();
    const onProgress = ({ rows }: SweepProgress) => rows === 2 && abort.abort();
    const shard = { part: 2, parts: 3 };
    await runSweep(toySweep(at(name), { shard, signal: abort.signal, onProgress }));
    const end = await runSweep(toySweep(at(name), { shard }));
    expect(end).toMatchObject({ rows: 7, total: 7, before: 2 });
    const numbers = text(name)
      .match(/^(?:\{"index":)?\d+/gm)
      ?.map((n) => Number(n.match(/\d+/)?.[0]));
    expect(numbers).toEqual([2, 5, 8, 11, 14, 17, 20]);
  });
});

/** The run must be refused with this message, and the file stay as it is. */
async function refused(name: string, message: string, more = {}): Promise<void> {
  const before = text(name);
  const run = runSweep(toySweep(at(name), more));
  await expect(run).rejects.toThrow(InputError);
  await expect(run).rejects.toThrow(message);
  expect(text(name)).toBe(before);
}

describe.each(["rows.csv", "rows.jsonl"])("%s is left as it is when it holds", (name) => {
  test("another sweep", async () => {
    await runSweep(toySweep(at(name)));
    await refused(name, "holds rows of another sweep", { decides: { frame: "abd" } });
    const parameters = [
      { name: "bar.width", values: [1, 2] },
      { name: "bar.height", values: [1] },
    ];
    await refused(name, "holds rows of another sweep", { parameters });
    await refused(name, "holds rows of another sweep", { results: ["a", "b", "c"] });
  });

  test("another part", async () => {
    await runSweep(toySweep(at(name), { shard: { part: 1, parts: 2 } }));
    const message = "holds another part of this sweep (row 3 of 20 is where another belongs)";
    await refused(name, message);
    await refused(name, "another part of this sweep (row 1 of 20", {
      shard: { part: 2, parts: 2 },
    });
    await refused(name, "another part of this sweep (row 3 of 20", {
      shard: { part: 1, parts: 4 },
    });
  });

  test("changed rows", async () => {
    await runSweep(toySweep(at(name)));
    const whole = text(name);
    const lines = whole.split(/(?<=\n)/);
    writeFileSync(
      at(name),
      lines.with(5, lines[5].replace(/(?<=[:,])4\.5|(?<=[:,])2(?=,)/, "7")).join(""),
    );
    await refused(name, "its line 6 is not as this program wrote it");
    writeFileSync(at(name), `${lines.slice(0, 5).join("")}and so on`);
    await refused(name, "its line 6 is not as this program wrote it");
  });

  test.each(["a,b\r\n1,2\r\n", "indices", "x", '{"name":"frame"}\n', "\n"])("%j", async (other) => {
    writeFileSync(at(name), other);
    await refused(name, "exists and does not hold rows of a sweep; choose another name");
  });
});

describe("a file for rows", () => {
  test.each([
    ["rows.txt", "--out: .*rows.txt: give a name that ends in .csv"],
    ["rows", "give a name that ends in .csv"],
  ])("must not be called %s", async (name, message) => {
    await expect(runSweep(toySweep(at(name)))).rejects.toThrow(new RegExp(message));
    expect(readdirSync(at())).toEqual([]);
  });

  test("must be a file in a place that can be written", async () => {
    mkdirSync(at("folder.csv"));
    writeFileSync(at("file"), "");
    await expect(runSweep(toySweep(at("folder.csv")))).rejects.toThrow("is a folder");
    await expect(runSweep(toySweep(at("file", "rows.csv")))).rejects.toThrow("cannot be written");
    await expect(runSweep(toySweep(" .csv "))).rejects.toThrow("ends in .csv");
    await expect(runSweep(toySweep(""))).rejects.toThrow("--out: nothing was given");
  });

  test("is not left behind without rows, but made with its folder", async () => {
    const setup = () => {
      throw new InputError([{ path: "arms", message: "are missing" }]);
    };
    await expect(runSweep(toySweep(at("rows.csv"), { setup }))).rejects.toThrow(
      "arms: are missing",
    );
    expect(existsSync(at("rows.csv"))).toBe(false);
    await runSweep(toySweep(at("a", "b", "rows.csv")));
    expect(readdirSync(at("a", "b"))).toEqual(["rows.csv"]);
  });

  test.each([0, 3])("is not shared by two runs: after %i rows", async (when) => {
    const onProgress = ({ rows }: SweepProgress) => {
      if (rows === when) writeFileSync(at("rows.csv"), "row of another\r\n", { flag: "a" });
    };
    const run = runSweep(toySweep(at("rows.csv"), { onProgress }));
    await expect(run).rejects.toThrow("was changed or deleted by another program");
    expect(text("rows.csv").endsWith("row of another\r\n")).toBe(true);
  });

  test("that is deleted under way ends the run", async () => {
    const onProgress = ({ rows }: SweepProgress) => rows === 3 && rmSync(at("rows.csv"));
    const run = runSweep(toySweep(at("rows.csv"), { onProgress }));
    await expect(run).rejects.toThrow("was changed or deleted by another program");
  });
});
