import type { FilePath } from "./file-path.ts";
import type { PlacedFinding } from "./issue-findings.ts";
import { armNames, isRecord, NAMED_SECTIONS, namesIn, type RawFile } from "./names.ts";
import { nearestName } from "./nearest-name.ts";
import { choices, shown } from "./shown.ts";

/**
 * Whether everything a file names exists. Works on the raw file, so that a slip elsewhere does not
 * hide an unknown name; values of the wrong type are left to the schema.
 */

/** Names that the built-in library knows beside those of the file. */
export interface LibraryNames {
  readonly libraryMaterials: readonly string[];
  readonly libraryPlies: readonly string[];
}

interface Kind {
  /** With its article. */
  readonly noun: string;
  readonly names: readonly string[];
  /** Names that are not known may exist all the same: nothing is reported. */
  readonly open: boolean;
}

/** Where names stand: "*" is every name of a section; the last step may hold one name or a list. */
type Place = readonly [path: readonly string[], kind: keyof Kinds];
type Kinds = ReturnType<typeof kindsOf>;

// biome-ignore format: one place, one row
const PLACES: readonly Place[] = [
  [["materials", "*", "ply"], "ply"],
  [["plates", "*", "material"], "material"],
  [["arms", "*", "material"], "material"],
  [["standoffs", "*", "material"], "material"],
  [["members", "*", "material"], "material"],
  [["arms", "*", "joint", "plates"], "plate"],
  [["arms", "*", "joint", "plate"], "plate"],
  [["arms", "*", "joint", "point"], "point"],
  [["standoffs", "*", "between"], "plate"],
  [["members", "*", "from"], "point"],
  [["members", "*", "to"], "point"],
  [["joints", "*", "plates"], "plate"],
  [["links", "*", "points"], "point"],
  [["links", "*", "point"], "point"],
  [["links", "*", "plate"], "plate"],
  [["springs", "*", "between"], "pointOrGround"],
  [["supports", "*", "point"], "point"],
  [["supports", "*", "plate"], "plate"],
  [["bodies", "*", "on"], "part"],
  [["propulsion", "arms"], "arm"],
  [["stack", "plate"], "plate"],
  [["candidates", "*", "plate"], "plate"],
];

export function checkReferences(file: RawFile, library: LibraryNames | undefined): PlacedFinding[] {
  const kinds = kindsOf(file, library);
  return [
    ...factorNames(file, kinds),
    ...PLACES.flatMap(([path, of]) => {
      const kind: Kind = kinds[of];
      if (kind.open) return [];
      return textsAt(file, path, []).flatMap(([name, at]): PlacedFinding[] => {
        if (kind.names.includes(name)) return [];
        return [{ path: at, message: unknownName(name, kind, kinds) }];
      });
    }),
  ];
}

/** Here the names are keys. */
function factorNames(file: RawFile, kinds: Kinds): PlacedFinding[] {
  const { material } = kinds;
  if (material.open) return [];
  return namesIn(file, "modulusFactors")
    .filter((name) => !material.names.includes(name))
    .map((name) => {
      const message = unknownName(name, material, kinds);
      return { path: ["modulusFactors", name], message, atKey: true };
    });
}

function kindsOf(file: RawFile, library: LibraryNames | undefined) {
  const [plates, points] = ["plates", "points"].map((name) => namesIn(file, name));
  const arms = armNames(file);
  const misspelt = ["plates", "arms", "points"].map((name) => isMisspelt(file, name));
  const withLibrary = (noun: string, section: string, more: readonly string[] | undefined) => ({
    noun,
    names: [...new Set([...namesIn(file, section), ...(more ?? [])])],
    // without the library's names, what is not in the file may still be in the library
    open: more === undefined || isMisspelt(file, section),
  });
  return {
    material: withLibrary("a material", "materials", library?.libraryMaterials),
    ply: withLibrary("a ply", "plies", library?.libraryPlies),
    plate: { noun: "a plate", names: plates, open: misspelt[0] },
    arm: { noun: "an arm", names: arms, open: misspelt[1] },
    point: { noun: "a point", names: points, open: misspelt[2] },
    pointOrGround: {
      noun: 'a point (or "ground")',
      names: [...points, "ground"],
      open: misspelt[2],
    },
    part: {
      noun: "a plate, an arm or a point",
      names: [...plates, ...arms, ...points],
      open: misspelt.includes(true),
    },
  } satisfies Record<string, Kind>;
}

/** The section is there, but under a wrong key or of a wrong kind: that one finding is enough. */
function isMisspelt(file: RawFile, section: string): boolean {
  if (Object.hasOwn(file, section)) return !isRecord(file[section]);
  const unknown = Object.keys(file).filter((key) => !NAMED_SECTIONS.includes(key));
  return nearestName(section, unknown) !== undefined;
}

/** Every text at a place of the raw file, with its path. */
function textsAt(
  value: unknown,
  path: readonly string[],
  above: FilePath,
): [text: string, path: FilePath][] {
  const [step, ...rest] = path;
  if (step === undefined) {
    const list = Array.isArray(value)
      ? value.map((one, i) => [one, [...above, i]])
      : [[value, above]];
    return list.filter((pair): pair is [string, FilePath] => typeof pair[0] === "string");
  }
  if (!isRecord(value)) return [];
  const steps = step === "*" ? Object.keys(value) : [step];
  return steps.flatMap((key) => textsAt(value[key], rest, [...above, key]));
}

function unknownName(name: string, kind: Kind, kinds: Kinds): string {
  const { material, ply, plate, arm, point } = kinds;
  const alike = kind === material || kind === ply ? [material, ply] : [plate, arm, point];
  const other = alike.find(({ names }) => names.includes(name));
  const all =
    kind.names.length === 0
      ? `The file has no ${withoutArticles(kind.noun)} yet.`
      : `Known here: ${choices(kind.names)}.`;
  if (kind === material && other === ply) {
    return `${shown(name)} is a ply, and a material is needed here: write a laminate of it under materials.`;
  }
  if (other !== undefined) {
    return `${shown(name)} is ${other.noun}, and ${kind.noun} is needed here. ${all}`;
  }
  const near = nearestName(name, kind.names);
  const hint = near === undefined ? "" : ` Did you mean ${shown(near)}?`;
  return `There is no ${withoutArticles(kind.noun)} called ${shown(name)}.${hint} ${all}`;
}

/** "a plate, an arm or a point" -> "plate, arm or point" */
function withoutArticles(noun: string): string {
  return noun.replace(/\ban? /g, "");
}
