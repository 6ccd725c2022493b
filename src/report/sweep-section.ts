/** The sections of a sweep's page. */

import { bestGyro } from "../study/pareto.ts";
import type { SweepLine, SweepRow, SweepStudy } from "../study/results-sweep.ts";
import { chartBox } from "./figure.ts";
import { type Html, html, named, type Part } from "./html.ts";
import { namesSwept } from "./known-names.ts";
import { degreesPerSecond, grams, hertz, mass, three, whole } from "./numbers.ts";
import { seriesStyle } from "./palette.ts";
import { prose } from "./prose.ts";
import { type Column, facts, folded, section, table } from "./section.ts";
import { markSymbol } from "./series-marks.ts";
import { branchName, frontFigure, shownLine, spotNames, valueText } from "./study/sweep-figures.ts";

/** Rows of the table; the sweep's file has all. */
const MOST_ROWS = 300;
/** Values in words that are named. */
const NAMED = 4;
/** Branches that stand in the legend. */
const MOST_NAMED = 24;

export function findingsSection(study: SweepStudy): Html {
  const names = namesSwept(study);
  const [first, ...more] = study.words.map((s) => prose(s, names));
  const there = frontFigure(study) !== undefined;
  return html`<section id="findings" class="verdict" aria-labelledby="findings-heading">
<h2 id="findings-heading">${first}</h2>
<div class="words">
${more.map((s) => html`<p>${s}</p>`)}
${keyFacts(study)}
</div>
<figure class="picture">${there && chartBox("front-chart", "tall", frontFinding(study))}
<figcaption>${there && html`<p class="key"><span>${star()} quietest</span> <span>${diamond()} no other variant is both lighter and quieter</span> <span>${ring()} another is better in one and no worse in the other</span></p>`}</figcaption></figure>
</section>
`;
}

const diamond = () =>
  html`<svg class="symbol" viewBox="0 0 16 16" aria-hidden="true"><path d="M8 0.5L15.5 8L8 15.5L0.5 8Z" style="fill: var(--series0)"/></svg>`;
const star = () =>
  html`<svg class="symbol" viewBox="0 0 16 16" aria-hidden="true"><path d="M8 1L9.8 6.1L15 6.1L10.9 9.3L12.4 14.4L8 11.4L3.6 14.4L5.1 9.3L1 6.1L6.2 6.1Z" style="fill: var(--series1)"/></svg>`;
const ring = () =>
  html`<svg class="symbol" viewBox="0 0 16 16" aria-hidden="true"><circle cx="8" cy="8" r="5" style="fill: none; stroke: var(--muted)" stroke-width="2"/></svg>`;

function frontFinding({ rows, front, quietest }: SweepStudy): string {
  const point = (i: number) => {
    const { outcome } = rows[i];
    return outcome ? `${mass(outcome.mass)} and ${degreesPerSecond(bestGyro(outcome))} rms` : "";
  };
  if (quietest === undefined) return "No variant has a spot to use.";
  if (front.length < 2)
    return `One variant is the lightest and the quietest at once: ${point(quietest)}.`;
  return `Mass against gyro noise at the best spot: ${front.length} of ${rows.length} variants are beaten by no other in both, from ${point(front[0])} to ${point(quietest)}.`;
}

function keyFacts({ rows, parameters }: SweepStudy): Html {
  const solved = rows.flatMap((r) => r.outcome ?? []);
  const masses = solved.map((o) => o.mass);
  const gyro = solved.map(bestGyro).filter((v) => Number.isFinite(v));
  const pairs: (readonly [Part, Part])[] = [
    [
      "variants",
      html`${whole(rows.length)} <small>${rows.length - solved.length > 0 && `${rows.length - solved.length} could not be computed`}</small>`,
    ],
    ...parameters.map((p): readonly [Part, Part] => [
      named(p.name),
      p.numbers === undefined || p.texts.length === 1
        ? p.texts.slice(0, NAMED).join(", ") + (p.texts.length > NAMED ? " …" : "")
        : html`${p.texts[0]} to ${p.texts[p.texts.length - 1]} <small>${p.texts.length} values</small>`,
    ]),
  ];
  if (masses.length > 0) {
    pairs.push(["mass", `${three(1e3 * Math.min(...masses))} to ${grams(Math.max(...masses))}`]);
  }
  if (gyro.length > 0) {
    pairs.push([
      "gyro noise at the best spot",
      `${three(Math.min(...gyro))} to ${degreesPerSecond(Math.max(...gyro))}`,
    ]);
  }
  return facts(pairs);
}

/** undefined where no variant has a spot to use. */
export function frontSection(study: SweepStudy): Html | undefined {
  if (study.front.length === 0) return undefined;
  return section(
    "front",
    "Light and quiet at once",
    {
      finding: frontFinding(study),
      how: "Any other variant of the sweep can be bettered in one of the two without losing in the other; among these more mass buys less noise.",
    },
    table(
      "The front, lightest first",
      columns(study),
      study.front.map((i) => study.rows[i]),
      {
        cards: true,
        rowClass: (r) => (r === study.rows[study.quietest ?? -1] ? "chosen" : ""),
      },
    ),
  );
}

function columns(study: SweepStudy): Column<SweepRow>[] {
  const best = ({ outcome }: SweepRow) =>
    outcome?.best === undefined ? undefined : outcome.spots[outcome.best];
  const delays = study.rows.some((r) => best(r)?.delay !== undefined);
  return [
    ...study.parameters.map(
      (p, k): Column<SweepRow> => ({
        head: named(p.name),
        ...(k > 0 && { label: p.name }),
        names: k === 0,
        cell: (r) => p.texts[r.at[k]],
      }),
    ),
    {
      head: html`mass<br><small>g</small>`,
      label: "mass, g",
      number: true,
      cell: ({ outcome }) => (outcome ? three(1e3 * outcome.mass) : "–"),
    },
    {
      head: html`gyro noise<br><small>deg/s rms</small>`,
      label: "gyro noise, deg/s rms",
      number: true,
      cell: (r) => (best(r) ? html`<strong>${three(best(r)?.gyro ?? 0)}</strong>` : "–"),
    },
    ...(delays
      ? [
          {
            head: html`delay there<br><small>low-pass, ms</small>`,
            label: "delay there, low-pass, ms",
            number: true,
            cell: (r: SweepRow) => {
              const delay = best(r)?.delay;
              if (delay === undefined) return "–";
              return Number.isFinite(delay) ? three(1e3 * delay) : "out of reach";
            },
          },
        ]
      : []),
    {
      head: "at",
      label: "at",
      long: true,
      cell: (r) =>
        r.failed !== undefined
          ? html`<span class="hard">${r.failed}</span>`
          : named(best(r)?.name ?? (r.outcome ? "all spots are ruled out" : "not computed")),
    },
  ];
}

/** What is held along the line, in words; "" where nothing else is varied. */
function heldWords({ parameters, along }: SweepStudy, { held }: SweepLine): string {
  const others = parameters.flatMap(({ name, texts }, p) =>
    p === along ? [] : [`${name} ${texts[held[p]]}`],
  );
  return others.length === 0 ? "" : ` Held: ${others.join(", ")}.`;
}

function otherLines(study: SweepStudy): string {
  return study.lines.length > 1
    ? ` The line of the quietest variant, one of ${study.lines.length}.`
    : "";
}

/** undefined where there are no spots. */
export function courseSection(study: SweepStudy, line: SweepLine): Html | undefined {
  const outcomes = line.rows.flatMap((i) => study.rows[i].outcome ?? []);
  const names = spotNames(outcomes);
  if (names.length === 0) return undefined;
  const finding = courseFinding(study, line);
  return section(
    "course",
    `Noise along ${study.parameters[study.along].name}`,
    {
      finding,
      how: `All as the gyro passes it on, over the flight mix; the scale at the left grows by factors. Open marks: the spot must not be used.${heldWords(study, line)}${otherLines(study)}`,
    },
    html`<figure>${chartBox("course-chart", "tall", finding)}
<figcaption><ul class="legend">${names.map((n, i) => html`<li>${markSymbol(i)} <bdi>${n}</bdi></li>`)}</ul></figcaption></figure>`,
  );
}

/** Where each of the best spots is quietest, in words. */
function courseFinding(study: SweepStudy, line: SweepLine): string {
  const outcomes = line.rows.flatMap((i) => study.rows[i].outcome ?? []);
  const levels = outcomes.map(bestGyro);
  const open = levels.map((v, k) => ({ v, k })).filter(({ v }) => Number.isFinite(v));
  if (open.length === 0) return "Every spot is ruled out all along.";
  const sorted = open.toSorted((a, b) => a.v - b.v);
  const told = ({ v, k }: (typeof open)[number]) =>
    `${degreesPerSecond(v)} rms at ${valueText(study, line, k)}`;
  return `At the best spot the noise is least with ${told(sorted[0])} and most with ${told(sorted[sorted.length - 1])}.`;
}

export function branchesSection(study: SweepStudy, line: SweepLine): Html {
  const { branches, veerings, crossings } = line.tracking;
  const outcomes = line.rows.flatMap((i) => study.rows[i].outcome ?? []);
  const finding = branchesFinding(study, line);
  const swatch = (n: number) => {
    const { colour, strokes } = seriesStyle(n);
    return html`<svg class="swatch" viewBox="0 0 34 10" aria-hidden="true"><line x1="1" y1="5" x2="33" y2="5" style="stroke: var(${colour})" stroke-width="3" stroke-dasharray="${strokes}"/></svg>`;
  };
  return section(
    "branches",
    `Modes along ${study.parameters[study.along].name}`,
    {
      finding,
      how: `Each line is one way of moving, followed by its shape from variant to variant. Where two lines cross, they are at one frequency and do not mind each other (rings). Where two come close and turn away, they exchange their shapes without meeting (diamonds): in between both are a mixture of the two. Broad orange lines: what pushes in hover.${heldWords(study, line)}${otherLines(study)}`,
    },
    html`<figure>${chartBox("branches-chart", "tall", finding)}
<figcaption><ul class="legend">${branches.slice(0, MOST_NAMED).map((b, n) => html`<li>${swatch(n)} <span>${branchName(outcomes, b)}</span></li>`)}</ul></figcaption></figure>`,
    veerings.length + crossings.length > 0 &&
      folded(
        `${veerings.length + crossings.length} meetings of modes as a table`,
        table(
          "Where modes cross or turn into one another",
          [
            { head: "near", names: true, cell: (m) => m.near },
            { head: "what happens", label: "what happens", cell: (m) => m.what },
            {
              head: html`frequency<br><small>Hz</small>`,
              label: "frequency, Hz",
              number: true,
              cell: (m) => three(m.frequency),
            },
            {
              head: html`apart<br><small>Hz</small>`,
              label: "apart, Hz",
              number: true,
              cell: (m) => (m.gap === undefined ? "0" : three(m.gap)),
            },
          ],
          meetingRows(study, line),
          { cards: true },
        ),
      ),
  );
}

interface MeetingRow {
  readonly at: number;
  readonly near: string;
  readonly what: string;
  readonly frequency: number;
  readonly gap?: number;
}

function meetingRows(study: SweepStudy, { tracking }: SweepLine): MeetingRow[] {
  const { unit } = study.parameters[study.along];
  const near = (v: number) => `${three(v)}${unit === "" ? "" : `\u00a0${unit}`}`;
  return [
    ...tracking.veerings.map(({ at, modes, frequency, gap, resolved }) => ({
      at,
      near: near(at),
      what: `modes ${modes.join(" and ")} turn into one another${resolved ? "" : "; the values stand too far apart to see how"}`,
      frequency,
      gap,
    })),
    ...tracking.crossings.map(({ at, frequency }) => ({
      at,
      near: near(at),
      what: "two modes cross",
      frequency,
    })),
  ].sort((a, b) => a.at - b.at);
}

/** The mode that moves most, in words. */
function branchesFinding(study: SweepStudy, line: SweepLine): string {
  const outcomes = line.rows.flatMap((i) => study.rows[i].outcome ?? []);
  const moves = line.tracking.branches.flatMap((b) => {
    const [from, to] = [b.frequencies[0], b.frequencies[b.frequencies.length - 1]];
    return from === undefined || to === undefined
      ? []
      : [{ b, from, to, share: Math.abs(to / from - 1) }];
  });
  const [most] = moves.toSorted((a, b) => b.share - a.share);
  if (!most) return "No mode could be followed from end to end.";
  const [first, last] = [valueText(study, line, 0), valueText(study, line, line.rows.length - 1)];
  const name = branchName(outcomes, most.b);
  return `${name[0].toUpperCase()}${name.slice(1)}, moves most: from ${hertz(most.from)} at ${first} to ${hertz(most.to)} at ${last}.`;
}

function rowsFinding({ rows, front }: SweepStudy): string {
  const failed = rows.filter((r) => r.outcome === undefined).length;
  const gone = failed > 0 ? `, ${whole(failed)} could not be computed` : "";
  const all = rows.length === 1 ? "One variant" : `${whole(rows.length)} variants`;
  const best =
    front.length === 0
      ? "none has a spot to use"
      : `${front.length === 1 ? "one is" : `${whole(front.length)} are`} on the front of light and quiet`;
  return `${all}${gone}; ${best}.`;
}

export function rowsSection(study: SweepStudy): Html {
  const shown = study.rows.slice(0, MOST_ROWS);
  const left = study.rows.length - shown.length;
  const line = shownLine(study);
  const why =
    line || study.parameters.some((p) => p.numbers)
      ? ""
      : " The values are no numbers, so there is no course to draw.";
  return section(
    "rows",
    "All variants",
    { finding: rowsFinding(study), how: `Noise at the best spot of each.${why}` },
    folded(
      left > 0
        ? `The first ${shown.length} of ${study.rows.length} variants as a table; the sweep’s own file has all`
        : `All ${shown.length} variants as a table`,
      table("Variants of the sweep", columns(study), shown, {
        cards: true,
        rowClass: (r) => (study.front.some((i) => study.rows[i] === r) ? "chosen" : ""),
      }),
    ),
  );
}
