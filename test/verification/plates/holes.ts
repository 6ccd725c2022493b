/** Plates with lightening holes that lie anywhere on the grid. */

import type { Family } from "../case.ts";
import { shapeCase } from "./shape-cases.ts";

export const HOLES: Family = {
  title: "Plates with holes",
  source: "Ritz, converged",
  cases: [
    shapeCase({
      shape: "round hole",
      name: "Square with a round hole",
      measured: [0.1, 0.04, 0.23, 0.04, 0.04, 0.13, 0.13, 0.05],
      why: "The model's hole is a polygon of 24 sides and the same area.",
    }),
    shapeCase({
      shape: "six round holes",
      name: "Rectangle with six round holes",
      measured: [0.04, 0.41, 1.15, 0.06, 0.54, 1.17, 0.49, 0.47],
      why: "Webs and rims of 10.5 to 16 mm, two to three cells.",
    }),
    shapeCase({
      shape: "window",
      name: "Square with a window",
      measured: [0.23, 0.37, 0.77, 0.28, 0.07, 2.58, 1.4, 0.28],
      why: "Inward corners, all inside cells, make it stiff; 1 % at most with 48 cells.",
    }),
    shapeCase({
      shape: "four windows",
      name: "Rectangle with four windows",
      measured: [0.33, 1.97, 3.17, 1.46, 1.64, 1.58, 2.34, 0.64],
      why: "16 inward corners and webs of two to four cells make it stiff; 1 % at most with 48 cells.",
    }),
    shapeCase({
      shape: "deck",
      name: "Deck with chamfers, windows and a round hole",
      measured: [0.11, 1.88, 0.85, 1.39, 1.7, 0.56, 2.24, 0.34],
      why: "Inward corners and rims of three cells make it stiff; 0.7 % at most with 48 cells.",
    }),
    shapeCase({
      shape: "deck",
      name: "Deck with chamfers, windows and a round hole, default mesh",
      defaultMesh: true,
      measured: [0.31, 2.54, 1.31, 1.79, 3.79, 0.88, 3.92, 0.62],
      why: "What a user gets who asks for no mesh size: rims of two cells.",
    }),
  ],
};
