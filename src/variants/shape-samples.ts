/**
 * How a frame's modes move, read at places that have names: those of a variant with another mesh, or of
 * another frame with the same parts, can be laid beside them.
 *
 * Every number is the motion of a part times the square root of the mass it stands for, so the product of
 * two modes is nearly phi_i' M phi_j: different modes come out nearly orthogonal whatever moves most.
 */

import type { Mesh } from "../mesh/types.ts";
import { contains, sumMoments } from "../model/polygon.ts";
import type { Model } from "../model/types.ts";
import { bodySamples } from "./body-samples.ts";
import type { SamplePoint } from "./sample-point.ts";
import type { ShapeSamples } from "./types.ts";

/** A place with the mass it stands for. */
interface Place {
  readonly name: string;
  readonly mass: number;
  readonly nodes: readonly number[];
  /** of the nodes, summing to 1 */
  readonly weights: readonly number[];
  /** of a beam: direction of its axis, and the polar inertia it stands for, kg m^2 */
  readonly twist?: { readonly axis: readonly number[]; readonly inertia: number };
}

/** Places on a plate, along x and y of the box around it: the middles of equal fields. */
const PLATE_ALONG = 5;
const PLATE_ACROSS = 3;
/** Places on arms and members, as fractions of the length. */
const ARM_PLACES = [
  [0, "root"],
  [0.25, "1/4"],
  [0.5, "1/2"],
  [0.75, "3/4"],
  [1, "tip"],
] as const;
/** A member may be all there is of a structure, so more of its bends are told apart. */
const MEMBER_PLACES = Array.from({ length: 9 }, (_, i) => {
  const where = i === 0 ? "start" : i === 8 ? "end" : `${i}/8`;
  return [i / 8, where] as const;
});

const DIRECTIONS = ["x", "y", "z"] as const;

/**
 * The places of a frame's parts at which its modes are compared, in the order of the file: plates, arms,
 * members, bodies. Places of no mass are left out. The same frame on another mesh gives the same names.
 */
export function samplePoints(model: Model, mesh: Mesh): SamplePoint[] {
  const places = [...platePlaces(model, mesh), ...chainPlaces(model, mesh)];
  return [
    ...places
      .filter((p) => p.mass > 0)
      .flatMap((place) => [...motionsAt(place), ...twistAt(place)]),
    ...bodySamples(model, mesh),
  ];
}

function motionsAt({ name, mass, nodes, weights }: Place): SamplePoint[] {
  return DIRECTIONS.map((direction, d) => ({
    name: `${name}, ${direction}`,
    dofs: Int32Array.from(nodes, (n) => 6 * n + d),
    coefs: Float64Array.from(weights, (w) => w * Math.sqrt(mass)),
  }));
}

/** Without it, beams that only twist would not be seen at all. */
function twistAt({ name, nodes, weights, twist }: Place): SamplePoint[] {
  if (!twist) return [];
  const root = Math.sqrt(twist.inertia);
  const terms = nodes.flatMap((n, i) =>
    twist.axis.map((a, d) => ({ dof: 6 * n + 3 + d, coef: weights[i] * a * root })),
  );
  return [
    {
      name: `${name}, twist`,
      dofs: Int32Array.from(terms, (t) => t.dof),
      coefs: Float64Array.from(terms, (t) => t.coef),
    },
  ];
}

/**
 * @param shapes motions of the mesh, 6 per node each
 * @returns mode after mode
 */
export function sampleShapes(
  points: readonly SamplePoint[],
  shapes: readonly Float64Array[],
): ShapeSamples {
  const values = new Float64Array(shapes.length * points.length);
  shapes.forEach((u, k) => {
    points.forEach(({ dofs, coefs }, i) => {
      let sum = 0;
      for (let j = 0; j < dofs.length; j++) sum += coefs[j] * u[dofs[j]];
      values[k * points.length + i] = sum;
    });
  });
  return { names: points.map((p) => p.name), values };
}

function platePlaces(model: Model, mesh: Mesh): Place[] {
  return model.plates.flatMap((plate, number) => {
    const { x0, y0, a, b, nx, ny, nodeAt, covered } = mesh.grids[number];
    const perArea = model.smeared
      .flatMap((s) => s.perPlate)
      .reduce((sum, p) => (p.plate === number ? sum + p.massPerArea : sum), plate.massPerArea);
    const mass = perArea * sumMoments([plate.outline, ...plate.holes]).area;
    const found: Omit<Place, "mass">[] = [];
    for (let i = 0; i < PLATE_ALONG; i++) {
      for (let j = 0; j < PLATE_ACROSS; j++) {
        const u = ((i + 0.5) / PLATE_ALONG) * nx;
        const v = ((j + 0.5) / PLATE_ACROSS) * ny;
        const [x, y] = [x0 + u * a, y0 + v * b];
        if (!contains(plate.outline, x, y) || plate.holes.some((h) => contains(h, x, y))) continue;
        const [ci, cj] = [Math.min(nx - 1, Math.floor(u)), Math.min(ny - 1, Math.floor(v))];
        if (covered[cj * nx + ci].length === 0) continue;
        const [s, t] = [u - ci, v - cj];
        const at = cj * (nx + 1) + ci;
        found.push({
          name: `${plate.name}, ${i + 1} of ${PLATE_ALONG} forward, ${j + 1} of ${PLATE_ACROSS} left`,
          nodes: [at, at + 1, at + nx + 1, at + nx + 2].map((k) => nodeAt[k]),
          weights: [(1 - s) * (1 - t), s * (1 - t), (1 - s) * t, s * t],
        });
      }
    }
    return found.map((place) => ({ ...place, mass: mass / found.length }));
  });
}

/** Arms and members: chains of beams, each place with the mass that lies nearest to it. */
function chainPlaces(model: Model, mesh: Mesh): Place[] {
  const partAt = mesh.parts.map((p, part) => ({ ...p, part }));
  const arms = partAt.filter((p) => p.kind === "arm").map((p) => ({ ...p, places: ARM_PLACES }));
  const members = partAt.filter((p) => p.kind === "member");
  const chains = [...arms, ...members.map((p) => ({ ...p, places: MEMBER_PLACES }))];
  const ends = new Map(mesh.armTips.map((node, i) => [node, model.arms[i].pad?.mass ?? 0]));
  return chains.flatMap(({ name, part, places }) => {
    const beams = mesh.beams.filter((b) => b.part === part);
    const nodes = [beams[0].nodes[0], ...beams.map((b) => b.nodes[1])];
    const s = [0];
    for (const b of beams) s.push(s[s.length - 1] + b.length);
    const length = s[s.length - 1];
    const inserted = mesh.masses.find((m) => m.part === part && !nodes.includes(m.node));
    return places
      .map(([f, where], i): Place => {
        const from = i === 0 ? 0 : (places[i - 1][0] + f) / 2;
        const to = i === places.length - 1 ? 1 : (f + places[i + 1][0]) / 2;
        const near = (of: "rhoA" | "rhoIp") =>
          beams.reduce((sum, b, e) => {
            const share = Math.min(s[e + 1], to * length) - Math.max(s[e], from * length);
            const mean = b.sections.reduce((t, c) => t + c[of], 0) / b.sections.length;
            return share > 0 ? sum + share * mean : sum;
          }, 0);
        const mass = near("rhoA");
        const e = Math.max(
          1,
          s.findIndex((v) => v >= f * length - 1e-9 * length),
        );
        const w = (f * length - s[e - 1]) / (s[e] - s[e - 1]);
        const more = f === 1 ? (ends.get(nodes[nodes.length - 1]) ?? 0) : 0;
        return {
          name: `${name}, ${where}`,
          mass: mass + more,
          nodes: [nodes[e - 1], nodes[e]],
          weights: [1 - w, w],
          twist: { axis: Array.from(beams[0].axes.subarray(0, 3)), inertia: near("rhoIp") },
        };
      })
      .concat(
        inserted
          ? [
              {
                name: `${name}, held end`,
                mass: inserted.mass,
                nodes: [inserted.node],
                weights: [1],
              },
            ]
          : [],
      );
  });
}
