/** The two documents that carry the verification table. */

/** The long table, as committed. */
export const TABLE = new URL("README.md", import.meta.url);
/** The project's README, with the short table between two marks. */
export const README = new URL("../../README.md", import.meta.url);

const BEGIN = "<!-- verification table: npm run verify -- --write -->";
const END = "<!-- end of the verification table -->";

/** The README with the table between its marks replaced. Throws where a mark is missing. */
export function putShortTable(readme: string, table: string): string {
  const [from, to] = marks(readme);
  return `${readme.slice(0, from)}\n\n${table}\n\n${readme.slice(to)}`;
}

/** The table between the marks of the README. Throws where a mark is missing. */
export function takeShortTable(readme: string): string {
  const [from, to] = marks(readme);
  return readme.slice(from, to).trim();
}

function marks(readme: string): [number, number] {
  const [from, to] = [readme.indexOf(BEGIN), readme.indexOf(END)];
  if (from < 0 || to < from) throw new Error(`README.md needs the lines ${BEGIN} and ${END}`);
  return [from + BEGIN.length, to];
}
