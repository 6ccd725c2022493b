import type { ArmDef, FrameFile, PlateDef } from "../../src/frame/types.ts";
import type { Copies, Vec2, Vec3 } from "../../src/frame/types-basic.ts";

/**
 * Weighs a frame file with pencil and paper: outlines times fill, arm strips, discs under motors,
 * bodies where the file says. Independent of the model, for samples with symmetric plates and
 * materials of one density each.
 */
export interface Weight {
  /** kg */
  readonly mass: number;
  /** m */
  readonly cg: Vec3;
}

type Lump = readonly [mass: number, at: Vec3];

export function weigh(frame: FrameFile, densityOf: (material: string) => number): Weight {
  const lumps = [
    ...Object.values(frame.plates).map((plate) => plateLump(plate, densityOf(plate.material))),
    ...Object.values(frame.arms).flatMap((arm) => armLumps(arm, densityOf(arm.material), frame)),
    ...standoffLumps(frame, densityOf),
    ...bodyLumps(frame),
    ...stackLump(frame),
  ];
  const mass = lumps.reduce((sum, [m]) => sum + m, 0);
  const mean = (axis: 0 | 1 | 2) => lumps.reduce((sum, [m, at]) => sum + m * at[axis], 0) / mass;
  return { mass, cg: [mean(0), mean(1), mean(2)] };
}

function mirrored(copies: Copies, [x, y]: Vec2): Vec2[] {
  const sx = copies === "front and rear" || copies === "all four corners" ? [1, -1] : [1];
  const sy = copies === "left and right" || copies === "all four corners" ? [1, -1] : [1];
  return sx.flatMap((i) => sy.map((j): Vec2 => [i * x, j * y]));
}

/** Area and x of the centroid of a plate that is drawn by its left half or front-left quarter. */
export function outlineMoments({ outline, symmetry }: PlateDef): { area: number; x: number } {
  // a drawn half is a stack of trapezoids between its outline and the line y = 0
  let area = 0;
  let moment = 0;
  for (let i = 1; i < outline.length; i++) {
    const [x1, y1] = outline[i - 1];
    const [x2, y2] = outline[i];
    area += (x1 - x2) * (y1 + y2);
    moment += ((x1 - x2) * (y1 * (2 * x1 + x2) + y2 * (x1 + 2 * x2))) / 3;
  }
  if (symmetry === "left and right") return { area, x: moment / area };
  if (symmetry !== "all four corners") throw new Error(`no rule for symmetry ${symmetry}`);
  // the quarter ends where it ends: from there the edge runs straight across to its mirror image
  const [x, y] = outline[outline.length - 1];
  return { area: 2 * (area + 2 * x * y), x: 0 };
}

function plateLump(plate: PlateDef, density: number): Lump {
  const { area, x } = outlineMoments(plate);
  if (plate.holes.length > 0) throw new Error("no rule for holes");
  return [area * plate.fill * plate.thickness * density, [x, 0, plate.z]];
}

function armLumps(arm: ArmDef, density: number, frame: FrameFile): Lump[] {
  const [dx, dy] = [arm.tip[0] - arm.root[0], arm.tip[1] - arm.root[1]];
  const length = Math.hypot(dx, dy);
  const [{ width: root }, { width: tip }] = arm.width;
  if (arm.width.length !== 2) throw new Error("no rule for width profiles");
  const inserted = arm.joint.kind === "bolted" ? arm.joint.inserted : 0;
  const r = (arm.motorPad ?? 0) / 2;
  const h = Math.min(tip / 2, r);
  // the half disc's part inside the strip is there already
  const covered = r > 0 ? h * Math.sqrt(r * r - h * h) + r * r * Math.asin(h / r) : 0;
  const pieces: [area: number, along: number][] = [
    [(length * (root + tip)) / 2, (length * (root + 2 * tip)) / (3 * (root + tip))],
    [inserted * root, -inserted / 2],
    [arm.padFill * (Math.PI * r * r - covered), length],
  ];
  if (frame.propulsion) {
    const { motor, propeller } = frame.propulsion;
    const perArea = arm.thickness * density;
    const up = (mass: number, z: number): Lump => [mass, [arm.tip[0], arm.tip[1], z]];
    const lumps = [
      ...pieces.map(([area, s]): Lump => {
        const share = s / length;
        return [area * perArea, [arm.root[0] + share * dx, arm.root[1] + share * dy, arm.z]];
      }),
      up(motor.mass + motor.screwMass, arm.z + motor.cgHeight),
      up(propeller.mass + propeller.nutMass, arm.z + propeller.planeHeight),
    ];
    return copied(lumps, arm.copies);
  }
  throw new Error("no rule for a frame without motors");
}

function copied(lumps: readonly Lump[], copies: Copies): Lump[] {
  return lumps.flatMap(([mass, [x, y, z]]) =>
    mirrored(copies, [x, y]).map(([cx, cy]): Lump => [mass, [cx, cy, z]]),
  );
}

function standoffLumps(frame: FrameFile, densityOf: (material: string) => number): Lump[] {
  return Object.values(frame.standoffs).flatMap((post) => {
    const [low, high] = post.between.map((name) => frame.plates[name]);
    const from = low.z + low.thickness / 2;
    const to = high.z - high.thickness / 2;
    if (post.section.shape !== "tube") throw new Error(`no rule for a ${post.section.shape}`);
    const area = (Math.PI / 4) * (post.section.outer ** 2 - post.section.bore ** 2);
    const mass = area * (to - from) * densityOf(post.material);
    return copied(
      post.at.map(([x, y]): Lump => [mass, [x, y, (from + to) / 2]]),
      post.copies,
    );
  });
}

function bodyLumps(frame: FrameFile): Lump[] {
  return Object.values(frame.bodies).flatMap((body): Lump[] => {
    if (body.at !== undefined) return copied([[body.mass, body.at]], body.copies);
    const plates = body.on.map((name) => frame.plates[name]);
    const areas = plates.map((plate) => outlineMoments(plate).area);
    const total = areas.reduce((a, b) => a + b, 0);
    return plates.map((plate, i): Lump => {
      return [(body.mass * areas[i]) / total, [outlineMoments(plate).x, 0, plate.z]];
    });
  });
}

function stackLump({ stack, plates }: FrameFile): Lump[] {
  if (stack === undefined) return [];
  const plate = plates[stack.plate];
  const up = stack.side === "above" ? 1 : -1;
  return [[stack.mass, [...stack.at, plate.z + up * (plate.thickness / 2 + stack.height)]]];
}
