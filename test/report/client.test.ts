import { runInNewContext, Script } from "node:vm";
import { describe, expect, test } from "vitest";
import { themed } from "../../src/report/client/figures.ts";
import { squareSizes } from "../../src/report/client/maps.ts";
import { scaleColours } from "../../src/report/client/picture.ts";
import { readScene } from "../../src/report/client/scene.ts";
import { DARK, LIGHT, motionScale } from "../../src/report/palette.ts";
import { clientScript } from "../../src/report/script.ts";
import { unpackIntegers } from "../../src/report/shape-codec.ts";
import { DRAWN } from "./drawn.ts";

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
      const scene = tools.readScene(input, tools.unpackIntegers);
      const colours = tools.scaleColours(scale, 10);
      const seen = tools.project(scene, { yaw: 2, pitch: 0.5, zoom: 1 }, 60, 40, 2);
      const raster = tools.newRaster(60, 40);
      const paint = {
        colours, table: tools.shadeTable(colours, 0.8), dimmest: 0.8, opacity: [1, 0.5, 1], ground: [1, 2, 3],
      };
      const camera = { yaw: 2, pitch: 0.5, zoom: 1 };
      const look = { paint, size: 0, ghost: true, mark: input.mark, theme, room: 2 };
      const { overlay } = tools.composePicture(tools, scene, camera, raster, 1, look);
      JSON.stringify([
        tools.unpackIntegers("AAf_fA"),
        Array.from(scene.rest),
        colours,
        tools.rgbOf("#010203"),
        new Set(raster.pixels).size > 10,
        tools.svgPicture(60, 40, "#ffffff", tools.paintedAreas(scene, seen, paint, () => false), overlay, "t", "urn:svg").length > 2000,
        tools.themed({ a: "--ink" }, theme),
        tools.squareSizes([0, 0.5], 20),
      ])`;
    const scale = motionScale(3);
    const result = JSON.parse(
      String(runInNewContext(program, { input: DRAWN, scale, theme: { ...LIGHT } })),
    );
    expect(result).toEqual([
      unpackIntegers("AAf_fA"),
      Array.from(readScene(DRAWN, unpackIntegers).rest),
      scaleColours(scale, 10),
      [1, 2, 3],
      true,
      true,
      { a: LIGHT.ink },
      squareSizes([0, 0.5], 20),
    ]);
  });
});
