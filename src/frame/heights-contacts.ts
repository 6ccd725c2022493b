import type { ArmDef, FrameFile } from "./types.ts";

/** What touches what in the height of a frame: plates and arms, and how they lie on each other. */

/** A plate or an arm that is there before and after a change. */
export interface Slab {
  /** As users read it: "plate middle". */
  readonly label: string;
  readonly section: "plates" | "arms";
  readonly name: string;
  /** Height of the mid-plane before, and as the changed file has it, m. */
  readonly z: number;
  readonly given: number;
  /** Change of the thickness, m. */
  readonly thicker: number;
}

/** Two slabs a fixed distance apart. */
export interface Contact {
  readonly a: Slab;
  readonly b: Slab;
  /** How much more b rises than a when what is between their faces stays as it is, m. */
  readonly reach: number;
  /** 1: b is the upper one, -1: the lower, 0: both have one mid-plane. */
  readonly side: number;
  /** 0: an arm's root in its plate, 1: a joint, 2: a standoff; the less the firmer. */
  readonly kind: 0 | 1 | 2;
  /** What gives way when the two rise otherwise. */
  readonly between: string;
}

export function slabsOf(before: FrameFile, after: FrameFile): Slab[] {
  return (["arms", "plates"] as const).flatMap((section) =>
    Object.entries(after[section]).flatMap(([name, { z, thickness }]): Slab[] => {
      const was = before[section][name];
      if (was === undefined) return [];
      const label = `${section.slice(0, -1)} ${name}`;
      return [{ label, section, name, z: was.z, given: z, thicker: thickness - was.thickness }];
    }),
  );
}

/** The contacts that the frame has before and after the change. */
export function contactsOf(before: FrameFile, after: FrameFile, slabs: readonly Slab[]): Contact[] {
  const find = (section: Slab["section"], name: string) =>
    slabs.find((slab) => slab.section === section && slab.name === name);
  const contact = (a?: Slab, b?: Slab, kind: Contact["kind"] = 0, between = ""): Contact[] => {
    if (a === undefined || b === undefined) return [];
    const side = Math.sign(b.z - a.z);
    return [{ a, b, side, reach: (side * (a.thicker + b.thicker)) / 2, kind, between }];
  };
  const arms = Object.entries(after.arms).flatMap(([name, { joint }]) => {
    const was = before.arms[name]?.joint;
    const arm = find("arms", name);
    return platesOf(joint).flatMap((plate) => {
      if (was?.kind !== joint.kind || !platesOf(was).includes(plate)) return [];
      const found = contact(
        arm,
        find("plates", plate),
        0,
        `gap between arm ${name} and plate ${plate}`,
      );
      // cut from one sheet: the mid-planes stay together whatever the thickness
      return joint.kind === "one piece"
        ? found.map((one) => ({ ...one, reach: 0, side: 0 }))
        : found;
    });
  });
  const pair = (was: readonly string[] | undefined, is: readonly [string, string]) =>
    was !== undefined && is.every((plate) => was.includes(plate));
  const joints = Object.entries(after.joints).flatMap(([name, { plates }]) => {
    if (!pair(before.joints[name]?.plates, plates)) return [];
    const [a, b] = plates.map((plate) => find("plates", plate));
    return contact(a, b, 1, `gap at joint ${name}`);
  });
  const standoffs = Object.entries(after.standoffs).flatMap(([name, { between }]) => {
    if (!pair(before.standoffs[name]?.between, between)) return [];
    const [a, b] = between.map((plate) => find("plates", plate));
    return contact(a, b, 2, `length of standoff ${name}`);
  });
  return [...arms, ...joints, ...standoffs];
}

function platesOf(joint: ArmDef["joint"]): readonly string[] {
  if (joint.kind === "bolted") return joint.plates;
  return joint.kind === "one piece" ? [joint.plate] : [];
}
