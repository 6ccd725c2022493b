import type { Slab } from "./heights-contacts.ts";
import { namesOfArm } from "./names.ts";
import type { BodyDef, FrameFile } from "./types.ts";
import type { PropulsionDef } from "./types-flight.ts";

/** What rides on plates and arms: bodies and motors. */

/** Heights nearer than this are the same, m. */
const SAME = 1e-12;

/** A body lifted, and how far it rises, m; undefined where it stays. */
export function liftedBody(
  before: FrameFile,
  after: FrameFile,
  name: string,
  rises: ReadonlyMap<Slab, number>,
): { readonly body: BodyDef; readonly by: number } | undefined {
  const [is, was] = [after.bodies[name], before.bodies[name]];
  if (is.at === undefined || was?.at === undefined || is.hold === "smeared") return undefined;
  const isPutElsewhere = Math.abs(is.at[2] - was.at[2]) > SAME || is.on[0] !== was.on[0];
  const host = isPutElsewhere ? undefined : hostOf(after, is.on[0], rises);
  if (host === undefined) return undefined;
  const [slab, rise] = host;
  const by = rise + (Math.sign(was.at[2] - slab.z) * slab.thicker) / 2;
  if (Math.abs(by) <= SAME) return undefined;
  return { body: { ...is, at: [is.at[0], is.at[1], was.at[2] + by] }, by };
}

function hostOf(file: FrameFile, name: string, rises: ReadonlyMap<Slab, number>) {
  return [...rises].find(([slab]) =>
    slab.section === "plates"
      ? slab.name === name
      : namesOfArm({ arms: file.arms }, slab.name).includes(name),
  );
}

/**
 * The propulsion with its motors on the faces of arms that became thicker, and how much higher they are
 * over the arms' middle, m; undefined where they stay. Heights of motor and propeller count from the
 * middle of the arm and are the same for all, so they follow only where all their arms change alike.
 */
export function liftedMotors(
  before: FrameFile,
  after: FrameFile,
  slabs: Iterable<Slab>,
): { readonly propulsion: PropulsionDef; readonly by: number } | undefined {
  const [is, was] = [after.propulsion, before.propulsion];
  if (is === undefined || was === undefined) return undefined;
  const carrying = [...slabs].filter(({ section, name }) => {
    if (section !== "arms") return false;
    const names = namesOfArm({ arms: after.arms }, name);
    return is.arms === undefined || is.arms.some((one) => names.includes(one));
  });
  const by = (carrying[0]?.thicker ?? 0) / 2;
  const isAlike = carrying.every(({ thicker }) => Math.abs(thicker / 2 - by) <= SAME);
  if (Math.abs(by) <= SAME || !isAlike) return undefined;
  const { motor, propeller } = is;
  const cgHeight = raised(was.motor.cgHeight, motor.cgHeight, by);
  const planeHeight = raised(was.propeller.planeHeight, propeller.planeHeight, by);
  const propulsion = {
    ...is,
    motor: { ...motor, cgHeight },
    propeller: { ...propeller, planeHeight },
  };
  return { propulsion, by };
}

/** A height that the change itself sets stays as it is set. */
function raised(was: number, is: number, by: number): number {
  return Math.abs(is - was) > SAME ? is : is + by;
}
