/** What is kept from one mesh to the next changes nothing of it. */

import { describe, expect, test } from "vitest";
import { readFrameSource } from "../../src/frame/change.ts";
import { buildMesh } from "../../src/mesh/build.ts";
import { memo } from "../../src/mesh/memo.ts";
import { footingOn, patchOn } from "../../src/mesh/patch.ts";
import { buildModel } from "../../src/model/build.ts";
import { disc } from "../../src/model/polygon.ts";

describe("a memo", () => {
  test("makes each thing once, and forgets the first of too many", () => {
    const made: string[] = [];
    const get = memo<{ readonly name: string }>(2);
    const of = (name: string) =>
      get(name, () => {
        made.push(name);
        return { name };
      });
    const a = of("a");
    of("b");
    expect(of("a")).toBe(a);
    expect(made).toEqual(["a", "b"]);
    of("c");
    expect(of("a")).toEqual(a);
    expect(made).toEqual(["a", "b", "c", "a"]);
  });
});

describe("a frame meshed again", () => {
  const model = buildModel(readFrameSource("frames/three-inch.jsonc").file);

  test("is the same, cells and patches being shared", () => {
    const [one, two] = [buildMesh(model, 9e-3), buildMesh(model, 9e-3)];
    expect(two).toEqual(one);
    expect(two.grids[0].covered).toBe(one.grids[0].covered);
    expect(two.pads[0].patch.pieces).toBe(one.pads[0].patch.pieces);
  });

  test("with a plate higher up has all that is on it there", () => {
    const up = 1e-3;
    const plates = model.plates.map((p, i) => (i === 1 ? { ...p, z: p.z + up } : p));
    const [low, high] = [model, { ...model, plates }].map((m) => buildMesh(m, 9e-3).grids[1]);
    expect(high.nodeAt).toBe(low.nodeAt);
    const head = disc(2e-3, 1e-3, 6e-3);
    for (const on of [patchOn, footingOn]) {
      const [below, above] = [on(low, head), on(high, head)];
      expect(above?.weights).toBe(below?.weights);
      expect((above?.centre[2] ?? 0) - (below?.centre[2] ?? 0)).toBeCloseTo(up, 15);
    }
  });

  test("on another mesh or with another outline has cells of its own", () => {
    const finer = buildMesh(model, 6e-3).grids[0];
    const shorter = {
      ...model,
      plates: model.plates.map((p) => ({ ...p, outline: p.outline.map((v) => 0.98 * v) })),
    };
    const cells = (m: typeof model) => buildMesh(m, 9e-3).grids[0].covered;
    expect(finer.covered.length).not.toBe(cells(model).length);
    expect(cells(shorter)).not.toEqual(cells(model));
  });
});
