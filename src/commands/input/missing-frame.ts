/** What to say about a frame file that is not there: which frames are near. */

import { readdirSync, readFileSync, statSync } from "node:fs";
import path from "node:path";
import { parse } from "jsonc-parser";
import { InputError } from "../../errors.ts";
import { nearestName } from "../../frame/nearest-name.ts";
import { choices, shown } from "../../frame/shown.ts";

/** Where frames are commonly kept, beside the folder of the name that was given. */
const USUAL_FOLDER = "frames";
/** A folder full of other JSON files is not read through. */
const MOST_FILES = 100;
const MOST_BYTES = 2_000_000;

/** @throws InputError when there is no such file, with the frame files that may have been meant */
export function requireFrameFile(file: string): void {
  try {
    if (statSync(file, { throwIfNoEntry: false }) !== undefined) return;
  } catch {
    return; // reading it will tell what is wrong
  }
  const message = `There is no such file.${nearFrames(file)}`;
  throw new InputError([{ path: "", message }], file);
}

function nearFrames(file: string): string {
  const folders = new Set([path.dirname(file), USUAL_FOLDER].map((f) => path.normalize(f)));
  const frames = [...folders].flatMap(framesIn);
  const near = nearestName(
    stem(file),
    frames.map((frame) => stem(frame)),
  );
  if (near !== undefined) {
    return ` Did you mean ${shown(frames.find((frame) => stem(frame) === near))}?`;
  }
  return frames.length === 0 ? "" : ` Frames to choose from: ${choices(frames, 6)}.`;
}

function stem(file: string): string {
  return path.parse(file).name;
}

function framesIn(folder: string): string[] {
  let names: string[];
  try {
    names = readdirSync(folder).filter((name) => /^[^.].*\.jsonc?$/i.test(name));
  } catch {
    return []; // no such folder
  }
  return names
    .sort()
    .slice(0, MOST_FILES)
    .map((name) => path.join(folder, name))
    .filter(looksLikeFrame);
}

/** Has plates or members, however faulty the rest: settings and lists of packages have neither. */
function looksLikeFrame(file: string): boolean {
  try {
    const stats = statSync(file);
    if (!stats.isFile() || stats.size > MOST_BYTES) return false;
    const root: unknown = parse(readFileSync(file, "utf8").replace(/^\uFEFF/, ""));
    return isSection(root) && [root.plates, root.members].some(isSection);
  } catch {
    return false;
  }
}

function isSection(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
