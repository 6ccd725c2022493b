/** Frames of members that are the same after a mirroring or a turn: copies of a random part, joined. */

import type { Mesh } from "../../../src/mesh/types.ts";
import type { Member, MemberFrame } from "./member-frames.ts";
import { movedFrame, turnedFrame } from "./member-moves.ts";
import { mapValues } from "./runs.ts";
import { apply, determinant, minus, type Orthogonal, type Vec3 } from "./space.ts";

const SECTIONS = ["points", "members", "links", "bodies", "springs", "supports"] as const;

/** The frame with "copy number" behind every name of its own. */
function named(frame: MemberFrame, copy: number): MemberFrame {
  const rename = (name: string) => (name === "ground" ? name : `${name} #${copy}`);
  const pair = ([a, b]: readonly [string, string]) => [rename(a), rename(b)] as const;
  const own = {
    ...frame,
    members: mapValues(frame.members, (m) => ({ ...m, from: rename(m.from), to: rename(m.to) })),
    links: mapValues(frame.links, (l) => ({ ...l, points: pair(l.points) })),
    bodies: mapValues(frame.bodies, (b) => ({ ...b, on: rename(b.on) })),
    springs: mapValues(frame.springs, (s) => ({ ...s, between: pair(s.between) })),
    supports: mapValues(frame.supports, (s) => ({ ...s, point: rename(s.point) })),
  };
  const renamed = SECTIONS.map((section) => [
    section,
    Object.fromEntries(Object.entries(own[section]).map(([name, part]) => [rename(name), part])),
  ]);
  return { ...own, ...Object.fromEntries(renamed) };
}

/** All parts of several frames of the same materials together. */
function together(frames: readonly MemberFrame[]): MemberFrame {
  const all = SECTIONS.map((section) => [
    section,
    Object.assign({}, ...frames.map((f) => f[section])),
  ]);
  return { ...frames[0], ...Object.fromEntries(all) };
}

const BRIDGE = { section: { shape: "rod", diameter: 7 }, material: "m0", elements: 2 } as const;

/**
 * The part and its mirror image in y = 0, which it lies clear of, joined by a member between the two
 * copies of its first point.
 */
export function mirrored(part: MemberFrame, mirror: Orthogonal): MemberFrame {
  const clear = movedFrame(part, [0, 150, 0]);
  const both = together([named(clear, 0), named(turnedFrame(clear, mirror), 1)]);
  const bridge: Member = { ...BRIDGE, from: "p0 #0", to: "p0 #1", up: [0, 0, 1] };
  return { ...both, members: { ...both.members, bridge } };
}

/** Four copies of the part, each turned by a quarter about z, on members from a hub in the middle. */
export function turnedFourTimes(part: MemberFrame, quarter: Orthogonal): MemberFrame {
  const copies = [movedFrame(part, [170, 20, 10])];
  for (let i = 1; i < 4; i++) copies.push(turnedFrame(copies[i - 1], quarter));
  const all = together(copies.map(named));
  const spokes = Object.fromEntries(
    copies.map((_, i): [string, Member] => [
      `spoke #${i}`,
      { ...BRIDGE, from: "hub", to: `p0 #${i}`, up: [0, 0, 1] },
    ]),
  );
  return {
    ...all,
    points: { ...all.points, hub: [0, 0, -15] },
    members: { ...all.members, ...spokes },
    bodies: { ...all.bodies, hub: { mass: 30, at: [0, 0, -15], on: "hub" } },
  };
}

/** Nodes of each member from its first to its last, by the member's name. */
function memberNodes(mesh: Mesh): ReadonlyMap<string, readonly number[]> {
  const nodes = new Map<string, number[]>();
  for (const {
    part,
    nodes: [a, b],
  } of mesh.beams) {
    const name = mesh.parts[part].name;
    nodes.set(name, [...(nodes.get(name) ?? [a]), b]);
  }
  return nodes;
}

/**
 * Where the symmetry takes every node of a point or a member; -1 for others, such as the far end of a
 * spring. Copies have their nodes in the same order; the bridge between two mirror images is turned
 * round.
 */
function imagesOfNodes(mesh: Mesh, Q: Orthogonal, next: (name: string) => string): Int32Array {
  const image = new Int32Array(mesh.xyz.length / 3).fill(-1);
  for (const [name, node] of mesh.pointNodes) image[node] = mesh.pointNodes.get(next(name)) ?? -1;
  const members = memberNodes(mesh);
  for (const [name, nodes] of members) {
    const target = members.get(next(name)) ?? [];
    const there = name === "bridge" ? target.toReversed() : target;
    nodes.forEach((node, i) => {
      image[node] = there[i];
    });
  }
  image.forEach((to, from) => {
    if (to < 0) return;
    const gap = minus(apply(Q, nodePlace(mesh, from)), nodePlace(mesh, to));
    if (!(Math.hypot(...gap) < 1e-12)) throw new Error(`node ${from} has no image`);
  });
  return image;
}

function nodePlace(mesh: Mesh, node: number): Vec3 {
  return [mesh.xyz[3 * node], mesh.xyz[3 * node + 1], mesh.xyz[3 * node + 2]];
}

/** The name of a part's next copy, of `count`. */
export function nextCopy(count: number): (name: string) => string {
  return (name) => name.replace(/#(\d)$/, (_, copy) => `#${(Number(copy) + 1) % count}`);
}

/**
 * A motion of the mesh as the symmetry shows it: displacements turned by Q at the image of each node,
 * rotations too, which a mirror moreover turns round.
 */
export function imageOf(
  mesh: Mesh,
  Q: Orthogonal,
  next: (name: string) => string,
): (u: Float64Array) => Float64Array {
  const to = imagesOfNodes(mesh, Q, next);
  const handed = Math.sign(determinant(Q));
  return (u) => {
    const out = new Float64Array(u.length);
    to.forEach((image, node) => {
      if (image < 0) return;
      const at = 6 * node;
      const moved = apply(Q, [u[at], u[at + 1], u[at + 2]]);
      const turned = apply(Q, [u[at + 3], u[at + 4], u[at + 5]]);
      out.set(moved, 6 * image);
      out.set(
        turned.map((v) => handed * v),
        6 * image + 3,
      );
    });
    return out;
  };
}
