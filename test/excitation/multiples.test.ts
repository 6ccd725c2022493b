/** Orders that share a multiple of the motor's speed. */

import { expect, test } from "vitest";
import { excite } from "../../src/excitation/excite.ts";
import { multiplesOf } from "../../src/excitation/multiples.ts";
import { buildModel } from "../../src/model/build.ts";
import { crossFrame } from "../modes/toys.ts";

test("multiples come ascending, each once, with all its orders", () => {
  const orders = [
    { order: 3, of: "rotating moment", fraction: 0.01 },
    { order: 0.5, of: "side force", fraction: 0.01 },
  ];
  const file = crossFrame({}, { excitation: { orders } });
  const e = excite(file, buildModel(file).rotors, 0.4);
  if (!e) throw new Error("the toy has motors");
  const multiples = multiplesOf(e.orders);
  expect(multiples).toEqual([
    { multiple: 0.5, orders: [7] },
    { multiple: 1, orders: [0, 1] },
    { multiple: 3, orders: [2, 3, 6] },
    { multiple: 6, orders: [4, 5] },
  ]);
  for (const { multiple, orders: indices } of multiples) {
    for (const i of indices) expect(e.orders[i].order).toBe(multiple);
  }
});

test("no orders, no multiples", () => {
  expect(multiplesOf([])).toEqual([]);
});
