/** Derivatives from element matrices against whole solutions of changed frames. */

import { describe, expect, test } from "vitest";
import { parseFrameSource, readFrameSource } from "../../src/frame/change.ts";
import { inputsOf } from "../../src/frame/inputs.ts";
import { matrixDerivatives } from "../../src/reduced/derivatives.ts";
import { inputFrame, stepOf } from "../../src/reduced/input-frame.ts";
import { meshed } from "../../src/reduced/meshed.ts";
import { modeRows } from "../../src/reduced/projected.ts";
import { ownSlopes } from "../../src/reduced/slopes.ts";
import { bySolutions, derivativesOf, inputNamed, largestError, subject } from "./differenced.ts";

const three = subject(readFrameSource("frames/three-inch.jsonc"), 12, 16e-3);
const five = subject(readFrameSource("frames/five-inch.jsonc"), 10, 20e-3);
const STEPS = { position: 2e-5, other: 2e-3 };

// One of each kind, and of each way in which an input reaches the matrices: constants of plates and
// beams, ties, pads, springs, masses; arms at 45 degrees, where a hair decides which unknown is given up.
describe.each([
  [
    "three-inch",
    three,
    [
      "modulusFactors.carbon-plate-quasi-isotropic",
      "plates.base.thickness",
      "arms.arm.tip#1",
      "standoffs.post.at#1",
      "bodies.battery.at#3",
      "bodies.screws.mass",
    ],
  ],
  [
    "five-inch",
    five,
    [
      "plates.middle.thickness",
      "arms.arm.thickness",
      "arms.arm.root#1",
      "arms.arm.joint.kappa",
      "bodies.battery.soft.bounce",
      "stack.at#1",
    ],
  ],
] as const)("%s sample", (_, of, names) => {
  test.each(names)("%s", (name) => {
    const input = inputNamed(of, name);
    const step = input.kind === "position" ? STEPS.position : STEPS.other * input.value;
    const found = ownSlopes(of.lambda, derivativesOf(of, input));
    expect(largestError(of, input, found, bySolutions(of, input, step))).toBeLessThan(1e-5);
  });
});

test("every input of the three-inch sample has a derivative", () => {
  const base = meshed(three.drawn.model, three.drawn.mesh);
  const rows = modeRows(three.phi, three.count);
  const inputs = inputsOf(three.source).filter(({ path }) => path[0] !== "candidates");
  expect(inputs.length).toBeGreaterThan(40);
  for (const input of inputs) {
    const at = inputFrame(three.source, input, three.meshSize);
    const found = matrixDerivatives(base, rows, three.lambda, at, stepOf(input));
    if ("notSmooth" in found) throw new Error(`${input.name}: ${found.notSmooth}`);
    const slopes = ownSlopes(three.lambda, found);
    const isStill = input.kind === "damping" || input.name.endsWith(".at#2");
    const unit = input.kind === "position" ? 1e-3 : input.value;
    const share = Math.max(...slopes.map((v, k) => Math.abs(v * unit) / three.lambda[k]));
    // Damping moves no frequency, nor to first order does what leaves the middle line sideways.
    if (isStill && input.path[0] !== "standoffs") expect(share).toBeLessThan(1e-7);
    else expect(share).toBeGreaterThan(1e-4);
  }
});

test("where the drawing changes by a jump there is no derivative, and that is said", () => {
  // exactly ten elements long: a hair more asks for eleven
  const arm = { root: [0, 0], tip: [200, 0], thickness: 3, width: 20, material: "steel" };
  const frame = {
    version: 1,
    name: "strip",
    meshSize: 20,
    points: { root: [0, 0, 0] },
    arms: { strip: { ...arm, joint: { kind: "point", point: "root" } } },
    supports: { wall: { point: "root", fix: "all" } },
  };
  const of = subject(parseFrameSource(JSON.stringify(frame), "strip.jsonc"), 3);
  const input = inputNamed(of, "arms.strip.tip#1");
  const found = matrixDerivatives(
    meshed(of.drawn.model, of.drawn.mesh),
    modeRows(of.phi, of.count),
    of.lambda,
    inputFrame(of.source, input, of.meshSize),
    stepOf(input),
  );
  expect(found).toEqual({ notSmooth: "the mesh has other nodes" });
});
