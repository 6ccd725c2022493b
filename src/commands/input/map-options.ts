/** Options for the map of places, and how their values are read. */

import { type Command, Option } from "commander";
import { inputError } from "../../errors.ts";
import { shortest } from "../terminal/numbers.ts";
import { readLength } from "./lengths.ts";
import { requireName } from "./options.ts";

export interface MapOptions {
  readonly map?: string;
  readonly mapPitch?: string;
}

/** Finer than any drill is placed; at 0.1 mm the places alone would take minutes to list. */
const FINEST = { value: 0.5e-3, text: "0.5 mm" };
const COARSEST = { value: 1, text: "1 m" };

export function addMapOptions(command: Command): Command {
  return command
    .addOption(
      new Option(
        "--map <file>",
        "write the figures of places all over the plates as comma-separated values, with what is in the way of the stack where it does not fit",
      ),
    )
    .addOption(
      new Option(
        "--map-pitch <length>",
        'distance between those places, such as "4 mm" (default: 8 mm or more, at most 150 places where the stack fits and 50 to 70 on the rest of the plates); finer is slower, widened above 4000 places',
      ),
    );
}

/** m; undefined where it was not given. @throws InputError when the text is not a length that helps */
export async function readMapPitch(text: string | undefined): Promise<number | undefined> {
  if (text === undefined) return undefined;
  const pitch = await readLength("--map-pitch", text);
  const limit =
    pitch < FINEST.value
      ? `${FINEST.text} or more`
      : pitch > COARSEST.value
        ? `${COARSEST.text} or less`
        : undefined;
  if (limit === undefined) return pitch;
  throw inputError(
    "--map-pitch",
    `${shortest(1e3 * pitch)} mm is not possible: the distance between places must be ${limit}.`,
  );
}

/** What is wrong with the name of the map, before anything is read. @throws InputError */
export function requireSenseOfMap(map: string | undefined): void {
  requireName("--map", map, "my-map.csv");
  if (map === undefined || !/\.(jsonc?|html?)$/i.test(map)) return;
  throw inputError(
    "--map",
    `${map} has the name of another kind of file, but a map is a table: give a name that ends in .csv.`,
  );
}

/** The option that changes the numbers, as it was typed; empty where it was not given. */
export function mapPitchText({ mapPitch }: MapOptions): string {
  return mapPitch === undefined ? "" : `--map-pitch ${JSON.stringify(mapPitch)}`;
}
