/** Commands to be typed, as pages show them. */

import { shellWord } from "./shell-word.ts";

/** "stillpoint compare frame.jsonc --set arms.arm.thickness=6" */
export function commandText(...words: readonly string[]): string {
  return ["stillpoint", ...words.map(shellWord)].join(" ");
}
