import { describe, expect, test } from "vitest";
import {
  countLines,
  findCycle,
  flowFault,
  lockFaults,
  packageOf,
  type SourceFile,
  textFaults,
} from "./rules.ts";

describe("flowFault", () => {
  test.each([
    ["src/mesh/arm.ts", "../element/beam.ts"],
    ["src/mesh/arm.ts", "./grid.ts"],
    ["src/mesh/plates/clip.ts", "../grid.ts"],
    ["src/linalg/cholesky.ts", "../errors.ts"],
    ["src/analyse.ts", "./modes/solve.ts"],
    ["src/cli.ts", "./commands/rank.ts"],
    ["src/cli.ts", "commander"],
    ["src/frame/schema.ts", "zod"],
    ["src/report/page.ts", "plotly.js-dist-min/plotly.min.js"],
    ["src/modes/solve.ts", "ml-matrix"],
    ["src/modes/solve.ts", "node:fs"],
    ["src/runs/load-task.ts", "(computed)"],
  ])("lets %s import %s", (file, specifier) => {
    expect(flowFault(file, specifier)).toBeUndefined();
  });

  test.each([
    ["src/element/beam.ts", "../mesh/arm.ts", "against the flow"],
    ["src/element/beam.ts", "../linalg/dense.ts", "against the flow"],
    ["src/linalg/dense.ts", "../element/beam.ts", "against the flow"],
    ["src/frame/read.ts", "../material/ply.ts", "against the flow"],
    ["src/report/page.ts", "../analyse.ts", "against the flow"],
    ["src/commands/rank.ts", "../cli.ts", "against the flow"],
    ["src/errors.ts", "./frame/read.ts", "against the flow"],
    ["src/cli.ts", "./helpers/a.ts", "helpers is not a stage"],
    ["src/cli.ts", "../test/a.ts", "outside src"],
    ["src/cli.ts", "/opt/a.ts", "relative path"],
    ["src/cli.ts", "(computed)", "cannot be checked"],
    ["src/runs/worker.ts", "(computed)", "cannot be checked"],
    ["src/model/parts.ts", "zod", "belongs to frame only"],
    ["src/model/parts.ts", "zod/mini", "belongs to frame only"],
    ["src/ranking/score.ts", "plotly.js-dist-min", "belongs to report only"],
    ["src/analyse.ts", "commander", "belongs to commands and cli.ts only"],
  ])("does not let %s import %s", (file, specifier, reason) => {
    expect(flowFault(file, specifier)).toContain(reason);
  });
});

describe("findCycle", () => {
  const files = (imports: Record<string, string>): SourceFile[] =>
    Object.entries(imports).map(([name, text]) => ({ path: `src/mesh/${name}.ts`, text }));

  test("finds a cycle, type-only imports included", () => {
    const tree = files({
      a: `import { b } from "./b.ts";`,
      b: `import { c } from "./c.ts";`,
      c: `import type { B } from "./b.ts";`,
    });
    expect(findCycle(tree)).toEqual(["src/mesh/b.ts", "src/mesh/c.ts", "src/mesh/b.ts"]);
  });

  test("finds a file that imports itself", () => {
    const tree = files({ a: `import { a } from "./a.ts";` });
    expect(findCycle(tree)).toEqual(["src/mesh/a.ts", "src/mesh/a.ts"]);
  });

  test("finds none where two paths meet", () => {
    const tree = files({
      a: `import "./b.ts"; import "./c.ts";`,
      b: `import "./d.ts";`,
      c: `import "./d.ts"; import "zod";`,
      d: "",
    });
    expect(findCycle(tree)).toBeUndefined();
  });
});

test("packageOf names the package of an import", () => {
  expect(packageOf("zod")).toBe("zod");
  expect(packageOf("zod/mini")).toBe("zod");
  expect(packageOf("@types/node/fs")).toBe("@types/node");
  expect(packageOf("node:fs")).toBeUndefined();
  expect(packageOf("../mesh/arm.ts")).toBeUndefined();
});

test("countLines counts as an editor does", () => {
  expect(countLines("a\nb\n")).toBe(2);
  expect(countLines("a\nb")).toBe(2);
});

describe("textFaults", () => {
  /** Joined here, so that this file passes its own rule. */
  const words = (...parts: string[]) => parts.join("");

  test.each([
    words("see ", "/wor", "k/main/src"),
    words("writes to '/tm", "p'"),
    words("file:///tm", "p/page.html"),
    words("/hom", "e/someone/frames"),
    words("/roo", "t/.npmrc"),
    words("C:\\Use", "rs\\someone"),
    words("https:", "//npm.registry.example/zod"),
    words("http:", "//registry.npmjs.org.example:4873/zod"),
    words("http:", "//user@mirror.internal/npm/"),
  ])("finds %s", (text) => {
    expect(textFaults(`first line\n${text}\n`)).toHaveLength(1);
    expect(textFaults(`first line\n${text}\n`)[0]).toMatch(/^line 2: /);
  });

  test.each([
    "https://registry.npmjs.org/zod/-/zod-4.6.7.tgz",
    "https://opencollective.com/vitest",
    "dist/tmp/a, ./work/a, force/work/energy, ../tmp",
    "/usr/bin/chromium",
    "the work/energy of the root/tip",
  ])("leaves %s", (text) => {
    expect(textFaults(text)).toEqual([]);
  });
});

describe("lockFaults", () => {
  const lock = (entry: object) => JSON.stringify({ packages: { "": {}, "node_modules/a": entry } });

  test("accepts the public registry, and no address at all", () => {
    expect(lockFaults(lock({ integrity: "sha512-a" }))).toEqual([]);
    const resolved = "https://registry.npmjs.org/a/-/a-1.0.0.tgz";
    expect(lockFaults(lock({ integrity: "sha512-a", resolved }))).toEqual([]);
  });

  test("refuses other hosts, links and entries without integrity", () => {
    const resolved = "http://127.0.0.1:4873/a/-/a-1.0.0.tgz";
    expect(lockFaults(lock({ integrity: "sha512-a", resolved }))).toHaveLength(1);
    expect(lockFaults(lock({ link: true, resolved: "../a" }))).toHaveLength(1);
    expect(lockFaults(lock({}))).toHaveLength(1);
  });
});
