/**
 * Four equal arms at right angles on a rigid hub, a point mass at each tip, free in space; written
 * with arms, and with points and members. And one such arm clamped at its root.
 */

export interface Cross {
  /** kg */
  readonly hub: number;
  /** kg m^2, about x and y, and about z */
  readonly Jxx: number;
  readonly Jzz: number;
  /** G, Pa */
  readonly G: number;
}

export const CROSS: Cross = { hub: 0.3, Jxx: 2e-4, Jzz: 3.5e-4, G: 5e9 };

export const ELEMENTS = 32;

const SECTION = { shape: "rectangle", width: "12 mm", height: "5 mm" };
const TIP_MASS = "32 g";

function sheet({ G }: Cross): object {
  const shear = `${G / 1e9} GPa`;
  return { kind: "measured", E1: "60 GPa", G12: shear, G13: shear, density: "1.55 g/cm^3" };
}

function hubBody({ hub, Jxx, Jzz }: Cross): object {
  const moment = (J: number) => `${J} kg m^2`;
  return {
    mass: `${hub} kg`,
    inertia: { xx: moment(Jxx), yy: moment(Jxx), zz: moment(Jzz) },
    on: "hub",
  };
}

export function crossOfArms(cross = CROSS): object {
  const arm = {
    material: "sheet",
    thickness: "5 mm",
    width: "12 mm",
    root: [0, 0],
    elements: ELEMENTS,
    joint: { kind: "point", point: "hub" },
  };
  const ahead = { mass: TIP_MASS, on: "ahead", at: [110, 0, 0], copies: "front and rear" };
  const beside = { mass: TIP_MASS, on: "beside", at: [0, 110, 0], copies: "left and right" };
  return {
    beamTheory: "euler-bernoulli",
    materials: { sheet: sheet(cross) },
    points: { hub: [0, 0, 0] },
    arms: {
      ahead: { ...arm, tip: [110, 0], copies: "front and rear" },
      beside: { ...arm, tip: [0, 110], copies: "left and right" },
    },
    bodies: { hub: hubBody(cross), "tip ahead": ahead, "tip beside": beside },
  };
}

export function crossOfMembers(cross = CROSS): object {
  const tips = { front: [110, 0, 0], rear: [-110, 0, 0], left: [0, 110, 0], right: [0, -110, 0] };
  const each = (make: (tip: string) => object) =>
    Object.fromEntries(Object.keys(tips).map((tip) => [`to ${tip}`, make(tip)]));
  const arm = { from: "hub", section: SECTION, material: "sheet", elements: ELEMENTS };
  return {
    beamTheory: "euler-bernoulli",
    materials: { sheet: sheet(cross) },
    points: { hub: [0, 0, 0], ...tips },
    members: each((to) => ({ ...arm, to })),
    bodies: { hub: hubBody(cross), ...each((on) => ({ mass: TIP_MASS, on })) },
  };
}

export function clampedArm(): object {
  return {
    beamTheory: "euler-bernoulli",
    materials: { sheet: sheet(CROSS) },
    points: { root: [0, 0, 0], tip: [110, 0, 0] },
    members: {
      arm: { from: "root", to: "tip", section: SECTION, material: "sheet", elements: ELEMENTS },
    },
    bodies: { tip: { mass: TIP_MASS, on: "tip" } },
    supports: { wall: { point: "root", fix: "all" } },
  };
}
