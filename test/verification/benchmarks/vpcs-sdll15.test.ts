/** Two ways to write the mass off the axis. */

import { test } from "vitest";
import { expectClose } from "../compare.ts";
import { frequencies } from "../frequencies.ts";
import { slenderCantilever } from "./vpcs-sdll15.ts";

test("a mass at the end of a rigid link moves as one placed off the point it sits on", () => {
  const written = slenderCantilever(1);
  const linked = {
    ...written,
    points: { root: [0, 0, 0], tip: ["10 m", 0, 0], side: ["10 m", "1 m", 0] },
    links: { arm: { points: ["tip", "side"] } },
    bodies: { mass: { mass: "1000 kg", on: "side" } },
  };
  expectClose(frequencies(linked, { modes: 10 }), frequencies(written, { modes: 10 }), 1e-8);
});

test("left, right, above or below the axis make no difference", () => {
  const at = (y: number, z: number) => ({
    ...slenderCantilever(0),
    bodies: { mass: { mass: "1000 kg", at: ["10 m", `${y} m`, `${z} m`], on: "tip" } },
  });
  const left = frequencies(at(1, 0), { modes: 10 });
  for (const [y, z] of [
    [-1, 0],
    [0, 1],
    [0, -1],
    [0.6, -0.8],
  ]) {
    expectClose(frequencies(at(y, z), { modes: 10 }), left, 1e-8);
  }
});
