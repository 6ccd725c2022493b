/** The maps of the plates as the page carries them. */

import type { MapPlace } from "../ranking/types.ts";
import type { Figure } from "./figure.ts";
import { commonExtent, plateFigure } from "./map-figure.ts";
import { plateFinding, QUANTITIES, quantityFinding } from "./map-quantities.ts";
import { shareOf, tickWords } from "./map-scale.ts";
import { rounded } from "./numbers.ts";
import { motionScale } from "./palette.ts";
import { scaleOf } from "./quiet-layer.ts";
import type { Analysed } from "./types.ts";

/** One plate. The first trace has the places. */
export interface PlateMap {
  readonly id: string;
  readonly plate: string;
  readonly figure: Figure;
  /** by quantity, then place: from the least (0) to the most (1) of the scale */
  readonly shares: readonly (readonly number[])[];
  /** by quantity: what is to be seen */
  readonly findings: readonly string[];
}

export interface MapQuantity {
  readonly key: string;
  /** of the scale, which all plates share */
  readonly ticks: readonly string[];
  readonly unit: string;
  readonly words: string;
}

/** What the page's script draws; the quantity's number is its column. */
export interface MapsData {
  readonly quantities: readonly MapQuantity[];
  readonly maps: readonly PlateMap[];
  readonly scale: readonly (readonly [number, string])[];
  /** for every square on all plates, mm */
  readonly room: number;
}

/** undefined where there is no map. */
export function mapsData(analysed: Analysed): MapsData | undefined {
  const { ranking, model } = analysed;
  const places = ranking?.map.places ?? [];
  if (!ranking || places.length === 0) return undefined;
  const plates = model.plates.filter((plate) => places.some((p) => p.plate === plate.name));
  const extent = commonExtent(plates);
  const scales = QUANTITIES.map((q) => scaleOf(places, q));
  const maps = plates.map((plate, i): PlateMap => {
    const here = places.filter((p) => p.plate === plate.name);
    return {
      id: `map-${i + 1}`,
      plate: plate.name,
      figure: plateFigure(analysed, plate, here, extent),
      shares: QUANTITIES.map((q, k) =>
        here.map((p) => rounded(shareOf(q.of(p), scales[k]), 3) ?? 0),
      ),
      findings: QUANTITIES.map((q) => plateFinding(plate.name, here, q)),
    };
  });
  const quantities = QUANTITIES.map((q, k): MapQuantity => {
    const words = quantityFinding(places, q);
    return { key: q.key, ticks: tickWords(scales[k]), unit: q.unit, words };
  });
  return { quantities, maps, scale: motionScale(), room: roomOf(places, ranking.map.pitch) };
}

/** Most squares stay apart; where the stack fits places lie closer, and loud ones may overlap there. */
function roomOf(places: readonly MapPlace[], pitch: number): number {
  const nearest = places.map((p) => {
    const others = places.filter((q) => q !== p && q.plate === p.plate);
    return Math.min(...others.map((q) => Math.hypot(q.x - p.x, q.y - p.y)));
  });
  const apart = nearest.filter(Number.isFinite).sort((a, b) => a - b);
  const usual = apart[Math.floor(apart.length / 2)] ?? pitch;
  return rounded(1e3 * Math.max(pitch, 0.85 * usual), 3) ?? 0;
}
