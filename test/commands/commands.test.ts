import { mkdirSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { run } from "../../src/commands/program.ts";
import { NO_INK } from "../../src/commands/terminal/ink.ts";
import { readMatrixMarket } from "../../src/linalg/matrix-market.ts";
import { recorder } from "./recorder.ts";
import { read, SMALL_FRAME, stillpoint, useSandbox } from "./sandbox.ts";

useSandbox();
const FRAME = "frames/five-inch.jsonc";
/** Few places to search. */
const QUICK = ["--map-pitch", "40 mm"];

describe("rank", () => {
  test("prints the ranking and writes the report to the usual place", async () => {
    const { code, out, err } = await stillpoint("rank", FRAME);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toMatch(/^Small\n\nPut the stack/);
    expect(out).not.toMatch(/hard flag/i);
    for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
    expect(out).toContain("\nReport: reports/five-inch.html\n");
    expect(read("reports/five-inch.html")).toMatch(/^<!DOCTYPE html>/);
  });

  test("writes the same bytes again when the date is left out", async () => {
    await stillpoint("rank", FRAME, "--no-date", "--report", "a.html", ...QUICK);
    await stillpoint("rank", FRAME, "--no-date", "--report", "b/c/d.html", ...QUICK);
    expect(read("a.html")).toBe(read("b/c/d.html"));
    expect(readdirSync("b/c")).toEqual(["d.html"]);
  });

  test("prints JSON alone, writes no report when told so, and names its stages", async () => {
    const { terminal, out, err } = recorder(NO_INK, true, () => 100);
    await run(["rank", FRAME, "--json", "--no-report", ...QUICK], terminal);
    const stages = err().trimEnd().split("\n");
    expect(stages).toContain("stillpoint: placing the stack everywhere (100 s)");
    for (const stage of stages) expect(stage).toMatch(/^stillpoint: [a-z ]{10,55} \(100 s\)$/);
    const document = JSON.parse(out());
    expect(document).toMatchObject({ version: 2, kind: "ranking", report: null, mapFile: null });
    expect(document.map.pitchM).toBeCloseTo(0.04, 12);
    expect(document.places[0].gyroDegPerSecRms).toBeGreaterThan(0);
    expect(document.places[0].sensedGyroDegPerSecRms).toBeGreaterThan(0);
    expect(document.places[0].spectra[0].gyroDegPerSecRms).toHaveLength(
      document.speedGridRpm.length,
    );
  });

  test("refuses to put the report where a folder is, before it computes", async () => {
    mkdirSync("folder");
    const { code, out, err } = await stillpoint("rank", FRAME, "--report", "folder");
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain("folder is a folder: give the name of a file.");
  });

  test("says what a frame without motors lacks", async () => {
    writeFileSync("plate.jsonc", platesOnly());
    const { code, err } = await stillpoint("rank", "plate.jsonc");
    expect(code).toBe(2);
    const text = err.replace(/\s+/g, " ");
    expect(text).toMatch(/^plate\.jsonc: propulsion: The frame has no motors/);
    expect(text).toContain("stillpoint modes plate.jsonc");
    expect((await stillpoint("modes", "plate.jsonc", "--modes", "3")).code).toBe(0);
  });
});

/** A plate alone, invented. */
function platesOnly(): string {
  return JSON.stringify({
    version: 1,
    name: "plate",
    meshSize: "15 mm",
    plates: {
      top: {
        material: "carbon-plate-0-90",
        thickness: "2 mm",
        z: 0,
        outline: [
          [40, 20],
          [-40, 20],
          [-40, -20],
          [40, -20],
        ],
      },
    },
  });
}

describe("modes", () => {
  test("prints as many modes as asked for", async () => {
    const { out } = await stillpoint("modes", FRAME, "--modes", "4");
    expect(out).toMatch(/^Small\n4 modes up to \d+\.?\d* Hz, lowest first\.\n/);
    expect(out.match(/^ +\d+ +\d+\.?\d* +\d+\.?\d* {2}\S/gm)).toHaveLength(4);
  });

  test("prints JSON", async () => {
    const { out } = await stillpoint("modes", FRAME, "--modes", "4", "--json");
    const { kind, modes, evidence, rigidBodyModes } = JSON.parse(out);
    expect(kind).toBe("modes");
    expect(modes).toHaveLength(4);
    expect(modes[0].frequencyHz).toBeLessThan(modes[3].frequencyHz);
    expect(rigidBodyModes).toBe(6);
    expect(evidence.modesCounted).toBe(evidence.modesFound);
  });
});

test("a frame that is held all over ends with 2", async () => {
  writeFileSync("held.jsonc", heldAllOver());
  const { code, out, err } = await stillpoint("modes", "held.jsonc");
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err.replace(/\s+/g, " ")).toMatch(
    /^held\.jsonc:\d+:\d+: supports: every motion of the frame is held/,
  );
});

/** One beam element with both ends held, invented. */
function heldAllOver(): string {
  const end = (point: string) => ({ point, fix: "all" });
  return JSON.stringify({
    version: 1,
    name: "held",
    points: { a: [0, 0, 0], b: [100, 0, 0] },
    members: {
      bar: {
        from: "a",
        to: "b",
        section: { shape: "rod", diameter: 5 },
        material: "steel",
        elements: 1,
      },
    },
    supports: { left: end("a"), right: end("b") },
  });
}

describe("check", () => {
  test("weighs the frame and tells its speeds", async () => {
    const { code, out } = await stillpoint("check", FRAME);
    expect(code).toBe(0);
    expect(out).toMatch(/all together +612\n/);
    expect(out).toMatch(/Mass 612 g; centre of gravity/);
    expect(out).toMatch(/Hover \d+ rpm, full throttle \d+ rpm/);
  });

  test("prints JSON in SI units", async () => {
    const { mass, speeds, mesh } = JSON.parse((await stillpoint("check", FRAME, "--json")).out);
    const sum = mass.parts.reduce((m: number, part: { massKg: number }) => m + part.massKg, 0);
    expect(mass.massKg).toBeCloseTo(sum, 12);
    expect(speeds.hoverRpm).toBeLessThan(speeds.fullRpm);
    expect(mesh.sizeM).toBe(0.015);
  });

  test("tells every problem of a file with line and column", async () => {
    writeFileSync("bad.jsonc", SMALL_FRAME.replace('"5 mm"', '"5 GPa"').replace('"15 mm"', "-1"));
    const { code, err } = await stillpoint("check", "bad.jsonc");
    expect(code).toBe(2);
    expect(err).toMatch(/^bad\.jsonc:\d+:\d+: meshSize: /m);
    expect(err).toMatch(/\n\d problems? in bad\.jsonc; nothing was written\n$/);
  });

  test("tells a mesh size that is too fine as the option's or as the file's", async () => {
    const option = await stillpoint("check", FRAME, "--mesh-size", "0.01 mm");
    expect(option.code).toBe(2);
    expect(option.err).toMatch(/^stillpoint: --mesh-size: a mesh size of 0\.0100 mm cuts/);
    writeFileSync("fine.jsonc", SMALL_FRAME.replace('"15 mm"', '"0.01 mm"'));
    const file = await stillpoint("check", "fine.jsonc");
    expect(file.code).toBe(2);
    expect(file.err).toMatch(/^fine\.jsonc:\d+:\d+: meshSize: a mesh size of 0\.0100 mm cuts/);
  });

  test("tells what holds the frame: nothing, supports, or springs", async () => {
    const told = async (sections: object) => {
      const frame = { ...JSON.parse(platesOnly()), points: { p: [0, 0, 0] }, ...sections };
      const links = { l: { point: "p", plate: "top", footprint: 10 } };
      writeFileSync("bench.jsonc", JSON.stringify({ ...frame, links }));
      const { out } = await stillpoint("check", "bench.jsonc");
      const { held } = JSON.parse((await stillpoint("check", "bench.jsonc", "--json")).out);
      return [held, /; ([^;]*)\.\n\n/.exec(out)?.[1].replace(/\s+/g, " ")];
    };
    expect(await told({})).toEqual([false, "free, as in flight"]);
    const supports = { s: { point: "p", fix: "all" } };
    expect(await told({ supports })).toEqual([true, "held by its supports"]);
    const springs = { s: { between: ["p", "ground"], z: "10 N/mm" } };
    expect(await told({ springs })).toEqual([true, "held by springs to the ground"]);
  });

  test("finds the line of a mistake that only the geometry shows", async () => {
    const text = SMALL_FRAME.replace(
      '"at": [0, 0],\n    "height"',
      '"at": [500, 0],\n    "height"',
    );
    expect(text).not.toBe(SMALL_FRAME);
    writeFileSync("off.jsonc", text);
    const line = text.slice(0, text.indexOf('"stack"')).split("\n").length;
    const { code, err } = await stillpoint("check", "off.jsonc");
    expect(code).toBe(2);
    expect(err).toContain(`off.jsonc:${line}:3: stack: `);
  });

  test("names a similar file when there is none of that name", async () => {
    const { code, err } = await stillpoint("check", "frames/five-ich.jsonc");
    expect(code).toBe(2);
    expect(err).toContain("five-inch.jsonc");
  });
});

describe("new", () => {
  test.each(["5 inch", "5", "5inch", "5-inch", '5"'])("takes --class %j", async (size) => {
    const { code, out } = await stillpoint("new", "mine.jsonc", "--force", "--class", size);
    expect(code).toBe(0);
    expect(out).toContain("the 5 inch class");
    expect(read("mine.jsonc")).toContain('"name": "mine"');
  });

  test("makes a file that passes its check", async () => {
    await stillpoint("new", "seven.jsonc", "--class", "7");
    expect((await stillpoint("check", "seven.jsonc")).code).toBe(0);
  });

  test("leaves a file that exists alone", async () => {
    writeFileSync("precious.jsonc", "mine");
    const { code, err } = await stillpoint("new", "precious.jsonc", "--class", "3");
    expect(code).toBe(2);
    expect(err).toContain("--force");
    expect(read("precious.jsonc")).toBe("mine");
  });
});

describe("schema", () => {
  test("prints what it writes", async () => {
    const { out } = await stillpoint("schema");
    const written = await stillpoint("schema", "--output", "deep/frame.schema.json");
    expect(written.out).toBe("Wrote deep/frame.schema.json\n");
    expect(read("deep/frame.schema.json")).toBe(out);
    expect(JSON.parse(out)).toHaveProperty("properties.plates");
  });
});

describe("materials", () => {
  test("lists E in three directions, and where the numbers come from", async () => {
    const { out } = await stillpoint("materials");
    expect(out).toMatch(/carbon-plate-0-90 +60 +17\.4 +60 +1\.55 +0\.3\n/);
    expect(out).toMatch(/steel: E, G published \[\d+\];/);
    for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });

  test.each(["carbon-plate-0-90", "carbon-ud", "carbon-ud-cross-ply", "steel"])(
    "shows %s in full",
    async (name) => {
      const { out } = await stillpoint("materials", name);
      expect(out).toContain(`"${name}"`);
      expect(out).toContain("Where the numbers come from");
      const one = JSON.parse((await stillpoint("materials", name, "--json")).out);
      expect(one).toMatchObject({ version: 2, kind: "material", id: name });
      expect(one.sources.length).toBeGreaterThan(0);
    },
  );

  test("gives the kind of every entry and SI units in JSON", async () => {
    const { materials, plies } = JSON.parse((await stillpoint("materials", "--json")).out);
    const steel = materials.find(({ id }: { id: string }) => id === "steel");
    expect(steel).toMatchObject({
      type: "isotropic",
      youngsModulusPa: 207e9,
      densityKgPerM3: 7850,
    });
    expect(steel.shearModulusPa).toBeCloseTo(207e9 / (2 * (1 + steel.poissonsRatio)), -9);
    expect(plies[0]).toMatchObject({ type: "ply", youngsModulus1Pa: 70e9 });
  });
});

describe("matrices", () => {
  test("writes K, M and the list of their rows into a folder", async () => {
    const { code } = await stillpoint("matrices", FRAME, "--output", "matrices/");
    expect(code).toBe(0);
    expect(readdirSync("matrices").sort()).toEqual(["mass.mtx", "stiffness.mtx", "unknowns.csv"]);
    const K = readMatrixMarket(read("matrices/stiffness.mtx"));
    const M = readMatrixMarket(read("matrices/mass.mtx"));
    const [header, ...rows] = read("matrices/unknowns.csv").trimEnd().split("\n");
    expect(header).toBe("row,node,direction,unit,x_m,y_m,z_m,part");
    expect([M.pattern.n, rows.length]).toEqual([K.pattern.n, K.pattern.n]);
    expect(rows[0]).toMatch(/^1,0,x,m,/);
    expect(rows.every((row) => /,[^,]+$/.test(row))).toBe(true);
  });

  test("takes the beginning of the names instead of a folder", async () => {
    await stillpoint("matrices", FRAME, "--output", "out/five");
    expect(readdirSync("out")).toContain("five-stiffness.mtx");
    expect(statSync("out/five-unknowns.csv").size).toBeGreaterThan(1000);
  });
});
