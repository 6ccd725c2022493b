/** How the numbers were made, and the proof that the equations were solved. */

import type { FrameFile, MaterialDef } from "../frame/types.ts";
import { engineeringConstants } from "../material/lamination.ts";
import type { Evidence } from "../modes/types.ts";
import { frameFigure } from "./frame-figure.ts";
import { type Html, html, joined, named, type Part } from "./html.ts";
import { hertz, millimetres, percent, three, whole, withUnit } from "./numbers.ts";
import { facts, folded, list, section, table } from "./section.ts";
import type { Analysed } from "./types.ts";

export function modelSection(analysed: Analysed): Html {
  const { model, mesh, modes, file, warnings } = analysed;
  const all = [...new Set([...model.warnings, ...warnings])];
  return section(
    "model",
    "How it was worked out",
    {
      finding: solvedWords(modes.evidence),
      how: "Arms, standoffs and plates become beams (plates as grids of beams with the terms that beams lack), bodies become rigid masses, and the frame is left free in space unless the file holds it.",
    },
    all.length > 0 && html`<div class="warnings"><h3>Warnings</h3>${list(all)}</div>`,
    facts([
      ["frame", named(model.name)],
      ["beams", theoryWords(model.theory)],
      ["mesh size", millimetres(mesh.size)],
      ["support", supportWords(analysed)],
      [
        "damping of screws, wires and straps",
        html`${percent((model.dampingFactor * model.assemblyLossFactor) / 2)} <small>of critical, in every mode, except in soft mounts</small>`,
      ],
    ]),
    frameFigure(analysed),
    folded("Proof of the solution", html`<p>${evidenceWords(modes.evidence)}</p>`),
    sheetsTable(sheetRows(analysed)),
    Object.keys(file.materials).length > 0 && materialsTable(file),
    model.notes.length > 0 && html`<h3>Notes in the file</h3>${list(model.notes)}`,
  );
}

function sheetsTable(all: readonly SheetRow[]): Html {
  const notes = all.some((p) => p.note !== "");
  return table(
    "Plates and arms",
    [
      {
        head: "part",
        names: true,
        cell: (p) =>
          joined(
            p.names.map((n) => named(n)),
            ", ",
          ),
      },
      { head: "material", cell: (p) => named(p.material) },
      { head: "thickness", number: true, cell: (p) => millimetres(p.thickness) },
      {
        head: html`E, bent flat<br><small>along the arm; plates along x, less their cut-outs</small>`,
        label: "E, bent flat",
        number: true,
        cell: (p) => gigapascals(p.E),
      },
      { head: "held by", cell: (p) => p.held },
      ...(notes ? [{ head: "remark", long: true, cell: (p: SheetRow) => p.note }] : []),
    ],
    all,
    { cards: true },
  );
}

function supportWords({ held, model: { supports } }: Analysed): string {
  if (!held) return "free, as in flight or hung on a thread";
  if (supports.length === 0) return "held by springs to the ground";
  return supports.length === 1 ? "held at one place" : `held at ${supports.length} places`;
}

interface SheetRow {
  /** of parts that are alike */
  readonly names: readonly string[];
  readonly material: string;
  readonly thickness: number;
  /** Pa; along the arm, or along x for a plate, whose cut-outs count as softness */
  readonly E: number;
  readonly held: Html;
  readonly note: string;
}

function sheetRows({ model }: Analysed): SheetRow[] {
  const plates = model.plates.map((p) => ({
    ...p,
    E: engineeringConstants(p).Efx,
    held: html``,
  }));
  const arms = model.arms.map((a) => {
    const plate = (i: number) => named(model.plates[i].name);
    const held =
      a.held.kind === "bolted"
        ? html`bolted to ${a.held.plates.map((i, n) => html`${n > 0 && ", "}${plate(i)}`)}, kappa ${Number.isFinite(a.held.kappa) ? three(a.held.kappa) : "rigid"}`
        : a.held.kind === "one piece"
          ? html`one piece with ${plate(a.held.plate)}`
          : html`point ${named(a.held.point)}`;
    return { ...a, E: a.strip.Efx, held };
  });
  return alike([...plates, ...arms]);
}

/** Mirrored copies differ in their names alone and share a row. */
function alike(
  parts: readonly (Omit<SheetRow, "names"> & { readonly name: string })[],
): SheetRow[] {
  const found = new Map<string, SheetRow>();
  for (const { name, material, thickness, E, held, note } of parts) {
    const key = JSON.stringify([material, three(thickness), three(E), held.html, note]);
    const names = [...(found.get(key)?.names ?? []), name];
    found.set(key, { names, material, thickness, E, held, note });
  }
  return [...found.values()];
}

function gigapascals(E: number): string {
  return withUnit(E * 1e-9, "GPa");
}

function materialsTable(file: FrameFile): Html {
  const rows = Object.entries(file.materials).map(([name, def]) => ({ name, def }));
  return table(
    "Materials defined in the file",
    [
      { head: "material", names: true, cell: (r) => named(r.name) },
      { head: "as given", cell: (r) => materialWords(r.def) },
    ],
    rows,
  );
}

function materialWords(def: MaterialDef): Part {
  switch (def.kind) {
    case "isotropic":
      return `the same in all directions: E ${gigapascals(def.E)}, G ${gigapascals(def.G)}, ${three(def.density)} kg/m³`;
    case "measured":
      return `measured: E1 ${gigapascals(def.E1)}, E2 ${gigapascals(def.E2)}, G12 ${gigapascals(def.G12)}, ${three(def.density)} kg/m³`;
    case "laminate":
      return html`laminate ${named(def.stack)} of ${named(def.ply)}`;
  }
}

function theoryWords(theory: Analysed["model"]["theory"]): string {
  return {
    "euler-bernoulli": "Euler-Bernoulli: no shear, no rotary inertia",
    rayleigh: "Euler-Bernoulli with rotary inertia",
    timoshenko: "Timoshenko: with shear and rotary inertia",
  }[theory];
}

/** What was solved, in one sentence. */
function solvedWords({ unknowns, counted, checkFrequency }: Evidence): string {
  return `All ${whole(counted)} modes below ${hertz(checkFrequency)} were found, rigid motions included; an independent count says that none is missing (${whole(unknowns)} unknowns).`;
}

/** The evidence in words; a solution with fewer modes than were counted never comes this far. */
export function evidenceWords(e: Evidence): string {
  return `The equations were solved to a relative residual of ${three(e.maxResidual, 2)} at worst; the modes are orthogonal to each other within ${three(e.orthogonality, 2)}. A factorisation at ${hertz(e.checkFrequency)} counts ${whole(e.counted)} modes below it, rigid-body motions included, and as many were found: none is missing.`;
}
