/** The map of places as comma-separated values, for spreadsheets and plotting programs. */

import type { MapPlace, QuietMap } from "../../ranking/types.ts";
import { spreadsheetField } from "../../runs/csv.ts";
import { toDegrees } from "../terminal/numbers.ts";

/** The first line of every such file. */
export const MAP_HEADER =
  "plate,side,x_mm,y_mm,gyro_deg_per_s_rms,accel_g_rms,delay_ms,delay_with_notches_ms,residual_reached,false_tilt_deg,score_db,avoid,in_the_way,pattern_share";

/** Lines as RFC 4180 has them, ended by CR LF; six digits. */
export function mapCsv({ places }: QuietMap): string {
  return [MAP_HEADER, ...inOrder(places).map(row)].map((line) => `${line}\r\n`).join("");
}

function row(place: MapPlace): string {
  return [
    spreadsheetField(place.plate),
    place.side > 0 ? "above" : "below",
    millimetres(place.x),
    millimetres(place.y),
    six(place.gyro),
    six(place.accel),
    six(1e3 * place.delayWithout),
    six(1e3 * place.delayWith),
    yesNo(place.attainable),
    six(toDegrees(place.tilt)),
    six(place.score),
    yesNo(place.avoid),
    spreadsheetField(place.inTheWay ?? ""),
    six(place.patternShare ?? 1),
  ].join(",");
}

/** By plate in the order of the frame file, then from right to left, then from rear to front. */
function inOrder(places: readonly MapPlace[]): MapPlace[] {
  const plates = [...new Set(places.map(({ plate }) => plate))];
  const rank = new Map(plates.map((plate, i) => [plate, i]));
  const byPlate = (p: MapPlace): number => rank.get(p.plate) ?? 0;
  return places.toSorted((a, b) => byPlate(a) - byPlate(b) || a.y - b.y || a.x - b.x);
}

/** To a millionth, so that what is zero but for rounding is zero. */
function millimetres(length: number): string {
  return six(Math.round(length * 1e9) / 1e6);
}

function six(value: number): string {
  if (!Number.isFinite(value)) return "";
  return String(Number(value.toPrecision(6)) + 0);
}

function yesNo(value: boolean): string {
  return value ? "yes" : "no";
}
