import { CLASS_SIZES, type ClassSizes, type SizeClass } from "./starter-classes.ts";

/**
 * The text of a new frame file: complete, valid and commented, with typical sizes of its class for
 * the builder to replace. `name` is the name of the frame. Material names are those of the library.
 */
export function starterFrame(sizeClass: SizeClass, name: string): string {
  const sizes = CLASS_SIZES[sizeClass];
  const sections = [
    platesText(sizes),
    armsText(sizes),
    standoffsText(sizes),
    bodiesText(sizes),
    propulsionText(sizes),
    stackText(sizes),
    candidatesText(sizes),
  ];
  return `// A ${sizeClass} frame to start from. The numbers are typical of the class (common practice, no
// source): measure and weigh your own parts and replace them one by one.
// Axes: x forward, y left, z up; the origin is the middle of the four motors, half way through the
// arms. Numbers without a unit are millimetres, grams and degrees; or write the unit: "5 mm".
{
  "version": 1,
  "name": ${JSON.stringify(name)},
  "notes": "Typical ${sizeClass} frame, not measured yet.",

${sections.join(",\n\n")}
}
`;
}

function platesText({ arm, bottom, middle, top, post }: ClassSizes): string {
  const bottomZ = -(arm.thickness + bottom.thickness) / 2;
  const middleZ = (arm.thickness + middle.thickness) / 2;
  const topZ = middleZ + middle.thickness / 2 + post.length + top.thickness / 2;
  return `  "plates": {
    // Bottom and middle plate hold the arms between them. z is the height of the middle of a plate:
    // half the arm's thickness and half the plate's away from 0.
    "bottom": {
      "material": "carbon-plate-0-90", // woven stock, fibres along x and y
      "thickness": "${bottom.thickness} mm",
      "z": ${bottomZ},
      "symmetry": "all four corners", // only the front-left quarter is listed
      "outline": ${pairs(bottom.outline)},
      "fill": "85 %" // what is left between screw holes and cut-outs; weigh the plate to find out
    },
    "middle": {
      "material": "carbon-plate-0-90",
      "thickness": "${middle.thickness} mm",
      "z": ${middleZ},
      "symmetry": "all four corners",
      "outline": ${pairs(middle.outline)},
      "fill": "78 %"
    },
    "top": {
      "material": "carbon-plate-0-90",
      "thickness": "${top.thickness} mm",
      "z": ${topZ},
      "symmetry": "all four corners",
      "outline": ${pairs(top.outline)},
      "fill": "75 %"
    }
  }`;
}

function armsText({ motorAt, rootAt, arm }: ClassSizes): string {
  const [root, tip] = arm.width;
  return `  "arms": {
    "arm": {
      // carbon-plate-0-90 if the cloth runs along the arm; this one is the same in every direction
      "material": "carbon-plate-quasi-isotropic",
      "thickness": "${arm.thickness} mm", // matters most of all: measure it
      "root": [${rootAt}, ${rootAt}], // where the arm comes out of the plates
      "tip": [${motorAt}, ${motorAt}], // the motor axis; motor to motor across the frame: ${arm.wheelbase}
      "copies": "all four corners",
      "width": [${root}, ${tip}], // at the root and at the motor
      "motorPad": "${arm.pad} mm", // the disc under the motor
      // for arms cut in one piece with a plate: { "kind": "one piece", "plate": "bottom" }
      "joint": { "kind": "bolted", "plates": ["bottom", "middle"], "inserted": "${arm.inserted} mm" }
    }
  }`;
}

function standoffsText({ post }: ClassSizes): string {
  return `  "standoffs": {
    // ${post.length} mm long; the length follows from the heights of the two plates.
    "post": {
      "at": ${pairs(post.at)},
      "copies": "all four corners",
      "between": ["middle", "top"],
      "section": { "shape": "tube", "outer": "${post.outer} mm", "bore": "${post.bore} mm" },
      "material": "aluminium-7075-t651"
    }
  }`;
}

function bodiesText(sizes: ClassSizes): string {
  const { arm, middle, top, post, battery, camera, transmitter } = sizes;
  const middleFace = arm.thickness / 2 + middle.thickness;
  const topFace = middleFace + post.length + top.thickness;
  const [noseX, noseY] = middle.outline[0];
  const [length, width, height] = battery.size;
  const cameraAt = `[${noseX - 6}, 0, ${middleFace + camera.size / 2 + 2}]`;
  const transmitterAt = `[${-Math.round(noseX * 0.6)}, 0, ${middleFace + 8}]`;
  const side = Math.min(width, 2 * Math.min(...top.outline.map(([, y]) => y)) + 6);
  return `  "bodies": {
    // "at" is the centre of gravity [x, y, z], "size" the box around the part.
    "camera": {
      "mass": "${camera.mass} g",
      "at": ${cameraAt},
      "size": [${camera.size}, ${camera.size}, ${camera.size}],
      "on": "middle",
      "hold": "spread", // adds mass but no stiffness: glued, taped, or in soft cheeks
      "footprint": [10, ${Math.min(camera.size, 2 * noseY - 2)}]
    },
    "video transmitter": {
      "mass": "${transmitter} g",
      "at": ${transmitterAt},
      "size": [24, 24, 8],
      "on": "middle",
      "hold": "spread"
    },
    "battery": {
      "mass": "${battery.mass} g",
      "at": [0, 0, ${topFace + 2 + height / 2}],
      "size": [${length}, ${width}, ${height}],
      "on": "top",
      "footprint": [${length}, ${side}],
      // Straps over rubber or foam: the battery bounces on its own, mostly at 20 to 80 Hz.
      "hold": "soft",
      "soft": { "bounce": "70 Hz", "lossFactor": 0.2 }
    },
    // Smeared masses are shared out evenly over the parts they are on.
    "wiring": { "mass": "${sizes.wiring} g", "on": ["middle"], "hold": "smeared" },
    "screws and prints": { "mass": "${sizes.fasteners} g", "on": ["bottom", "middle", "top"], "hold": "smeared" }
  }`;
}

function propulsionText({ motor, propeller, cells, hover }: ClassSizes): string {
  return `  "propulsion": {
    "frontLeftTurns": "anticlockwise", // that propeller, seen from above; neighbours the other way
    "motor": {
      "mass": "${motor.mass} g",
      "screwMass": "${motor.screws} g",
      "cgHeight": "${motor.cgHeight} mm", // above the middle of the arm
      "kv": "${motor.kv} rpm/V"
    },
    "propeller": {
      "mass": "${propeller.mass} g",
      "nutMass": "${propeller.nut} g",
      "diameter": "${propeller.inches} in",
      "blades": 3,
      "planeHeight": "${propeller.planeHeight} mm", // above the middle of the arm
      "thrustCoefficient": ${propeller.thrustCoefficient} // thrust = CT rho n^2 D^4; 0.11 to 0.18 for most
    },
    "cells": ${cells}
    // if you know the hover speed from a flight log: "speeds": { "hover": "${hover} rpm" }
  },

  // or "cruise", or "hard flying", or your own list of speeds with weights
  "flightMix": "mostly hover",

  // how it is flown: "rate", "self-level" or "both"; decides what counts in the ranking
  "control": { "use": "both" }`;
}

function stackText({ stack }: ClassSizes): string {
  const [length, width, height] = stack.size;
  return `  "stack": {
    "mass": "${stack.mass} g",
    "size": [${length}, ${width}, ${height}],
    "plate": "middle",
    "at": [0, 0],
    "height": "${height / 2 + 1} mm", // of its centre of gravity, from the face of the plate
    "chip": [0, 0, 0], // where the sensor sits on it, from the centre
    "holes": { "spacing": "${stack.holes} mm" }
    // on soft mounts at its holes: "isolators": "silicone grommets", or { "axial": "6 kN/m" } for each
  }`;
}

function candidatesText({ middle, stack }: ClassSizes): string {
  const rearX = -Math.round(middle.outline[0][0] * 0.45);
  const small = Math.min(stack.holes, 20);
  return `  // Places to compare. Without this section every place where the holes fit is looked at.
  "candidates": {
    "centre": { "plate": "middle", "at": [0, 0] },
    "rear bay": { "plate": "middle", "at": [${rearX}, 0], "holes": { "spacing": "${small} mm" } },
    "under the top plate": { "plate": "top", "at": [0, 0], "side": "below", "holes": { "spacing": "${small} mm" } }
  }`;
}

function pairs(points: readonly (readonly [number, number])[]): string {
  return `[${points.map(([x, y]) => `[${x}, ${y}]`).join(", ")}]`;
}
