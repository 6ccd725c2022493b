/** Masses, centre of gravity and inertia as text and as fields of a JSON document. */

import type { MassProperties, MassReport, PartMass } from "../../matrices/mass.ts";
import type { Ink } from "../terminal/ink.ts";
import { digits, millimetres, quantity } from "../terminal/numbers.ts";
import { renderTable } from "../terminal/table.ts";
import { HARD_SPACE, wrap } from "../terminal/wrap.ts";

/** One paragraph: mass, centre of gravity, inertia. */
export function massLine({ mass, cg, inertia }: MassProperties): string {
  const [x, y, z] = cg.map(millimetres);
  const place = `x${HARD_SPACE}${x}, y${HARD_SPACE}${y}, z${HARD_SPACE}${z}${HARD_SPACE}mm`;
  const { xx, yy, zz } = inertia;
  const turning = [xx, yy, zz].map((I) => digits(I * 1e6)).join(", ");
  return wrap(
    `Mass ${quantity(mass * 1e3, "g")}; centre of gravity at ${place}; inertia in roll, pitch, yaw ${turning}${HARD_SPACE}kg${HARD_SPACE}mm^2.`,
  );
}

/** Heaviest parts first would hide what belongs together: the order is that of the file. */
export function massTable({ parts, mass }: MassReport, ink: Ink): string {
  const row = (part: PartMass): string[] => [
    part.name,
    part.kind,
    digits(part.mass * 1e3),
    ...part.cg.map(millimetres),
  ];
  const columns = [
    { title: "Part", least: 12 },
    { title: "Kind", least: 6 },
    { title: "Mass", unit: "g", align: "right" },
    { title: "x", unit: "mm", align: "right" },
    { title: "y", unit: "mm", align: "right" },
    { title: "z", unit: "mm", align: "right" },
  ] as const;
  const rows = [...parts.map(row), ["all together", "", digits(mass * 1e3), "", "", ""]];
  return renderTable(columns, rows, {
    headingInk: ink.quiet,
    ink: (r, text) => (r === parts.length ? ink.heading(text) : text),
  });
}

export function massFields({ mass, cg, inertia }: MassProperties): Record<string, unknown> {
  return { massKg: mass, centreOfGravityM: cg, inertiaKgM2: inertia };
}

export function partFields(parts: readonly PartMass[]): unknown[] {
  return parts.map(({ name, kind, mass, cg }) => ({
    name,
    kind,
    massKg: mass,
    centreOfGravityM: cg,
  }));
}
