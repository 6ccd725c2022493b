import { createHash } from "node:crypto";
import { describe, expect, test } from "vitest";
import { renderReport } from "../../src/report/page.ts";
import { readPlotly } from "../../src/report/plotly.ts";
import { fixture, HOSTILE, INPUT, withoutMotors } from "./fixture.ts";
import { pageDataOf } from "./page-data.ts";

const page = renderReport(fixture(), INPUT);

describe("the page", () => {
  test("is the same, byte for byte, for the same analysis and input", () => {
    expect(renderReport(fixture(), INPUT)).toBe(page);
  });

  test("has its sections in the order of reading, each with a heading and in the contents", () => {
    const ids = [...page.matchAll(/<section id="([\w-]+)"/g)].map((m) => m[1]);
    expect(ids).toEqual([
      "verdict",
      "ranking",
      "map",
      "filters",
      "levelling",
      "modes",
      "interference",
      "spectra",
      "mounts",
      "cases",
      "sure",
      "check",
      "model",
      "masses",
      "limits",
      "cautions",
      "inputs",
      "words",
    ]);
    for (const id of ids) {
      expect(page).toContain(`<h2 id="${id}-heading">`);
      expect(page).toMatch(
        new RegExp(`<nav .*<a (?:class="chapter" )?href="#${id}">.*</nav>`, "s"),
      );
    }
  });

  test("says within its first 2 kB what made it", () => {
    const start = Buffer.from(page).subarray(0, 2048).toString();
    expect(start).toContain('<meta name="generator" content="stillpoint">');
  });

  test("names nothing outside itself", () => {
    expect(page.replace(/<script type="text.*?<\/script>/gs, "")).not.toMatch(/https?:|\/\/[a-z]/i);
    expect(page).not.toMatch(/\b(?:src|href)="(?!#)/);
  });

  test("allows exactly the scripts it holds", () => {
    const scripts = [...page.matchAll(/<script>(.*?)<\/script>/gs)].map((m) => m[1]);
    expect(scripts.length).toBe(1);
    const hashes = scripts.map(
      (s) => `'sha256-${createHash("sha256").update(s).digest("base64")}'`,
    );
    const policy = /Content-Security-Policy" content="([^"]*)"/
      .exec(page)?.[1]
      .replace(/&#39;/g, "'");
    expect(policy).toContain(`default-src 'none'; script-src ${hashes.join(" ")} blob:;`);
  });

  test("holds hostile names as text only", () => {
    const outside = page.replace(/<script>.*?<\/script>/gs, "");
    for (const name of Object.values(HOSTILE)) expect(outside).not.toContain(name);
    expect(outside.match(/<(?:img|bdi|b|i)\b[^>]*\bon\w+=/g)).toBeNull();
    // its data and the packed library, neither of which runs
    expect(outside.match(/<script type="text\/plain"/g)?.length).toBe(2);
    expect(outside.match(/<script/g)?.length).toBe(2);
  });

  test("carries its data whole", () => {
    const data = pageDataOf(page);
    expect(data.shapes?.motions.length).toBe(3);
    expect(data.shapes?.words[0]).toContain(HOSTILE.plate);
    expect(data.campbell?.modes.length).toBe(3);
    expect(data.spectra?.gyro.powers.length).toBe(3);
    expect(data.charts?.["filters-chart"].traces.length).toBe(2);
    expect(data.charts?.["lever-chart"].traces.length).toBeGreaterThan(3);
    expect(data.maps?.maps.length).toBe(1);
  });

  test("has unique ids and labels that lead to them", () => {
    const body = page.replace(/<script.*?<\/script>/gs, "");
    const ids = [...body.matchAll(/\sid="([^"]+)"/g)].map((m) => m[1]);
    expect(new Set(ids).size).toBe(ids.length);
    const targets = [...body.matchAll(/aria-labelledby="([^"]+)"/g)].flatMap((m) =>
      m[1].split(" "),
    );
    for (const target of targets) expect(ids).toContain(target);
  });

  test("closes every element it opens", () => {
    const body = page.replace(/<(script|style)\b.*?<\/\1>/gs, "");
    const open: string[] = [];
    for (const [, close, name, self] of body.matchAll(
      /<(\/?)([a-z][\w-]*)(?:\s[^<>]*?)?(\/?)>/gi,
    )) {
      if (self || /^(?:meta|br|input|hr|link)$/.test(name)) continue;
      if (close) expect(open.pop()).toBe(name);
      else open.push(name);
    }
    expect(open).toEqual([]);
  });

  test("heads every row and column of its tables", () => {
    const tables = page.match(/<table\b.*?<\/table>/gs) ?? [];
    expect(tables.length).toBeGreaterThan(12);
    for (const t of tables) {
      expect(t).toContain("<caption>");
      const [head, body] = t.split("<tbody>");
      expect(head).not.toMatch(/<th(?! scope="col")\b/);
      // What stands under a row belongs to it and spans the table.
      const rows = body.match(/<tr class="(?!under").*?<\/tr>/gs) ?? [];
      expect(rows.length).toBeGreaterThan(0);
      for (const row of rows) expect(row.match(/<th scope="row"/g)?.length).toBe(1);
    }
  });

  test("writes numbers with at most three meaningful digits", () => {
    const sections = page.match(
      /<section id="(ranking|filters|map|levelling|mounts|cases)".*?<\/section>/gs,
    );
    expect(sections?.length).toBe(6);
    const words = (sections ?? []).join(" ").replace(/<[^>]*>/g, " ");
    const numbers = words.match(/\d[\d\u202f]*(?:\.\d+)?/g) ?? [];
    expect(numbers.length).toBeGreaterThan(150);
    const long = numbers.filter((n) => {
      const digits = n.replace(/\D/g, "").replace(/^0+/, "");
      return (n.includes(".") ? digits : digits.replace(/0+$/, "")).length > 3;
    });
    expect(long).toEqual([]);
  });

  test("tells in words what every figure shows", () => {
    const labels = [...page.matchAll(/role="img" aria-label="([^"]*)"/g)].map((m) => m[1]);
    // Six charts, and the scale of the map.
    expect(labels.length).toBe(7);
    for (const label of labels) expect(label.length).toBeGreaterThan(30);
  });

  test("is written without motors and without modes as well", () => {
    const bare = withoutMotors();
    const still = renderReport(bare, INPUT);
    expect(still).toContain('<section id="spectra"');
    for (const id of ["filters", "map", "levelling", "mounts", "cases"]) {
      expect(still).not.toContain(`<section id="${id}"`);
      expect(still).not.toContain(`<a href="#${id}">`);
    }
    const modes = { ...bare.modes, described: [], shapes: [] };
    const empty = renderReport({ ...bare, modes }, INPUT);
    expect(empty).toContain("No modes were computed");
    expect(empty.replace(/<script>.*?<\/script>/gs, "")).not.toMatch(/NaN|undefined/);
  });

  test("shows a date only when it is given one", () => {
    expect(page).not.toContain("<time");
    const dated = renderReport(fixture(), { ...INPUT, created: "2026-11-25T10:00:00Z" });
    expect(dated).toContain("2026-11-25T10:00:00Z");
  });
});

test("the plot library is one script for browsers and stands in the page unchanged in meaning", () => {
  const plotly = readPlotly();
  expect(plotly).toMatch(/plotly\.js v\d/);
  expect(plotly).not.toMatch(/<\/script/i);
});
