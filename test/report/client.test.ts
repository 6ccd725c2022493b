import { runInNewContext, Script } from "node:vm";
import { describe, expect, test } from "vitest";
import { themed } from "../../src/report/client/charts.ts";
import {
  lineVertices,
  shapeTraces,
  shapeUpdate,
  vertexMotion,
} from "../../src/report/client/geometry.ts";
import { squareSizes } from "../../src/report/client/maps.ts";
import type { PreparedShape, ShapesData } from "../../src/report/client/types.ts";
import { DARK, LIGHT, motionScale } from "../../src/report/palette.ts";
import { clientScript } from "../../src/report/script.ts";
import { unpackUnit } from "../../src/report/shape-codec.ts";

/** Two carriers and one follower a quarter of the way; one triangle, one line, a mark. */
const DATA: ShapesData = {
  places: [0, 0, 0, 100, 0, 0],
  frames: [0, 1, 1, 1],
  followers: [0, 250, 0, 0],
  surface: [0, 1, 2],
  lines: [[0, 2, 1]],
  boxes: { surface: [0, 2, 1], lines: [[0, 1]] },
  mark: [0, 1],
  shapes: [],
  words: [],
  first: 1,
  scale: motionScale(3),
};

function prepared(): PreparedShape {
  return {
    data: DATA,
    rest: vertexMotion(DATA, DATA.places),
    motion: vertexMotion(DATA, [0, 0, 0, 0, 0, 1]),
    lines: lineVertices(DATA.lines),
    boxLines: lineVertices(DATA.boxes.lines),
  };
}

type Placed = Record<"x" | "y" | "z", (number | null)[]> & { intensity?: number[] };

describe("the moving picture", () => {
  test("puts followers between their carriers", () => {
    expect(Array.from(prepared().rest)).toEqual([0, 0, 0, 100, 0, 0, 25, 0, 0]);
    expect(Array.from(prepared().motion)).toEqual([0, 0, 0, 0, 0, 1, 0, 0, 0.25]);
  });

  test("colours by how far each vertex moves", () => {
    const [surface, bodies] = shapeTraces(prepared(), LIGHT) as unknown as Placed[];
    expect(surface.intensity).toEqual([0, 1, 0.25]);
    expect(bodies.intensity).toEqual(surface.intensity);
  });

  test("moves surface, bodies, lines, edges and mark by the size asked for", () => {
    const { x, z } = shapeUpdate(prepared(), -20) as Record<string, (number | null)[][]>;
    expect(z).toEqual([
      [0, -20, -5],
      [0, -20, -5],
      [0, -5, -20, null],
      [0, -20, null],
      [0, -20],
    ]);
    expect(x[2]).toEqual([0, 25, 100, null]);
  });

  test("keeps a ghost and an arrow to the front that do not move", () => {
    const traces = shapeTraces(prepared(), LIGHT) as unknown as Placed[];
    expect(traces.length).toBe(7);
    expect(traces[5].x).toEqual([0, 25, 100, null]);
    expect(traces[6].x[0]).toBe(100);
  });
});

describe("themed", () => {
  test("fills in colours by name and leaves all else", () => {
    const figure = { a: "--ink", b: ["--line", 1, null], c: { d: "--none", e: "- -" } };
    expect(themed(figure, DARK)).toEqual({
      a: DARK.ink,
      b: [DARK.line, 1, null],
      c: { d: "--none", e: "- -" },
    });
  });
});

describe("the script of the page", () => {
  test("is a program", () => {
    expect(() => new Script(clientScript())).not.toThrow();
    expect(clientScript()).toBe(clientScript());
  });

  test("has functions that stand alone: cut out of their module they do the same", () => {
    const script = clientScript();
    const tools = script.slice(script.indexOf("const tools"), script.indexOf("const starters"));
    const program = `const __name = (f) => f; ${tools}
      const shape = { ...input, rest: Float64Array.from(input.rest), motion: Float64Array.from(input.motion) };
      JSON.stringify([
        Array.from(tools.unpackUnit("AAf_fA")),
        Array.from(tools.vertexMotion(shape.data, shape.data.places)),
        tools.lineVertices([[1], [2]]),
        tools.shapeTraces(shape, theme),
        tools.shapeUpdate(shape, 3),
        tools.themed({ a: "--ink" }, theme),
        tools.squareSizes([0, 0.5], [20, 30]),
      ])`;
    const shape = prepared();
    const input = { ...shape, rest: Array.from(shape.rest), motion: Array.from(shape.motion) };
    const result = JSON.parse(String(runInNewContext(program, { input, theme: { ...LIGHT } })));
    expect(result).toEqual(
      JSON.parse(
        JSON.stringify([
          Array.from(unpackUnit("AAf_fA")),
          Array.from(shape.rest),
          lineVertices([[1], [2]]),
          shapeTraces(shape, LIGHT),
          shapeUpdate(shape, 3),
          { a: LIGHT.ink },
          squareSizes([0, 0.5], [20, 30]),
        ]),
      ),
    );
  });
});
