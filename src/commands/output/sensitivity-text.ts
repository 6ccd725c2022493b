/** What moves the modes and the noise, for people. */

import { formatPath } from "../../frame/file-path.ts";
import { type Mover, modeMovers, sizeOf, spotMovers } from "../../study/movers.ts";
import type { SensitivityStudy } from "../../study/sensitivity-study.ts";
import type { SensitivityTable } from "../../study/sensitivity-types.ts";
import type { Suggestions } from "../../study/suggest-types.ts";
import type { Ink } from "../terminal/ink.ts";
import { commandLine, count, digits, quantity, shortest } from "../terminal/numbers.ts";
import { columnsOf, printable, shorten } from "../terminal/printable.ts";
import { type Column, type Fitted, renderTable } from "../terminal/table.ts";
import { bullets, HARD_SPACE, wrap } from "../terminal/wrap.ts";
import type { FrameIdentity } from "./document.ts";

/** What is told does not need the modes that pages show in full. */
export interface ToldSensitivity extends Omit<SensitivityStudy, "telling"> {
  readonly frame: FrameIdentity;
}

export interface SensitivityLook {
  /** inputs in a list */
  readonly top: number;
  /** 1.., told in full */
  readonly mode?: number;
}

/** Effects below these are none: Hz and dB. */
const NOTHING = { Hz: 0.005, dB: 0.005 };

const LIMITS = [
  "Suggestions look at vibration and weight alone, not at strength, and not at what is left undrawn.",
  "How the noise changes beyond the range that is shown is not known from it: levels rise and fall as resonances move.",
];

export function sensitivityText(
  { table, suggested, spot, frame }: ToldSensitivity,
  { top, mode }: SensitivityLook,
  ink: Ink,
): string {
  const section = (title: string, body: string) =>
    `\n${ink.heading(wrap(title).trimEnd())}\n${body}`;
  const parts = [`${ink.heading(wrap(printable(frame.file.name)).trimEnd())}\n`];
  if (suggested) parts.push(section("What would help", suggestionsText(suggested, frame.path)));
  if (spot !== undefined) {
    const { name, gyro } = table.spots[spot];
    const title = `What moves the noise at "${printable(name)}" most (${quantity(gyro, "deg/s")} rms)`;
    parts.push(section(title, moversTable(spotMovers(table, spot), "dB", top, ink)));
  }
  if (mode === undefined) {
    parts.push(section("What moves each mode most", modesTable(table, ink)));
  } else {
    const { number, frequency, name } = table.modes[mode - 1];
    const title = `What moves mode ${number} most (${quantity(frequency, "Hz")}, ${printable(name)})`;
    parts.push(section(title, moversTable(modeMovers(table, mode - 1), "Hz", top, ink)));
  }
  parts.push(`\n${bullets(notes(table, mode))}`);
  return parts.join("");
}

function suggestionsText({ found, none }: Suggestions, framePath: string): string {
  if (none !== undefined) return wrap(printable(none), "  ");
  const [{ changes }] = found;
  const settings = changes.flatMap(({ path, written }) => [
    "--set",
    `${formatPath(path)}=${written}`,
  ]);
  // several settings are longer than a line: it may be broken between words
  const command = commandLine("compare", framePath, ...settings).replaceAll(HARD_SPACE, " ");
  const sure = `Whether it is more than what real frames differ by, for the first: ${command}`;
  return bullets(found.map(({ text }) => printable(text))) + wrap(printable(sure), "  ");
}

/** Inputs in order of what they can do, those that do nothing left out. */
function moversTable(movers: readonly Mover[], unit: "Hz" | "dB", top: number, ink: Ink): string {
  const moving = movers.filter((m) => sizeOf(m) >= NOTHING[unit]);
  if (moving.length === 0) return wrap("None of the file's numbers moves it.", "  ");
  const columns: Column[] = [
    { title: "Input", least: 24 },
    { title: "From", align: "right" },
    { title: "to", align: "right" },
    { title: "" },
    { title: "Gives", unit, align: "right" },
    { title: "to", unit, align: "right" },
    { title: `${unit} per`, unit: "unit", align: "right" },
    { title: unit === "Hz" ? "% per" : "dB per", unit: "%", align: "right" },
  ];
  const rows = moving.slice(0, top).map((m) => {
    const { input, reach } = m;
    const shown = (value: number) => shortest(value * input.perSI);
    return [
      inputName(input.name),
      shown(reach.from),
      shown(reach.to),
      input.unit,
      signed(m.from),
      signed(m.to),
      input.unit === "" ? "" : signed(m.perUnit),
      m.perPercent === undefined ? "" : signed(m.perPercent),
    ];
  });
  const rest = moving.length - rows.length;
  const more =
    rest > 0 ? wrap(`${count(rest, "more input moves", "more inputs move")} it less.`, "  ") : "";
  return renderTable(columns, rows, { headingInk: ink.quiet }) + more;
}

/** Each mode with the input that can do most to it. */
function modesTable(table: SensitivityTable, ink: Ink): string {
  const columns: Column[] = [
    { title: "Mode", align: "right" },
    { title: "Freq.", unit: "Hz", align: "right" },
    { title: "What moves", least: 16 },
    { title: "Moved most by", least: 26 },
    { title: "From", unit: "Hz", align: "right" },
    { title: "to", unit: "Hz", align: "right" },
  ];
  const rows = table.modes.map(({ number, frequency, name }, k) => {
    const most = modeMovers(table, k).find((m) => sizeOf(m) >= NOTHING.Hz);
    return [
      String(number),
      digits(frequency),
      name,
      inputName(most?.input.name ?? "nothing"),
      most ? signed(most.from) : "",
      most ? signed(most.to) : "",
    ];
  });
  return renderTable(columns, rows, { headingInk: ink.quiet });
}

/** Names of inputs differ at their ends: what does not fit is left out of the middle. */
function inputName(name: string): Fitted {
  const ideal = printable(name);
  const signs = [...ideal];
  return {
    ideal,
    fit: (columns) => {
      if (columnsOf(ideal) <= columns) return ideal;
      const head = Math.floor((columns - 1) * 0.4);
      const text = [...signs.slice(0, head), "…", ...signs.slice(1 + head - columns)].join("");
      return shorten(text, columns);
    },
  };
}

function notes({ clusters, rows, spots }: SensitivityTable, mode: number | undefined): string[] {
  const assumed = rows.some(({ reach }) => reach.why !== "spread");
  const rough = rows.filter((r) => r.notSmooth !== undefined).map((r) => r.input.name);
  const gone = rows.filter((r) => r.impossible !== undefined).map((r) => r.input.name);
  return [
    'Every input is moved to both ends of where 95 % of frames lie (section "spreads" of the file, else common practice)' +
      (assumed ? "; those taken as exact by 5 %, positions by 1 mm" : "") +
      ". Most effective first.",
    "Frequencies follow their derivatives, straight from the drawing.",
    ...(spots.length > 0
      ? [
          "Noise is that of frames computed at both ends; per unit and per % are means between them.",
        ]
      : []),
    ...clusters
      .filter((group) => mode === undefined || group.includes(mode))
      .map(
        (group) =>
          `Modes ${listed(group)} lie so close that they mix as soon as anything moves: their figures are those of the group.`,
      ),
    ...rough.map(
      (name) => `${printable(name)} changes the mesh by jumps, so that modes have no slope in it.`,
    ),
    ...gone.map((name) => `${printable(name)}: the frame cannot be computed at both ends.`),
    ...LIMITS,
  ];
}

const listed = (numbers: readonly number[]) =>
  `${numbers.slice(0, -1).join(", ")} and ${numbers[numbers.length - 1]}`;

function signed(value: number): string {
  if (Math.abs(value) < 5e-5) return "0";
  const text = digits(value).replace("-", "");
  return `${value < 0 ? "-" : "+"}${text}`.replaceAll(" ", HARD_SPACE);
}
