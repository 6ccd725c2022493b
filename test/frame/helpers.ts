import { type Finding, InputError } from "../../src/errors.ts";
import { parseFrame } from "../../src/frame/read.ts";
import type { LibraryNames } from "../../src/frame/references.ts";
import type { FrameFile } from "../../src/frame/types.ts";

/** Names as the built-in library has them. */
export const LIBRARY: LibraryNames = {
  libraryMaterials: [
    "carbon-plate-0-90",
    "carbon-plate-quasi-isotropic",
    "aluminium-7075-t651",
    "steel",
    "nylon",
  ],
  libraryPlies: ["carbon-fabric", "carbon-ud"],
};

export const PLATE = {
  material: "carbon-plate-0-90",
  thickness: "2 mm",
  z: 0,
  outline: [
    [40, -20],
    [40, 20],
    [-40, 20],
    [-40, -20],
  ],
};

/** The smallest good file, with more sections or other ones. */
export function fileWith(sections: object): object {
  return { version: 1, name: "test", plates: { base: PLATE }, ...sections };
}

export function read(file: object | string): FrameFile {
  const text = typeof file === "string" ? file : JSON.stringify(file, undefined, 1);
  return parseFrame(text, "test.jsonc", LIBRARY);
}

export function findingsIn(file: object | string): readonly Finding[] {
  try {
    read(file);
  } catch (error) {
    if (error instanceof InputError) return error.findings;
    throw error;
  }
  return [];
}

/** Findings as lines "path: message", the way InputError's message has them. */
export function linesOf(file: object | string): string[] {
  return findingsIn(file).map(({ path, message }) =>
    path === "" ? message : `${path}: ${message}`,
  );
}
