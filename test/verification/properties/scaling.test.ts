/** The equations of motion have no units: laws of scale on random frames. */

import fc from "fast-check";
import { describe, test } from "vitest";
import { memberFrame } from "./member-frames.ts";
import { fileOf, multirotor } from "./multirotors.ts";
import { type Scale, scaled } from "./quantities.ts";
import { forAll, whole } from "./runs.ts";
import { ALL, eigenvalues, expectSame } from "./spectra.ts";

/** Factors from 0.1 to 10, none of them a power of two. */
const factor = whole(-9, 9).map((tenths) => 10 ** (tenths / 9));

/** omega^2 goes with E / (rho L^2). */
const LAWS: readonly [
  law: string,
  scale: (f: number) => Scale,
  eigenvalue: (f: number) => number,
][] = [
  ["s times as large: omega / s", (s) => ({ length: s }), (s) => s ** -2],
  ["every modulus times e: omega sqrt(e)", (e) => ({ modulus: e }), (e) => e],
  ["every mass times m: omega / sqrt(m)", (m) => ({ mass: m }), (m) => 1 / m],
  ["moduli and masses together: no change", (f) => ({ modulus: f, mass: f }), () => 1],
];

describe.each(LAWS)("%s", (_, scale, eigenvalue) => {
  test("a frame of members, all modes", () => {
    forAll(fc.tuple(memberFrame(), factor), 10, ([frame, f]) => {
      const expected = eigenvalues(frame, ALL).map((l) => l * eigenvalue(f));
      expectSame(eigenvalues(scaled(frame, scale(f)), ALL), expected);
    });
  });

  test("a multirotor, first modes", () => {
    forAll(fc.tuple(multirotor({ scalable: true }), factor), 2, ([craft, f]) => {
      const frame = fileOf(craft);
      const expected = eigenvalues(frame, 14).map((l) => l * eigenvalue(f));
      expectSame(eigenvalues(scaled(frame, scale(f)), 14), expected);
    });
  });
});
