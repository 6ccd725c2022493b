import { type Contact, contactsOf, type Slab, slabsOf } from "./heights-contacts.ts";
import { liftedBody, liftedMotors } from "./heights-riders.ts";
import type { BodyDef, FrameFile } from "./types.ts";
import type { Named } from "./types-basic.ts";

/** A part whose height followed, or a length that gave way. */
export interface HeightShift {
  /** As users read it: "plate middle", "body battery", "length of standoff post". */
  readonly name: string;
  /** m, up; for a length or a gap, longer */
  readonly by: number;
}

/** Heights nearer than this are the same, m. */
const SAME = 1e-12;
/** A length that changes by less than this has not given way, m. */
const GAVE_WAY = 1e-9;

/**
 * Parts moved up or down so that what touched before a change of thicknesses and heights still touches,
 * with the same gap: arms and the plates that hold them, plates screwed to plates, plates on standoffs
 * (which keep their length), bodies and motors on the faces they are on. Points and what hangs on them
 * stay.
 *
 * What the change itself puts at another height stays there. The arms stay too, unless a plate that holds
 * them was put elsewhere: then they go with it. All else follows from these, over the arms' roots first,
 * then over joints, then over standoffs; where no arm is in reach, the first plate stays. What would have
 * to follow two ways follows the first of these, and the other gives way: the length of a standoff, the
 * gap of a joint. That is reported like a shift.
 *
 * With nothing to follow `file` is `after` itself.
 */
export function followHeights(
  before: FrameFile,
  after: FrameFile,
): { readonly file: FrameFile; readonly moved: readonly HeightShift[] } {
  const slabs = slabsOf(before, after);
  const isChanged = slabs.some(({ z, given, thicker }) => z !== given || thicker !== 0);
  if (before === after || !isChanged) return { file: after, moved: [] };
  const contacts = contactsOf(before, after, slabs);
  const rises = risesOf(slabs, contacts);
  const moved: HeightShift[] = [];
  const followed = [...rises].filter(([{ z, given }, rise]) => Math.abs(z + rise - given) > SAME);
  for (const [{ label }, by] of followed) moved.push({ name: label, by });
  const put = <T>(parts: Named<T>, section: Slab["section"]) =>
    withParts(
      parts,
      followed
        .filter(([slab]) => slab.section === section)
        .map(([{ name, z }, rise]) => [name, { ...parts[name], z: z + rise }]),
    );
  const lifted: [string, BodyDef][] = [];
  for (const name of Object.keys(after.bodies)) {
    const found = liftedBody(before, after, name, rises);
    if (found === undefined) continue;
    lifted.push([name, found.body]);
    moved.push({ name: `body ${name}`, by: found.by });
  }
  const motors = liftedMotors(before, after, slabs);
  if (motors !== undefined) moved.push({ name: "motors over the arms' middle", by: motors.by });
  moved.push(...gaveWay(contacts, rises));
  const file: FrameFile = {
    ...after,
    plates: put(after.plates, "plates"),
    arms: put(after.arms, "arms"),
    bodies: withParts(after.bodies, lifted),
    ...(motors && { propulsion: motors.propulsion }),
  };
  return moved.length === 0 ? { file: after, moved } : { file, moved };
}

function withParts<T>(parts: Named<T>, others: readonly (readonly [string, T])[]): Named<T> {
  if (others.length === 0) return parts;
  const copy: Record<string, T> = Object.assign(Object.create(null), parts);
  for (const [name, part] of others) copy[name] = part;
  return copy;
}

/** How far each plate and arm rises, m. */
function risesOf(slabs: readonly Slab[], contacts: readonly Contact[]): Map<Slab, number> {
  const rises = new Map<Slab, number>();
  const stay = (slab: Slab) => {
    if (!rises.has(slab)) rises.set(slab, slab.given - slab.z);
  };
  for (const slab of slabs) if (Math.abs(slab.given - slab.z) > SAME) stay(slab);
  spread(rises, contacts, 0);
  for (const slab of slabs) if (slab.section === "arms") stay(slab);
  spread(rises, contacts, 2);
  for (const slab of slabs) {
    stay(slab);
    spread(rises, contacts, 2);
  }
  return rises;
}

/** Lets all that touches what is placed follow, over the firmest contact first, none weaker than `weakest`. */
function spread(
  rises: Map<Slab, number>,
  contacts: readonly Contact[],
  weakest: Contact["kind"],
): void {
  const firmest = contacts.toSorted((p, q) => p.kind - q.kind);
  for (;;) {
    const next = firmest.find(({ a, b, kind }) => kind <= weakest && rises.has(a) !== rises.has(b));
    if (next === undefined) return;
    const { a, b, reach } = next;
    const [from, to] = [rises.get(a), rises.get(b)];
    if (from !== undefined) rises.set(b, from + reach);
    else if (to !== undefined) rises.set(a, to - reach);
  }
}

function gaveWay(contacts: readonly Contact[], rises: ReadonlyMap<Slab, number>): HeightShift[] {
  return contacts.flatMap(({ a, b, reach, side, between }): HeightShift[] => {
    const apart = (rises.get(b) ?? 0) - (rises.get(a) ?? 0) - reach;
    const by = side === 0 ? Math.abs(apart) : side * apart;
    return Math.abs(by) > GAVE_WAY ? [{ name: between, by }] : [];
  });
}
