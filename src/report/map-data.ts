/** The maps of the plates as the page carries them. */

import type { Figure } from "./figure.ts";
import { commonExtent, plateFigure } from "./map-figure.ts";
import { plateFinding, QUANTITIES, quantityFinding } from "./map-quantities.ts";
import { rounded } from "./numbers.ts";
import { motionScale } from "./palette.ts";
import type { Analysed } from "./types.ts";

/** One plate. The first trace has the places, with a column of its customdata for each quantity. */
export interface PlateMap {
  readonly id: string;
  readonly plate: string;
  readonly figure: Figure;
  /** by quantity: what is to be seen */
  readonly findings: readonly string[];
}

export interface MapQuantity {
  readonly key: string;
  /** of all plates, so that they compare */
  readonly low: number;
  readonly high: number;
  /** what stands at the ends of the scale; nothing at the upper one where all values are alike */
  readonly lowWords: string;
  readonly highWords: string;
  readonly words: string;
}

/** What the page's script draws; the quantity's number is its column. */
export interface MapsData {
  readonly quantities: readonly MapQuantity[];
  readonly maps: readonly PlateMap[];
  /** distance between places, mm */
  readonly pitch: number;
  readonly scale: readonly (readonly [number, string])[];
}

/** undefined where there is no map. */
export function mapsData(analysed: Analysed): MapsData | undefined {
  const { ranking, model } = analysed;
  const places = ranking?.map.places ?? [];
  if (!ranking || places.length === 0) return undefined;
  const plates = model.plates.filter((plate) => places.some((p) => p.plate === plate.name));
  const extent = commonExtent(plates);
  const maps = plates.map((plate, i): PlateMap => {
    const here = places.filter((p) => p.plate === plate.name);
    return {
      id: `map-${i + 1}`,
      plate: plate.name,
      figure: plateFigure(analysed, plate, here, extent),
      findings: QUANTITIES.map((q) => plateFinding(plate.name, here, q)),
    };
  });
  const quantities = QUANTITIES.map((q): MapQuantity => {
    const values = places.map((p) => rounded(q.of(p), 3) ?? 0);
    const [low, high] = [Math.min(...values), Math.max(...values)];
    const apart = high > low;
    const alike = places.length > 1 ? "at every place of the map" : "at the only place of the map";
    const lowWords = apart ? q.words(low) : `${q.words(low)} ${alike}`;
    const highWords = apart ? q.words(high) : "";
    return { key: q.key, low, high, lowWords, highWords, words: quantityFinding(places, q) };
  });
  return {
    quantities,
    maps,
    pitch: rounded(1e3 * ranking.map.pitch, 4) ?? 0,
    scale: motionScale(),
  };
}
