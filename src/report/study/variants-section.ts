/** The variants side by side, and what each of them is. */

import { bestSpot, modesAcross, tellingModes } from "../../study/across.ts";
import type { ComparisonStudy, VariantResult } from "../../study/results.ts";
import { percentOf } from "../../study/share-words.ts";
import { movedTogether } from "../../study/spread-groups.ts";
import { type Html, html, named, type Part } from "../html.ts";
import { degreesPerSecond, grams, inMillimetres, rpm, signed, three } from "../numbers.ts";
import { type Column, list, section, table } from "../section.ts";
import { markSymbol } from "../series-marks.ts";

/** Frequencies told of each variant. */
const MODES = 2;

/** undefined for one variant alone. */
export function variantsSection(study: ComparisonStudy): Html | undefined {
  const { variants, sure } = study;
  if (variants.length === 1) return undefined;
  const [reference] = variants;
  const modes = tellingModes(modesAcross(study), MODES);
  const delays = variants.some((v) => bestSpot(v)?.spot.delay !== undefined);
  const rival = (v: VariantResult) => sure?.chances.rivals.find((r) => r.name === v.name);
  const columns: Column<VariantResult>[] = [
    { head: html`<span class="spoken">mark</span>`, cell: (_, i) => markSymbol(i) },
    { head: "variant", names: true, cell: (v) => named(v.name) },
    {
      head: html`mass<br><small>g</small>`,
      label: "mass, g",
      number: true,
      cell: (v) => withChange(1e3 * v.outcome.mass, 1e3 * reference.outcome.mass, v === reference),
    },
    ...modes.map(
      (m): Column<VariantResult> => ({
        head: html`mode ${m.cells[0]?.number}<br><small>Hz</small>`,
        label: `mode ${m.cells[0]?.number}, Hz`,
        number: true,
        cell: (_, i) => {
          const c = m.cells[i];
          return c ? withChange(c.frequency, m.cells[0]?.frequency ?? c.frequency, i === 0) : "–";
        },
      }),
    ),
    {
      head: html`gyro at the best spot<br><small>deg/s rms</small>`,
      label: "gyro at the best spot, deg/s rms",
      number: true,
      cell: gyroCell,
    },
    ...(delays
      ? [
          {
            head: html`delay there<br><small>low-pass, ms</small>`,
            label: "delay there, low-pass, ms",
            number: true,
            cell: (v: VariantResult) => delayWords(bestSpot(v)?.spot.delay),
          },
        ]
      : []),
    ...(sure
      ? [
          {
            head: html`quietest<br><small>of frames</small>`,
            label: "quietest, of frames",
            number: true,
            cell: (v: VariantResult) => {
              const r = rival(v);
              return r
                ? html`<strong>${percentOf(r.best.share)}</strong> <small class="axis">within 1 dB: ${percentOf(r.near.share)}</small>`
                : "–";
            },
          },
        ]
      : []),
  ];
  const moving = modes.map((m) => html`Mode ${m.cells[0]?.number}: ${named(m.name)}. `);
  return section(
    "variants",
    "Variants side by side",
    {
      finding: variantsFinding(variants),
      how: html`Each with its sensor stack where the file puts it, for the mass and the modes, and at its best spot, for the noise. ${moving}Changes are against “${named(reference.name)}”.`,
    },
    table("Variants, as drawn", columns, variants, { cards: true }),
  );
}

/** Masses and noise from end to end, in words. */
function variantsFinding(variants: readonly VariantResult[]): string {
  const masses = variants.map((v) => v.outcome.mass);
  const levels = variants.flatMap((v) => bestSpot(v)?.spot.gyro ?? []);
  const span = `As drawn the variants weigh ${three(1e3 * Math.min(...masses))} to ${grams(Math.max(...masses))}`;
  if (levels.length === 0) return `${span}; none has a spot that is not ruled out.`;
  return `${span}, and read ${three(Math.min(...levels))} to ${degreesPerSecond(Math.max(...levels))} rms at their best spots.`;
}

function withChange(value: number, reference: number, isReference: boolean): Part {
  const share = signed(100 * (value / reference - 1));
  return html`<strong>${three(value)}</strong>${!isReference && html` <small class="axis">${share}\u00a0%</small>`}`;
}

function gyroCell(v: VariantResult): Part {
  const cell = bestSpot(v);
  if (!cell) return "all spots are ruled out";
  const band = cell.noise?.perSecond;
  return html`<strong>${three(cell.spot.gyro)}</strong>${band && html` <small class="axis">${three(band.low.value)} to ${three(band.high.value)}</small>`} <small class="axis">${named(cell.spot.name)}</small>`;
}

/** s as ms; undefined: not asked for. */
export function delayWords(delay: number | undefined): string {
  if (delay === undefined) return "–";
  return Number.isFinite(delay) ? three(1e3 * delay) : "out of reach";
}

function changesFinding(variants: readonly VariantResult[]): string {
  const changed = variants.filter((v) => v.changes.length > 0).length;
  const asIs = variants.length - changed;
  const rest =
    asIs === 0 ? "" : asIs === 1 ? "; one is the file as it is" : `; ${asIs} are files as they are`;
  return `${changed === 1 ? "One variant changes" : `${changed} variants change`} numbers of the file${rest}.`;
}

/** What the variants are: changes, mass, balance, heights that followed. */
export function changesSection({ variants, failed }: ComparisonStudy): Html {
  const changed = (v: VariantResult) =>
    v.changes.length === 0
      ? html`<span class="quiet">the file as it is</span>`
      : html`<ul class="plain">${v.changes.map((c) => html`<li><code>${c}</code></li>`)}</ul>`;
  const moved = (v: VariantResult) =>
    v.outcome.moved.length === 0
      ? "–"
      : html`<ul class="plain">${movedTogether(v.outcome.moved).map((m) => html`<li>${named(m)}</li>`)}</ul>`;
  const warnings = [...new Set(variants.flatMap((v) => v.outcome.warnings))].map((text) => {
    const who = variants.filter((v) => v.outcome.warnings.includes(text));
    const names = who.length === variants.length ? "" : `${who.map((v) => v.name).join(", ")}: `;
    return `${names}${text}`;
  });
  return section(
    "changes",
    variants.length > 1 ? "What the variants are" : "What was looked at",
    variants.length > 1
      ? {
          finding: changesFinding(variants),
          how: "Parts moved up or down so that what touched before still touches.",
        }
      : { finding: "One frame, as its file describes it." },
    warnings.length > 0 && html`<div class="warnings"><h3>Warnings</h3>${list(warnings)}</div>`,
    failed.length > 0 &&
      html`<div class="warnings"><h3>Could not be built</h3>${list(failed.map((f) => html`<strong>${named(f.name)}</strong>: ${f.reason}`))}</div>`,
    table(
      variants.length > 1 ? "Variants and their changes" : "The frame",
      [
        { head: "variant", names: true, cell: (v) => named(v.name) },
        { head: "changed in the file", label: "changed", cell: changed },
        {
          head: html`mass<br><small>g</small>`,
          label: "mass, g",
          number: true,
          cell: (v) => three(1e3 * v.outcome.mass),
        },
        {
          head: html`centre of gravity<br><small>x, y, z in mm</small>`,
          label: "centre of gravity, x, y, z in mm",
          number: true,
          cell: (v) => v.outcome.cg.map(inMillimetres).join(", "),
        },
        {
          head: "hover",
          label: "hover",
          number: true,
          cell: (v) => (v.outcome.hover > 0 ? rpm(v.outcome.hover) : "–"),
        },
        { head: "heights that followed", label: "heights that followed", cell: moved },
      ],
      variants,
      { cards: true },
    ),
  );
}
