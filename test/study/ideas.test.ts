/** Changes that a builder could make, and bodies that would stand in each other. */

import { describe, expect, test } from "vitest";
import { changedFrame, parseFrameSource, readFrameSource } from "../../src/frame/change.ts";
import { buildModel } from "../../src/model/build.ts";
import { clashesOf } from "../../src/study/clash.ts";
import { ideasFor } from "../../src/study/ideas.ts";
import { crossSections } from "../modes/toys.ts";

const five = readFrameSource("frames/five-inch.jsonc");
const ideas = ideasFor(five, 0.737, "sandwich centre");
const words = ideas.map((i) => i.words);

describe("ideas for the five-inch sample", () => {
  test("are written as a builder would say them", () => {
    expect(words).toEqual(
      expect.arrayContaining([
        "Arms 5.5 mm thick instead of 5 mm",
        'Plate "middle" 1.5 mm thick instead of 2 mm',
        "Arms 2 mm wider",
        "Arms 1 mm narrower",
        'Standoff "post" at (68, 10) mm and its copies moved to (63, 10) mm',
        '"battery" 10 mm further forward',
        "Silicone grommets under the stack instead of screws alone",
      ]),
    );
  });

  test("move heavy bodies alone, and none that is screwed to a plate", () => {
    const bodies = new Set(ideas.filter((i) => i.kind === "body").map((i) => i.part));
    expect([...bodies]).toEqual(['bodies."action camera"', "bodies.battery"]);
  });

  test("never touch what a builder cannot choose", () => {
    const roots = new Set(ideas.flatMap((i) => i.changes.map(({ path }) => path[0])));
    expect(roots).toEqual(new Set(["arms", "plates", "standoffs", "bodies", "stack"]));
    expect(words.join()).not.toMatch(/kappa|modulus|loss/);
  });

  test("can be put into the file, each as it says", () => {
    const file = (text: string) => {
      const found = ideas.find((i) => i.words === text);
      if (found === undefined) throw new Error(text);
      return changedFrame(five, found.changes).file;
    };
    expect(file("Arms 5.5 mm thick instead of 5 mm").arms.arm.thickness).toBeCloseTo(5.5e-3, 12);
    const widths = file("Arms 2 mm wider").arms.arm.width.map((w) => w.width);
    expect(widths).toEqual([expect.closeTo(19e-3, 12), expect.closeTo(15e-3, 12)]);
    expect(file('"battery" 10 mm further back').bodies.battery.at?.[0]).toBeCloseTo(-0.042, 12);
    expect(file(words[words.length - 1]).stack?.isolators).toBe("rubber rings");
  });
});

test("sheets stay at 1 mm or more", () => {
  const thin = parseFrameSource(
    JSON.stringify({ version: 1, name: "thin", ...crossSections({ armThickness: 1.5 }) }),
    "thin.jsonc",
  );
  const arms = ideasFor(thin, 1, "middle").filter((i) => i.part === "arms.arm");
  const sheets = arms.filter((i) => i.kind === "thickness").map((i) => i.words);
  expect(sheets).toEqual([
    "Arms 1 mm thick instead of 1.5 mm",
    "Arms 2 mm thick instead of 1.5 mm",
    "Arms 2.5 mm thick instead of 1.5 mm",
  ]);
});

test("a stack on mounts may be screwed down, or stand on others", () => {
  const { stack, ...sections } = crossSections();
  const frame = { ...sections, stack: { ...(stack as object), isolators: "rubber rings" } };
  const soft = parseFrameSource(JSON.stringify({ version: 1, name: "soft", ...frame }), "s.jsonc");
  const mounts = ideasFor(soft, 1, "middle").filter((i) => i.kind === "mount");
  expect(mounts.map((i) => i.words)).toEqual([
    "Silicone grommets under the stack instead of rubber rings",
    "Soft gel pads under the stack instead of rubber rings",
    "The stack screwed down instead of on rubber rings",
  ]);
});

describe("bodies that stand in each other", () => {
  const box = (x: number, sx = 10) => ({
    mass: 5,
    at: [x, 0, 8],
    size: [sx, 10, 10],
    on: "hub",
  });
  const clashes = (bodies: object) => {
    const frame = { version: 1, name: "boxes", ...crossSections(), bodies };
    return clashesOf(buildModel(parseFrameSource(JSON.stringify(frame), "b.jsonc").file));
  };

  test("are named by twos; what only touches does not", () => {
    expect(clashes({ a: box(-20), b: box(-10), c: box(30) })).toEqual([]);
    expect(clashes({ a: box(-20), b: box(-12), c: box(30) })).toEqual(["a and b"]);
    expect(clashes({ a: box(0, 60), b: box(-12), c: box(20) })).toEqual(["a and b", "a and c"]);
  });
});
