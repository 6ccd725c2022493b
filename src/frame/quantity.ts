import { nearestName } from "./nearest-name.ts";
import { KINDS, nameOfDimension, type QuantityKind } from "./quantity-kinds.ts";
import { shown } from "./shown.ts";
import { lookUpUnit, toSI } from "./units.ts";

/** Which numbers make sense in one field, SI; the kind's own largest size holds as well. */
export interface Range {
  /** The value must be more than this. */
  readonly above?: number;
  /** The value must be this or more. */
  readonly least?: number;
  /** The value must be this or less. */
  readonly most?: number;
}

/** The value in SI, or what is wrong with the text, as a sentence for the user. */
export type QuantityReading = { readonly value: number } | { readonly problem: string };

const NUMBER_THEN_UNIT = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?) *(.*)$/;
const COMMA_IN_NUMBER = /^([+-]?\d+),(\d+)(?![\d.,])(.*)$/;
const LONGEST_TEXT = 80;

/** The same, for JSON Schema: what a quantity string looks like. */
export const QUANTITY_PATTERN =
  "^\\s*[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?\\s*[A-Za-z%][A-Za-z0-9^/* %]*$";

/** Signs that people type and the unit reader does not take, with what to write instead. */
// biome-ignore format: pairs
const PLAIN_SIGNS: readonly (readonly [RegExp, string])[] = [
  [/²/g, "^2"], [/³/g, "^3"], [/⁴/g, "^4"], [/[·⋅×]/g, " "], [/°/g, "deg"], [/[µμ]/g, "u"],
  [/[″"]/g, "in"], [/[−–]/g, "-"],
];

/**
 * Reads a quantity as it stands in a frame file: a bare number in the unit of its kind, or a string
 * "<number> <unit>". Returns the value in SI (rad for angles, rad/s for rotational speeds).
 */
export function readQuantity(
  written: number | string,
  kind: QuantityKind,
  range: Range = {},
): QuantityReading {
  if (typeof written === "number") {
    const unit = kind.bareUnit === "" ? undefined : lookUpUnit(kind.bareUnit);
    const value = unit === undefined ? written : toSI(written, unit);
    const readAs = kind.bareUnit === "" ? "" : ` (read as ${written} ${kind.bareUnit})`;
    return within(value, `${written}${readAs}`, kind, range);
  }
  const text = written.trim().replace(/\s+/g, " ");
  const match = text.length > LONGEST_TEXT ? null : NUMBER_THEN_UNIT.exec(text);
  if (match === null) return { problem: notANumber(text, kind) };
  if (match[2].startsWith(",")) return { problem: commaInNumber(text) };
  const [, digits, unitText] = match;
  if (unitText === "") return { problem: noUnit(digits, kind) };
  const unit = lookUpUnit(unitText);
  if (unit === undefined) return { problem: unknownUnit(text, digits, unitText, kind) };
  if (unit.dimension !== kind.dimension) {
    const name = nameOfDimension(unit.dimension);
    const found = name === undefined ? `has the unit ${unitText}` : `is ${name} (${unitText})`;
    return { problem: `${shown(text)} ${found}, ${needed(kind)}` };
  }
  return within(toSI(Number(digits), unit), shown(text), kind, range);
}

/** "a length is needed here, for example "5 mm"." */
export function needed(kind: QuantityKind): string {
  const bare = kind === KINDS.fraction ? ' 0.05 or "5 %"' : ` ${shown(kind.example)}`;
  return `${kind.noun} is needed here, for example${bare}.`;
}

function within(value: number, text: string, kind: QuantityKind, range: Range): QuantityReading {
  const { above, least, most = kind.most } = range;
  if (above !== undefined && !(value > above)) {
    return {
      problem: `${text} is not possible: it must be more than ${inWords(above, text, kind)}.`,
    };
  }
  if (least !== undefined && !(value >= least)) {
    return {
      problem: `${text} is not possible: it must be ${inWords(least, text, kind)} or more.`,
    };
  }
  if (range.most === undefined && !(Math.abs(value) <= kind.most)) {
    return { problem: `${text} is too large: at most ${kind.mostText} can be right here.` };
  }
  if (!(value <= most)) {
    return { problem: `${text} is not possible: it must be ${inWords(most, text, kind)} or less.` };
  }
  return { value: value === 0 ? 0 : value }; // no negative zero
}

/** In per cent where the value was. */
function inWords(limit: number, text: string, kind: QuantityKind): string {
  if (limit === 0) return "zero";
  if (kind === KINDS.fraction && text.includes("%"))
    return `${Number((100 * limit).toPrecision(6))} %`;
  return String(limit);
}

function notANumber(text: string, kind: QuantityKind): string {
  if (text === "") return `An empty text cannot be read: ${needed(kind)}`;
  const plain = inPlainSigns(text);
  if (plain !== text && NUMBER_THEN_UNIT.test(plain)) return usePlainSigns(text, plain);
  return `${shown(text)} is not a number with a unit: ${needed(kind)}`;
}

/** "2,5 mm" has one likely meaning; "1,000 mm" has two, so both are offered. */
function commaInNumber(text: string): string {
  const match = COMMA_IN_NUMBER.exec(text);
  if (match === null) {
    return `${shown(text)} has commas in the number. Write it without them, with a point before decimals.`;
  }
  const [, whole, decimals, rest] = match;
  const point = `${whole}.${decimals}${rest}`;
  if (decimals.length === 3 && Number(whole) !== 0) {
    return `${shown(text)} has a comma in the number. Write ${shown(`${whole}${decimals}${rest}`)} for thousands or ${shown(point)} for decimals.`;
  }
  return `${shown(text)} has a decimal comma. Write it with a point: ${shown(point)}.`;
}

function noUnit(digits: string, kind: QuantityKind): string {
  if (kind === KINDS.fraction) {
    return `${shown(digits)} has no unit. Write ${digits} without the quotes, or ${shown(`${digits} %`)} if you mean per cent.`;
  }
  const unit = kind.bareUnit;
  return `${shown(digits)} has no unit. Write ${shown(`${digits} ${unit}`)}, or ${digits} without the quotes, which is read in ${unit}.`;
}

function unknownUnit(text: string, digits: string, unitText: string, kind: QuantityKind): string {
  const plain = inPlainSigns(unitText);
  if (plain !== unitText && lookUpUnit(plain) !== undefined) {
    return usePlainSigns(text, `${digits} ${plain}`);
  }
  if (kind === KINDS.kv && unitText.toLowerCase() === "kv") {
    return `${shown(text)}: write the speed per volt as ${shown(`${digits} rpm/V`)}.`;
  }
  const near = nearestName(unitText, kind.usualUnits);
  const hint = near === undefined ? "" : ` Did you mean ${shown(`${digits} ${near}`)}?`;
  const need = needed(kind);
  return `${shown(text)}: the unit ${shown(unitText)} is not known.${hint} ${need[0].toUpperCase()}${need.slice(1)}`;
}

function inPlainSigns(text: string): string {
  return PLAIN_SIGNS.reduce((so, [sign, plain]) => so.replace(sign, plain), text);
}

function usePlainSigns(text: string, plain: string): string {
  return `${shown(text)} has a sign that cannot be read. Write it in plain letters: ${shown(plain)}.`;
}
