import { describe, expect, test } from "vitest";
import type { MapPlace } from "../../src/ranking/types.ts";
import { squareSizes } from "../../src/report/client/maps.ts";
import type { Trace } from "../../src/report/figure.ts";
import { plotText } from "../../src/report/html.ts";
import { mapsData } from "../../src/report/map-data.ts";
import { mapSection } from "../../src/report/map-section.ts";
import type { Analysed } from "../../src/report/types.ts";
import { fixture, HOSTILE, withoutMotors } from "./fixture.ts";
import { tableRows, text } from "./text.ts";

const analysed = fixture();
const ranking = analysed.ranking!;
const data = mapsData(analysed)!;
const [map] = data.maps;
const plate = `“${HOSTILE.plate}”`;

function withPlaces(places: readonly MapPlace[]): Analysed {
  return { ...analysed, ranking: { ...ranking, map: { pitch: 0.01, places } } };
}

const symbolled = (traces: readonly Trace[], symbol: string) =>
  traces.filter((t) => t.marker?.symbol === symbol).map((t) => [t.x, t.y]);

describe("the map", () => {
  test("has the ranking's values at every place, a column for each quantity", () => {
    const { places } = ranking.map;
    const [squares] = map.figure.traces;
    expect(squares.x).toEqual(places.map((p) => Number((1e3 * p.y).toPrecision(4))));
    expect(squares.y).toEqual(places.map((p) => Number((1e3 * p.x).toPrecision(4))));
    const rows = squares.customdata as readonly (readonly number[])[];
    for (const [i, p] of places.entries()) {
      const values = [
        p.gyro,
        p.accel,
        1e3 * p.delayWithout,
        (180 / Math.PI) * p.tilt,
        1e3 * p.delayWith,
      ];
      for (const [k, v] of values.entries()) expect(rows[i][k] / v).toBeCloseTo(1, 2);
    }
    expect(data.quantities.map((q) => q.key)).toEqual(["gyro", "accel", "delayWithout", "tilt"]);
    for (const [k, shares] of map.shares.entries()) {
      // In the order of the values, from the least to the most.
      const order = rows.map((_, i) => i).sort((a, b) => rows[a][k] - rows[b][k]);
      const sorted = order.map((i) => shares[i]);
      expect(sorted).toEqual([...sorted].sort((a, b) => a - b));
      expect(sorted[0]).toBe(0);
      if (k !== 1) expect(sorted.at(-1)).toBe(1);
    }
    // Levels by their ratio: 1.5 to 5.6, and 2.8 as far from either as it is in decibels.
    const at = places.findIndex((p) => p.gyro > 2.79 && p.gyro < 2.81);
    expect(map.shares[0][at]).toBeCloseTo(Math.log(2.8 / 1.5) / Math.log(5.6 / 1.5), 3);
    // Accelerations are less than 3 dB apart and so do not fill the scale.
    const most = Math.max(...places.map((p) => p.accel));
    expect(Math.max(...map.shares[1])).toBeCloseTo(Math.log(most / 0.7) / Math.log(Math.SQRT2), 2);
  });

  test("stands in the frame's own axes: left is left, the front is up", () => {
    const { xaxis, yaxis } = map.figure.layout as Record<
      string,
      { range: number[]; scaleanchor?: string }
    >;
    expect(xaxis.range[0]).toBeGreaterThan(xaxis.range[1]);
    expect(yaxis.range[0]).toBeLessThan(yaxis.range[1]);
    expect(yaxis.scaleanchor).toBe("x");
    // Outline from x -90 to 50 and y -30 to 30 mm lies inside, with its hole.
    expect(Math.min(...yaxis.range)).toBeLessThan(-90);
    expect(Math.max(...yaxis.range)).toBeGreaterThan(50);
    const [{ path, fillrule }] = map.figure.layout.shapes as { path: string; fillrule: string }[];
    expect(path.match(/M/g)?.length).toBe(2);
    expect(path).toContain("30,40");
    expect(fillrule).toBe("evenodd");
  });

  test("marks the best spot, places to avoid, the centre of gravity and the ranking's places", () => {
    const { traces } = map.figure;
    // Least score of those where the stack fits and that are not to be avoided.
    expect(symbolled(traces, "star")).toEqual([[[10], [0]]]);
    expect(symbolled(traces, "x-thin")).toEqual([[[0], [-60]]]);
    const { cg } = analysed.mass;
    const [[[y], [x]]] = symbolled(traces, "circle-cross") as number[][][];
    expect([x, y]).toEqual([cg[0], cg[1]].map((v) => Number((1e3 * v).toPrecision(4))));
    const dots = traces.at(-1)!;
    expect(dots.y).toEqual(ranking.candidates.map((c) => 1e3 * c.candidate.x));
    expect(dots.marker?.symbol).toEqual(["circle", "circle", "diamond"]);
    expect((dots.customdata as number[][])[2].slice(0, 3)).toEqual([10.8, 4.2, 9]);
    const callouts = map.figure.layout.annotations as { text: string; x: number; y: number }[];
    expect(callouts.map((c) => [c.text, c.y])).toEqual([
      ["1a<br>best", 0],
      ["1b", 0],
      ["3<br>avoid", -75],
    ]);
  });

  test("numbers no more places than the drawings do, and marks all", () => {
    const [one] = ranking.candidates;
    const many = Array.from({ length: 30 }, (_, i) => ({ ...one, place: i + 1 }));
    const crowded = mapsData({ ...analysed, ranking: { ...ranking, candidates: many } })!;
    const { layout, traces } = crowded.maps[0].figure;
    expect((layout.annotations as unknown[]).length).toBe(12);
    expect(traces.at(-1)?.x?.length).toBe(30);
  });

  test("says of each place where it is and what to mind", () => {
    expect(map.figure.traces[0].text).toEqual([
      "x\u00a0−60, y\u00a00\u00a0mm, on the plate<br>to be avoided",
      "x\u00a0−10, y\u00a00\u00a0mm, on the plate",
      "x\u00a00, y\u00a0−10\u00a0mm, under the plate",
      "x\u00a00, y\u00a010\u00a0mm, on the plate",
      "x\u00a040, y\u00a00\u00a0mm, on the plate<br>no low-pass alone is enough",
      `x\u00a020, y\u00a020\u00a0mm, on the plate<br>the plate "${plotText(HOSTILE.plate)}" is in the way`,
      "x\u00a0−80, y\u00a00\u00a0mm, on the plate<br>its screws do not fit: read with their pattern at 40\u00a0%",
    ]);
    expect(map.figure.traces.at(-1)?.text?.[0]).toBe(
      "1a: &lt;/script&gt;&lt;b&gt;bold&lt;/b&gt;, on the plate",
    );
  });

  test("is told in words, quantity by quantity", () => {
    expect(data.quantities.map((q) => q.words)).toEqual([
      `Gyro noise: least 1.5\u00a0deg/s rms at x\u00a0−60, y\u00a00\u00a0mm on ${plate} (to be avoided); most 5.6\u00a0deg/s rms at x\u00a0−80, y\u00a00\u00a0mm on ${plate} (its screws do not fit), 11.4\u00a0dB apart.`,
      `Acceleration: least 0.7\u00a0g rms at x\u00a0−60, y\u00a00\u00a0mm on ${plate} (to be avoided); most 0.8\u00a0g rms at x\u00a020, y\u00a020\u00a0mm on ${plate} (no room), 1.2\u00a0dB apart.`,
      `Filter delay: least 2\u00a0ms at x\u00a00, y\u00a0−10\u00a0mm under ${plate}; most 8.76\u00a0ms at x\u00a040, y\u00a00\u00a0mm on ${plate}.`,
      `False tilt: least 0.573\u00a0degrees at x\u00a0−10, y\u00a00\u00a0mm on ${plate}; most 4.58\u00a0degrees at x\u00a0−80, y\u00a00\u00a0mm on ${plate} (its screws do not fit).`,
    ]);
    expect(map.findings[0]).toBe(
      `The plate ${plate} from above, 7 places: gyro noise from 1.5\u00a0deg/s rms to 5.6\u00a0deg/s rms.`,
    );
  });

  test("is right with a single place", () => {
    const single = withPlaces(ranking.map.places.slice(1, 2));
    const { quantities, maps } = mapsData(single)!;
    expect(quantities[0].ticks[0]).toBe("2.2");
    expect(quantities[0].words).toContain("at the only place");
    expect(maps[0].figure.traces[0].x).toEqual([0]);
    expect(symbolled(maps[0].figure.traces, "star")).toEqual([]);
    const section = mapSection(single)!;
    expect(text(section)).toContain("There is one place on the plates");
    expect(tableRows(section)[0].slice(1, 5)).toEqual(["1", "1", "2.2", "0.7"]);
  });

  test("says so where all places are alike", () => {
    const alike = ranking.map.places.map((p) => ({ ...p, gyro: 3 }));
    const { quantities } = mapsData(withPlaces(alike))!;
    expect(quantities[0].ticks).toEqual(["3", "3.3", "3.6", "3.9", "4.2"]);
    expect(quantities[0].words).toBe("Gyro noise: 3\u00a0deg/s rms everywhere.");
  });

  test("is left out where there is none", () => {
    expect(mapsData(withPlaces([]))).toBeUndefined();
    expect(mapSection(withPlaces([]))).toBeUndefined();
    expect(mapSection(withoutMotors())).toBeUndefined();
  });
});

describe("the section", () => {
  const section = mapSection(analysed)!;

  test("begins with where the stack fits and how far the noise goes, the best spot among the free ones", () => {
    expect(text(section)).toContain(
      "Beside the places of the ranking, the stack fits at 5 of 7 places of this grid; the best of them by score is x 0, y 10 mm on",
    );
    expect(text(section)).toContain("gyro noise runs from 1.5 deg/s rms to 5.6 deg/s rms.");
    const taken = ranking.map.places.map((p) => ({ ...p, inTheWay: "the left arm" }));
    const nowhere = text(mapSection(withPlaces(taken))!);
    expect(nowhere).toContain("The stack fits nowhere beside what is drawn");
    expect(nowhere).not.toContain("best spot of the map");
  });

  test("has a scale that its script can change", () => {
    for (const k of [0, 1, 2, 3, 4, "unit"]) expect(section.html).toContain(`id="map-tick-${k}"`);
  });

  test("has a switch, the first quantity chosen", () => {
    const radios = section.html.match(/<input type="radio" name="map-quantity"[^>]*>/g) ?? [];
    expect(radios.length).toBe(4);
    expect(radios.map((r) => r.includes("checked"))).toEqual([true, false, false, false]);
  });

  test("has the range of every plate as a table", () => {
    expect(tableRows(section)).toEqual([
      [
        expect.stringContaining("onerror"),
        "7",
        "5",
        "1.5 to 5.6",
        "0.7 to 0.8",
        "2 to 8.76",
        "0.573 to 4.58",
        "x 0, y 10 mm, on top",
      ],
    ]);
  });
});

describe("the sizes of squares", () => {
  test("grow from half the room to nearly all of it", () => {
    const sizes = squareSizes([0, 0.5, 1], 20);
    expect(sizes.map((s) => Number(s.toFixed(6)))).toEqual([10, 14.6, 19.2]);
  });
});
