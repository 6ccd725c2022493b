import { inputError } from "../errors.ts";
import { shown } from "./shown.ts";
import { readSource } from "./source-text.ts";

/**
 * A value as it was typed for a field: numbers, lists, sections and texts in quotes are read as JSON,
 * anything else ("6 mm", rubber rings) is the text itself. Sections come out without prototype.
 * Throws InputError for brackets nested too deep.
 */
export function readWritten(text: string): unknown {
  const trimmed = text.trim();
  if (!isJson(trimmed)) return trimmed;
  const reading = readSource(trimmed);
  if ("source" in reading) return reading.source.value;
  throw inputError("", `${shown(trimmed)} cannot be read: ${reading.finding.message}`);
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}
