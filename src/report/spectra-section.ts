/** Levels against motor speed, the map of a sweep, and why: causes, and what the chips make of it. */

import { WITHOUT_MOTORS } from "./campbell-section.ts";
import { causesPart } from "./causes-table.ts";
import { chipsPart } from "./chips-table.ts";
import { chartBox } from "./figure.ts";
import { type Html, html, named } from "./html.ts";
import { placeLabels } from "./markers.ts";
import { percent } from "./numbers.ts";
import { section } from "./section.ts";
import { lineSwatch } from "./series-marks.ts";
import { spectraData, spectrumCurves } from "./spectra.ts";
import type { Analysed } from "./types.ts";
import { term } from "./words.ts";

const TITLE = "Noise against motor speed";

export function spectraSection(analysed: Analysed): Html {
  const { excitation, ranking } = analysed;
  const data = spectraData(analysed);
  if (!excitation || !ranking || !data) {
    return section(
      "spectra",
      TITLE,
      excitation ? "Nothing is ranked, so there are no spectra." : WITHOUT_MOTORS,
    );
  }
  const curves = spectrumCurves(analysed);
  const labels = placeLabels(ranking.candidates);
  const places = curves.map(
    ({ index, candidate }, i) =>
      html`<label><input type="radio" name="spectra-place" value="${i}"${{ html: i === 0 ? " checked" : "" }}> <span>${labels[index]}: ${named(candidate.candidate.name)}</span></label>`,
  );
  const boxes = curves.map(
    ({ index, candidate, drawn }, i) =>
      html`<label><input type="checkbox" name="curve" value="${i}"${{ html: drawn ? " checked" : "" }}> ${lineSwatch(index)} <span>${labels[index]}: ${named(candidate.candidate.name)}</span></label>`,
  );
  const spread = percent(excitation.motorSpread, 2);
  const how = html`What the chips pass on while the motors hold one speed, give or take the ${spread} by which they differ from each other; that rounds the peaks. Before any filter of the flight controller. One line for each ${term("order")}, or all places together. The ridge above is the ${term("flight-mix")}.`;
  return section(
    "spectra",
    TITLE,
    { finding: data.gyro.finding, how },
    html`<div class="switches"><fieldset class="switch"><legend>sensor</legend>
<label><input type="radio" name="quantity" value="gyro" checked> turn rate <small>(gyro)</small></label>
<label><input type="radio" name="quantity" value="accel"> acceleration</label></fieldset>
<fieldset class="switch"><legend>lines</legend>
<label><input type="radio" name="spectra-view" value="orders" checked> orders at one place</label>
<label><input type="radio" name="spectra-view" value="all"> all places</label></fieldset>
<fieldset class="switch" id="spectra-places"><legend>place</legend>${places}</fieldset></div>
<figure>${chartBox("spectra-chart", "tall", data.gyro.findings[0])}
<figcaption><p id="spectra-words" aria-live="polite">${data.gyro.findings[0]}</p>
<fieldset class="switch legend" id="spectra-curves"><legend>places</legend>${boxes}</fieldset></figcaption></figure>`,
    curves.length < ranking.candidates.length &&
      html`<p class="notes">Curves of ${curves.length} of the ${ranking.candidates.length} places are in this page: the best, the last and the one drawn in the file.</p>`,
    html`<h3>A slow sweep of the throttle</h3>
<p class="lead">The same place over speed and frequency: each order is a slanted streak that lights up where it passes a mode (level, dotted, its number at the right). The streak is where the lines of motors lie that differ as said, three standard deviations to each side. A recording of one craft has a thin line for each motor within it, whose height depends on how it is analysed; what lies above half its sampling rate folds down there, and does not here.</p>
<figure>${chartBox("sweep-chart", "tall", data.gyro.mapFindings[0])}
<figcaption><p id="sweep-words" aria-live="polite">${data.gyro.mapFindings[0]}</p></figcaption></figure>`,
    causesPart(analysed),
    chipsPart(ranking),
  );
}
