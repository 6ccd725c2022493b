/** Changes that a builder can make to a frame. */

import type { Change, FrameSource } from "../frame/change.ts";
import { formatPath } from "../frame/file-path.ts";
import { type Input, inputsOf, withInput } from "../frame/inputs.ts";
import { valueAt } from "../frame/place.ts";
import type { FrameFile } from "../frame/types.ts";
import type { IsolatorKind } from "../frame/types-stack.ts";

export type IdeaKind = "thickness" | "width" | "standoff" | "body" | "mount";

export interface Idea {
  readonly kind: IdeaKind;
  /** what is changed: "arms.arm"; "stack" for mounts */
  readonly part: string;
  /** the beginning of a sentence: "Arms 5.5 mm thick instead of 5 mm" */
  readonly words: string;
  readonly changes: readonly Change[];
  /** inputs that are moved, and how far, SI; none for a mount of another kind */
  readonly moves: readonly { readonly input: Input; readonly by: number }[];
}

/** Steps that workshops take: sheets come in half millimetres. Common practice, no source. */
const SHEETS = [-1e-3, -0.5e-3, 0.5e-3, 1e-3];
const THINNEST = 1e-3;
const WIDER = [-2e-3, -1e-3, 1e-3, 2e-3];
const NARROWEST = 5e-3;
const POST_MOVES = [-5e-3, -2.5e-3, 2.5e-3, 5e-3];
const BODY_MOVES = [-10e-3, -5e-3, 5e-3, 10e-3];
/** Share of the craft's mass from which a body is worth moving. */
const HEAVY = 0.05;
const MOUNTS: readonly IsolatorKind[] = ["silicone grommets", "soft gel pads", "rubber rings"];

/**
 * @param mass of the craft, kg
 * @param spot a candidate's name, or that of no candidate for the place where the file puts the stack
 */
export function ideasFor(source: FrameSource, mass: number, spot: string): Idea[] {
  const inputs = inputsOf(source);
  const under = (section: string, name: string, kind: Input["kind"]) =>
    inputs.filter(({ path, kind: k }) => path[0] === section && path[1] === name && k === kind);
  const { file } = source;
  return [
    ...(["arms", "plates"] as const).flatMap((section) =>
      Object.keys(file[section]).flatMap((name) =>
        under(section, name, "thickness").flatMap((input) =>
          thicknesses(source, partWords(file, section, name), input),
        ),
      ),
    ),
    ...Object.keys(file.arms).flatMap((name) =>
      WIDER.flatMap((by): Idea[] => {
        const widths = under("arms", name, "width");
        const least = Math.min(...widths.map(({ value }) => value));
        if (widths.length === 0 || least + by < NARROWEST - 1e-9) return [];
        const how = by > 0 ? "wider" : "narrower";
        const words = `${partWords(file, "arms", name)} ${mm(Math.abs(by))} ${how}`;
        return [idea(source, "width", words, widths, by)];
      }),
    ),
    ...Object.keys(file.standoffs).flatMap((name) =>
      under("standoffs", name, "position").flatMap((input) =>
        POST_MOVES.map((by) => postMoved(source, name, input, by)),
      ),
    ),
    ...Object.entries(file.bodies).flatMap(([name, body]) => {
      if (body.mass < HEAVY * mass || !isMovable(file, body)) return [];
      return under("bodies", name, "position")
        .filter(({ path }) => path[3] === 0)
        .flatMap((input) =>
          BODY_MOVES.map((by) => {
            const words = `"${name}" ${mm(Math.abs(by))} further ${by > 0 ? "forward" : "back"}`;
            return idea(source, "body", words, [input], by);
          }),
        );
    }),
    ...mounts(source, spot),
  ];
}

function thicknesses(source: FrameSource, part: string, input: Input): Idea[] {
  return SHEETS.filter((by) => input.value + by >= THINNEST - 1e-9).map((by) => {
    const words = `${part} ${mm(input.value + by)} thick instead of ${mm(input.value)}`;
    return idea(source, "thickness", words, [input], by);
  });
}

/** A frame's only arms are "arms". */
function partWords(file: FrameFile, section: "arms" | "plates", name: string): string {
  if (section === "plates") return `Plate "${name}"`;
  return Object.keys(file.arms).length === 1 ? "Arms" : `Arm "${name}"`;
}

function postMoved(source: FrameSource, name: string, input: Input, by: number): Idea {
  const { at, copies } = source.file.standoffs[name];
  const [which, axis] =
    input.path.length > 4
      ? (input.path.slice(3) as [number, number])
      : [0, input.path[3] as number];
  const before = at[which];
  const after = before.map((v, i) => (i === axis ? v + by : v));
  const also = copies === "none" ? "" : " and its copies";
  const words = `Standoff "${name}" at ${point(before)} mm${also} moved to ${point(after)} mm`;
  return idea(source, "standoff", words, [input], by);
}

/** On a plate by itself: screws would have to be drilled anew, and copies would move the other way. */
function isMovable(file: FrameFile, { on, screws, copies }: FrameFile["bodies"][string]): boolean {
  const isOnPlate = on.length === 1 && Object.hasOwn(file.plates, on[0]);
  return isOnPlate && screws === undefined && copies === "none";
}

function idea(
  source: FrameSource,
  kind: IdeaKind,
  words: string,
  inputs: readonly Input[],
  by: number,
): Idea {
  const moves = inputs.map((input) => ({ input, by }));
  const changes = inputs.map((input) => withInput(source, input, tidy(input.value + by)));
  return { kind, part: formatPath(inputs[0].path.slice(0, 2)), words, changes, moves };
}

/** Other mounts under the stack at a spot; the candidate's own go before those of the stack. */
function mounts({ file, raw }: FrameSource, spot: string): Idea[] {
  const { stack, candidates } = file;
  const own = ["candidates", spot, "isolators"];
  const path = valueAt(raw, own) === undefined ? ["stack", "isolators"] : own;
  if (!stack && path !== own) return [];
  const now = (Object.hasOwn(candidates, spot) && candidates[spot].isolators) || stack?.isolators;
  const isScrewed = now === undefined || now === "none";
  const was = isScrewed ? "screws alone" : typeof now === "string" ? now : "the mounts it has";
  const same = { kind: "mount", part: "stack", moves: [] } as const;
  const kinds = MOUNTS.filter((kind) => kind !== now).map((written): Idea => {
    const words = `${written[0].toUpperCase()}${written.slice(1)} under the stack instead of ${was}`;
    return { ...same, words, changes: [{ path, written }] };
  });
  if (isScrewed) return kinds;
  const words = `The stack screwed down instead of on ${was}`;
  return [...kinds, { ...same, words, changes: [{ path, written: "none" }] }];
}

/** Without what rounding adds: nanometres and finer. */
const tidy = (v: number) => Number(v.toFixed(9));
const mm = (v: number) => `${Number((1e3 * v).toFixed(2))} mm`;
const point = (at: readonly number[]) =>
  `(${at.map((v) => Number((1e3 * v).toFixed(2))).join(", ")})`;
