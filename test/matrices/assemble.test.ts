import { describe, expect, test } from "vitest";
import { symmetricEigen } from "../../src/linalg/dense.ts";
import { multiply } from "../../src/linalg/product.ts";
import { toDense } from "../../src/linalg/sparse.ts";
import { assemble, type System } from "../../src/matrices/assemble.ts";
import { expand, restrict } from "../../src/matrices/reduction.ts";
import { rigidMotions } from "../../src/matrices/rigid.ts";
import { buildMesh } from "../../src/mesh/build.ts";
import type { Mesh } from "../../src/mesh/types.ts";
import { asymmetry, largest } from "../element/dense.ts";
import { arm, modelOf, plateAt, post } from "../model/frame.ts";

/** Every kind of element and tie on a coarse mesh. */
const MODEL = modelOf({
  plates: {
    base: plateAt(0, { holes: [{ at: [3, -4], diameter: 9 }] }),
    top: plateAt(20, { material: "carbon-plate-quasi-isotropic", warp: 20 }),
  },
  arms: {
    cut: arm({ motorPad: 22 }),
    bolted: arm({
      root: [-30, 15],
      tip: [-66, 63],
      z: 2.5,
      thickness: 3,
      joint: { kind: "bolted", plates: ["base"], inserted: 14 },
    }),
  },
  standoffs: { post: post([30, 12], { copies: "all four corners" }) },
  points: { eye: [-20, 8, 0], ear: [-20, 8, 12] },
  members: {
    strut: {
      from: "eye",
      to: "ear",
      section: { shape: "hexagon", acrossFlats: 5 },
      material: "nylon",
    },
  },
  links: { eye: { point: "eye", plate: "base", footprint: 6 } },
  springs: { ear: { between: ["ear", "eye"], x: 5 } },
  bodies: {
    pack: {
      mass: 50,
      at: [0, 0, 30],
      size: [40, 25, 16],
      on: "top",
      hold: "soft",
      soft: { bounce: 70 },
    },
    lump: { mass: 5, at: [-20, 8, 15], inertia: { xx: 90, yy: 80, zz: 70, xy: 10 }, on: "ear" },
  },
});
const mesh = buildMesh(MODEL, 20e-3);
const system = assemble(mesh, MODEL);

/** The sum of all element matrices on all unknowns of the mesh, row-major. */
function whole(of: "K" | "M"): Float64Array {
  const n = 2 * mesh.xyz.length;
  const A = new Float64Array(n * n);
  for (const e of system.elements) {
    const part = e[of];
    if (!part) continue;
    const dofs = e.nodes.flatMap((node) => [0, 1, 2, 3, 4, 5].map((d) => 6 * node + d));
    dofs.forEach((i, r) => {
      dofs.forEach((j, c) => {
        A[n * i + j] += part[dofs.length * r + c];
      });
    });
  }
  return A;
}

/** T'A T, column by column. */
function reduced(A: Float64Array, { reduction: t }: System): Float64Array {
  const out = new Float64Array(t.n * t.n);
  const T = Array.from({ length: t.n }, (_, j) =>
    expand(
      t,
      Array.from({ length: t.n }, (_, k) => +(k === j)),
    ),
  );
  for (let j = 0; j < t.n; j++) {
    const AT = new Float64Array(t.full);
    for (let c = 0; c < t.full; c++) {
      if (T[j][c] === 0) continue;
      for (let r = 0; r < t.full; r++) AT[r] += A[t.full * r + c] * T[j][c];
    }
    for (let i = 0; i < t.n; i++) {
      let sum = 0;
      for (let r = 0; r < t.full; r++) if (T[i][r] !== 0) sum += T[i][r] * AT[r];
      out[t.n * i + j] = sum;
    }
  }
  return out;
}

/** ||K R|| against the largest entry of K times the motion. */
function expectNoForce(of: Mesh, { K, reduction }: System) {
  const scale = largest(K.values);
  for (const R of rigidMotions(of, [0, 0, 0])) {
    const q = restrict(reduction, R);
    const f = new Float64Array(q.length);
    multiply(f, K, q);
    // Some ten entries per row cancel; radians and metres of order 0.1.
    expect(largest(f) / (scale * largest(q))).toBeLessThan(1e-12);
  }
}

describe("assembly", () => {
  test("K = T'(sum of elements)T and M likewise, entry by entry", () => {
    for (const of of ["K", "M"] as const) {
      const expected = reduced(whole(of), system);
      const found = toDense(system[of]);
      const scale = largest(expected);
      expect(asymmetry(expected, system.reduction.n) / scale).toBeLessThan(1e-14);
      let worst = 0;
      for (let i = 0; i < found.length; i++) {
        worst = Math.max(worst, Math.abs(found[i] - expected[i]));
      }
      expect(worst / scale).toBeLessThan(1e-14);
    }
  });

  test("K and M share one pattern; M is positive semi-definite", () => {
    expect(system.K.pattern).toBe(system.M.pattern);
    const coarse = assemble(buildMesh(MODEL, 40e-3), MODEL); // 200 unknowns, for the dense solver
    const { n } = coarse.reduction;
    const m = symmetricEigen(toDense(coarse.M), n).values; // ascending
    expect(m[0] / m[n - 1]).toBeGreaterThan(-1e-15);
  });

  test("every element names the part that owns its energy", () => {
    for (const e of system.elements) expect(mesh.parts[e.part]).toBeDefined();
    const parts = new Set(system.elements.map((e) => mesh.parts[e.part].kind));
    for (const kind of ["plate", "arm", "standoff", "member", "spring", "mount", "body"] as const) {
      expect(parts).toContain(kind);
    }
  });
});

describe("rigid-body motions", () => {
  test("are kept by the ties: expanded from the unknowns that remain they are themselves", () => {
    for (const R of rigidMotions(mesh, [0.02, -0.01, 0.03])) {
      const back = expand(system.reduction, restrict(system.reduction, R));
      const gap = back.reduce((w, v, i) => Math.max(w, Math.abs(v - R[i])), 0);
      // Metres and radians of order 1 through chains of ties.
      expect(gap).toBeLessThan(1e-12);
    }
  });

  test("carry no force in the small frame, on a coarse and a finer mesh", () => {
    expectNoForce(mesh, system);
    const finer = buildMesh(MODEL, 6e-3);
    expectNoForce(finer, assemble(finer, MODEL));
  });
});
