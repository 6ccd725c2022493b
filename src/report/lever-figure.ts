/** Where the places lie about the centre of gravity, and the false tilt that each distance means. */

import { placeWords } from "../attitude/lever-arm-words.ts";
import { perSecond } from "../attitude/shown.ts";
import { type LowSide, SIDE_WORDS } from "../attitude/sides.ts";
import { radiusWithin } from "../attitude/yaw-rules.ts";
import { type Figure, plainLayout, type Trace } from "./figure.ts";
import { plotText } from "./html.ts";
import { isToAvoid } from "./markers.ts";
import { degrees, inDegrees, rounded } from "./numbers.ts";
import { type Labelled, labelled, placeText } from "./place-names.ts";
import type { Analysed } from "./types.ts";

/** Tilts that have a ring, degrees, where there is room for it. */
const RINGS = [0.5, 1, 2, 5, 10, 20];
/** Rings closer than this to the next, as a share of the picture, are left out. */
const RING_GAP = 0.14;
/** The picture reaches this far beyond the outermost place, and at least this far, mm. */
const ROOM = 1.35;
const LEAST = 12;
/** Places closer than this share of the picture carry one mark. */
const TOGETHER = 0.045;
/** Nearer than this share of the picture a place is drawn on the centre of gravity. */
const CENTRAL = 0.03;
/** Tilts that the words call none, rad. */
const LITTLE = (0.05 * Math.PI) / 180;
const FULL_TURN = 72;

export interface Ring {
  /** rad */
  readonly tilt: number;
  /** mm */
  readonly radius: number;
  /** the rule of thumb's */
  readonly rule: boolean;
}

/** Rings of equal false tilt in steady yaw, and the rule of thumb's, inside `reach` mm. */
export function rings(yawRate: number, error: number, reach: number): Ring[] {
  const ring = (tilt: number, rule: boolean) => ({
    tilt,
    radius: 1e3 * radiusWithin(tilt, yawRate),
    rule,
  });
  const rule = ring(error, true);
  const others = RINGS.map((d) => ring((d * Math.PI) / 180, false));
  const kept = [rule, ...others].filter((r) => r.radius <= reach);
  return kept
    .filter((r, i) =>
      kept.every((k, j) => j >= i || Math.abs(k.radius - r.radius) > RING_GAP * reach),
    )
    .sort((a, b) => a.radius - b.radius);
}

/** undefined without a ranking. Right is right, up is forward; mm from the centre of gravity. */
export function leverFigure({ ranking }: Pick<Analysed, "ranking">): Figure | undefined {
  const arm = ranking?.candidates[0]?.leverArm;
  if (!ranking || !arm) return undefined;
  const places = labelled(ranking.candidates);
  const farthest = Math.max(...places.map((l) => 1e3 * l.place.leverArm.distance));
  const rule = 1e3 * arm.radius;
  const reach = Math.max(LEAST, ROOM * Math.max(farthest, Number.isFinite(rule) ? rule : 0));
  const drawn = rings(arm.yawRate, arm.error, reach);
  const marks = groups(places, TOGETHER * reach);
  const traces = [
    // The rule's ring is filled: the others lie on it.
    ...drawn.filter((r) => r.rule).map(ringTrace),
    ...drawn.filter((r) => !r.rule).map(ringTrace),
    CENTRE,
    markTrace(
      marks.filter((m) => !m.every((l) => isToAvoid(l.place))),
      false,
    ),
    markTrace(
      marks.filter((m) => m.every((l) => isToAvoid(l.place))),
      true,
    ),
  ];
  const axis = {
    range: [rounded(-reach), rounded(reach)],
    zeroline: true,
    zerolinecolor: "--line",
    zerolinewidth: 1,
    showgrid: false,
    nticks: 7,
  };
  const layout = plainLayout(
    { ...axis, title: { text: "to the right of the centre of gravity, mm", standoff: 8 } },
    {
      ...axis,
      title: { text: "ahead of it, mm" },
      scaleanchor: "x",
      scaleratio: 1,
    },
    {
      margin: { l: 12, r: 16, t: 16, b: 58 },
      hovermode: "closest",
      annotations: [
        ...drawn.map((r) => ringLabel(r, freeDirection(marks, reach))),
        FRONT,
        ...marks.map(arrow),
        ...marks.map((m) => markLabel(m, reach)),
      ],
    },
  );
  return { traces, layout };
}

const at = ({ place: { leverArm } }: Labelled): readonly [x: number, y: number] => [
  -1e3 * leverArm.lever[1],
  1e3 * leverArm.lever[0],
];

/** Places that would lie on each other, in the order of the ranking. */
function groups(places: readonly Labelled[], together: number): Labelled[][] {
  const out: Labelled[][] = [];
  for (const place of places) {
    const [x, y] = at(place);
    const home = out.find(([first]) => {
      const [a, b] = at(first);
      return Math.hypot(x - a, y - b) < together;
    });
    if (home) home.push(place);
    else out.push([place]);
  }
  return out;
}

function ringTrace({ tilt, radius, rule }: Ring): Trace {
  const turn = Array.from({ length: FULL_TURN + 1 }, (_, i) => (2 * Math.PI * i) / FULL_TURN);
  return {
    type: "scatter",
    mode: "lines",
    x: turn.map((a) => rounded(radius * Math.cos(a), 3)),
    y: turn.map((a) => rounded(radius * Math.sin(a), 3)),
    name: `${degrees(tilt)} of false tilt${rule ? ", the rule of thumb" : ""}`,
    line: rule
      ? { color: "--accent", width: 2.5, dash: "dash" }
      : { color: "--muted", width: 1, dash: "dot" },
    ...(rule && { fill: "toself", fillcolor: "--accentSoft" }),
    hovertemplate: "%{fullData.name}<extra></extra>",
  };
}

/** The centre of gravity itself. */
const CENTRE: Trace = {
  type: "scatter",
  mode: "markers",
  x: [0],
  y: [0],
  marker: { symbol: "circle-cross-open", size: 13, color: "--ink", line: { width: 1.6 } },
  hovertemplate: "centre of gravity<extra></extra>",
};

const FRONT = {
  x: 0.5,
  xref: "paper",
  y: 1,
  yref: "paper",
  yanchor: "top",
  text: "front",
  showarrow: false,
  font: { size: 12, color: "--muted" },
  bgcolor: "--surface",
};

/** The diagonal, rad, that is farthest from any place; the rear right one of equals. */
function freeDirection(marks: readonly (readonly Labelled[])[], reach: number): number {
  const diagonals = [-1, -3, 1, 3].map((k) => (k * Math.PI) / 4);
  const turn = (a: number) => Math.abs(Math.atan2(Math.sin(a), Math.cos(a)));
  const free = (d: number) =>
    Math.min(
      Math.PI,
      ...marks.map(([first]) => {
        const [x, y] = at(first);
        // At the centre it is the mark's number that takes room, to the right of it.
        const central = Math.hypot(x, y) < CENTRAL * reach;
        return turn((central ? Math.sign(y || -1) * (Math.PI / 4) : Math.atan2(y, x)) - d);
      }),
    );
  return diagonals.reduce((a, b) => (free(b) > free(a) + 1e-9 ? b : a));
}

function ringLabel({ tilt, radius, rule }: Ring, direction: number) {
  return {
    x: rounded(radius * Math.cos(direction), 3),
    y: rounded(radius * Math.sin(direction), 3),
    text: degrees(tilt),
    // Outwards from its ring, away from the marks within.
    xanchor: Math.cos(direction) > 0 ? "left" : "right",
    showarrow: false,
    font: { size: 12, color: rule ? "--accent" : "--muted" },
    bgcolor: "--surface",
    borderpad: 1,
  };
}

function markTrace(marks: readonly (readonly Labelled[])[], avoid: boolean): Trace {
  return {
    type: "scatter",
    mode: "markers",
    x: marks.map(([first]) => rounded(at(first)[0], 3)),
    y: marks.map(([first]) => rounded(at(first)[1], 3)),
    customdata: marks.map((m) => m.map((l) => plotText(placeTiltWords(l))).join("<br>")),
    hovertemplate: "%{customdata}<extra></extra>",
    marker: {
      size: 13,
      symbol: avoid ? "x" : "circle",
      color: avoid ? "--caution" : "--ink",
      line: { color: "--surface", width: 1.5 },
    },
  };
}

/** From the centre of gravity to the place. */
function arrow([first]: readonly Labelled[]) {
  const [x, y] = at(first);
  return {
    x: rounded(x, 3),
    y: rounded(y, 3),
    ax: 0,
    ay: 0,
    axref: "x",
    ayref: "y",
    xref: "x",
    yref: "y",
    text: "",
    showarrow: true,
    arrowhead: 2,
    arrowsize: 1,
    arrowwidth: 1.6,
    arrowcolor: "--ink",
    standoff: 7,
  };
}

/** On the side away from the centre of gravity. */
function markLabel(mark: readonly Labelled[], reach: number) {
  const [x, y] = at(mark[0]);
  const out = Math.hypot(x, y) > CENTRAL * reach;
  const words = mark.map((l) => l.label);
  const text = words.length > 4 ? `${words.slice(0, 4).join(", ")} …` : words.join(", ");
  const right = !out || x >= 0;
  return {
    x: rounded(x, 3),
    y: rounded(y, 3),
    text,
    showarrow: false,
    xanchor: right ? "left" : "right",
    xshift: right ? 11 : -11,
    yshift: y >= 0 ? 9 : -9,
    font: { size: 14, weight: 700, color: "--ink" },
  };
}

/** "1a: bay: 11 mm ahead of the centre of gravity; at 200 deg/s of yaw its nose looks low, by 0.79 degrees" */
export function placeTiltWords(l: Labelled): string {
  const { leverArm: arm } = l.place;
  const { tilt, lowSide } = arm.reading;
  const where = `${placeText(l)}: ${placeWords(arm)}`;
  const yaw = `in a steady yaw of ${perSecond(arm.yawRate)}`;
  if (tilt < LITTLE || lowSide === "level") return `${where}; ${yaw} it reads as good as level`;
  return `${where}; ${yaw} it reads ${inDegrees(tilt)} degrees ${leaningWords(lowSide)}`;
}

const leaningWords = (side: Exclude<LowSide, "level">) => SIDE_WORDS[side].low;
