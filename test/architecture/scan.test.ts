import { describe, expect, test } from "vitest";
import { scanImports, scanUnwantedExports } from "./scan.ts";

const specifiers = (source: string) => scanImports(source).map((i) => i.specifier);

describe("scanImports finds", () => {
  test.each([
    ["a static import", `import { a } from "./a.ts";`],
    ["several names on several lines", `import {\n  a,\n  type B as C,\n} from "./a.ts";`],
    ["a namespace import", `import * as a from "./a.ts";`],
    ["a default import", `import a, { b } from './a.ts';`],
    ["a type-only import", `import type { A } from "./a.ts";`],
    ["an import for its effect", `import "./a.ts";`],
    ["an import with attributes", `import a from "./a.ts" with { type: "json" };`],
    ["export from", `export { a } from "./a.ts";`],
    ["export type from", `export type { A } from "./a.ts";`],
    ["export everything from", `export * from "./a.ts";`],
    ["a dynamic import", `const a = await import("./a.ts");`],
    ["a dynamic import over lines", "const a = import(\n  `./a.ts`,\n);"],
    ["a type in an import call", `type A = import("./a.ts").A;`],
    ["require", `const a = require("./a.ts");`],
    ["a resolved path", `const a = import.meta.resolve("./a.ts");`],
    ["an import after a comment", `/* one */ import /* two */ { a } from /* three */ "./a.ts";`],
    ["an import without spaces", `import{a}from"./a.ts";`],
    ["an import within a template", `const a = \`text \${(await import("./a.ts")).name} text\`;`],
    ["an import after a quote in a regular expression", `f(/["'\`]/);\nimport("./a.ts");`],
    ["an import after two divisions", `const a = b / c / d; import("./a.ts");`],
    ["an import after an escaped quote", `const a = "\\""; import("./a.ts");`],
    [
      "an import after nested braces in a template",
      `f(\`\${g({ a: \`}\` })}\`); import("./a.ts");`,
    ],
  ])("%s", (_, source) => {
    expect(specifiers(source)).toEqual(["./a.ts"]);
  });

  test("a computed import", () => {
    expect(specifiers("await import(name);")).toEqual(["(computed)"]);
    expect(specifiers(`await import(\`./\${name}.ts\`);`)).toEqual(["(computed)"]);
    expect(specifiers(`await import("./a" + ".ts");`)).toEqual(["(computed)"]);
  });

  test("all imports with their lines", () => {
    const source = [
      "/* a comment",
      "   over two lines */",
      `import { a } from "./a.ts";`,
      "const text = `",
      "`;",
      `export type { B } from "./b.ts";`,
      `const c = () => import("c");`,
    ].join("\n");
    expect(scanImports(source)).toEqual([
      { specifier: "./a.ts", line: 3 },
      { specifier: "./b.ts", line: 6 },
      { specifier: "c", line: 7 },
    ]);
  });
});

describe("scanImports leaves alone", () => {
  test.each([
    ["a line comment", `// import { a } from "./a.ts";`],
    ["a block comment", `/** import("./a.ts") */`],
    ["a string", `const a = 'import { a } from "./a.ts"';`],
    ["a template", 'const a = `\nimport { a } from "./a.ts";\n`;'],
    ["a regular expression", `const a = /import "b"/;`],
    ["a method called import", `table.import("./a.ts");`],
    ["a longer name", `reimport("./a.ts"); important("./a.ts"); my_require("./a.ts");`],
    ["a name called from", `export const from = "./a.ts";`],
    ["an ordinary export", `export function f(from: string) { return from; }`],
    ["import.meta", `const a = new URL("./a.ts", import.meta.url);`],
  ])("%s", (_, source) => {
    expect(specifiers(source)).toEqual([]);
  });
});

describe("scanUnwantedExports", () => {
  test.each([
    ["export default 1;", ["default export"]],
    ["export default function f() {}", ["default export"]],
    ["const a = 1;\nexport { a as default };", ["default export"]],
    [`export { default } from "./a.ts";`, ["default export"]],
    [`export * from "./a.ts";`, ["export *"]],
    [`export * as a from "./a.ts";`, ["export *"]],
    [`export type * from "./a.ts";`, ["export *"]],
    ["export const a = 1;\nexport { b };", []],
    [`import a from "a"; // export default`, []],
    [`import { default as a } from "a";`, []],
    [`const text = "export * from";`, []],
  ])("%s", (source, expected) => {
    expect(scanUnwantedExports(source)).toEqual(expected);
  });
});
