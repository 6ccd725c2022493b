/** Two small structures, invented, as frame files: four equal arms, and nothing equal at all. */

import type { FrameFile } from "../../src/frame/types.ts";
import { crossFrame, frameOf, PROPULSION } from "../modes/toys.ts";

const ARM_LENGTH = 78;

/**
 * Four equal arms about a heavy hub that carries a board on soft legs: modes in pairs, which half a gram
 * on one arm's tip parts by less than a per cent. Loss factors differ from mode to mode.
 */
export function fourArms(): FrameFile {
  const corners = [
    ["front left", 1, 1],
    ["front right", 1, -1],
    ["rear left", -1, 1],
    ["rear right", -1, -1],
  ] as const;
  const arms = corners.map(([name, x, y]) => [
    `${name} arm`,
    {
      material: "metal",
      thickness: 4,
      root: [0, 0],
      tip: [x * ARM_LENGTH, y * ARM_LENGTH],
      width: [16, 12],
      elements: 3,
      joint: { kind: "point", point: "hub" },
    },
  ]);
  return frameOf({
    materials: {
      metal: { kind: "isotropic", E: "70 GPa", nu: 0.33, density: "2.7 g/cm^3", lossFactor: 0.01 },
    },
    points: { hub: [0, 0, 0], board: [0, 0, 8] },
    arms: Object.fromEntries(arms),
    springs: {
      legs: {
        between: ["board", "hub"],
        x: "30 N/mm",
        y: "30 N/mm",
        z: "80 N/mm",
        rx: "20 N m/rad",
        ry: "20 N m/rad",
        rz: "15 N m/rad",
        lossFactor: 0.2,
      },
    },
    bodies: {
      deck: { mass: "150 g", on: "hub", inertia: { xx: 9e4, yy: 9e4, zz: 15e4 } },
      stack: { mass: "25 g", on: "board", inertia: { xx: 3e3, yy: 3e3, zz: 5e3 } },
      tag: { mass: "0.5 g", at: [ARM_LENGTH, ARM_LENGTH, 0], on: "front left arm" },
    },
    propulsion: PROPULSION,
  });
}

/** A hub plate with four arms, a lump to one side and a soft battery; boards read at three places. */
export function lopsidedCross(): FrameFile {
  const lump = { mass: "60 g", at: [40, 24, 12], size: [20, 18, 16], on: "hub" };
  const battery = {
    mass: "150 g",
    at: [-5, -3, 24],
    size: [70, 36, 34],
    on: "hub",
    hold: "soft",
    soft: { bounce: "70 Hz", lossFactor: 0.2 },
  };
  return crossFrame(
    { lossFactor: 0.01, armElements: 2 },
    { assemblyLossFactor: 0.01, bodies: { lump, battery } },
  );
}
