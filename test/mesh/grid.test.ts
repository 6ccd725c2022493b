import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { assemble } from "../../src/matrices/assemble.ts";
import { massFromMatrices } from "../../src/matrices/mass.ts";
import { buildMesh, defaultMeshSize } from "../../src/mesh/build.ts";
import { gridShape } from "../../src/mesh/grid.ts";
import { sumMoments } from "../../src/model/polygon.ts";
import { BASE, modelOf, plateAt } from "../model/frame.ts";

const L_SHAPE = [
  [0, 0],
  [60, 0],
  [60, 13],
  [17, 13],
  [17, 45],
  [0, 45],
];
const SLANTED = [
  [33, 4],
  [21, 19],
  [-14, 23],
  [-31, 2],
  [-9, -17],
  [26, -13],
];
const HOLES = [
  { at: [5, 3], diameter: 9 },
  {
    outline: [
      [-15, 5],
      [-4, 6],
      [-6, 14],
      [-14, 12],
    ],
  },
];

/** R'MR of the mesh against the polygons' moments times the mass per area. */
function expectExactMass(sections: object, size: number) {
  const model = modelOf(sections);
  const mesh = buildMesh(model, size);
  const [plate] = model.plates;
  const m = sumMoments([plate.outline, ...plate.holes]);
  const found = massFromMatrices(assemble(mesh, model), mesh, [0, 0, 0]);
  const mass = plate.massPerArea * m.area;
  const [cx, cy] = [m.x / m.area, m.y / m.area];
  // Sums over some hundred cells of 25 points per triangle.
  expect(found.mass / mass).toBeCloseTo(1, 11);
  expect(found.cg[0]).toBeCloseTo(cx, 13);
  expect(found.cg[1]).toBeCloseTo(cy, 13);
  expect(found.cg[2]).toBeCloseTo(plate.z, 13);
  const own = plate.rotaryPerArea * m.area;
  const exact = {
    xx: plate.massPerArea * (m.yy - cy * m.y) + own,
    yy: plate.massPerArea * (m.xx - cx * m.x) + own,
    xy: -plate.massPerArea * (m.xy - cx * m.y),
  };
  const scale = exact.xx + exact.yy;
  for (const k of ["xx", "yy", "xy"] as const) {
    expect(Math.abs(found.inertia[k] - exact[k]) / scale, k).toBeLessThan(1e-11);
  }
  expect(Math.abs(found.inertia.zz + 2 * own - scale) / scale).toBeLessThan(1e-11);
}

describe("a plate's mass, centre of gravity and inertia are exact on any grid", () => {
  test.each([20, 7, 4.3])("an L-shaped plate, cells of %s mm", (size) => {
    expectExactMass({ plates: { base: plateAt(3, { outline: L_SHAPE }) } }, size * 1e-3);
  });

  test.each([20, 7, 4.3])("a slanted plate with holes, cells of %s mm", (size) => {
    const base = plateAt(-2, { outline: SLANTED, holes: HOLES, fill: 0.8 });
    expectExactMass({ plates: { base } }, size * 1e-3);
  });
});

describe("the grid", () => {
  test("fits the bounding box; cells are no larger than the mesh size", () => {
    const [plate] = modelOf({ plates: { base: plateAt(0, { outline: L_SHAPE }) } }).plates;
    const g = gridShape(plate, 0.007);
    expect([g.nx, g.ny]).toEqual([9, 7]);
    expect(g.a * g.nx).toBeCloseTo(0.06, 15);
    expect(g.b * g.ny).toBeCloseTo(0.045, 15);
    // A mesh size that divides the side, but for rounding, is taken at its word.
    expect(gridShape(plate, 0.06 / 11).nx).toBe(11);
    // At least six cells each way: fewer bend too stiffly in their plane.
    expect(gridShape(plate, 1).nx).toBe(6);
  });

  test("no nodes where the plate is not", () => {
    const model = modelOf({ plates: { base: plateAt(0, { outline: L_SHAPE }) } });
    const mesh = buildMesh(model, 5e-3);
    const [g] = mesh.grids;
    expect([g.nx, g.ny]).toEqual([12, 9]);
    const at = (i: number, j: number) => g.nodeAt[j * (g.nx + 1) + i];
    expect(at(12, 9)).toBe(-1);
    expect(at(6, 6)).toBe(-1);
    expect(at(0, 9)).toBeGreaterThanOrEqual(0);
    expect(at(12, 0)).toBeGreaterThanOrEqual(0);
    expect(mesh.xyz.length / 3).toBe(g.nodeAt.filter((n) => n >= 0).length);
  });

  test("covers of the cells sum to the area, shared alike along and across", () => {
    const base = plateAt(0, { outline: SLANTED, holes: HOLES });
    const model = modelOf({ plates: { base } });
    const mesh = buildMesh(model, 6e-3);
    const [plate] = model.plates;
    const { area } = sumMoments([plate.outline, ...plate.holes]);
    const total = (f: (c: (typeof mesh.cells)[0]["cover"]) => number) =>
      mesh.cells.reduce((s, c) => s + f(c.cover), 0);
    // The floor under slivers adds at most 1e-6 of a cell each.
    expect(total((c) => c.bottom + c.top) / area).toBeCloseTo(1, 6);
    expect(total((c) => c.left + c.right) / area).toBeCloseTo(1, 6);
    for (const { cover } of mesh.cells)
      expect(Math.min(...Object.values(cover))).toBeGreaterThan(0);
    // Cut cells carry points of their own, whole ones share a rule.
    const cut = mesh.cells.filter((c) => c.points);
    expect(cut.length).toBeGreaterThan(10);
    expect(cut.length).toBeLessThan(mesh.cells.length);
  });

  test("nodes run anticlockwise from the corner of least x and y", () => {
    const mesh = buildMesh(modelOf(BASE), 10e-3);
    for (const { nodes, a, b } of mesh.cells) {
      const [p, q, r, s] = nodes.map((n) => [mesh.xyz[3 * n], mesh.xyz[3 * n + 1]]);
      expect(q[0] - p[0]).toBeCloseTo(a, 14);
      expect(r[1] - q[1]).toBeCloseTo(b, 14);
      expect(s[0]).toBeCloseTo(p[0], 14);
      expect(s[1]).toBeCloseTo(r[1], 14);
    }
  });
});

describe("default mesh size", () => {
  const square = (side: number) => [
    [side, side],
    [-side, side],
    [-side, -side],
    [side, -side],
  ];

  test("a whole share of the widest plate's shorter side, at least an eighth", () => {
    const narrow = defaultMeshSize(modelOf(BASE));
    const across = 0.04 / narrow;
    expect(across).toBeCloseTo(Math.round(across), 12);
    expect(across).toBeGreaterThan(7.99);
    const plates = { base: plateAt(0), top: plateAt(20, { outline: square(30) }) };
    expect(defaultMeshSize(modelOf({ plates }))).toBeCloseTo(0.06 / across, 15);
  });

  test("the same share of the longest arm without plates", () => {
    const across = 0.04 / defaultMeshSize(modelOf(BASE));
    const arm = (length: number) => ({
      material: "carbon-plate-0-90",
      thickness: 4,
      width: 12,
      root: [0, 0],
      tip: [length, 0],
      joint: { kind: "point", point: "hub" },
    });
    const points = { hub: [0, 0, 0] };
    const model = modelOf({ points, arms: { long: arm(90), short: arm(-70) } });
    expect(defaultMeshSize(model)).toBeCloseTo(0.09 / across, 12);
  });

  test("the file's size, and the caller's before it", () => {
    const model = modelOf({ ...BASE, meshSize: 8 });
    expect(buildMesh(model).size).toBe(0.008);
    expect(buildMesh(model, 0.02).size).toBe(0.02);
    expect(buildMesh(modelOf(BASE)).size).toBe(defaultMeshSize(modelOf(BASE)));
  });

  test("a size that is none, or far too fine, is refused with one that works", () => {
    const model = modelOf(BASE);
    for (const size of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => buildMesh(model, size)).toThrow(InputError);
    }
    expect(() => buildMesh(model, 1e-5)).toThrow(/use [\d.]+ mm or more/);
  });
});
