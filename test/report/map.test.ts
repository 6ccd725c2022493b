import { describe, expect, test } from "vitest";
import type { MapPlace } from "../../src/ranking/types.ts";
import { squareSizes } from "../../src/report/client/maps.ts";
import type { Trace } from "../../src/report/figure.ts";
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
    for (const [k, q] of data.quantities.entries()) {
      const column = rows.map((r) => r[k]);
      expect([q.low, q.high]).toEqual([Math.min(...column), Math.max(...column)]);
    }
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
    // Least score of those that are not to be avoided.
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
      "x\u00a0−60, y\u00a00\u00a0mm, on the plate; to be avoided",
      "x\u00a0−10, y\u00a00\u00a0mm, on the plate",
      "x\u00a00, y\u00a0−10\u00a0mm, under the plate",
      "x\u00a00, y\u00a010\u00a0mm, on the plate",
      "x\u00a040, y\u00a00\u00a0mm, on the plate; no low-pass alone is enough",
    ]);
    expect(map.figure.traces.at(-1)?.text?.[0]).toBe(
      "1a: &lt;/script&gt;&lt;b&gt;bold&lt;/b&gt;, on the plate",
    );
  });

  test("is told in words, quantity by quantity", () => {
    expect(data.quantities.map((q) => q.words)).toEqual([
      `Gyro noise: least 1.5\u00a0deg/s rms at x\u00a0−60, y\u00a00\u00a0mm on ${plate} (to be avoided); most 2.8\u00a0deg/s rms at x\u00a040, y\u00a00\u00a0mm on ${plate}, 5.4\u00a0dB apart.`,
      `Acceleration: least 0.7\u00a0g rms at x\u00a0−60, y\u00a00\u00a0mm on ${plate} (to be avoided); most 0.75\u00a0g rms at x\u00a00, y\u00a0−10\u00a0mm under ${plate}, 0.6\u00a0dB apart.`,
      `Filter delay: least 2\u00a0ms at x\u00a00, y\u00a0−10\u00a0mm under ${plate}; most 8.76\u00a0ms at x\u00a040, y\u00a00\u00a0mm on ${plate}.`,
      `False tilt: least 0.573\u00a0degrees at x\u00a0−10, y\u00a00\u00a0mm on ${plate}; most 3.44\u00a0degrees at x\u00a0−60, y\u00a00\u00a0mm on ${plate} (to be avoided).`,
    ]);
    expect(map.findings[0]).toBe(
      `The plate ${plate} from above, 5 places: gyro noise from 1.5\u00a0deg/s rms to 2.8\u00a0deg/s rms.`,
    );
  });

  test("is right with a single place", () => {
    const single = withPlaces(ranking.map.places.slice(1, 2));
    const { quantities, maps } = mapsData(single)!;
    expect(quantities[0].lowWords).toBe("2.2\u00a0deg/s rms at the only place of the map");
    expect(quantities[0].highWords).toBe("");
    expect(quantities[0].words).toContain("at the only place");
    expect(maps[0].figure.traces[0].x).toEqual([0]);
    expect(symbolled(maps[0].figure.traces, "star")).toEqual([]);
    const section = mapSection(single)!;
    expect(text(section)).toContain("there is only one");
    expect(tableRows(section)[0].slice(1, 4)).toEqual(["1", "2.2", "0.7"]);
  });

  test("says so where all places are alike", () => {
    const alike = ranking.map.places.map((p) => ({ ...p, gyro: 3 }));
    const { quantities } = mapsData(withPlaces(alike))!;
    expect(quantities[0].lowWords).toBe("3\u00a0deg/s rms at every place of the map");
    expect(quantities[0].highWords).toBe("");
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

  test("has a switch, the first quantity chosen", () => {
    const radios = section.html.match(/<input type="radio" name="map-quantity"[^>]*>/g) ?? [];
    expect(radios.length).toBe(4);
    expect(radios.map((r) => r.includes("checked"))).toEqual([true, false, false, false]);
  });

  test("has the range of every plate as a table", () => {
    expect(tableRows(section)).toEqual([
      [
        expect.stringContaining("onerror"),
        "5",
        "1.5 to 2.8",
        "0.7 to 0.75",
        "2 to 8.76",
        "0.573 to 3.44",
        "x 0, y 10 mm, on top",
      ],
    ]);
  });
});

describe("the sizes of squares", () => {
  test("grow from half the room to nearly all of it", () => {
    expect(squareSizes([1, 2, 3], 1, 3, 20).map((s) => Number(s.toFixed(6)))).toEqual([
      10, 14.6, 19.2,
    ]);
  });

  test("are alike where all values are", () => {
    expect(squareSizes([5, 5], 5, 5, 20)).toEqual([15, 15]);
  });
});
