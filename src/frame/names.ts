import type { PlacedFinding } from "./issue-findings.ts";
import { shown } from "./shown.ts";

/** Rules for the names that a file gives to its parts; checked on the raw file. */

/** Sections of a frame file whose parts have names. */
export const NAMED_SECTIONS: readonly string[] = [
  "plies",
  "materials",
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
  return namesIn(file, "arms").flatMap((name) => {
    const arm = (file.arms as RawFile)[name];
    const copies = isRecord(arm) && typeof arm.copies === "string" ? arm.copies : "none";
    const words = Object.hasOwn(COPY_WORDS, copies) ? COPY_WORDS[copies] : [];
    return [name, ...words.map((word) => `${word} ${name}`)];
  });
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
  const owner = new Map<string, string>();
  for (const section of SHARED_NAMES) {
    for (const name of namesIn(file, section)) {
      const earlier = owner.get(name);
      owner.set(name, section);
      if (earlier === undefined) continue;
      const message = `${shown(name)} is also the name of something in ${earlier}: plates, arms and points need different names.`;
      found.push({ path: [section, name], message, atKey: true });
    }
  }
  if (namesIn(file, "points").includes("ground")) {
    const message = '"ground" stands for the ground in springs: give this point another name.';
    found.push({ path: ["points", "ground"], message, atKey: true });
  }
  return found;
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
