/** Which constants make a material, and which cannot. */

import { type Finding, InputError } from "../errors.ts";
import type { Isotropic, Material } from "./material.ts";
import type { InPlaneConstants, Ply } from "./ply.ts";
import { MAX_PLIES } from "./stack.ts";

/**
 * How far a given G may lie from E / (2 (1 + nu)). Handbook values are rounded: 71.7, 26.9 GPa and
 * 0.33 are 0.2 % apart.
 */
const G_TOLERANCE = 0.03;

type Fields = Readonly<Record<string, number | undefined>>;

/** Throws InputError with everything that is wrong with the ply; findings lie under `path`. */
export function checkPly(ply: Ply, path = ""): void {
  throwIfAny(plyFindings(ply, path));
}

/** Throws InputError with everything that is wrong with the material; findings under `path`. */
export function checkMaterial(material: Material, path = ""): void {
  throwIfAny(materialFindings(material, path));
}

function materialFindings(material: Material, path: string): readonly Finding[] {
  switch (material.kind) {
    case "isotropic":
      return isotropicFindings(material, path);
    case "measured": {
      const { E1, E2, G12, G13, G23, density, lossFactor } = material;
      return [
        ...notPositive({ E1, E2, G12, G13, G23, density }, path),
        ...negative({ lossFactor }, path),
        ...poissonFindings(material, path),
      ];
    }
    case "laminate": {
      const findings = material.plies.flatMap((ply, i) =>
        plyFindings(ply, at(path, material.plies.length === 1 ? "ply" : `plies[${i}]`)),
      );
      const count = material.angles.length;
      if (count < 1 || count > MAX_PLIES) {
        findings.push({
          path: at(path, "stack"),
          message: `must have 1 to ${MAX_PLIES} plies, but has ${count}.`,
        });
      } else if (material.plies.length !== 1 && material.plies.length !== count) {
        findings.push({
          path: at(path, "plies"),
          message: `must be one ply, or one for each of the ${count} angles of the stack, but ${material.plies.length} are given.`,
        });
      }
      return findings;
    }
  }
}

function isotropicFindings(material: Isotropic, path: string): readonly Finding[] {
  const { E, G, nu, density, lossFactor } = material;
  const findings = [...notPositive({ E, G, density }, path), ...negative({ lossFactor }, path)];
  if (!(nu > -1 && nu < 0.5)) {
    findings.push({
      path: at(path, "nu"),
      message: `must lie between -1 and 0.5 (both excluded), but is ${nu}.`,
    });
  } else if (findings.length === 0) {
    const expected = E / (2 * (1 + nu));
    if (Math.abs(G / expected - 1) > G_TOLERANCE) {
      findings.push({
        path: at(path, "G"),
        message: `does not fit the other two: an isotropic material has G = E/(2(1 + nu)) = ${gpa(expected)}, but G is ${gpa(G)}. Give two of E, G and nu, or an orthotropic material.`,
      });
    }
  }
  return findings;
}

function plyFindings(ply: Ply, path: string): Finding[] {
  const { E1, E2, G12, G13, G23, density, thickness } = ply;
  const { lossFactor, lossFactor1, lossFactor2, lossFactor12 } = ply;
  return [
    ...notPositive({ E1, E2, G12, G13, G23, density, thickness }, path),
    ...negative({ lossFactor, lossFactor1, lossFactor2, lossFactor12 }, path),
    ...poissonFindings(ply, path),
  ];
}

/** The stiffness is positive definite when nu12^2 < E1/E2 (Kaw, section 2.4.4, from memory). */
function poissonFindings({ E1, E2, nu12 }: InPlaneConstants, path: string): readonly Finding[] {
  const bound = Math.sqrt(E1 / E2);
  if (Number.isNaN(bound) || Math.abs(nu12) < bound) return [];
  return [
    {
      path: at(path, "nu12"),
      message: `must be smaller in size than sqrt(E1/E2) = ${bound.toPrecision(4)}, but is ${nu12}: no real material can have these constants. Check that nu12 and not nu21 is given.`,
    },
  ];
}

function notPositive(fields: Fields, path: string): Finding[] {
  return Object.entries(fields)
    .filter(([, value]) => !(value !== undefined && value > 0 && Number.isFinite(value)))
    .map(([field, value]) => ({
      path: at(path, field),
      message: `must be greater than 0, but is ${value}.`,
    }));
}

function negative(fields: Fields, path: string): Finding[] {
  return Object.entries(fields)
    .filter(([, value]) => value !== undefined && !(value >= 0 && Number.isFinite(value)))
    .map(([field, value]) => ({
      path: at(path, field),
      message: `must be 0 or greater, but is ${value}.`,
    }));
}

function at(path: string, field: string): string {
  return path === "" ? field : `${path}.${field}`;
}

function gpa(pascal: number): string {
  return `${Number((pascal / 1e9).toPrecision(4))} GPa`;
}

function throwIfAny(findings: readonly Finding[]): void {
  if (findings.length > 0) throw new InputError(findings);
}
