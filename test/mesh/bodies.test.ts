import { describe, expect, test } from "vitest";
import { type Inertia, shiftInertia } from "../../src/element/rigid-mass.ts";
import { buildMesh } from "../../src/mesh/build.ts";
import type { MassElement, Mesh } from "../../src/mesh/types.ts";
import { arm, BASE, modelOf, plateAt, post } from "../model/frame.ts";
import { frequencies } from "../verification/frequencies.ts";

const KEYS = ["xx", "yy", "zz", "xy", "xz", "yz"] as const;

/** Mass, centre of gravity and inertia about it of the mass elements of one part. */
function together(mesh: Mesh, name: string) {
  const mine = mesh.masses.filter((e) => mesh.parts[e.part].name === name);
  const place = (e: MassElement) => e.offset.map((o, i) => mesh.xyz[3 * e.node + i] + o);
  const mass = mine.reduce((s, e) => s + e.mass, 0);
  const cg = [0, 1, 2].map((i) => mine.reduce((s, e) => s + e.mass * place(e)[i], 0) / mass);
  const inertia: Record<keyof Inertia, number> = { xx: 0, yy: 0, zz: 0, xy: 0, xz: 0, yz: 0 };
  for (const e of mine) {
    const I = shiftInertia(
      e.inertia,
      e.mass,
      place(e).map((v, i) => v - cg[i]),
    );
    for (const k of KEYS) inertia[k] += I[k];
  }
  return { pieces: mine.length, mass, cg, inertia };
}

function expectWhole(mesh: Mesh, body: ReturnType<typeof modelOf>["bodies"][0]) {
  const sum = together(mesh, body.name);
  expect(sum.mass / body.mass).toBeCloseTo(1, 13);
  body.cg.forEach((c, i) => {
    expect(sum.cg[i]).toBeCloseTo(c, 14);
  });
  const trace = body.inertia.xx + body.inertia.yy + body.inertia.zz;
  for (const k of KEYS) {
    expect(Math.abs(sum.inertia[k] - body.inertia[k]) / trace, k).toBeLessThan(1e-13);
  }
  return sum;
}

describe("bodies keep their mass, centre of gravity and inertia however they are held", () => {
  const box = { mass: 40, at: [3, -2, 12], size: [50, 26, 18], on: "base" };
  const inertia = { xx: 9000, yy: 8000, zz: 7000, xy: 300, xz: 200, yz: 100 };
  test.each([
    { how: "screwed", body: box, pieces: 1 },
    { how: "spread: cut into boxes of about 12 mm", body: { ...box, hold: "spread" }, pieces: 8 },
    {
      how: "spread over a footprint smaller than itself",
      body: { ...box, hold: "spread", footprint: [25, 13] },
      pieces: 2,
    },
    {
      how: "spread with an inertia of its own: whole",
      body: { ...box, hold: "spread", inertia },
      pieces: 1,
    },
    { how: "soft", body: { ...box, hold: "soft", soft: { bounce: 80 } }, pieces: 1 },
  ])("$how", ({ body, pieces }) => {
    const model = modelOf({ ...BASE, bodies: { body } });
    expect(expectWhole(buildMesh(model), model.bodies[0]).pieces).toBe(pieces);
  });

  test("on an arm, off its axis, and on a point", () => {
    const model = modelOf({
      ...BASE,
      arms: { arm: arm() },
      points: { eye: [0, 0, 0] },
      links: { eye: { point: "eye", plate: "base", footprint: 6 } },
      bodies: {
        motor: { mass: 30, at: [66, 63, 9], size: [28, 28, 18], on: "arm" },
        lamp: { mass: 4, at: [50, 35, -6], size: [6, 6, 6], on: "arm" },
        lens: { mass: 7, at: [5, 1, 20], inertia: { xx: 90, yy: 80, zz: 70 }, on: "eye" },
      },
    });
    const mesh = buildMesh(model, 4e-3);
    for (const body of model.bodies) expectWhole(mesh, body);
  });
});

describe("how a body is held", () => {
  const frame = (body: object) => ({
    plates: { base: plateAt(0), top: plateAt(25) },
    standoffs: { post: post([30, 12], { copies: "all four corners" }) },
    bodies: { pack: { mass: 60, at: [0, 0, 8], size: [40, 30, 14], on: "base", ...body } },
  });
  const spectrum = (body: object, modes = 8) => frequencies(frame(body), { modes });
  const bare = () => frequencies({ ...frame({}), bodies: {} }, { modes: 8 });

  test("spread adds mass and hardly any stiffness: no mode rises", () => {
    const [loaded, alone] = [spectrum({ hold: "spread" }), bare()];
    loaded.forEach((f, i) => {
      expect(f, `mode ${i + 1}`).toBeLessThan(1.01 * alone[i]);
    });
    expect(loaded[0]).toBeLessThan(0.9 * alone[0]);
  });

  test("screwed at its corners stiffens the plate under it against spread", () => {
    const [screwed, spread] = [spectrum({}), spectrum({ hold: "spread" })];
    expect(screwed[0]).toBeGreaterThan(spread[0]);
  });

  /** A soft-mounted body on a plate that is held everywhere: the mount alone vibrates. */
  const mounted = (body: object, meshSize: number) =>
    frequencies(
      {
        plates: { base: plateAt(0) },
        supports: {
          bench: {
            plate: "base",
            within: [
              [-50, -50],
              [50, -50],
              [50, 50],
              [-50, 50],
            ],
            fix: "all",
          },
        },
        // The centre of gravity lies in the plate's middle, so that swaying does not rock.
        bodies: { pack: { mass: 1, at: [0, 0, 0], on: "base", hold: "soft", ...body } },
      },
      { modes: 6, meshSize },
    );

  test("a soft mount bounces and sways at the frequencies it was given", () => {
    const inertia = { xx: 1, yy: 1, zz: 1 }; // rocks at kilohertz
    const pack = { inertia, footprint: [32, 24], soft: { bounce: 80, sway: 50 } };
    const found = mounted(pack, 5e-3);
    [50, 50, 80].forEach((f, i) => {
      expect(found[i]).toBeCloseTo(f, 6);
    });
  });

  test.each([8, 5, 2.5])("a soft mount rocks as an even pad does, cells of %s mm", (size) => {
    // kz l^2/12 about each axis: f = bounce l/sqrt(12 I/m), and sway (lx^2 + ly^2) in yaw.
    const inertia = { xx: 500, yy: 600, zz: 900 }; // g mm^2 for 1 g
    const pack = { inertia, footprint: [32, 24], soft: { bounce: 300, sway: 200 } };
    const found = mounted(pack, size * 1e-3);
    const rocking = [
      (300 * 24) / Math.sqrt(12 * 500),
      (300 * 32) / Math.sqrt(12 * 600),
      (200 * Math.hypot(32, 24)) / Math.sqrt(12 * 900),
    ];
    const expected = [...rocking, 200, 200, 300].sort((a, b) => a - b);
    expected.forEach((f, i) => {
      expect(Math.abs(found[i] / f - 1), `${found[i]} Hz against ${f} Hz`).toBeLessThan(0.01);
    });
  });

  test("three screws in a row hold a body as firmly as three screws do", () => {
    const screws = [
      [-10, 0],
      [0, 0],
      [10, 0],
    ];
    const [first] = spectrum({ screws }, 2);
    expect(first).toBeGreaterThan(100);
  });
});
