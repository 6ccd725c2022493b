import { withValueAt } from "./place.ts";
import type { FrameFile } from "./types.ts";

/** Millimetres as a bare number of the file. */
function written(metres: number): number {
  return Number((metres * 1e3).toPrecision(15));
}

/** The raw values of `given`, with the heights that differ in `followed`. */
export function withHeights(raw: unknown, given: FrameFile, followed: FrameFile): unknown {
  let made = raw;
  const put = (path: readonly (string | number)[], metres: number) => {
    made = withValueAt(made, path, written(metres));
  };
  for (const section of ["plates", "arms"] as const) {
    for (const [name, { z }] of Object.entries(followed[section])) {
      if (z !== given[section][name].z) put([section, name, "z"], z);
    }
  }
  for (const [name, { at }] of Object.entries(followed.bodies)) {
    if (at !== undefined && at[2] !== given.bodies[name].at?.[2])
      put(["bodies", name, "at", 2], at[2]);
  }
  const [is, was] = [followed.propulsion, given.propulsion];
  if (is !== undefined && is.motor.cgHeight !== was?.motor.cgHeight) {
    put(["propulsion", "motor", "cgHeight"], is.motor.cgHeight);
  }
  if (is !== undefined && is.propeller.planeHeight !== was?.propeller.planeHeight) {
    put(["propulsion", "propeller", "planeHeight"], is.propeller.planeHeight);
  }
  return made;
}
