/** Surfaces with a depth for every point of the picture. Runs in the page: every function stands alone. */

import type { Paint, Projected, Raster, Rgb, Scene } from "./viewer-types.ts";

/** An empty picture, in memory of its own or in that of a canvas' image. */
export function newRaster(width: number, height: number, memory?: ArrayBuffer): Raster {
  const count = width * height;
  const pixels = memory === undefined ? new Uint32Array(count) : new Uint32Array(memory);
  return { width, height, pixels, depth: new Float32Array(count) };
}

/**
 * Colours under 25 lights from the dimmest to the brightest, as points of a raster have them.
 *
 * @param dimmest what is left of a colour where a surface looks away from the light
 */
export function shadeTable(colours: readonly Rgb[], dimmest: number): Uint32Array {
  const table = new Uint32Array(25 * colours.length);
  for (let level = 0; level < 25; level++) {
    const light = dimmest + (1.05 - dimmest) * (level / 24);
    colours.forEach((c, i) => {
      const [r, g, b] = c.map((v) => Math.min(255, Math.round(light * v)));
      table[level * colours.length + i] = 0xff000000 | (b << 16) | (g << 8) | r;
    });
  }
  return table;
}

/**
 * Draws all triangles that face the eye: first those that cover, nearer ones over further ones point by
 * point, then those one can see through, from the furthest part to the nearest. What they show is shaded
 * by how they face the eye, so that tops, sides and slopes differ.
 *
 * @param ratio points per pixel of the page, for stripes
 */
export function rasterise(
  raster: Raster,
  scene: Scene,
  seen: Projected,
  paint: Paint,
  ratio = 1,
): void {
  const { width, height, pixels, depth } = raster;
  const { x, y, depth: z, scale } = seen;
  const { triangles, partOf } = scene;
  const { values, colours, opacity, pattern, table } = paint;
  const [red, green, blue] = paint.ground;
  pixels.fill((0xff000000 | (blue << 16) | (green << 8) | red) >>> 0);
  depth.fill(Number.NEGATIVE_INFINITY);
  const last = colours.length - 1;
  const far: { readonly part: number; sum: number; readonly list: number[] }[] = [];

  const fill = (t: number) => {
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    const [ax, ay, bx, by, cx, cy] = [x[a], y[a], x[b], y[b], x[c], y[c]];
    const twice = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
    // Pixels count downwards, so what turns anticlockwise in space turns the other way here.
    if (twice > -1e-9) return;
    const part = partOf[t];
    const covers = opacity[part] >= 1;
    const dzx = ((z[b] - z[a]) * (cy - ay) - (z[c] - z[a]) * (by - ay)) / twice;
    const dzy = ((z[c] - z[a]) * (bx - ax) - (z[b] - z[a]) * (cx - ax)) / twice;
    // Towards the eye 1, to the right and up as the surface leans.
    const [nx, ny] = [-dzx * scale, dzy * scale];
    const facing = (-0.35 * nx + 0.55 * ny + 0.76) / Math.hypot(nx, ny, 1);
    const row0 = Math.round(24 * Math.max(0, Math.min(1, facing))) * colours.length;
    const [va, vb, vc] = values
      ? [values[a] * last, values[b] * last, values[c] * last]
      : [part, part, part];
    const dvx = ((vb - va) * (cy - ay) - (vc - va) * (by - ay)) / twice;
    const dvy = ((vc - va) * (bx - ax) - (vb - va) * (cx - ax)) / twice;
    const kind = pattern?.[part] ?? 0;
    const share = opacity[part];
    const top = Math.max(0, Math.ceil(Math.min(ay, by, cy) - 0.5));
    const bottom = Math.min(height - 1, Math.ceil(Math.max(ay, by, cy) - 0.5) - 1);
    for (let row = top; row <= bottom; row++) {
      const py = row + 0.5;
      let left = Number.POSITIVE_INFINITY;
      let right = Number.NEGATIVE_INFINITY;
      if (ay <= py !== by <= py) {
        const at = ax + ((py - ay) / (by - ay)) * (bx - ax);
        left = Math.min(left, at);
        right = Math.max(right, at);
      }
      if (by <= py !== cy <= py) {
        const at = bx + ((py - by) / (cy - by)) * (cx - bx);
        left = Math.min(left, at);
        right = Math.max(right, at);
      }
      if (cy <= py !== ay <= py) {
        const at = cx + ((py - cy) / (ay - cy)) * (ax - cx);
        left = Math.min(left, at);
        right = Math.max(right, at);
      }
      const from = Math.max(0, Math.ceil(left - 0.5));
      const to = Math.min(width - 1, Math.ceil(right - 0.5) - 1);
      const px = from + 0.5;
      let depthHere = z[a] + dzx * (px - ax) + dzy * (py - ay);
      let value = va + dvx * (px - ax) + dvy * (py - ay);
      let i = row * width + from;
      for (let col = from; col <= to; col++, i++, depthHere += dzx, value += dvx) {
        if (depthHere <= depth[i]) continue;
        const step = value < 0 ? 0 : value > last ? last : (value + 0.5) | 0;
        let colour = table[row0 + step];
        if (kind === 1 && (col + row) % (7 * ratio) < 2 * ratio)
          colour = ((colour >>> 1) & 0x7f7f7f) + ((colour >>> 2) & 0x3f3f3f);
        if (covers) {
          depth[i] = depthHere;
          pixels[i] = colour | 0xff000000;
          continue;
        }
        const below = pixels[i];
        const mixed = (shift: number) => {
          const under = (below >>> shift) & 255;
          return (under + share * (((colour >>> shift) & 255) - under)) << shift;
        };
        pixels[i] = 0xff000000 | mixed(16) | mixed(8) | mixed(0);
      }
    }
  };

  for (let t = 0; t < partOf.length; t++) {
    const part = partOf[t];
    if (opacity[part] >= 1) fill(t);
    else if (opacity[part] > 0) {
      let group = far.find((g) => g.part === part);
      if (group === undefined) {
        group = { part, sum: 0, list: [] };
        far.push(group);
      }
      group.list.push(t);
      group.sum += z[triangles[3 * t]] + z[triangles[3 * t + 1]] + z[triangles[3 * t + 2]];
    }
  }
  far.sort((p, q) => p.sum / p.list.length - q.sum / q.list.length);
  for (const { list } of far) for (const t of list) fill(t);
}
