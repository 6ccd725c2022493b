/** A random frame turned, mirrored, moved or written in another order: every eigenvalue stays. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { solveFrame } from "../frequencies.ts";
import { memberFrame } from "./member-frames.ts";
import {
  movedFrame,
  order,
  renamedAxes,
  renumbered,
  shuffled,
  turnedFrame,
} from "./member-moves.ts";
import {
  DIAGONAL,
  HALF,
  movedMultirotor,
  outlinesFrom,
  QUARTER,
  turnedMultirotor,
  writtenOut,
} from "./multirotor-moves.ts";
import { fileOf, multirotor } from "./multirotors.ts";
import { forAll, index, whole } from "./runs.ts";
import { MIRROR_X, MIRROR_Y, rotation } from "./space.ts";
import { ALL, eigenvalues, expectSame } from "./spectra.ts";

const far = fc.tuple(whole(-900, 900), whole(-900, 900), whole(-900, 900));

describe("all eigenvalues of a frame of members stay", () => {
  const expectUnchanged = (changed: object, frame: object) =>
    expectSame(eigenvalues(changed, ALL), eigenvalues(frame, ALL));

  test("when it is turned in space by any angles", () => {
    forAll(fc.tuple(memberFrame({ isotropic: true }), rotation), 25, ([frame, Q]) => {
      expectUnchanged(turnedFrame(frame, Q), frame);
    });
  });

  test("when the axes are renamed, x to y to z to x", () => {
    forAll(memberFrame(), 15, (frame) => expectUnchanged(renamedAxes(frame), frame));
  });

  test("when it is mirrored left to right, or front to rear", () => {
    forAll(fc.tuple(memberFrame(), fc.constantFrom(MIRROR_X, MIRROR_Y)), 15, ([frame, Q]) => {
      expectUnchanged(turnedFrame(frame, Q), frame);
    });
  });

  test("when it is moved", () => {
    forAll(fc.tuple(memberFrame(), far), 15, ([frame, by]) => {
      expectUnchanged(movedFrame(frame, by), frame);
    });
  });

  test("when its parts are listed in another order and its members from the other end", () => {
    forAll(fc.tuple(memberFrame(), order), 20, ([frame, by]) => {
      expectUnchanged(renumbered(frame, by), frame);
    });
  });
});

describe("the lowest eigenvalues of a multirotor stay", () => {
  const MODES = 14;
  const expectUnchanged = (changed: object, frame: object) =>
    expectSame(eigenvalues(changed, MODES), eigenvalues(frame, MODES));

  test("when it is turned by quarters or mirrored, plies and all", () => {
    const turns = fc.constantFrom(QUARTER, HALF, DIAGONAL, MIRROR_X, MIRROR_Y);
    forAll(fc.tuple(multirotor(), turns), 7, ([craft, Q]) => {
      expectUnchanged(fileOf(turnedMultirotor(craft, Q)), fileOf(craft));
    });
  });

  test("when mirrored copies are written out, and all is moved", () => {
    forAll(fc.tuple(multirotor(), far), 3, ([craft, by]) => {
      expectUnchanged(fileOf(movedMultirotor(writtenOut(craft), by)), fileOf(craft));
    });
  });

  test("when parts and corners are listed in another order", () => {
    const orders = fc.tuple(order, index(8), fc.boolean());
    forAll(fc.tuple(multirotor(), orders), 3, ([craft, [{ keys }, corner, reversed]]) => {
      const changed = shuffled(fileOf(outlinesFrom(craft, corner, reversed)), keys);
      expectUnchanged(changed, fileOf(craft));
    });
  });
});

describe("a measure that falls exactly on a limit of the program", () => {
  const sheet = { kind: "isotropic", E: 70, nu: 0.3, density: 2.7 };
  const places = Array.from({ length: 12 }, (_, i) => [7.3 * i, -3.1 * i] as const);

  /** A plate of 80 mm x 60 mm about (x, y) with something on it. */
  function plateAt(x: number, y: number, more: object): object {
    const outline = [
      [x + 40, y + 30],
      [x - 40, y + 30],
      [x - 40, y - 30],
      [x + 40, y - 30],
    ];
    return {
      meshSize: 10,
      materials: { sheet },
      plates: { base: { material: "sheet", thickness: 2, z: 0, outline } },
      ...more,
    };
  }

  function expectAlikeEverywhere(more: (x: number, y: number) => object) {
    const [first, ...others] = places.map(([x, y]) => {
      const { modes } = solveFrame(plateAt(x, y, more(x, y)), { modes: 6 });
      return [...modes.lambda];
    });
    for (const other of others) expectSame(other, first);
  }

  test.each([18, 30])("a spread body of %d mm, half-way between two numbers of pieces", (side) => {
    expectAlikeEverywhere((x, y) => ({
      bodies: {
        pack: {
          mass: 100,
          at: [x + 3, y + 2, 10],
          size: [side, side, 15],
          on: "base",
          hold: "spread",
        },
      },
    }));
  });

  test.each([
    [100, 75],
    [50, 75],
  ])("a body of %d mm x %d mm, whose feet stand on the border of the plate", (a, b) => {
    expectAlikeEverywhere((x, y) => ({
      bodies: { pack: { mass: 100, at: [x, y, 10], size: [a, b, 15], on: "base" } },
    }));
  });

  test("an arm with exactly half of its inserted end on the plate", () => {
    expectAlikeEverywhere((x, y) => ({
      arms: {
        arm: {
          material: "sheet",
          thickness: 4,
          z: 3,
          root: [x + 46, y],
          tip: [x + 120, y],
          width: 12,
          joint: { kind: "bolted", plates: "base", inserted: 12 },
        },
      },
    }));
  });

  test("the places differ in their rounding", () => {
    expect(new Set(places.map(([x]) => x / 1e3 + 0.015 - (x / 1e3 - 0.015))).size).toBeGreaterThan(
      1,
    );
  });
});
