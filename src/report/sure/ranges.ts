/** How far the noise at every place follows the frame: bars per place, and which places tie. */

import type { RankedCandidate, Ranking } from "../../ranking/types.ts";
import type { HowSure } from "../../study/how-sure.ts";
import type { SampledSpot } from "../../study/results.ts";
import { type BandMark, bandFigure, placeInRow } from "../band-figure.ts";
import { chartBox, type Figure } from "../figure.ts";
import { type Html, html, named, type Part } from "../html.ts";
import { isToAvoid } from "../markers.ts";
import { degreesPerSecond, percent, rounded, signed, three } from "../numbers.ts";
import { type Labelled, labelled, placeText } from "../place-names.ts";
import { type Column, table } from "../section.ts";
import { marksLegend } from "../series-marks.ts";
import { logTicks } from "../ticks.ts";

const ID = "sure-ranges-chart";
/** Places in the chart; the table has all. */
const MOST = 12;

/** A place over the samples; undefined where nothing was sampled, or the file does not name the place. */
export function sampledPlace(
  sure: HowSure | undefined,
  { candidate, plate }: RankedCandidate,
): SampledSpot | undefined {
  const [variant] = sure?.sampled.variants ?? [];
  const isThere = variant?.outcome.spots.some(
    (s) => s.name === candidate.name && s.plate === plate,
  );
  return isThere ? variant.sampled?.spots.find((s) => s.name === candidate.name) : undefined;
}

const seriesNames = ({ frequencyBand }: Ranking, sure: HowSure | undefined): string[] => [
  `all frequencies up to ${percent(frequencyBand)} off`,
  ...(sure?.sampled.sure ? ["nine of ten frames, every input scattering"] : []),
];

export function rangesFigure(ranking: Ranking, sure?: HowSure): Figure | undefined {
  const places = labelled(ranking.candidates).slice(0, MOST);
  if (places.length === 0) return undefined;
  const series = seriesNames(ranking, sure);
  const marks = places.flatMap((p, i): BandMark[] => {
    const { place } = p;
    const { noise } = sampledPlace(sure, place) ?? {};
    const [from, to] = place.gyroRange;
    const at = (n: number) => placeInRow(i, n, series.length);
    const who = placeText(p);
    const drawn = `${degreesPerSecond(place.sensed.gyro)} rms as drawn`;
    return [
      {
        at: at(0),
        series: 0,
        middle: place.sensed.gyro,
        low: Math.min(from, place.sensed.gyro),
        high: Math.max(to, place.sensed.gyro),
        words: `${who}: ${drawn}, ${three(from)} to ${degreesPerSecond(to)} with frequencies ${percent(ranking.frequencyBand)} off`,
        ...(isToAvoid(place) && { note: "avoid" }),
      },
      ...(noise
        ? [
            {
              at: at(1),
              series: 1,
              middle: noise.perSecond.median.value,
              low: noise.perSecond.low.value,
              high: noise.perSecond.high.value,
              words: `${who}: nine of ten frames ${three(noise.perSecond.low.value)} to ${degreesPerSecond(noise.perSecond.high.value)}, half of them below ${three(noise.perSecond.median.value)}`,
            },
          ]
        : []),
    ];
  });
  const ends = marks.flatMap((m) => [m.low ?? m.middle, m.high ?? m.middle]).filter((v) => v > 0);
  const [low, high] = [0.9 * Math.min(...ends), 1.1 * Math.max(...ends)];
  const room = marks.some((m) => m.note) ? 0.1 * Math.log10(high / low) : 0;
  return bandFigure({
    rows: places.map((p) => ({ name: placeText(p), short: placeText(p) })),
    series,
    marks,
    xaxis: {
      title: { text: "gyro noise, deg/s rms", standoff: 8 },
      type: "log",
      range: [rounded(Math.log10(low)), rounded(Math.log10(high) + room)],
      ...logTicks(low, high),
    },
  });
}

/** Chart and table, without a heading. */
export function rangesPart(ranking: Ranking, sure?: HowSure): Html {
  const places = labelled(ranking.candidates);
  const shown = Math.min(MOST, places.length);
  const each = sure?.sampled.sure ? 0.9 : 0.72;
  return html`<figure>${chartBox(ID, "bars", rangesFinding(ranking), Number((each * shown).toFixed(2)))}
<figcaption>${marksLegend(seriesNames(ranking, sure))}<p class="key">Gyro noise of every place${shown < places.length && `, the first ${shown} of ${places.length}`}; the scale grows by factors.${sure?.sampled.sure && places.some((p) => !sampledPlace(sure, p.place)) && " Places without the second bar were found by the search and are not named in the file, so no frames were drawn for them."}</p></figcaption></figure>
${placesTable(ranking, places, sure)}`;
}

/** What the chart shows, in words. */
export function rangesFinding({ candidates, frequencyBand }: Ranking): string {
  const [first] = candidates;
  if (!first) return "";
  const [low, high] = first.gyroRange;
  return `“${first.candidate.name}” reads ${degreesPerSecond(first.sensed.gyro)} rms as drawn, and ${three(low)} to ${degreesPerSecond(high)} if all natural frequencies are up to ${percent(frequencyBand)} off.`;
}

function placesTable(ranking: Ranking, places: readonly Labelled[], sure?: HowSure): Html {
  const [first] = ranking.candidates;
  const chances = sure?.sampled.variants[0]?.sampled?.chances.rivals;
  const columns: Column<Labelled>[] = [
    {
      head: "place",
      names: true,
      cell: ({ label, place }) => html`<strong>${label}: ${named(place.candidate.name)}</strong>`,
    },
    {
      head: html`gyro as drawn<br><small>deg/s rms</small>`,
      label: "gyro as drawn, deg/s rms",
      number: true,
      cell: ({ place }) => html`<strong>${three(place.sensed.gyro)}</strong>`,
    },
    {
      head: html`frequencies ${percent(ranking.frequencyBand)} off<br><small>deg/s rms</small>`,
      label: `frequencies ${percent(ranking.frequencyBand)} off, deg/s rms`,
      number: true,
      cell: ({
        place: {
          gyroRange: [low, high],
        },
      }) => `${three(low)} to ${three(high)}`,
    },
    ...(chances
      ? [
          {
            head: html`nine of ten frames<br><small>deg/s rms</small>`,
            label: "nine of ten frames, deg/s rms",
            number: true,
            cell: ({ place }: Labelled): Part => {
              const band = sampledPlace(sure, place)?.noise?.perSecond;
              return band ? `${three(band.low.value)} to ${three(band.high.value)}` : "–";
            },
          },
        ]
      : []),
    {
      head: html`score<br><small>dB above the first</small>`,
      label: "score, dB above the first",
      number: true,
      cell: ({ place }) => (place === first ? "0" : signed(place.score - first.score)),
    },
    { head: "so", label: "so", cell: ({ place }) => standingWords(place, first) },
  ];
  return table("Places, and how sure their order is", columns, places, {
    cards: true,
    rowClass: ({ place }) => (place.tied || place === first ? "chosen" : ""),
  });
}

function standingWords(place: RankedCandidate, first: RankedCandidate): string {
  if (isToAvoid(place)) return "to be avoided whatever its noise";
  if (place === first) return place.tied ? "first of those that tie" : "the best";
  if (!place.tied) return "behind at all shifts tried";
  return place.score < first.score
    ? "ties with the first, ahead of it as drawn"
    : "ties with the first";
}
