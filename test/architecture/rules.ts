/** The rules of the source tree as functions of paths and text, so that each can be seen to fail. */

import path from "node:path";
import { scanImports } from "./scan.ts";

/** A file of the tree; paths are relative to the folder of the package, with forward slashes. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

/** Stages in the order of the flow. A stage imports the lines above its own. */
export const STAGES: readonly (readonly string[])[] = [
  ["errors.ts"],
  ["check-number.ts"],
  ["element", "linalg"],
  ["frame"],
  ["material"],
  ["model"],
  ["mesh"],
  ["matrices"],
  ["modes"],
  ["excitation"],
  ["response"],
  ["reduced"],
  ["filter"],
  ["sensing"],
  ["attitude"],
  ["ranking"],
  ["variants"],
  ["study"],
  ["runs"],
  ["report"],
  ["analyse.ts"],
  ["commands"],
  ["cli.ts"],
];

/** Packages with a home: the stages of src that may import them. */
const HOMES: readonly { readonly pattern: RegExp; readonly stages: readonly string[] }[] = [
  { pattern: /^zod(?:\/|$)/, stages: ["frame"] },
  { pattern: /^plotly/, stages: ["report"] },
  { pattern: /^commander(?:\/|$)/, stages: ["commands", "cli.ts"] },
];

/** Imports what a thread was told to run, which is known only then. */
const LOADER = "src/runs/load-task.ts";

/** The entry of src that a path such as `src/mesh/arm.ts` is in: `mesh`, `cli.ts`. */
export function stageOf(file: string): string {
  return file.split("/")[1] ?? "";
}

function rank(stage: string): number {
  return STAGES.findIndex((stages) => stages.includes(stage));
}

/** The path that a relative import leads to; undefined for packages. */
function target(file: string, specifier: string): string | undefined {
  return specifier.startsWith(".")
    ? path.posix.join(path.posix.dirname(file), specifier)
    : undefined;
}

/** Why `file` in src may not import `specifier`; undefined when it may. */
export function flowFault(file: string, specifier: string): string | undefined {
  if (specifier === "(computed)" && file === LOADER) return undefined;
  if (specifier === "(computed)") return "imports a computed name, which cannot be checked";
  if (/^[/#]|^file:/.test(specifier)) return `imports ${specifier}: use a relative path`;
  const to = target(file, specifier);
  if (to === undefined) {
    const home = HOMES.find(({ pattern }) => pattern.test(specifier));
    if (home === undefined || home.stages.includes(stageOf(file))) return undefined;
    return `imports ${specifier}, which belongs to ${home.stages.join(" and ")} only`;
  }
  if (!to.startsWith("src/")) return `imports ${to}, which is outside src`;
  const [mine, theirs] = [stageOf(file), stageOf(to)];
  if (rank(theirs) < 0) return `imports ${to}, but ${theirs} is not a stage of the flow`;
  if (mine === theirs || rank(theirs) < rank(mine)) return undefined;
  return `imports ${to}, against the flow: ${theirs} does not come before ${mine}`;
}

/** The package that an import names: `a/b` is `a`, `@a/b/c` is `@a/b`; undefined when it is none. */
export function packageOf(specifier: string): string | undefined {
  if (/^[./#(]|^(?:node|file):/.test(specifier)) return undefined;
  return specifier
    .split("/")
    .slice(0, specifier.startsWith("@") ? 2 : 1)
    .join("/");
}

/** The first import cycle as a list of paths that ends where it began; undefined when there is none. */
export function findCycle(files: readonly SourceFile[]): string[] | undefined {
  const imports = new Map(
    files.map((file) => [
      file.path,
      scanImports(file.text).flatMap((i) => target(file.path, i.specifier) ?? []),
    ]),
  );
  const done = new Set<string>();
  const visit = (file: string, trail: readonly string[]): string[] | undefined => {
    const seenAt = trail.indexOf(file);
    if (seenAt >= 0) return [...trail.slice(seenAt), file];
    if (done.has(file)) return undefined;
    for (const next of imports.get(file) ?? []) {
      const cycle = visit(next, [...trail, file]);
      if (cycle !== undefined) return cycle;
    }
    done.add(file);
    return undefined;
  };
  for (const file of imports.keys()) {
    const cycle = visit(file, []);
    if (cycle !== undefined) return cycle;
  }
  return undefined;
}

export function countLines(text: string): number {
  return text.split("\n").length - (text.endsWith("\n") ? 1 : 0);
}

const REGISTRY = "registry.npmjs.org";

/** What must not be committed, each as a pattern of the words and a reason. */
const UNWANTED: readonly { readonly pattern: RegExp; readonly reason: string }[] = [
  {
    pattern: /(?<![\w.~-])\/(?:work|tmp)(?:\/[\w.-]+|(?=["'`\s]|$))/gm,
    reason: "is a path of one machine",
  },
  { pattern: /(?<![\w.~-])\/(?:home|root|Users)\/[\w.-]+/gm, reason: "is a path of one machine" },
  { pattern: /\b[A-Z]:\\{1,2}Users\\{1,2}[\w.-]+/gm, reason: "is a path of one machine" },
  {
    pattern:
      /\b(?:https?:)?\/\/(?!registry\.npmjs\.org[/"'\s])[\w.:@-]*(?:registry|npm\.|artifactory|nexus|verdaccio|mirror|proxy)[\w.:-]*/gim,
    reason: `is a package host other than ${REGISTRY}`,
  },
];

/** What a committed text says that it must not say. */
export function textFaults(text: string): string[] {
  return UNWANTED.flatMap(({ pattern, reason }) =>
    [...text.matchAll(pattern)].map((match) => {
      const line = text.slice(0, match.index).split("\n").length;
      return `line ${line}: ${match[0]} ${reason}`;
    }),
  );
}

/** Entries of a package-lock.json that would not install the same on another machine. */
export function lockFaults(text: string): string[] {
  const { packages } = JSON.parse(text) as {
    packages: Record<string, { resolved?: string; link?: boolean; integrity?: string }>;
  };
  return Object.entries(packages).flatMap(([name, { resolved, link, integrity }]) => {
    if (name === "") return [];
    if (link === true) return [`${name} is a link to a folder`];
    if (resolved !== undefined && !resolved.startsWith(`https://${REGISTRY}/`)) {
      return [`${name} comes from ${resolved}`];
    }
    return integrity === undefined ? [`${name} has no integrity`] : [];
  });
}
