/** The numbers of a check as the tables show them, and back again. */

import { type Check, errorOf, relativeError, type Tolerance, unitOfLastDigit } from "./case.ts";

/** The cells of a row that come from a run; the others are the case's own words. */
export interface Cells {
  readonly ours: string;
  readonly error: string;
}

export function cellsOf(check: Check, ours: number): Cells {
  return { ours: oursCell(check, ours), error: errorCell(check, ours) };
}

/** Enough decimals for the last to be a tenth of the tolerance or less. */
function oursCell(check: Check, ours: number): string {
  const resolution = widest(check.tolerance) * scale(check);
  const decimals = Math.ceil(1 - Math.log10(resolution));
  const size = Math.abs(Number(check.reference));
  if (size >= 1e6 || (size > 0 && size < 1e-3)) {
    const lead = Math.floor(Math.log10(size));
    return ours.toExponential(clamp(decimals + lead, 1, 15)).replace("e+", "e");
  }
  return ours.toFixed(clamp(decimals, 0, 15)).replace(/^-(0\.?0*)$/, "$1");
}

/** Relative errors below this are rounding, which changes with every change of the solver. */
const ROUNDING = 1e-10;

/** Two digits; an error far below the tolerance, or below rounding, is only said to be so. */
function errorCell(check: Check, ours: number): string {
  const error = errorOf(check, ours);
  const limit = widest(check.tolerance);
  const absolute = check.tolerance.kind === "absolute";
  const rounding = absolute ? ROUNDING * Math.abs(Number(check.reference)) : ROUNDING;
  const floor = Math.max(limit / 100, Math.min(limit / 10, rounding));
  const unit = unitOfError(check);
  if (Math.abs(error) < floor) return `< ${amount(floor, check)}${unit}`;
  return `${error < 0 ? "-" : "+"}${amount(Math.abs(error), check)}${unit}`;
}

export function toleranceCell(check: Check): string {
  const { low, high } = check.tolerance;
  const unit = unitOfError(check);
  const text = (value: number) => amount(Math.abs(value), check);
  if (low === -high) return `±${text(high)}${unit}`;
  const sign = (value: number) => (value < 0 ? "-" : "+");
  const end = (value: number) => (value === 0 ? "0" : `${sign(value)}${text(value)}`);
  return `${end(low)} to ${end(high)}${unit}`;
}

/** What marks an error as a difference and not as a share of the reference. */
function unitOfError({ tolerance, unit }: Check): string {
  return tolerance.kind === "relative" ? "" : ` ${unit || "(abs)"}`;
}

/** What an error cell says, as a share of the reference; 0 for a bound and for a reference of 0. */
export function relativeErrorOf(check: Check, { error }: Cells): number {
  return relativeError(check, parseCell(error));
}

/** Whether two cells say the same but for one unit of the last digit shown. */
export function sameCell(shown: string, run: string): boolean {
  if (shown === run) return true;
  const difference = Math.abs(parseCell(shown) - parseCell(run));
  const floor = Math.max(floorOf(shown), floorOf(run));
  if (floor > 0) return difference <= 1.1 * floor;
  return difference <= Math.max(unitOf(shown), unitOf(run)) * (1 + 1e-9);
}

/** The number in a cell; "< 1e-9" counts as none. */
function parseCell(cell: string): number {
  if (cell.startsWith("<")) return 0;
  const number = Number.parseFloat(cell);
  return cell.includes("%") ? number / 100 : number;
}

/** The bound in a cell that only gives a bound, otherwise zero. */
function floorOf(cell: string): number {
  return cell.startsWith("<") ? parseCell(cell.slice(2)) : 0;
}

function unitOf(cell: string): number {
  const number = cell.match(/[\d.]+(e[+-]?\d+)?/)?.[0] ?? "0";
  return unitOfLastDigit(number) * (cell.includes("%") ? 0.01 : 1);
}

/** A relative amount in per cent from 1e-4 up, otherwise with an exponent; two digits. */
function amount(value: number, { tolerance }: Check): string {
  if (tolerance.kind === "relative" && value >= 1e-4) return `${digits(value * 100)} %`;
  return value >= 1e-3 ? digits(value) : trimmed(value.toExponential(1));
}

const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
const digits = (value: number) => String(Number(value.toPrecision(2)));
const trimmed = (text: string) => text.replace(".0e", "e");

function widest({ low, high }: Tolerance): number {
  return Math.max(Math.abs(low), Math.abs(high));
}

/** What a tolerance of one means in the unit of the check. */
function scale({ tolerance, reference }: Check): number {
  return tolerance.kind === "absolute" ? 1 : Math.abs(Number(reference));
}
