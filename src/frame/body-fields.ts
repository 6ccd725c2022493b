import type { PlacedFinding } from "./issue-findings.ts";
import { armNames, isRecord, namesIn, type RawFile } from "./names.ts";

/**
 * Which fields of a body go together: that depends on how it is held and on whether it sits on a
 * point or on a plate or arm. Works on the raw file, so that other slips do not hide these.
 */
export function checkBodyFields(file: RawFile): PlacedFinding[] {
  const points = namesIn(file, "points");
  const surfaces = [...namesIn(file, "plates"), ...armNames(file)];
  return namesIn(file, "bodies").flatMap((name) => {
    const body = (file.bodies as RawFile)[name];
    if (!isRecord(body)) return [];
    const on: readonly unknown[] = Array.isArray(body.on) ? body.on : [body.on];
    const isOn = (names: readonly string[]) => on.some((part) => names.includes(part as string));
    const problems = [
      ...(body.hold === "smeared" ? smearedProblems(body) : heldProblems(body, on)),
      ...(isOn(points) ? onPointProblems(body) : []),
      ...(isOn(surfaces) && body.hold !== "smeared" ? placeProblems(body) : []),
    ];
    return problems.map(([key, message]) => ({ path: ["bodies", name, key], message }));
  });
}

type Problem = readonly [key: string, message: string];

/** Fields that say where a body is or how it is fixed: a smeared mass is everywhere on its parts. */
const OF_ONE_PLACE = ["at", "size", "inertia", "screws", "footprint", "soft"];

function smearedProblems(body: RawFile): Problem[] {
  const problems = OF_ONE_PLACE.filter((key) => Object.hasOwn(body, key)).map((key): Problem => {
    return [key, `A smeared mass is shared out evenly over its parts: leave out "${key}".`];
  });
  if (Object.hasOwn(body, "copies") && body.copies !== "none") {
    const message = 'A smeared mass takes no copies: give the whole mass and leave out "copies".';
    problems.push(["copies", message]);
  }
  return problems;
}

function heldProblems(body: RawFile, on: readonly unknown[]): Problem[] {
  const { hold = "rigid" } = body;
  const problems: Problem[] = [];
  if (new Set(on).size > 1) {
    const message =
      'Only a smeared mass can be on several parts: name one, or write "hold": "smeared".';
    problems.push(["on", message]);
  }
  const hasMount = Object.hasOwn(body, "soft");
  if (hold === "soft" && !hasMount) {
    problems.push([
      "soft",
      'Missing: a soft hold needs its mount, for example { "bounce": "75 Hz" }.',
    ]);
  }
  if ((hold === "rigid" || hold === "spread") && hasMount) {
    const message = `A soft mount is given, but hold is "${hold}": write "hold": "soft", or leave this out.`;
    problems.push(["soft", message]);
  }
  if ((hold === "soft" || hold === "spread") && Object.hasOwn(body, "screws")) {
    const message = `Screws go with a rigid hold, but hold is "${hold}": leave out one of the two.`;
    problems.push(["screws", message]);
  }
  return problems;
}

function onPointProblems(body: RawFile): Problem[] {
  const problems = ["screws", "footprint"]
    .filter((key) => Object.hasOwn(body, key))
    .map((key): Problem => [key, `A body on a point has no ${key}: leave this out.`]);
  if (body.hold === "spread" || body.hold === "smeared") {
    const message = `A body on a point cannot be ${body.hold}: write "hold": "rigid".`;
    problems.push(["hold", message]);
  }
  return problems;
}

function placeProblems(body: RawFile): Problem[] {
  if (Object.hasOwn(body, "at")) return [];
  const message = "Missing: write the centre of gravity [x, y, z], for example [-30, 0, 50].";
  return [["at", message]];
}
