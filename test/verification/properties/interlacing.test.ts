/**
 * Separation theorems on random frames. For K and M symmetric, M > 0, all eigenvalues in order:
 * mass of rank r lowers each, by at most r places; stiffness of rank r, or r constraints, raises each,
 * by at most r places (A. Cauchy, H. Poincare; R. Courant & D. Hilbert, Methods of Mathematical
 * Physics, ch. I and VI, from memory).
 */

import fc from "fast-check";
import { describe, test } from "vitest";
import { type Change, heavier, joinedPoints, springToGround, support } from "./changes.ts";
import { memberFrame } from "./member-frames.ts";
import { fileOf, multirotor } from "./multirotors.ts";
import { forAll } from "./runs.ts";
import { ALL, eigenvalues, expectInterlaced } from "./spectra.ts";

describe("every eigenvalue of a frame of members", () => {
  test("falls when mass is added, by as many places as its rank", () => {
    forAll(fc.tuple(memberFrame(), heavier), 20, ([frame, { rank, apply }]) => {
      expectInterlaced(eigenvalues(apply(frame), ALL), eigenvalues(frame, ALL), rank);
    });
  });

  test.each<[string, fc.Arbitrary<Change>]>([
    ["springs to the ground are", springToGround],
    ["a support is", support],
    ["a spring, a member or a link between two points is", joinedPoints],
  ])("rises when %s added, by as many places as its rank", (_, change) => {
    forAll(fc.tuple(memberFrame(), change), 20, ([frame, { rank, apply }]) => {
      expectInterlaced(eigenvalues(frame, ALL), eigenvalues(apply(frame), ALL), rank);
    });
  });
});

describe("the lowest eigenvalues of a multirotor", () => {
  const MODES = 16;

  test("fall when mass is added at a point of a plate", () => {
    forAll(fc.tuple(multirotor(), heavier), 3, ([craft, { rank, apply }]) => {
      const frame = { ...fileOf(craft), points: craft.points };
      expectInterlaced(eigenvalues(apply(frame), MODES), eigenvalues(frame, MODES), rank);
    });
  });

  test.each<[string, fc.Arbitrary<Change>]>([
    ["springs", springToGround],
    ["a support", support],
  ])("rise when a point of a plate is held by %s", (_, change) => {
    forAll(fc.tuple(multirotor(), change), 3, ([craft, { rank, apply }]) => {
      const frame = { ...fileOf(craft), points: craft.points };
      expectInterlaced(eigenvalues(frame, MODES), eigenvalues(apply(frame), MODES), rank);
    });
  });
});
