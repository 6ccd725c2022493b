import { existsSync, linkSync, mkdirSync, symlinkSync, truncateSync, writeFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { runSweep } from "../../src/runs/sweep-file.ts";
import { toySweep, writeParts } from "../runs/sweep-task.ts";
import { read, stillpoint, useSandbox } from "./sandbox.ts";

useSandbox();

const numbered = (ending: string) => [1, 2, 3].map((i) => `part-${i}.${ending}`);
const [A, B, C] = numbered("csv");

beforeAll(async () => {
  for (const ending of ["csv", "jsonl"]) {
    await runSweep(toySweep(`whole.${ending}`));
    await writeParts(...numbered(ending));
  }
});

/** The run must end with 2, print the message alone and write nothing. */
async function refused(message: string, ...args: readonly string[]): Promise<void> {
  const out = args[args.indexOf("--out") + 1];
  const before = tried(out);
  const { code, out: printed, err } = await stillpoint("join", ...args);
  expect({ code, printed }).toEqual({ code: 2, printed: "" });
  expect(err.replace(/\s+/g, " ")).toContain(message);
  expect(tried(out)).toBe(before);
}

function tried(file: string): string | undefined {
  try {
    return read(file);
  } catch {
    return undefined;
  }
}

describe.each(["csv", "jsonl"])("parts in .%s", (ending) => {
  const [a, b, c] = numbered(ending);

  test("in any order make what a single run would have written", async () => {
    const { code, out, err } = await stillpoint("join", c, a, b, "--out", `all/1.${ending}`);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(read(`all/1.${ending}`)).toBe(read(`whole.${ending}`));
    expect(out).toBe(
      `Wrote all/1.${ending}\nAll 20 rows of the sweep; 4 variants could not be computed, the column "failed"\nsays why.\n`,
    );
  });

  test("of which one is missing are joined only when that is wished", async () => {
    const half = `half.${ending}`;
    const missing =
      "7 of 20 rows are missing: 2, 5, 8, 11, 14, 17, 20. Run the sweep with --shard 2/3 as well.";
    await refused(
      `${missing} To join what is there all the same, add --partial.`,
      a,
      c,
      "--out",
      half,
    );
    const { code, out } = await stillpoint("join", a, c, "--out", half, "--partial");
    expect(code).toBe(0);
    expect(out.replace(/\s+/g, " ")).toContain("13 of 20 rows; 3 variants could not be computed");
    expect(out.replace(/\s+/g, " ")).toContain(missing);
    // the rest can be joined to it
    expect((await stillpoint("join", half, b, "--out", `all/2.${ending}`)).code).toBe(0);
    expect(read(`all/2.${ending}`)).toBe(read(`whole.${ending}`));
  });

  test("that overlap are told with their rows", async () => {
    const other = `other.${ending}`;
    await runSweep(toySweep(other, { shard: { part: 1, parts: 2 } }));
    await refused(
      `Rows 1, 7, 13, 19 stand both in ${a} and in ${other}: leave out one of the two`,
      ...[a, b, other],
      ...["--out", `new.${ending}`],
    );
    writeFileSync(`copy.${ending}`, read(b));
    await refused(
      `both in ${b} and in copy.${ending}`,
      a,
      b,
      c,
      `copy.${ending}`,
      "--out",
      `n.${ending}`,
    );
    await refused(`${a} was given twice`, a, b, a, "--out", `new.${ending}`);
    writeFileSync(`twice.${ending}`, `${read(b)}${read(b).split("\n").at(-2)}\n`);
    await refused(
      `Row 20 stands twice in twice.${ending}`,
      `twice.${ending}`,
      "--out",
      `n.${ending}`,
    );
  });

  test("that a kill cut off are told as incomplete", async () => {
    const cut = `cut.${ending}`;
    writeFileSync(cut, read(b));
    truncateSync(cut, read(b).length - 5);
    await refused(
      `1 of 20 rows is missing: 20. ${cut} (part 2/3) is not complete: run the command that wrote it again`,
      ...[a, cut, c, "--out", `new.${ending}`],
    );
  });

  test("of another sweep are told by name", async () => {
    const other = `strange.${ending}`;
    await runSweep(toySweep(other, { decides: 1, shard: { part: 2, parts: 3 } }));
    await refused(
      `${other} and ${a} are not parts of one sweep`,
      a,
      other,
      c,
      "--out",
      `new.${ending}`,
    );
  });

  test.each([
    ["nothing", "", "There are no rows in"],
    ["a word", "hello", "does not hold rows of a sweep"],
    ["another table", "a,b\r\n1,2\r\n", "does not hold rows of a sweep"],
    ["other objects", '{"index":1}\n', "does not hold rows of a sweep"],
  ])("that are %s are refused", async (_, text, message) => {
    writeFileSync(`bad.${ending}`, text);
    await refused(message, `bad.${ending}`, "--out", `new.${ending}`);
  });

  test("that were changed are told with the line", async () => {
    const lines = read(a).split(/(?<=\n)/);
    const at = ending === "csv" ? 3 : 2;
    const changed = [
      lines[at].replace(/,[^,]*(?=,)/, ""),
      lines[at].slice(0, 20) + lines[at].slice(-2),
      "\n",
      lines[at].replace(/(?<=[:,])20(?=,)/, "3"),
      lines[at].replace(/(?<=[:,])20(?=,)/, "999999"),
      lines[at].replace(/s[0-9a-f]{12}/, "s0123456789ab"),
    ];
    for (const line of changed) {
      expect(line).not.toBe(lines[at]);
      writeFileSync(`bad.${ending}`, lines.with(at, line).join(""));
      await refused(`bad.${ending}: line ${at + 1} is`, `bad.${ending}`, "--out", `new.${ending}`);
    }
  });
});

describe("the whole", () => {
  test("takes the place of an older whole, but of no rows that are not in it", async () => {
    const parts = [A, B, C];
    for (let i = 0; i < 2; i++) {
      expect((await stillpoint("join", ...parts, "--out", "again.csv")).code).toBe(0);
    }
    expect((await stillpoint("join", A, B, "--partial", "--out", "grows.csv")).code).toBe(0);
    expect((await stillpoint("join", ...parts, "--out", "grows.csv")).code).toBe(0);
    await refused(
      "holds rows that are not in these parts",
      A,
      B,
      "--partial",
      "--out",
      "grows.csv",
    );
    await runSweep(toySweep("precious.csv", { decides: 2 }));
    await refused("holds rows that are not in these parts", ...parts, "--out", "precious.csv");
  });

  test("does not take the place of anything else", async () => {
    writeFileSync("map.csv", "plate,side\r\n");
    await refused("7 of 20 rows are missing", A, C, "--out", "new-folder/all.csv");
    expect(existsSync("new-folder")).toBe(false);
    await refused("is not a list of variants of this program", A, B, C, "--out", "map.csv");
    mkdirSync("folder.csv");
    await refused("folder.csv is a folder", A, B, C, "--out", "folder.csv");
    writeFileSync("file", "");
    await refused("cannot be written", A, B, C, "--out", "file/all.csv");
  });

  test("is none of the parts, whatever links lead there", async () => {
    symlinkSync(A, "soft.csv");
    linkSync(A, "hard.csv");
    for (const out of [A, `./${A}`, "soft.csv", "hard.csv"]) {
      await refused("is one of the parts", A, B, C, "--out", out);
    }
  });

  test("has the ending of the parts, which is the same for all", async () => {
    await refused("must all be .csv or all .jsonl", A, B, C, "--out", "all.jsonl");
    await refused("must all be .csv or all .jsonl", A, B, "part-3.jsonl", "--out", "all.csv");
    await refused(
      "<parts>: part-3.txt: give a name that ends in",
      A,
      "part-3.txt",
      "--out",
      "all.csv",
    );
    await refused("folder.csv is a folder: name the files in it", "folder.csv", "--out", "all.csv");
  });
});

test("rows that a spreadsheet saved with other line ends and a mark before them are joined all the same", async () => {
  writeFileSync("saved.csv", `\uFEFF${read(A)}`.replaceAll("\r\n", "\n"));
  expect((await stillpoint("join", "saved.csv", B, C, "--out", "saved-all.csv")).code).toBe(0);
  expect(read("saved-all.csv")).toBe(read("whole.csv"));
});
