import { describe, expect, test } from "vitest";
import { moments } from "../../src/model/polygon.ts";
import { apart, candidateMarks, placeLabels, standing } from "../../src/report/markers.ts";
import { armOutline, overhangRegion, planDrawing } from "../../src/report/plan.ts";
import { sideDrawing } from "../../src/report/side.ts";
import { pictureFinding } from "../../src/report/verdict-section.ts";
import { fixture, HOSTILE, withoutMotors } from "./fixture.ts";

const analysed = fixture();
const ranked = analysed.ranking?.candidates ?? [];

describe("the outline of an arm", () => {
  test("has the area of its taper and of the end between the plates", () => {
    const [arm] = analysed.model.arms;
    const length = Math.hypot(45, 55);
    expect(moments(armOutline(arm)).area * 1e6).toBeCloseTo(((17 + 13) / 2) * length + 17 * 15, 6);
  });

  test("is centred on the line from root to tip", () => {
    const [arm] = analysed.model.arms;
    const { area, x, y } = moments(armOutline({ ...arm, held: { kind: "point", point: "p" } }));
    const [cx, cy] = [x / area - arm.root[0], y / area - arm.root[1]];
    const [dx, dy] = [arm.tip[0] - arm.root[0], arm.tip[1] - arm.root[1]];
    expect(Math.abs(cx * dy - cy * dx)).toBeLessThan(1e-12);
  });
});

test("an overhang is what lies beyond the last support", () => {
  const square = Float64Array.of(-1, -1, 1, -1, 1, 1, -1, 1);
  const overhang = (direction: "front" | "rear" | "left" | "right", supportAt: number) =>
    overhangRegion(square, { direction, supportAt } as Parameters<typeof overhangRegion>[1]);
  const centre = (...args: Parameters<typeof overhang>) => {
    const { area, x, y } = moments(overhang(...args));
    return [area, x / area, y / area].map((v) => Number(v.toFixed(9)));
  };
  expect(centre("front", 0.5)).toEqual([1, 0.75, 0]);
  expect(centre("rear", -0.5)).toEqual([1, -0.75, 0]);
  expect(centre("left", 0)).toEqual([2, 0, 0.5]);
  expect(centre("right", -0.8)[0]).toBeCloseTo(0.4, 9);
});

describe("marks", () => {
  test("of the same place part until they do not touch", () => {
    const places = [
      [0, 0],
      [0, 0],
      [0, 0],
      [3, 1],
    ] as const;
    const shown = apart(places, 10, [[0, 2]]);
    const all = [...shown, [0, 2] as const];
    for (let i = 0; i < all.length; i++) {
      for (let j = i + 1; j < all.length; j++) {
        const gap = Math.hypot(all[i][0] - all[j][0], all[i][1] - all[j][1]);
        expect(gap).toBeGreaterThan(9.99);
      }
    }
    expect(shown).toEqual(apart(places, 10, [[0, 2]]));
  });

  test("that have room stay where they are", () => {
    const places = [
      [0, 0],
      [20, 0],
    ] as const;
    expect(apart(places, 10)).toEqual(places);
  });

  test("carry the place, with letters where it is shared", () => {
    expect(placeLabels(ranked)).toEqual(["1a", "1b", "3"]);
  });

  test("differ in shape, not in colour only", () => {
    expect(ranked.map(standing)).toEqual(["best", "fine", "avoid"]);
    const at = [
      [0, 0],
      [90, 0],
      [180, 0],
    ] as const;
    const [avoid, fine, best] = candidateMarks(ranked, at, [], 5).map((m) => m.html);
    expect(avoid).toContain('<path class="mark avoid"');
    expect(fine).toContain('<circle class="mark fine"');
    expect(best).toContain("mark-halo");
  });
});

describe("the drawings", () => {
  const finding = pictureFinding(analysed);
  const plan = planDrawing(analysed, finding).html;
  const side = sideDrawing(analysed, finding).html;

  test("say in words what they show", () => {
    expect(finding).toContain("5.2\u00a0mm from the centre of gravity, the best place.");
    expect(finding).toContain("to be avoided");
    expect(finding).toContain("reaches 50\u00a0mm past its last support to the rear");
    expect(plan).toMatch(/role="img" aria-labelledby="plan-title plan-finding"/);
  });

  test("hold the plate true to its outline with its hole, front at the top", () => {
    // x 50, y 20 of the frame is 20 to the left of the middle and 50 up.
    expect(plan).toMatch(/<path class="plate" d="M[^"]*-20 -50[^"]*ZM[^"]*Z"/);
    expect(plan.match(/class="arm"/g)?.length).toBe(4);
    expect(plan.match(/class="motor"/g)?.length).toBe(4);
    expect(plan).toContain('<path class="overhang"');
    expect(side).toContain('<rect class="overhang" x="-90"');
  });

  test("escape names and hold no number that is not one", () => {
    for (const svg of [plan, side]) {
      expect(svg).not.toContain(HOSTILE.plate);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  test("are drawn without motors and places too", () => {
    const bare = withoutMotors();
    expect(planDrawing(bare, "").html).not.toContain('class="mark');
    expect(sideDrawing(bare, "").html).not.toMatch(/NaN|Infinity/);
  });
});
