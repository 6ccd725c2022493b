/** From space to the picture, parallel projection. Runs in the page: every function stands alone. */

import type { Camera, Projected, Scene } from "./viewer-types.ts";

/**
 * Every vertex of a scene on a picture of width x height pixels. The scale depends on the frame's size
 * and on how high the eye stands, not on how far round it is, so that a turning frame does not breathe.
 *
 * @param move of the vertices, for a largest displacement of 1; absent: at rest
 * @param size mm: how far the largest displacement is drawn from rest
 * @param room mm kept free around the frame at rest
 */
export function project(
  scene: Scene,
  camera: Camera,
  width: number,
  height: number,
  room: number,
  move?: Float64Array,
  size = 0,
): Projected {
  const { rest, low, high } = scene;
  const [cy, sy] = [Math.cos(camera.yaw), Math.sin(camera.yaw)];
  const [cp, sp] = [Math.cos(camera.pitch), Math.sin(camera.pitch)];
  const middle = low.map((l, k) => (l + high[k]) / 2);
  // What the frame sweeps while it is turned round its vertical axis, seen from this height.
  let [wide, up, down] = [0, 0, 0];
  const { profile } = scene;
  for (let i = 0; i < profile.length; i += 2) {
    const [r, h] = [profile[i] + room, profile[i + 1]];
    wide = Math.max(wide, r);
    up = Math.max(up, Math.abs(sp) * r + cp * (h + room));
    down = Math.max(down, Math.abs(sp) * r - cp * (h - room));
  }
  const scale = camera.zoom * Math.min(width / (2 * wide), height / (up + down));
  const level = height / 2 + (scale * (up - down)) / 2;
  const at = (x: number, y: number, z: number) => {
    const [px, py, pz] = [x - middle[0], y - middle[1], z - middle[2]];
    return [
      width / 2 + scale * (cy * py - sy * px),
      level - scale * (cp * pz - sp * (cy * px + sy * py)),
      cp * (cy * px + sy * py) + sp * pz,
    ] as const;
  };
  const count = rest.length / 3;
  const [x, y, depth] = [0, 1, 2].map(() => new Float64Array(count));
  for (let v = 0; v < count; v++) {
    let [px, py, pz] = [rest[3 * v], rest[3 * v + 1], rest[3 * v + 2]];
    if (move !== undefined) {
      px += size * move[3 * v];
      py += size * move[3 * v + 1];
      pz += size * move[3 * v + 2];
    }
    px -= middle[0];
    py -= middle[1];
    pz -= middle[2];
    const ahead = cy * px + sy * py;
    x[v] = width / 2 + scale * (cy * py - sy * px);
    y[v] = level - scale * (cp * pz - sp * ahead);
    depth[v] = cp * ahead + sp * pz;
  }
  return { width, height, scale, x, y, depth, at };
}
