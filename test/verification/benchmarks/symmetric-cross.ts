/**
 * The symmetric cross: a whole toy airframe in closed form. Symmetry splits its spectrum into scalar
 * equations, one for each family of motions.
 */

import { type Case, type Check, type Family, justAbove, within } from "../case.ts";
import { solveFrame } from "../frequencies.ts";
import { CROSS, crossOfArms, crossOfMembers, ELEMENTS } from "./cross-frames.ts";

/** Below 650 Hz: 1e-9 at most (rock, whose arms twist), the rest is rounding. */
const LOW = justAbove(2e-9);
/** (x/32)^4/1440 = 1.6e-7 for the second bending; a little more where arms also twist or stretch. */
const BENDING = justAbove(2.5e-7);
/** (k h)^2/24 = 1e-4 for a quarter wave over 32 elements. */
const TWISTING = justAbove(1.1e-4);
/** (k h)^2/24 times the arm's share of the kinetic energy, a tenth: 1.2e-6. */
const STRETCHING = justAbove(1.5e-6);

const hertz = (quantity: string, reference: string, tolerance: Check["tolerance"]): Check => ({
  quantity,
  unit: "Hz",
  reference,
  tolerance,
});

/** The whole elastic spectrum in its order, up to the stretching of the arms. */
const SPECTRUM: readonly Check[] = [
  hertz("saddle 1", "111.5425549407", LOW),
  hertz("umbrella 1", "135.1089341207", LOW),
  hertz("rock 1", "253.3842954698", LOW),
  hertz("rock 1, its pair", "253.3842954698", LOW),
  hertz("scissor 1", "267.7021318576", LOW),
  hertz("sway 1", "291.9353927959", LOW),
  hertz("sway 1, its pair", "291.9353927959", LOW),
  hertz("pinwheel 1", "641.7010239873", LOW),
  hertz("saddle 2", "1855.423411684", BENDING),
  hertz("rock 2", "1873.962882727", BENDING),
  hertz("rock 2, its pair", "1873.962882727", BENDING),
  hertz("umbrella 2", "1886.336020989", BENDING),
  hertz("arms twist, hub at rest", "2696.841200923", TWISTING),
  hertz("arms twist, hub at rest, its pair", "2696.841200923", TWISTING),
  hertz("rock 3", "2698.450164967", TWISTING),
  hertz("rock 3, its pair", "2698.450164967", TWISTING),
  hertz("scissor 2", "4453.016188042", BENDING),
  hertz("sway 2", "4466.678499714", BENDING),
  hertz("sway 2, its pair", "4466.678499714", BENDING),
  hertz("pinwheel 2", "4504.048319511", BENDING),
  hertz("arms stretch, hub at rest", "4833.916136559", STRETCHING),
  hertz("arms stretch, hub at rest, its pair", "4833.916136559", STRETCHING),
];

/** 4 (32 g + 1.55 g/cm^3 * 1.2 cm * 0.5 cm * 11 cm) + 300 g. */
const MASS: Check = {
  quantity: "total mass",
  unit: "kg",
  reference: "0.46892",
  tolerance: within(1e-12),
};

const DATA =
  "Four arms of 110 mm at right angles, 12 mm wide and 5 mm high, E = 60 GPa, G = 5 GPa, rho = 1550 " +
  "kg/m^3; 32 g at each tip; a rigid hub of 300 g with Jxx = Jyy = 200 000 and Jzz = 350 000 g mm^2; free in " +
  `space; no rotary inertia in bending. ${ELEMENTS} elements per arm.`;
const EQUATIONS =
  "Saddle and scissor: a cantilever with a tip mass. Umbrella: root slope zero, a quarter of the hub's " +
  "mass. Pinwheel: root displacement zero, a quarter of the hub's yaw inertia. Rock: " +
  "-omega^2 Jxx + 2 K_bend - 2 G J k tan(k L) = 0, k = omega sqrt(rho Ip/(G J)). Sway: -omega^2 m_hub + " +
  "2 K_bend + 2 K_axial = 0.";

function crossCase(written: string, frame: object): Case {
  return {
    name: `Symmetric cross, written with ${written}`,
    source: "Closed form: one scalar equation for each family, roots in 40-digit arithmetic.",
    model: `${DATA} ${EQUATIONS}`,
    why:
      "Consistent elements lie above the continuous arm by (x/32)^4/1440 in bending, 1.6e-7 for the second " +
      "bending, and (k h)^2/24 in twisting and stretching, 1e-4 for the quarter wave of an arm that " +
      "twists, each times its share of the kinetic energy; below 650 Hz that is 1e-9, as is rounding. " +
      "The mass is exact but for rounding.",
    checks: [...SPECTRUM, MASS],
    solve: () => {
      const { modes, mass } = solveFrame(frame, { modes: SPECTRUM.length });
      return [...modes.described.map((mode) => mode.frequency), mass.mass];
    },
  };
}

export const SYMMETRIC_CROSS: Family = {
  title: "Free symmetric cross with hub and tip masses",
  source: "closed form",
  cases: [
    crossCase("arms", crossOfArms(CROSS)),
    crossCase("points and members", crossOfMembers(CROSS)),
  ],
};
