/** Reads the imports and exports of a TypeScript file without a parser (TypeScript 7 offers none). */

export interface Import {
  /** What is imported, as written; "(computed)" when it is not a plain string. */
  readonly specifier: string;
  /** 1-based. */
  readonly line: number;
}

const COMMENT = /\/\/[^\n]*|\/\*[\s\S]*?\*\//y;
const STRING = /"(?:\\[\s\S]|[^"\\\n])*"|'(?:\\[\s\S]|[^'\\\n])*'/y;
const TEMPLATE_TEXT = /(?:\\[\s\S]|\$(?!\{)|[^`\\$])*/y;
const REGULAR_EXPRESSION = /\/(?:\\.|\[(?:\\.|[^\]\\\n])*\]|[^/\\[\n])+\/[a-z]*/y;
/** Code after which a slash begins a regular expression and is not a division. */
const BEFORE_EXPRESSION =
  /(?:^|[(,=:[!&|?{};+\-*%<>~^]|\b(?:return|typeof|case|in|of|do|else|void|yield|await))\s*$/;

interface Masked {
  /** The code, comments blank, each string replaced by its number in quotes; lines are kept. */
  readonly code: string;
  readonly strings: readonly string[];
}

/** Takes strings and comments out, so that code quoted in them is not read as code. */
function mask(source: string): Masked {
  const strings: string[] = [];
  /** For each template we are inside of: the depth of braces in its `${}`. */
  const templates: number[] = [];
  let code = "";
  let at = 0;

  const take = (pattern: RegExp): string | undefined => {
    pattern.lastIndex = at;
    const found = pattern.exec(source)?.[0];
    at += found?.length ?? 0;
    return found;
  };
  const putString = (text: string) => {
    code += `"${strings.push(text) - 1}"${"\n".repeat(text.split("\n").length - 1)}`;
  };
  /** Template text up to the closing backtick or into the next `${`. */
  const readTemplate = () => {
    const text = take(TEMPLATE_TEXT) ?? "";
    const closes = source[at] !== "$";
    at += closes ? 1 : 2;
    if (closes) putString(text);
    else {
      code += `(${"\n".repeat(text.split("\n").length - 1)}`;
      templates.push(0);
    }
  };

  while (at < source.length) {
    const comment = take(COMMENT);
    if (comment !== undefined) {
      code += ` ${"\n".repeat(comment.split("\n").length - 1)}`;
      continue;
    }
    const string = take(STRING);
    if (string !== undefined) {
      putString(string.slice(1, -1));
      continue;
    }
    if (source[at] === "/" && BEFORE_EXPRESSION.test(code) && take(REGULAR_EXPRESSION)) {
      code += "0";
      continue;
    }
    const char = source[at++];
    const depth = templates.at(-1);
    if (char === "`") readTemplate();
    else if (char === "}" && depth === 0) {
      templates.pop();
      code += ")+";
      readTemplate();
    } else {
      if (depth !== undefined && char === "{") templates[templates.length - 1] = depth + 1;
      if (depth !== undefined && char === "}") templates[templates.length - 1] = depth - 1;
      code += char;
    }
  }
  return { code, strings };
}

const IMPORTS: readonly RegExp[] = [
  // import x from "", import type { x } from "", export { x } from "", export * from ""
  /(?<![.\w$])(?:import|export)\b[\w$*{},\s]*?\bfrom\s*"(\d+)"/g,
  // import ""
  /(?<![.\w$])import\s*"(\d+)"/g,
  // import("") as a value or a type
  /(?<![.\w$])import\s*\((?:\s*"(\d+)"\s*[,)])?/g,
  // require(""), require.resolve(""), import.meta.resolve("")
  /(?<![.\w$])(?:require(?:\.resolve)?|import\.meta\.resolve)\s*\((?:\s*"(\d+)"\s*[,)])?/g,
];

/** Every import of a file, type-only ones too, in the order of the lines. */
export function scanImports(source: string): Import[] {
  const { code, strings } = mask(source);
  const found = IMPORTS.flatMap((pattern) =>
    [...code.matchAll(pattern)].map((match) => ({
      specifier: match[1] === undefined ? "(computed)" : (strings[Number(match[1])] ?? ""),
      line: code.slice(0, match.index).split("\n").length,
    })),
  );
  return found.sort((a, b) => a.line - b.line);
}

/** What a file exports that no file should: a default, or everything of another file. */
export function scanUnwantedExports(source: string): string[] {
  const { code } = mask(source);
  const found: string[] = [];
  if (/\bexport\s+default\b|\bexport\s*\{[^}]*\bdefault\b/.test(code)) found.push("default export");
  if (/\bexport\s*(?:type\s*)?\*/.test(code)) found.push("export *");
  return found;
}
