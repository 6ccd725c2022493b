/** How values and names from a file appear inside a message. */

const LONGEST_SHOWN = 60;

/** A value as a short piece of one line: texts in quotes, lists and sections by their kind. */
export function shown(value: unknown): string {
  if (value === undefined) return "nothing";
  if (value === null) return "null";
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : "a list";
  if (typeof value === "object") return "a section in { }";
  if (typeof value !== "string") return String(value);
  const short = value.length > LONGEST_SHOWN ? `${value.slice(0, LONGEST_SHOWN)}…` : value;
  // control and direction characters would disturb the terminal: show them as escapes
  const safe = short.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, (sign) => {
    return `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`;
  });
  return `"${safe}"`;
}

/** `"a", "b" or "c"`; beyond `most` names the rest is counted. */
export function choices(names: readonly string[], most = 12): string {
  const quoted = names.slice(0, most).map(shown);
  const rest = names.length - quoted.length;
  if (rest > 0) return `${quoted.join(", ")} and ${rest} more`;
  if (quoted.length < 2) return quoted.join("");
  return `${quoted.slice(0, -1).join(", ")} or ${quoted[quoted.length - 1]}`;
}
