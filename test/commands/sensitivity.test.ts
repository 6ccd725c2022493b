import { writeFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { crossSections } from "../modes/toys.ts";
import { type Outcome, read, stillpoint, useSandbox } from "./sandbox.ts";

useSandbox();

const FRAME = "cross.jsonc";
/** No threads, which take long to start from sources. */
const ALONE = ["--workers", "1"];
const { candidates: _candidates, ...cross } = crossSections({ lossFactor: 0.3, armElements: 2 });
/** One spot, few inputs. */
const frame = {
  version: 1,
  name: "Cross",
  ...cross,
  candidates: {
    middle: { plate: "hub", at: [0, 0] },
    nose: { plate: "hub", at: [44, 0], holes: { spacing: "20 mm" } },
  },
};

function write(name: string, sections: object): void {
  writeFileSync(name, JSON.stringify(sections));
}

describe("sensitivity", () => {
  let json: Outcome;
  beforeAll(async () => {
    write(FRAME, frame);
    json = await stillpoint("sensitivity", FRAME, "--spot", "nose", "--json", ...ALONE);
  }, 120_000);

  test("prints one JSON document with every input, mode and spot", () => {
    expect({ code: json.code, err: json.err }).toEqual({ code: 0, err: "" });
    const document = JSON.parse(json.out);
    expect(document).toMatchObject({
      version: 2,
      kind: "sensitivity",
      spot: "nose",
    });
    expect(document.modes).toHaveLength(20);
    expect(document.spots.map((s: { name: string }) => s.name)).toEqual(["middle", "nose"]);
    type Row = { name: string; hertzPerUnit: number[]; gyroDbTo: number[] };
    const arm = document.inputs.find((i: Row) => i.name === "arms.arm.thickness");
    expect(arm).toMatchObject({ kind: "thickness", unit: "mm", value: 4, reach: "spread" });
    expect([arm.from, arm.to]).toEqual([expect.closeTo(3.88, 9), expect.closeTo(4.12, 9)]);
    expect(arm.hertzPerUnit).toHaveLength(20);
    expect(arm.gyroDbTo).toHaveLength(2);
    const [percent, perMm] = [arm.percentPerPercent[0], arm.hertzPerUnit[0]];
    expect(percent).toBeCloseTo((perMm * 4) / document.modes[0].frequencyHz, 9);
    const { spot, found } = document.suggestions;
    expect(spot).toBe("middle");
    expect(found[0].gyroDb).toBeLessThan(-0.3);
    expect(found[0].changes[0].path).toMatch(/^(arms|plates|bodies|stack)\./);
  });

  test("writes its page where none is named, and over no other file", async () => {
    expect(JSON.parse(json.out).report).toBe("reports/cross-sensitivity.html");
    const page = read("reports/cross-sensitivity.html");
    expect(page).toContain("<code>--spot &quot;nose&quot;</code>");
    expect(page).toContain("The noise at “nose” is moved most by");
    writeFileSync("notes.html", "<p>mine</p>");
    const before = ["sensitivity", FRAME, "--report"];
    for (const [file, why] of [
      ["notes.html", "is not a report of this program"],
      [FRAME, "has the name of a frame file"],
    ]) {
      const { code, out, err } = await stillpoint(...before, file);
      expect({ code, out }).toEqual({ code: 2, out: "" });
      expect(err.replace(/\s+/g, " ")).toContain(why);
    }
    expect(read("notes.html")).toBe("<p>mine</p>");
    const both = await stillpoint(...before, "a.html", "--no-report");
    expect(both.err.replace(/\s+/g, " ")).toContain("together with --no-report");
  });

  test("says which spots there are, before it computes for long", async () => {
    const { code, out, err } = await stillpoint("sensitivity", FRAME, "--spot", "attic");
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err.replace(/\s+/g, " ")).toContain('Its spots are "middle", "nose".');
  });

  test("refuses numbers of modes and inputs that are none", async () => {
    for (const [option, value] of [
      ["--mode", "0"],
      ["--top", "none"],
    ]) {
      const { code, err } = await stillpoint("sensitivity", FRAME, option, value);
      expect(code).toBe(2);
      expect(err.replace(/\s+/g, " ")).toContain("Give a whole number from 1 to");
    }
  });

  test("lists the modes alone for a frame that nothing shakes", async () => {
    const { propulsion: _p, stack: _s, ...still } = cross;
    write("still.jsonc", { version: 1, name: "Cross", ...still });
    const { code, out } = await stillpoint("sensitivity", "still.jsonc", "--top", "2", ...ALONE);
    expect(code).toBe(0);
    expect(out).toMatch(/^Cross\n\nWhat moves each mode most\n/);
    expect(out).not.toContain("What would help");
    for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
    const one = await stillpoint(
      "sensitivity",
      "still.jsonc",
      "--mode",
      "2",
      ...ALONE,
      "--top",
      "2",
    );
    expect(one.out).toMatch(/\nWhat moves mode 2 most \([\d.]+ Hz, /);
    expect(one.out).not.toContain("What moves each mode most");
    expect(one.out).toMatch(/\d+ more inputs move it less\./);
    const spot = await stillpoint("sensitivity", "still.jsonc", "--spot", "middle");
    expect(spot.code).toBe(2);
    expect(spot.err.replace(/\s+/g, " ")).toContain("nothing shakes this frame");
  });
});
