/** What is left of an imbalance after balancing to a grade, from the frame file to the force. */

import { type Prepared, prepare } from "../../../src/analyse.ts";
import { highestFrequency } from "../../../src/excitation/excite.ts";
import { type Case, type Check, type Family, within } from "../case.ts";
import { block, read } from "./block.ts";

interface Rotor {
  readonly name: string;
  /** kg */
  readonly mass: number;
  readonly rpm: number;
  /** mm/s */
  readonly grade: number;
  readonly source: string;
  /** um, g mm, N, Hz */
  readonly expected: readonly [string, string, string, string];
}

const STANDARD = "ISO 21940-11:2016, definition of the balance quality grade";
const DEFINITION = `${STANDARD}; values worked from it.`;

const ROTORS: readonly Rotor[] = [
  {
    name: "turbine rotor",
    mass: 3600,
    rpm: 3000,
    grade: 2.5,
    source: `${STANDARD}; a worked example in the style of its annex (about 28 600 g mm, from memory).`,
    expected: ["7.957747155", "28647.889756541", "2827.433388231", "50.0"],
  },
  {
    name: "small rotor A",
    mass: 0.05,
    rpm: 12000,
    grade: 6.3,
    source: DEFINITION,
    expected: ["5.013380707", "0.250669035", "0.395840674", "200.0"],
  },
  {
    name: "small rotor B",
    mass: 0.02,
    rpm: 30000,
    grade: 6.3,
    source: DEFINITION,
    expected: ["2.005352283", "0.040107046", "0.395840674", "500.0"],
  },
  {
    name: "small rotor C",
    mass: 0.012,
    rpm: 24000,
    grade: 16,
    source: DEFINITION,
    expected: ["6.366197724", "0.076394373", "0.482548632", "400.0"],
  },
  {
    name: "small rotor D",
    mass: 0.0075,
    rpm: 36000,
    grade: 40,
    source: DEFINITION,
    expected: ["10.610329539", "0.079577472", "1.130973355", "600.0"],
  },
];

/** A rotor of mass m (kg) balanced to a grade (mm/s) at full speed (rpm); nothing is solved. */
export function balancedRotor(m: number, grade: number, rpm: number): Prepared {
  const frame = block({ m: 1, k: 4000 }, ["x"], rpm / 60, { balanceGrade: `${grade} mm/s` });
  const { propulsion } = frame;
  return prepare(
    read({
      ...frame,
      propulsion: {
        ...propulsion,
        // bell, propeller and nut turn; the motor's other half does not
        motor: { ...propulsion.motor, mass: `${1.6 * m} kg`, bellMass: `${0.8 * m} kg` },
        propeller: { ...propulsion.propeller, mass: `${0.15 * m} kg`, nutMass: `${0.05 * m} kg` },
      },
    }),
  );
}

const QUANTITIES = [
  ["permissible eccentricity", "um"],
  ["permissible unbalance", "g mm"],
  ["force at full speed", "N"],
  ["frequency once per turn", "Hz"],
] as const;

function unbalanceCase({ name, mass, rpm, grade, source, expected }: Rotor): Case {
  return {
    name: `Unbalance, ${name}`,
    source,
    model: `A frame file with a rotor of ${mass} kg (bell, propeller and nut) at ${rpm} rpm, balanced to G ${grade}: e = G/omega, U = e m, F = U omega^2.`,
    why: "Exact; half a unit of the last digit printed at most, 1.3e-8.",
    checks: QUANTITIES.map(
      ([quantity, unit], i): Check => ({
        quantity,
        unit,
        reference: expected[i],
        tolerance: within(1.3e-8),
      }),
    ),
    solve: () => {
      const { excitation } = balancedRotor(mass, grade, rpm);
      if (!excitation) throw new Error("no motor");
      const U = excitation.orders[0].coefficient;
      const omega = excitation.speeds.full;
      return [(U / mass) * 1e6, U * 1e6, U * omega ** 2, highestFrequency(excitation)];
    },
  };
}

export const UNBALANCE: Family = {
  title: "Unbalance left by a balance grade",
  source: "ISO 21940-11",
  cases: ROTORS.map(unbalanceCase),
};
