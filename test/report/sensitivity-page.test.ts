import { describe, expect, test } from "vitest";
import { middleCut } from "../../src/report/bars-figure.ts";
import { commandText } from "../../src/report/command-text.ts";
import { prose } from "../../src/report/prose.ts";
import { renderSensitivity } from "../../src/report/sensitivity-page.ts";
import { madeSensitivity } from "../study/made-sensitivity.ts";
import { HOSTILE, INPUT } from "./fixture.ts";
import { pageDataOf } from "./page-data.ts";
import { tableRows } from "./text.ts";

const page = renderSensitivity("Trial", madeSensitivity(), INPUT);
const part = (id: string, html = page) =>
  new RegExp(`<section id="${id}".*?</section>`, "s").exec(html)?.[0] ?? "";

describe("the page of what moves a frame", () => {
  test("has its sections in the order of reading", () => {
    const ids = [...page.matchAll(/<section id="([\w-]+)"/g)].map((m) => m[1]);
    expect(ids.slice(0, 7)).toEqual([
      "answer",
      "help",
      "figures",
      "modes",
      "limits",
      "cautions",
      "inputs",
    ]);
  });

  test("leads with the input that moves the noise most", () => {
    const heading = /<h2[^>]*>(.*?)<\/h2>/s.exec(part("answer"))?.[1].replaceAll("\u00a0", " ");
    expect(heading).toBe(
      "The noise at “sandwich” is moved most by dampingFactor, +2.5 dB at 0.95, +0.75 dB at 1.05.",
    );
  });

  test("has a chart for the spot, for each telling mode that moves, and for what would help", () => {
    const data = pageDataOf(page);
    const ids = [...page.matchAll(/id="([\w-]+-chart)" role="img"/g)].map((m) => m[1]);
    expect(ids.toSorted()).toEqual(["help-chart", "mode-2-chart", "mode-3-chart", "spot-chart"]);
    expect(Object.keys(data.charts ?? {}).sort()).toEqual(ids.toSorted());
  });

  test("has every figure with the path that options take", () => {
    const rows = tableRows({ html: part("figures") });
    expect(rows.map((r) => r[0])).toEqual([
      "dampingFactor",
      "arms.arm.thickness",
      "bodies.pack.mass",
    ]);
    // 4.8 to 5.2 mm: (-1.25 - 1.5)/0.4 dB per mm, and 0.01 (-1.25 - 1.5)/ln(5.2/4.8) per %.
    expect(rows[1]).toEqual([
      "arms.arm.thickness",
      "4.8 to 5.2 mm",
      "+1.5",
      "−1.3",
      "−6.87 per mm",
      "−0.344",
    ]);
    expect(rows[2][1]).toContain("no spread known: ±5 %");
    expect(part("figures")).toContain("the other one does less");
  });

  test("tells what is mixed and what cannot be", () => {
    expect(part("limits")).toContain("Modes 2 and 3 lie so close");
    expect(part("limits")).toContain("arms.arm.tip#1: the frame cannot be computed");
  });

  test("does without a spot, and without suggestions", () => {
    const { table, telling } = madeSensitivity();
    const html = renderSensitivity("Trial", { table: { ...table, spots: [] }, telling }, INPUT);
    expect(part("answer", html)).toContain("Nothing shakes this frame");
    expect(part("help", html) + part("figures", html)).toBe("");
    expect(html.replace(/<script>.*?<\/script>/gs, "")).not.toMatch(/NaN|undefined|Infinity/);
  });

  test("holds hostile names as text only", () => {
    const html = renderSensitivity(HOSTILE.frame, madeSensitivity(HOSTILE.plate), INPUT);
    const outside = html.replace(/<script>.*?<\/script>/gs, "");
    expect(outside).not.toContain(HOSTILE.frame);
    expect(outside).not.toContain(HOSTILE.plate);
  });
});

test("names are cut in the middle, where they differ least", () => {
  expect(middleCut("short", 10)).toBe("short");
  const cut = middleCut("modulusFactors.carbon-plate-quasi-isotropic-of-one-sheet", 30);
  expect(cut).toMatch(/^modulusFact….*one-sheet$/);
  expect(Array.from(cut)).toHaveLength(30);
});

test("commands can be typed as they stand", () => {
  expect(commandText("compare", "my frame.jsonc", "--set", 'bodies."it\'s".mass=5')).toBe(
    `stillpoint compare 'my frame.jsonc' --set 'bodies."it'\\''s".mass=5'`,
  );
});

test("sentences of the terminal keep numbers and units together, with quotes of a page", () => {
  expect(prose('"rear bay" falls by 2.3 dB, 12 g more than 4 others')).toBe(
    "“rear bay” falls by 2.3\u00a0dB, 12\u00a0g more than 4 others",
  );
});
