import { describe, expect, test } from "vitest";
import { moments } from "../../src/model/polygon.ts";
import {
  calloutPlaces,
  candidateMarks,
  placeLabels,
  spread,
  standing,
} from "../../src/report/markers.ts";
import { armOutline, overhangRegion, planDrawing } from "../../src/report/plan.ts";
import { sideDrawing } from "../../src/report/side.ts";
import { pictureFinding } from "../../src/report/verdict-picture.ts";
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
  const lines = { axis: 0, at: [60, -60], limits: [-100, 100] } as const;

  test("spread evenly where they crowd, and stay where they have room", () => {
    expect(spread([0, 50, 1], 10, [-100, 100])).toEqual([-4.5, 50, 5.5]);
    expect(spread([0, 0, 20], 10, [0, 100])).toEqual([0, 10, 20]);
    expect(spread([100, 99], 10, [0, 100])).toEqual([100, 90]);
    expect(spread([], 10, [0, 100])).toEqual([]);
  });

  test("point to one place from both sides, so that both leaders are seen", () => {
    const places = [
      [0, 5],
      [0, 5],
      [0, 50],
    ] as const;
    expect(calloutPlaces(places, lines, 5)).toEqual([
      [60, 5],
      [-60, 5],
      [60, 50],
    ]);
    const upright = { ...lines, axis: 1, at: [-60, 60] } as const;
    expect(
      calloutPlaces(
        [
          [3, 10],
          [4, -10],
        ],
        upright,
        5,
      ),
    ).toEqual([
      [3, 60],
      [4, -60],
    ]);
  });

  test("leave a dot exactly at every place, on top of all else", () => {
    const places = [
      [1, 2],
      [1, 2],
      [-7, 40],
    ] as const;
    const { layers, callouts } = candidateMarks(ranked, places, lines, 5);
    const dots = layers.slice(-3).map((d) => d.html);
    expect(dots.map((d) => /class="([^"]*)" cx="([^"]*)" cy="([^"]*)"/.exec(d)?.slice(1))).toEqual([
      ["place-dot avoid", "-7", "40"],
      ["place-dot fine", "1", "2"],
      ["place-dot best", "1", "2"],
    ]);
    expect(layers.slice(0, -3).some((l) => l.html.includes("place-dot"))).toBe(false);
    for (const [i, [x, y]] of callouts.entries()) {
      expect(Math.hypot(x - places[i][0], y - places[i][1])).toBeGreaterThan(15);
    }
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
    const marks = candidateMarks(ranked, at, lines, 5).layers.map((m) => m.html);
    const [best, fine, avoid] = marks.filter((m) => m.includes('class="mark '));
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

  test("show every place where it is, over the sign of the centre of gravity", () => {
    for (const svg of [plan, side]) {
      expect(svg.match(/class="place-dot/g)?.length).toBe(3);
      expect(svg.indexOf("place-dot")).toBeGreaterThan(svg.indexOf('class="cg"'));
    }
    expect(plan).toMatch(/class="place-dot best" cx="0" cy="0"/);
    expect(plan).toMatch(/class="place-dot avoid" cx="0" cy="75"/);
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
