import type { PlacedFinding } from "./issue-findings.ts";
import { shown } from "./shown.ts";

/** Rules for the names that a file gives to its parts; checked on the raw file. */

/** Sections of a frame file whose parts have names. */
export const NAMED_SECTIONS: readonly string[] = [
  "plies",
  "materials",
  "modulusFactors",
  "plates",
  "arms",
  "standoffs",
  "points",
  "members",
  "joints",
  "links",
  "springs",
  "supports",
  "bodies",
  "candidates",
];

/** Sections whose names must differ from each other, since bodies may sit on any of them. */
const SHARED_NAMES = ["plates", "arms", "points"] as const;

const LONGEST_NAME = 40;

export type RawFile = Readonly<Record<string, unknown>>;

/** The names in one section of the raw file, in its order. */
export function namesIn(file: RawFile, section: string): string[] {
  const record = file[section];
  return isRecord(record) ? Object.keys(record) : [];
}

/** Words that go before the name of an arm with copies. */
const COPY_WORDS: Readonly<Record<string, readonly string[]>> = {
  "left and right": ["left", "right"],
  "front and rear": ["front", "rear"],
  "all four corners": ["front left", "front right", "rear left", "rear right"],
};

/** The names of the arms and of their copies: "arm", "front left arm", ... */
export function armNames(file: RawFile): string[] {
  return namesIn(file, "arms").flatMap((name) => namesOfArm(file, name));
}

/** The name of an arm and those of its copies. */
export function namesOfArm(file: RawFile, name: string): string[] {
  const arm = (file.arms as RawFile)[name];
  const copies = isRecord(arm) && typeof arm.copies === "string" ? arm.copies : "none";
  const words = Object.hasOwn(COPY_WORDS, copies) ? COPY_WORDS[copies] : [];
  return [name, ...words.map((word) => `${word} ${name}`)];
}

export function isRecord(value: unknown): value is RawFile {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

export function checkNames(file: RawFile): PlacedFinding[] {
  const found: PlacedFinding[] = [];
  for (const section of NAMED_SECTIONS) {
    for (const name of namesIn(file, section)) {
      const message = problemOf(name);
      if (message !== undefined) found.push({ path: [section, name], message, atKey: true });
    }
  }
  found.push(...sharedNames(file));
  if (namesIn(file, "points").includes("ground")) {
    const message = '"ground" stands for the ground in springs: give this point another name.';
    found.push({ path: ["points", "ground"], message, atKey: true });
  }
  return found;
}

interface Owner {
  readonly section: (typeof SHARED_NAMES)[number];
  readonly name: string;
}

/** Plates, arms and points with the same name, those of mirrored copies included. */
function sharedNames(file: RawFile): PlacedFinding[] {
  const owners = new Map<string, Owner>();
  return SHARED_NAMES.flatMap((section) =>
    namesIn(file, section).flatMap((name): PlacedFinding[] => {
      const owner: Owner = { section, name };
      const names = section === "arms" ? namesOfArm(file, name) : [name];
      const messages = names.flatMap((one) => {
        const earlier = owners.get(one);
        if (earlier === undefined) owners.set(one, owner);
        return earlier === undefined ? [] : [clashMessage(one, earlier, owner)];
      });
      // one clash of a part is enough to mend
      return messages
        .slice(0, 1)
        .map((message) => ({ path: [section, name], message, atKey: true }));
    }),
  );
}

function clashMessage(clash: string, earlier: Owner, later: Owner): string {
  if (earlier.name === later.name) {
    return `${shown(clash)} is also the name of something in ${earlier.section}: plates, arms and points need different names.`;
  }
  const part = ({ section, name }: Owner): string => {
    const one = `the ${section.slice(0, -1)} ${shown(name)}`;
    return name === clash ? one : `a mirrored copy of ${one}`;
  };
  return `${shown(clash)} would name both ${part(earlier)} and ${part(later)}: give one of the two another name.`;
}

function problemOf(name: string): string | undefined {
  if (name === "") return "A name cannot be empty.";
  if ([...name].length > LONGEST_NAME) {
    return `This name is too long: at most ${LONGEST_NAME} characters.`;
  }
  if (name !== name.trim())
    return `The name ${shown(name)} begins or ends with a space: remove it.`;
  if (/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u.test(name)) {
    return `The name ${shown(name)} has an invisible sign in it: remove it.`;
  }
  if (name === "__proto__") return 'The name "__proto__" cannot be used: choose another one.';
  return undefined;
}
