import { describe, expect, test } from "vitest";
import { completeOutline, copiesOf, copyName } from "../../src/model/copies.ts";
import { moments } from "../../src/model/polygon.ts";

const area = (points: readonly (readonly number[])[]) =>
  moments(Float64Array.from(points.flat())).area;

describe("mirrored copies", () => {
  test("the part as drawn comes first; one word mirrors in y, in x or in both", () => {
    expect(copiesOf("none")).toEqual([{ sx: 1, sy: 1 }]);
    expect(copiesOf("left and right")).toEqual([
      { sx: 1, sy: 1 },
      { sx: 1, sy: -1 },
    ]);
    expect(copiesOf("front and rear")).toEqual([
      { sx: 1, sy: 1 },
      { sx: -1, sy: 1 },
    ]);
    expect(copiesOf("all four corners").length).toBe(4);
  });

  test("names say where the copy lies, wherever the drawn one was", () => {
    expect(copyName("arm", "all four corners", -1, 2)).toBe("rear left arm");
    expect(copyName("arm", "all four corners", 1, -2)).toBe("front right arm");
    expect(copyName("post", "left and right", 5, -2)).toBe("right post");
    expect(copyName("post", "front and rear", -5, -2)).toBe("rear post");
    expect(copyName("post", "none", -5, -2)).toBe("post");
  });
});

describe("outlines drawn in part", () => {
  test("a quarter becomes the whole: area times four, no corner twice", () => {
    const quarter = [
      [4, 1],
      [3, 2],
      [1, 3],
    ] as const;
    const whole = completeOutline(quarter, "all four corners");
    expect(whole.length).toBe(12);
    // 8 x 2 across the middle, then trapezoids 8 to 6 and 6 to 2, twice
    expect(Math.abs(area(whole))).toBe(16 + 2 * (7 + 4));
  });

  test("corners on the axes are kept once", () => {
    const whole = completeOutline(
      [
        [4, 0],
        [4, 3],
        [0, 3],
      ],
      "all four corners",
    );
    expect(whole.length).toBe(8);
    expect(Math.abs(area(whole))).toBe(48);
  });

  test("a left half from front to rear, a front half from right to left", () => {
    const left = completeOutline(
      [
        [5, 1],
        [2, 3],
        [-4, 2],
      ],
      "left and right",
    );
    expect(left.map(([, y]) => y)).toEqual([1, 3, 2, -2, -3, -1]);
    const front = completeOutline(
      [
        [1, -3],
        [4, 0],
        [1, 3],
      ],
      "front and rear",
    );
    expect(front.map(([x]) => x)).toEqual([1, 4, 1, -1, -4, -1]);
    // Two trapezoids, 8 and 2 wide, 3 high.
    expect(Math.abs(area(front))).toBe(30);
  });

  test("a whole outline stays as it is", () => {
    const drawn = [
      [0, 0],
      [1, 0],
      [0, 1],
    ] as const;
    expect(completeOutline(drawn, "none")).toEqual(drawn);
  });
});
