import { describe, expect, test } from "vitest";
import { project } from "../../src/report/client/camera.ts";
import { pick } from "../../src/report/client/picking.ts";
import { scaleColours } from "../../src/report/client/picture.ts";
import { newRaster, rasterise, shadeTable } from "../../src/report/client/raster.ts";
import { readScene } from "../../src/report/client/scene.ts";
import { edgesOf, inSight } from "../../src/report/client/strokes.ts";
import { paintedAreas, svgPicture } from "../../src/report/client/svg-picture.ts";
import type { Camera, Paint, Projected, Rgb } from "../../src/report/client/viewer-types.ts";
import { motionScale } from "../../src/report/palette.ts";
import { unpackIntegers } from "../../src/report/shape-codec.ts";
import { DRAWN, moved } from "./drawn.ts";

const scene = readScene(DRAWN, unpackIntegers);
const [WIDTH, HEIGHT] = [240, 160];
const ABOVE: Camera = { yaw: Math.PI, pitch: Math.PI / 2, zoom: 1 };
const FRONT: Camera = { yaw: 0, pitch: 0, zoom: 1 };
const CORNER: Camera = { yaw: 2.45, pitch: 0.6, zoom: 1 };
const COLOURS: readonly Rgb[] = [
  [200, 0, 0],
  [0, 200, 0],
  [0, 0, 200],
];
const paint = (opacity = [1, 1, 1]): Paint => ({
  colours: COLOURS,
  table: shadeTable(COLOURS, 0.6),
  dimmest: 0.6,
  opacity,
  ground: [255, 255, 255],
});
const see = (camera: Camera, room = 2) => project(scene, camera, WIDTH, HEIGHT, room);
const drawn = (seen: Projected, how: Paint) => {
  const raster = newRaster(WIDTH, HEIGHT);
  rasterise(raster, scene, seen, how);
  return raster;
};
/** Which of the three parts has coloured a point; -1 for the ground. */
const partAt = (pixel: number) => {
  const rgb = [pixel & 255, (pixel >> 8) & 255, (pixel >> 16) & 255];
  return rgb.every((v) => v === 255) ? -1 : rgb.indexOf(Math.max(...rgb));
};

describe("projection", () => {
  test("from above has the nose up and the left on the left, in true lengths", () => {
    const { at, scale } = see(ABOVE);
    const [o, x, y] = [at(0, 0, 0), at(10, 0, 0), at(0, 10, 0)];
    expect([x[0] - o[0], x[1] - o[1]]).toEqual([expect.closeTo(0, 9), expect.closeTo(-10 * scale)]);
    expect([y[0] - o[0], y[1] - o[1]]).toEqual([expect.closeTo(-10 * scale), expect.closeTo(0, 9)]);
    expect(at(0, 0, 5)[2] - o[2]).toBeCloseTo(5, 9);
  });

  test("from the front has the left on the right, heights upwards, the nose nearest", () => {
    const { at, scale } = see(FRONT);
    const o = at(0, 0, 0);
    expect(at(0, 3, 0)[0] - o[0]).toBeCloseTo(3 * scale, 9);
    expect(at(0, 0, 3)[1] - o[1]).toBeCloseTo(-3 * scale, 9);
    expect(at(3, 0, 0)[2] - o[2]).toBeCloseTo(3, 9);
  });

  test("keeps all of the frame in the picture, and its size while it is turned round", () => {
    for (const pitch of [-1.5, -0.4, 0, 0.6, 1.2, Math.PI / 2]) {
      const scales = [0, 0.7, 2.45, 4].map((yaw) => {
        const { x, y, scale } = see({ yaw, pitch, zoom: 1 }, 0);
        expect(Math.min(...x)).toBeGreaterThanOrEqual(-1e-9);
        expect(Math.max(...x)).toBeLessThanOrEqual(WIDTH + 1e-9);
        expect(Math.min(...y)).toBeGreaterThanOrEqual(-1e-9);
        expect(Math.max(...y)).toBeLessThanOrEqual(HEIGHT + 1e-9);
        return scale;
      });
      expect(new Set(scales).size).toBe(1);
    }
  });

  test("draws the motion in its size", () => {
    const { move } = moved(scene, () => [0, 0, 1, 0, 0, 0]);
    const rest = see(FRONT);
    const up = project(scene, FRONT, WIDTH, HEIGHT, 2, move, 4);
    expect(rest.y[0] - up.y[0]).toBeCloseTo(4 * rest.scale, 9);
  });
});

describe("surfaces", () => {
  test.each([
    ["a corner", CORNER],
    ["above", { ...ABOVE, pitch: 1.5 }],
    ["below", { ...CORNER, pitch: -0.5 }],
  ])("from %s every point shows the nearest part, as a ray finds it", (_, camera) => {
    const seen = see(camera);
    const raster = drawn(seen, paint());
    let hits = 0;
    for (let y = 1; y < HEIGHT; y += 7) {
      for (let x = 1; x < WIDTH; x += 7) {
        const found = pick(scene, seen, x + 0.5, y + 0.5, () => true);
        const i = y * WIDTH + x;
        expect(partAt(raster.pixels[i])).toBe(found?.part ?? -1);
        if (found === undefined) continue;
        hits++;
        expect(raster.depth[i]).toBeCloseTo(found.depth, 3);
      }
    }
    expect(hits).toBeGreaterThan(100);
  });

  test("that one can see through tint what is behind and hide nothing", () => {
    const seen = see(ABOVE);
    const [x, y] = seen.at(0, 0, 12);
    const i = Math.floor(y) * WIDTH + Math.floor(x);
    const [solid, through, without] = [
      [1, 1, 1],
      [1, 0.5, 1],
      [1, 0, 1],
    ].map((opacity) => drawn(seen, paint(opacity)).pixels[i]);
    const red = (p: number) => p & 255;
    const green = (p: number) => (p >> 8) & 255;
    expect([red(solid), green(without)]).toEqual([0, 0]);
    expect(red(through)).toBeCloseTo(red(without) / 2, -1);
    expect(green(through)).toBeCloseTo(green(solid) / 2, -1);
  });

  test("that look away from the light are darker", () => {
    const seen = see({ yaw: 0.3, pitch: 0.7, zoom: 1 });
    const { pixels } = drawn(seen, paint([0, 1, 0]));
    const greens = new Set([...pixels].filter((p) => partAt(p) === 1).map((p) => (p >> 8) & 255));
    expect(greens.size).toBe(3);
  });

  test("take their colours from values between the corners", () => {
    const colours = scaleColours(motionScale(), 10);
    const values = Float64Array.from(
      scene.rest.filter((_, i) => i % 3 === 0),
      (x) => (x + 20) / 40,
    );
    const seen = see({ ...ABOVE, zoom: 0.98 });
    const how = { ...paint([1, 0, 0]), colours, values, table: shadeTable(colours, 1.05) };
    const { pixels } = drawn(seen, how);
    const at = (x: number) => {
      const [px, py] = seen.at(x, 8, 1);
      return pixels[Math.floor(py) * WIDTH + Math.floor(px)];
    };
    // Yellow has more red than blue, deep blue less; a tenth of the plate is a band.
    const blueness = (p: number) => ((p >> 16) & 255) - (p & 255);
    const levels = [-18, -10, -2, 6, 14, 18].map((x) => blueness(at(x)));
    expect(levels).toEqual([...levels].sort((a, b) => b - a));
    expect(levels[0]).toBeGreaterThan(0);
    expect(levels[5]).toBeLessThan(0);
  });
});

describe("lines", () => {
  test("behind a surface are left out, and a line half behind is cut where it comes out", () => {
    const seen = see(ABOVE);
    const raster = drawn(seen, paint([1, 0, 0]));
    const line = (x0: number, x1: number, z: number) => {
      const ends = [seen.at(x0, 0, z), seen.at(x1, 0, z)];
      const [x, y, depth] = [0, 1, 2].map((k) => Float64Array.from(ends, (e) => e[k]));
      return inSight(raster, { x, y, depth }, [0, 1], 0);
    };
    expect(line(-15, 15, -5)).toEqual([]);
    expect(line(-15, 15, 5).length).toBe(4);
    const [, y0, , y1] = line(0, 40, -5);
    expect(Math.abs(y0 - seen.at(20, 0, 0)[1])).toBeLessThan(4);
    expect(y1).toBeCloseTo(seen.at(40, 0, 0)[1], 6);
  });

  test("of a box between faces that look away are none, of a post only the contour", () => {
    const seen = see(CORNER);
    expect(edgesOf(scene, seen, (p) => p === 1).length / 2).toBe(9);
    // Its two rims (eight edges each, of the lower one those in front) and two sides.
    expect(edgesOf(scene, seen, (p) => p === 2).length / 2).toBe(8 + 4 + 2);
  });
});

describe("pointing", () => {
  test("finds the part and the place on it, and nothing beside the frame", () => {
    const seen = see(ABOVE);
    const [x, y] = seen.at(-10, 6, 1);
    const found = pick(scene, seen, x, y, () => true);
    expect(found?.part).toBe(0);
    const place = [0, 1, 2].map((k) =>
      (found?.weights ?? []).reduce(
        (sum, w, c) =>
          sum + w * scene.rest[3 * scene.triangles[3 * (found?.triangle ?? 0) + c] + k],
        0,
      ),
    );
    expect(place).toEqual([-10, 6, 1].map((v) => expect.closeTo(v, 9)));
    expect(
      pick(scene, seen, ...(seen.at(0, 0, 0).slice(0, 2) as [number, number]), () => true)?.part,
    ).toBe(1);
    expect(
      pick(scene, seen, ...(seen.at(0, 0, 0).slice(0, 2) as [number, number]), (p) => p !== 1)
        ?.part,
    ).toBe(0);
    expect(pick(scene, seen, 1, 1, () => true)).toBeUndefined();
  });
});

describe("the picture as SVG", () => {
  const seen = see(CORNER);
  const raster = drawn(seen, paint());
  const covered = (x: number, y: number, depth: number) =>
    raster.depth[Math.floor(y) * WIDTH + Math.floor(x)] > depth + 1;

  test("has areas from the furthest to the nearest, without those that are hidden", () => {
    const all = paintedAreas(scene, seen, paint(), () => false);
    const areas = paintedAreas(scene, seen, paint(), covered);
    expect(areas.length).toBeLessThan(all.length);
    expect(areas.map((a) => a.depth)).toEqual(areas.map((a) => a.depth).sort((a, b) => a - b));
    // Painted one after the other, the last area over a point is of the part a ray meets first.
    const last = (x: number, y: number) =>
      areas.findLast(({ points: [ax, ay, bx, by, cx, cy] }) => {
        const side = (px: number, py: number, qx: number, qy: number) =>
          (px - x) * (qy - y) - (qx - x) * (py - y) <= 0;
        return side(ax, ay, bx, by) && side(bx, by, cx, cy) && side(cx, cy, ax, ay);
      });
    let wrong = 0;
    let looked = 0;
    for (let y = 3; y < HEIGHT; y += 9) {
      for (let x = 3; x < WIDTH; x += 9) {
        const found = pick(scene, seen, x, y, () => true);
        if (found === undefined) continue;
        looked++;
        const fill = Number.parseInt(last(x, y)?.fill.slice(1) ?? "ffffff", 16);
        const [r, g, b] = [fill >> 16, (fill >> 8) & 255, fill & 255];
        if (partAt(r | (g << 8) | (b << 16)) !== found.part) wrong++;
      }
    }
    expect(looked).toBeGreaterThan(80);
    expect(wrong).toBeLessThanOrEqual(looked * 0.03);
  });

  test("is one closed document with its title as text", () => {
    const overlay = {
      strokes: [{ pieces: [0, 0, 10, 5], colour: "#123456", width: 1, dash: [3, 3] }],
      badges: [{ points: [1, 1, 2, 2, 3, 1], fill: "#00ff00", edge: "#ffffff" }],
      letters: [{ x: 5, y: 5, text: "fr<nt", colour: "#000000", size: 12 }],
    };
    const areas = paintedAreas(scene, seen, paint([1, 0.3, 1]), covered);
    const svg = svgPicture(WIDTH, HEIGHT, "#ffffff", areas, overlay, `a "<b>" & c`, "urn:svg");
    expect(svg).toContain("<title>a &#34;&#60;b&#62;&#34; &#38; c</title>");
    expect(svg).toContain("fr&#60;nt");
    expect(svg.match(/<path /g)?.length).toBe(areas.length + 2);
    expect(svg).toContain('fill-opacity="0.3"');
    expect(svg).toContain('d="M0 0L10 5"');
    expect(svg).not.toMatch(/NaN|undefined/);
    expect(svg.endsWith("</svg>")).toBe(true);
  });
});
