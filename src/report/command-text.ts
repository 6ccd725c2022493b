/** Commands to be typed, as pages show them. */

/** "stillpoint compare frame.jsonc --set arms.arm.thickness=6" */
export function commandText(...words: readonly string[]): string {
  return ["stillpoint", ...words.map(shellWord)].join(" ");
}

/** As a shell takes it for one word. */
export function shellWord(word: string): string {
  return /^[\w./@%+=:,-]+$/.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`;
}
