import type { Material } from "./material.ts";
import type { Ply } from "./ply.ts";

/**
 * The material with all its moduli `factor` times as large: A, B, D and the transverse shear scale with
 * it. Poisson's ratios, densities and loss factors stay. The material itself for a factor of 1.
 */
export function withModuli(material: Material, factor: number): Material {
  if (factor === 1) return material;
  switch (material.kind) {
    case "isotropic":
      return { ...material, E: factor * material.E, G: factor * material.G };
    case "measured":
      return { ...material, ...moduli(material, factor) };
    case "laminate": {
      const plies = material.plies.map((ply) => ({ ...ply, ...moduli(ply, factor) }));
      return { ...material, plies };
    }
  }
}

type Moduli = Pick<Ply, "E1" | "E2" | "G12" | "G13" | "G23">;

function moduli({ E1, E2, G12, G13, G23 }: Moduli, factor: number): Moduli {
  return {
    E1: factor * E1,
    E2: factor * E2,
    G12: factor * G12,
    G13: factor * G13,
    G23: factor * G23,
  };
}
