/** Bodies as rigid ones: where their centres of gravity go and how they turn. */

import { rigidMass, shiftInertia } from "../element/rigid-mass.ts";
import type { MassElement, Mesh } from "../mesh/types.ts";
import type { Model } from "../model/types.ts";
import type { SamplePoint } from "./sample-point.ts";

const NAMES = ["x", "y", "z", "turn about x", "turn about y", "turn about z"];
/** A body whose radius of gyration is less is a point, and what is left of its inertia rounding, m. */
const POINT = 1e-6;

/**
 * Six numbers per body: momentum over sqrt(mass), and angular momentum about its centre of gravity over
 * sqrt(inertia) (products of inertia left out of the divisor). A body cut into pieces is taken as the
 * rigid one that has their momentum.
 */
export function bodySamples(model: Model, mesh: Mesh): SamplePoint[] {
  const parts = mesh.parts.flatMap((p, part) => (p.kind === "body" ? [part] : []));
  return model.bodies.flatMap((body, k) =>
    bodyPoints(
      body.name,
      mesh,
      mesh.masses.filter((m) => m.part === parts[k]),
    ),
  );
}

function bodyPoints(name: string, mesh: Mesh, pieces: readonly MassElement[]): SamplePoint[] {
  const mass = pieces.reduce((sum, p) => sum + p.mass, 0);
  if (!(mass > 0)) return [];
  const place = (p: MassElement, i: number) => mesh.xyz[3 * p.node + i];
  const cg = [0, 1, 2].map(
    (i) => pieces.reduce((sum, p) => sum + p.mass * (place(p, i) + p.offset[i]), 0) / mass,
  );
  const dofs = Int32Array.from(
    pieces.flatMap((p) => [0, 1, 2, 3, 4, 5].map((d) => 6 * p.node + d)),
  );
  const rows = Array.from({ length: 6 }, () => new Float64Array(dofs.length));
  const inertia = [0, 0, 0];
  pieces.forEach((p, k) => {
    const M = rigidMass(p.mass, p.inertia, p.offset);
    const r = [0, 1, 2].map((i) => place(p, i) - cg[i]);
    for (let d = 0; d < 6; d++) {
      const P = [0, 1, 2].map((i) => M[6 * i + d]);
      // L about the centre of gravity = L about the node + r x P
      const L = [0, 1, 2].map((i) => {
        const [j, l] = [(i + 1) % 3, (i + 2) % 3];
        return M[6 * (i + 3) + d] + r[j] * P[l] - r[l] * P[j];
      });
      for (let i = 0; i < 3; i++) {
        rows[i][6 * k + d] = P[i];
        rows[i + 3][6 * k + d] = L[i];
      }
    }
    const about = shiftInertia(
      p.inertia,
      p.mass,
      r.map((v, i) => v + p.offset[i]),
    );
    inertia[0] += about.xx;
    inertia[1] += about.yy;
    inertia[2] += about.zz;
  });
  const own = inertia.map((I) => (I > mass * POINT * POINT ? I : 0));
  const divisors = [mass, mass, mass, ...own];
  return rows.flatMap((row, i) => {
    if (!(divisors[i] > 0)) return [];
    const coefs = row.map((v) => v / Math.sqrt(divisors[i]));
    return [{ name: `${name}, ${NAMES[i]}`, dofs, coefs }];
  });
}
