/** What an accelerometer away from the centre of gravity does to self-level flight. */

import type { LeverArm } from "../attitude/lever-arm.ts";
import { placeWords, RATE_FLIGHT } from "../attitude/lever-arm-words.ts";
import { perSecond } from "../attitude/shown.ts";
import { type LowSide, SIDE_WORDS } from "../attitude/sides.ts";
import { radiusWords } from "../attitude/yaw-rules.ts";
import { GRAVITY } from "../excitation/speeds.ts";
import type { RankedCandidate, Ranking } from "../ranking/types.ts";
import { chartBox } from "./figure.ts";
import { type Html, html, type Part } from "./html.ts";
import { degrees, inDegrees, millimetres, three } from "./numbers.ts";
import { type Labelled, labelled, placeName, quoted } from "./place-names.ts";
import { folded, section, table } from "./section.ts";
import type { Analysed } from "./types.ts";
import { term } from "./words.ts";

/** Tilts that the words call none, rad. */
const LITTLE = (0.05 * Math.PI) / 180;

/** undefined without a ranking. */
export function levellingSection({ ranking }: Analysed): Html | undefined {
  const arm = ranking?.candidates[0]?.leverArm;
  if (!ranking || !arm) return undefined;
  const rule = radiusWords(arm.error, arm.yawRate);
  const finding = levellingFinding(ranking);
  return section(
    "levelling",
    "Self-level flight",
    {
      finding,
      how: html`A craft that turns pulls on an accelerometer that does not sit at its ${term("centre-of-gravity")}, and the accelerometer takes the pull for tilt: its own side looks low, whichever way the craft yaws.`,
    },
    html`<div class="lever-layout"><figure>${chartBox("lever-chart", "lever", finding)}
<figcaption class="notes">Seen from above, front at the top. Rings: places of equal ${term("false-tilt")} in a steady yaw of ${perSecond(arm.yawRate)}; the dashed one is the rule of thumb. Arrows run from the centre of gravity to the places.</figcaption></figure>
<div><p><strong>Rule of thumb:</strong> ${rule}.</p><p>${RATE_FLIGHT}${ranking.use === "rate" && " This craft is flown on rates, so this is for other days."}</p>
<p>${filterWords(ranking)}</p></div></div>`,
    folded(
      "Lever arm and false tilt, place by place",
      table(
        "Lever arm and false tilt, place by place",
        columns(arm),
        labelled(ranking.candidates),
        {
          className: "by-place",
          cards: true,
        },
      ),
    ),
  );
}

/** What an attitude filter makes of the worst of it. */
function filterWords({ candidates }: Ranking): string {
  const worst = candidates.reduce((a, b) =>
    b.leverArm.worst.believed.tilt > a.leverArm.worst.believed.tilt ? b : a,
  );
  const { filter, worst: effect } = worst.leverArm;
  const time = `An attitude filter of ${three(filter.timeConstant)} s`;
  if (effect.believed.tilt < LITTLE) return `${time} believes next to nothing of it.`;
  return `${time} averages it with the gyro and believes less: at most ${degrees(effect.believed.tilt)} at ${quoted(worst.candidate.name)}, in ${effect.motion}.`;
}

function columns({ yawRate, filter }: LeverArm) {
  return [
    { head: "place", names: true, cell: placeName },
    {
      head: html`from the centre<br>of gravity<br><small>in the plan; in all</small>`,
      label: "from the centre of gravity",
      cell: ({ place: { leverArm: a, fromCg3d } }: Labelled) =>
        html`${placeWords(a).replace(/ the centre of gravity$/, " it")} <small class="axis">${millimetres(fromCg3d)} in all</small>`,
    },
    {
      head: html`rule of thumb`,
      label: "rule of thumb",
      cell: ({ place: { leverArm: a } }: Labelled) =>
        a.within ? "kept" : html`<strong>outside</strong>`,
    },
    {
      head: html`false tilt, steady yaw<br><small>degrees, at ${perSecond(yawRate)}</small>`,
      label: "false tilt in steady yaw, degrees",
      number: true,
      cell: ({ place: { leverArm: a } }: Labelled) => leaning(a.reading.tilt, a.reading.lowSide),
    },
    {
      head: html`self-level would<br><small>if it took that at its word</small>`,
      label: "self-level would",
      cell: ({ place: { leverArm: a } }: Labelled) => response(a),
    },
    {
      head: html`a filter of ${three(filter.timeConstant)} s believes<br><small>degrees, at most</small>`,
      label: "an attitude filter believes, degrees",
      number: true,
      cell: ({ place: { leverArm: a } }: Labelled) =>
        leaning(a.worst.believed.tilt, a.worst.believed.lowSide),
    },
    {
      head: html`in<br><small>the worst of the motions tried</small>`,
      label: "in the worst of the motions tried",
      long: true,
      cell: ({ place: { leverArm: a } }: Labelled) =>
        a.worst.believed.tilt < LITTLE ? "–" : a.worst.motion,
    },
  ];
}

function leaning(tilt: number, side: LowSide): Part {
  if (tilt < LITTLE || side === "level") return "less than 0.05";
  return html`${inDegrees(tilt)} <small class="axis">${SIDE_WORDS[side].low}</small>`;
}

function response({ reading, selfLevel: { lifts, driftsTo, drift } }: LeverArm): string {
  if (reading.tilt < LITTLE || lifts === "level" || driftsTo === "level")
    return "stay as good as level";
  return `lift ${SIDE_WORDS[lifts].part} and drift ${SIDE_WORDS[driftsTo].way} with ${three(drift / GRAVITY, 2)}\u00a0g`;
}

/** The least and the most of the false tilts in words. */
export function levellingFinding({ candidates }: Pick<Ranking, "candidates">): string {
  const tilt = (c: RankedCandidate) => c.leverArm.reading.tilt;
  const sorted = candidates.toSorted((a, b) => tilt(a) - tilt(b));
  const [least, most] = [sorted[0], sorted[sorted.length - 1]];
  const yaw = `At ${perSecond(least.leverArm.yawRate)} of steady yaw`;
  const one = (c: RankedCandidate) => `${degrees(tilt(c))} at ${quoted(c.candidate.name)}`;
  if (sorted.length === 1) return `${yaw} it reads ${one(least)}.`;
  const inside = candidates.filter((c) => c.leverArm.within).length;
  return `${yaw} it reads from ${one(least)} to ${one(most)}. Within the rule of thumb: ${inside} of ${candidates.length} places.`;
}
