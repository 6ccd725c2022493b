import type { FilePath } from "./file-path.ts";
import { isRecord } from "./names.ts";
import {
  fieldAt,
  leavesUnder,
  type NumberField,
  type Sort,
  type UsualSpread,
} from "./number-field.ts";
import { valueAt } from "./place.ts";
import { KINDS } from "./quantity-kinds.ts";
import type { FrameFile } from "./types.ts";

/** Which numbers of a frame file a study may vary, and how far they usually lie from the drawing. */

/** Spreads of 95 % of frames; all common practice, no source. */
const SHEET: UsualSpread = { scale: "even", share: 0.03 };
const MODULUS: UsualSpread = { scale: "even", share: 0.1 };
const MASS: UsualSpread = { scale: "even", share: 0.03 };
/** 5.3 to 28 around 12.8: a clamp that lowers the arm's first frequency by 20 % or by 5 %, not by 10 %. */
const CLAMP: UsualSpread = { scale: "log", low: 5.3 / 12.8, high: 28 / 12.8 };
const BOUNCE: UsualSpread = { scale: "log", low: 1 / 1.2, high: 1.2 };
/** The same in stiffness, which is as the square of the frequency. */
const RUBBER: UsualSpread = { scale: "log", low: 1 / 1.44, high: 1.44 };
const DAMPING: UsualSpread = { scale: "log", low: 0.5, high: 2 };

const THICKNESS: Sort = { kind: "thickness", quantity: KINDS.length, usual: SHEET };
const WIDTH: Sort = { kind: "width", quantity: KINDS.length };
const POSITION: Sort = { kind: "position", quantity: KINDS.length };
const WEIGHT: Sort = { kind: "mass", quantity: KINDS.mass, usual: MASS };
const LOSS: Sort = { kind: "damping", quantity: KINDS.fraction };
const MOUNT: Sort = { kind: "mount", quantity: KINDS.stiffness, usual: RUBBER };
const SPRING: Sort = { kind: "joint", quantity: KINDS.stiffness };
const TURNING: Sort = { kind: "joint", quantity: KINDS.rotationalStiffness };

/** In the order of the file's schema. Masses, stiffnesses and loss factors of zero are left out. */
export function numberFields(raw: unknown, file: FrameFile): NumberField[] {
  const at = (path: FilePath, sort: Sort, absent?: number) => fieldAt(raw, path, sort, absent);
  const each = (path: FilePath, sort: Sort) =>
    leavesUnder(raw, path).flatMap((one) => at(one, sort));
  const all = <T>(
    section: keyof FrameFile & string,
    parts: (path: FilePath, part: T) => NumberField[],
  ) =>
    Object.entries(file[section] as Readonly<Record<string, T>>).flatMap(([name, part]) =>
      parts([section, name], part),
    );
  const fields = [
    ...at(["assemblyLossFactor"], LOSS, file.assemblyLossFactor),
    ...at(["dampingFactor"], { kind: "damping", usual: DAMPING }, file.dampingFactor),
    ...materialFields(raw, file),
    ...all("plates", (path) => at([...path, "thickness"], THICKNESS)),
    ...all("arms", (path, arm: FrameFile["arms"][string]) => [
      ...at([...path, "thickness"], THICKNESS),
      ...each([...path, "root"], POSITION),
      ...each([...path, "tip"], POSITION),
      ...widthPaths(raw, [...path, "width"]).flatMap((one) => at(one, WIDTH)),
      ...(arm.joint.kind === "bolted"
        ? [
            ...at([...path, "joint", "kappa"], { kind: "joint", usual: CLAMP }, arm.joint.kappa),
            ...at([...path, "joint", "lossFactor"], LOSS, arm.joint.lossFactor),
          ]
        : []),
    ]),
    ...all("standoffs", (path) => each([...path, "at"], POSITION)),
    ...all("points", (path) => each(path, POSITION)),
    ...all("joints", (path, joint: FrameFile["joints"][string]) => [
      ...each([...path, "at"], POSITION),
      ...stiffnesses(raw, [...path, "stiffness"]),
      ...at([...path, "lossFactor"], LOSS, joint.lossFactor),
    ]),
    ...all("springs", (path, spring: FrameFile["springs"][string]) => [
      ...stiffnesses(raw, path),
      ...at([...path, "lossFactor"], LOSS, spring.lossFactor),
    ]),
    ...all("bodies", (path, { soft }: FrameFile["bodies"][string]) => [
      ...at([...path, "mass"], WEIGHT),
      ...each([...path, "at"], POSITION),
      ...["bounce", "sway"].flatMap((key) =>
        at([...path, "soft", key], { kind: "mount", quantity: KINDS.frequency, usual: BOUNCE }),
      ),
      ...at([...path, "soft", "lossFactor"], LOSS, soft?.lossFactor),
    ]),
    ...[
      "motor.mass",
      "motor.screwMass",
      "motor.bellMass",
      "propeller.mass",
      "propeller.nutMass",
    ].flatMap((field) => at(["propulsion", ...field.split(".")], WEIGHT)),
    ...at(["stack", "mass"], WEIGHT),
    ...stackFields(raw, ["stack"], file.stack),
    ...all("candidates", (path, candidate: FrameFile["candidates"][string]) =>
      stackFields(raw, path, candidate),
    ),
  ];
  return fields.filter(({ kind, value }) => kind === "position" || value !== 0);
}

/** Of a width, a taper or pairs [where, width]: the widths alone. */
function widthPaths(raw: unknown, path: FilePath): FilePath[] {
  const written = valueAt(raw, path);
  if (!Array.isArray(written)) return [path];
  return written.map((entry, i) => (Array.isArray(entry) ? [...path, i, 1] : [...path, i]));
}

function stiffnesses(raw: unknown, path: FilePath): NumberField[] {
  return [
    ...["x", "y", "z"].flatMap((key) => fieldAt(raw, [...path, key], SPRING)),
    ...["rx", "ry", "rz"].flatMap((key) => fieldAt(raw, [...path, key], TURNING)),
  ];
}

function stackFields(
  raw: unknown,
  path: FilePath,
  def: FrameFile["stack"] | FrameFile["candidates"][string],
): NumberField[] {
  const mounts = [...path, "isolators"];
  const own = typeof def?.isolators === "object" ? def.isolators : undefined;
  return [
    ...leavesUnder(raw, [...path, "at"]).flatMap((one) => fieldAt(raw, one, POSITION)),
    ...["axial", "lateral"].flatMap((key) => fieldAt(raw, [...mounts, key], MOUNT)),
    ...fieldAt(raw, [...mounts, "lossFactor"], LOSS, own?.lossFactor),
  ];
}

/** Of the materials that parts are made of: what the file says of them, and the factor on their moduli. */
function materialFields(raw: unknown, file: FrameFile): NumberField[] {
  const parts = [file.plates, file.arms, file.standoffs, file.members].flatMap((section) =>
    Object.values<{ readonly material?: string }>(section),
  );
  const used = new Set(parts.flatMap(({ material }) => material ?? []));
  return [...used].flatMap((name) => {
    const def = file.materials[name];
    const path = ["materials", name];
    return [
      ...fieldAt(
        raw,
        ["modulusFactors", name],
        { kind: "modulus", usual: MODULUS },
        file.modulusFactors[name] ?? 1,
      ),
      ...(isRecord(def)
        ? fieldAt(raw, [...path, "density"], { kind: "density", quantity: KINDS.density })
        : []),
      ...(isRecord(def) ? fieldAt(raw, [...path, "lossFactor"], LOSS, def.lossFactor) : []),
    ];
  });
}
