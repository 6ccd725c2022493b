/** A frame that stands on a bench, with one of everything that the samples in flight do not have. */

/** Two plates, a springy joint, a post, a member, a tied point, springs, a hinged support, a soft body. */
export const BENCH_FRAME = {
  version: 1,
  name: "bench",
  materials: {
    sheet: { kind: "isotropic", E: "70 GPa", nu: 0.33, density: 2.7, lossFactor: 0.01 },
    print: { kind: "isotropic", E: "2 GPa", nu: 0.35, density: 1.2, lossFactor: 0.05 },
  },
  plates: {
    low: {
      material: "sheet",
      thickness: "2 mm",
      z: 0,
      outline: [
        [-50, -30],
        [50, -30],
        [40, 30],
        [-50, 30],
      ],
    },
    high: {
      material: "print",
      thickness: "3 mm",
      z: 20,
      outline: [
        [-40, -25],
        [40, -25],
        [40, 25],
        [-40, 25],
      ],
    },
  },
  arms: {
    arm: {
      material: "print",
      thickness: "6 mm",
      root: [45, 0],
      tip: [140, 0],
      width: [20, 12],
      joint: { kind: "one piece", plate: "low" },
    },
  },
  points: { hinge: [-45, 0, 0], mast: [-30, 10, 0], top: [-30, 10, 60], side: [-60, 40, 40] },
  standoffs: {
    post: {
      at: [
        [30, 18],
        [30, -18],
        [-30, -18],
      ],
      between: ["low", "high"],
      section: { shape: "rod", diameter: "4 mm" },
      material: "sheet",
    },
  },
  joints: {
    screw: {
      plates: ["low", "high"],
      at: [-30, 18],
      stiffness: { x: "2 kN/mm", z: "1 kN/mm" },
    },
  },
  members: {
    mast: {
      from: "mast",
      to: "top",
      section: { shape: "rod", diameter: "6 mm" },
      material: "print",
    },
    stay: {
      from: "top",
      to: "side",
      section: { shape: "rod", diameter: "3 mm" },
      material: "print",
    },
  },
  links: {
    foot: { point: "mast", plate: "low", footprint: "10 mm" },
    hinge: { point: "hinge", plate: "low", footprint: "12 mm" },
  },
  springs: { stay: { between: ["side", "ground"], y: "3 N/mm", lossFactor: 0.1 } },
  supports: { hinge: { point: "hinge", fix: ["x", "z", "ry", "rz"] } },
  bodies: {
    lump: {
      mass: "40 g",
      at: [0, 0, 31],
      size: [30, 20, 18],
      on: "high",
      hold: "soft",
      soft: { bounce: "60 Hz", lossFactor: 0.2 },
    },
    box: { mass: "15 g", at: [10, 0, 6], size: [24, 24, 8], on: "low", hold: "spread" },
    end: { mass: "20 g", at: [140, 0, 10], on: "arm" },
  },
};
