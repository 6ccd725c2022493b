/** Mass, centre of gravity and inertia of a frame of members, weighed by hand from its drawing. */

import type { Member, MemberFrame } from "./member-frames.ts";
import { type Inertia, minus, turnInertia, type Vec3 } from "./space.ts";

/** kg, m, kg m^2 about the centre of gravity. */
export interface Weighed {
  readonly mass: number;
  readonly cg: Vec3;
  readonly inertia: Inertia;
}

/** Per length of a member, in kg/m and kg m: mass, and rotary inertia about its axis, across, and up. */
type Line = readonly [rhoA: number, rhoIp: number, rhoIy: number, rhoIz: number];

/** Every section by its textbook formula; sizes in mm, density in g/cm^3. */
function lineOf({ section: s }: Member, density: number): Line {
  const n = (key: string) => Number(s[key] ?? 0);
  // 1 g/cm^3 mm^2 = 1e-3 kg/m and 1 g/cm^3 mm^4 = 1e-9 kg m
  const of = (A: number, Iy: number, Iz: number, Ip = Iy + Iz): Line => [
    1e-3 * density * A,
    1e-9 * density * Ip,
    1e-9 * density * Iy,
    1e-9 * density * Iz,
  ];
  switch (s.shape) {
    case "rectangle": {
      const [w, h] = [n("width"), n("height")];
      return of(w * h, (w * h ** 3) / 12, (h * w ** 3) / 12);
    }
    case "tube":
    case "rod": {
      const [outer, bore] = s.shape === "rod" ? [n("diameter"), 0] : [n("outer"), n("bore")];
      const I = (Math.PI / 64) * (outer ** 4 - bore ** 4);
      return of((Math.PI / 4) * (outer ** 2 - bore ** 2), I, I);
    }
    case "hexagon": {
      const [d, bore] = [n("acrossFlats"), n("bore")];
      const I = ((5 * Math.sqrt(3)) / 144) * d ** 4 - (Math.PI / 64) * bore ** 4;
      return of((Math.sqrt(3) / 2) * d ** 2 - (Math.PI / 4) * bore ** 2, I, I);
    }
    case "constants":
      return of(n("A"), n("Iy"), n("Iz"), n("Ip"));
    default:
      return [n("massPerLength"), n("inertiaPerLength"), 0, 0];
  }
}

const unit = (v: Vec3): Vec3 => {
  const length = Math.hypot(...v);
  return [v[0] / length, v[1] / length, v[2] / length];
};
const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const inMetres = ([x, y, z]: Vec3): Vec3 => [x / 1e3, y / 1e3, z / 1e3];

function memberPiece(frame: MemberFrame, m: Member): Weighed {
  const [p, q] = [m.from, m.to].map((name) => inMetres(frame.points[name]));
  const density = m.material
    ? (frame.materials[m.material] as { readonly density: number }).density
    : 0;
  const [rhoA, rhoIp, rhoIy, rhoIz] = lineOf(m, density);
  const L = Math.hypot(...minus(q, p));
  const x = unit(minus(q, p));
  const y = unit(cross(m.up, x));
  const z = cross(x, y);
  const rod = (rhoA * L ** 3) / 12;
  const own = { xx: rhoIp * L, yy: rhoIy * L + rod, zz: rhoIz * L + rod, xy: 0, xz: 0, yz: 0 };
  return {
    mass: rhoA * L,
    cg: [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2, (p[2] + q[2]) / 2],
    inertia: turnInertia(
      [
        [x[0], y[0], z[0]],
        [x[1], y[1], z[1]],
        [x[2], y[2], z[2]],
      ],
      own,
    ),
  };
}

const NONE: Inertia = { xx: 0, yy: 0, zz: 0, xy: 0, xz: 0, yz: 0 };
const KEYS = ["xx", "yy", "zz", "xy", "xz", "yz"] as const;

/** The frame with the rotary inertia of its sections ("rayleigh" or "timoshenko"). */
export function weigh(frame: MemberFrame): Weighed {
  const bodies = Object.values(frame.bodies).map((b): Weighed => {
    const I = b.inertia ?? NONE;
    const inSI = Object.fromEntries(KEYS.map((k) => [k, I[k] * 1e-9])) as Inertia;
    return { mass: b.mass / 1e3, cg: inMetres(b.at), inertia: inSI };
  });
  const members = Object.values(frame.members).map((m) => memberPiece(frame, m));
  const pieces = [...members, ...bodies];
  const mass = pieces.reduce((sum, p) => sum + p.mass, 0);
  const mean = (i: 0 | 1 | 2) => pieces.reduce((sum, p) => sum + p.mass * p.cg[i], 0) / mass;
  const cg: Vec3 = [mean(0), mean(1), mean(2)];
  const total = { ...NONE };
  for (const p of pieces) {
    const [x, y, z] = minus(p.cg, cg);
    // parallel axes
    const away = {
      ...{ xx: y * y + z * z, yy: x * x + z * z, zz: x * x + y * y },
      ...{ xy: -x * y, xz: -x * z, yz: -y * z },
    };
    for (const k of KEYS) total[k] += p.inertia[k] + p.mass * away[k];
  }
  return { mass, cg, inertia: total };
}
