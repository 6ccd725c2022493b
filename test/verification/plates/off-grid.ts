/** Outlines that do not fit the grid of their bounding box, and a warp that does not. */

import type { Family } from "../case.ts";
import { shapeCase } from "./shape-cases.ts";

export const OFF_GRID: Family = {
  title: "Outlines that do not fit the grid",
  source: "Ritz, converged",
  cases: [
    shapeCase({
      shape: "tabs",
      name: "Rectangle with two tabs",
      measured: [0.15, 0.19, 0.26, 0.3, 0.41, 0.27, 0.37, 0.52],
      why: "Inward corners at the tabs; under half of it with 48 cells.",
    }),
    shapeCase({
      shape: "chamfers",
      name: "Rectangle with chamfered corners",
      measured: [0.05, 0.02, 0.03, 0.08, 0.02, 0.11, 0.09, 0.1],
      why: "Cut cells take twist from their members, which is of first order.",
    }),
    shapeCase({
      shape: "L",
      name: "L-shaped plate",
      measured: [0.43, 0.95, 0.07, 0.55, 0.53, 0.26, 0.08, 0.53],
      why: "Infinite curvature at the inward corner, which lies inside a cell; 0.38 % at most with 48 cells.",
    }),
    shapeCase({
      shape: "held L",
      name: "L-shaped plate, one end clamped",
      measured: [0.18, 0.41, 0.8, 0.22, 0.15, 0.67, 0.36, 0.15],
      why: "The inward corner, as for the free plate; 0.30 % at most with 48 cells.",
    }),
    shapeCase({
      shape: "warp askew",
      name: "Square with its warp at 30 degrees",
      measured: [0.07, 0.07, 0.37, 0.22, 0.25, 0.47, 0.39, 0.5],
      why: "Second order; D16 and D26 act on the mean curvatures of the cells.",
    }),
  ],
};
