/** The cross-sections that can be asked for, and which of them are none. */

import { type Finding, InputError } from "../errors.ts";

/** Sizes in m; local x is the beam axis, y the width, z the thickness direction (up). */
export type SectionShape =
  /** Cut from a sheet, with a slot down the middle of its width if `slot` is given. */
  | {
      readonly shape: "strip";
      readonly width: number;
      readonly thickness: number;
      readonly slot?: number;
    }
  /** Solid rectangle: width along y, height along z. */
  | { readonly shape: "bar"; readonly width: number; readonly height: number }
  | { readonly shape: "tube"; readonly outer: number; readonly bore: number }
  | { readonly shape: "rod"; readonly diameter: number }
  | { readonly shape: "hexagon"; readonly acrossFlats: number; readonly bore?: number }
  | GivenSection;

/** Constants given by the user: areas m2, second moments and J m4. */
export interface GivenSection {
  readonly shape: "given";
  readonly A: number;
  /** Iy resists bending that moves the beam along z, Iz along y. */
  readonly Iy: number;
  readonly Iz: number;
  readonly J: number;
  /** Polar moment for rotary inertia; Iy + Iz if not given. */
  readonly Ip?: number;
  /** Shear areas for shear along y and z; 5/6 A, the rectangle's, if not given. */
  readonly Ay?: number;
  readonly Az?: number;
}

/** Throws InputError with every size that makes no section; findings lie under `path`. */
export function checkSection(section: SectionShape, path = ""): void {
  const findings: Finding[] = [];
  const at = (field: string) => (path === "" ? field : `${path}.${field}`);
  const positive = (field: string, value: number | undefined) => {
    if (value !== undefined && !(value > 0 && Number.isFinite(value))) {
      findings.push({ path: at(field), message: `must be greater than 0, but is ${value}.` });
    }
  };
  /** A hole: 0 or more, and smaller than what it is cut from. */
  const hole = (field: string, value: number | undefined, outerField: string, outer: number) => {
    if (value !== undefined && !(value >= 0 && value < outer)) {
      findings.push({
        path: at(field),
        message: `must be at least 0 and less than ${outerField} (${outer} m), but is ${value} m.`,
      });
    }
  };
  switch (section.shape) {
    case "strip":
      positive("width", section.width);
      positive("thickness", section.thickness);
      hole("slot", section.slot, "width", section.width);
      break;
    case "bar":
      positive("width", section.width);
      positive("height", section.height);
      break;
    case "tube":
      positive("outer", section.outer);
      hole("bore", section.bore, "outer", section.outer);
      break;
    case "rod":
      positive("diameter", section.diameter);
      break;
    case "hexagon":
      positive("acrossFlats", section.acrossFlats);
      hole("bore", section.bore, "acrossFlats", section.acrossFlats);
      break;
    case "given":
      for (const field of ["A", "Iy", "Iz", "J", "Ip", "Ay", "Az"] as const) {
        positive(field, section[field]);
      }
  }
  if (findings.length > 0) throw new InputError(findings);
}
