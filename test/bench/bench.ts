/**
 * Times the numeric stages on the five-inch sample at three mesh sizes and, where python3 with SciPy is
 * there, SciPy's eigsh on the same matrices beside it, in the same run; then hundreds of places for the
 * stack (`places.ts`), variants of the frame (`variants.ts`), and the report in a browser (`page.ts`).
 *
 *   npm run bench
 *
 * Design: each stage is run several times after a warm-up and its least time taken, which clears the
 * noise of the machine from below; results are consumed (their eigenvalues are compared); ratios are
 * printed because times belong to a machine. SciPy runs on one thread, as this program does. One run
 * takes about a minute. Nothing here asserts a time.
 */

import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { excite } from "../../src/excitation/excite.ts";
import { readFrame } from "../../src/frame/read.ts";
import { factorise } from "../../src/linalg/factorise.ts";
import { matrixMarket } from "../../src/linalg/matrix-market.ts";
import { combine } from "../../src/linalg/sparse.ts";
import { analysePattern } from "../../src/linalg/symbolic.ts";
import { assemble } from "../../src/matrices/assemble.ts";
import { massFromDrawing } from "../../src/matrices/mass.ts";
import { buildMesh } from "../../src/mesh/build.ts";
import { buildModel } from "../../src/model/build.ts";
import { solveModes } from "../../src/modes/solve.ts";
import { rank } from "../../src/ranking/rank.ts";
import { shakeBare } from "../../src/response/bare-frame.ts";
import { best, ms } from "./best.ts";
import { benchPage } from "./page.ts";
import { benchPlaces } from "./places.ts";
import { benchVariants } from "./variants.ts";

const FRAME = "frames/five-inch.jsonc";
const SIZES_MM = [9, 6, 4];
const MODES = 40;

interface ScipyTimes {
  readonly scipy: string;
  readonly factorise: number;
  readonly solve: number;
  readonly lambda: readonly number[];
}

/** undefined where python3 or SciPy is missing. */
function scipyTimes(K: string, M: string, modes: number, shift: number): ScipyTimes | undefined {
  const folder = mkdtempSync(join(tmpdir(), "stillpoint-bench-"));
  try {
    const [k, m] = [join(folder, "K.mtx"), join(folder, "M.mtx")];
    writeFileSync(k, K);
    writeFileSync(m, M);
    const script = new URL("eigsh.py", import.meta.url).pathname;
    const out = execFileSync("python3", [script, k, m, String(modes), String(shift)], {
      encoding: "utf8",
      stdio: ["ignore", "pipe", "ignore"],
    });
    return JSON.parse(out);
  } catch {
    return undefined;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function benchSize(sizeMm: number): void {
  const file = readFrame(FRAME);
  const model = buildModel(file);
  const meshed = best(() => buildMesh(model, sizeMm / 1e3));
  const mesh = meshed.result;
  const assembled = best(() => assemble(mesh, model));
  const system = assembled.result;
  const { K, M } = system;
  const mass = massFromDrawing(model, mesh);
  const ordered = best(() => analysePattern(K.pattern));
  const solved = best(() => solveModes(model, mesh, system, mass.cg, MODES));
  const { modes } = solved.result;
  // SciPy gets a shift it does well with: nearer to zero the rigid-body modes spoil its digits.
  const ownShift = -modes.lambda[0];
  const shifted = combine(1, K, -ownShift, M);
  const factored = best(() => factorise(ordered.result, shifted));
  const excitation = excite(file, model.rotors, mass.mass);
  if (!excitation) throw new Error(`${FRAME} has no propulsion`);
  const ranked = best(() => {
    const bare = shakeBare(mesh, system, solved.result, model.rotors, excitation);
    return rank({ file, model, mesh, modes, bareModel: model, bareMass: mass, bare, excitation });
  });
  const { unknowns, factorEntries } = modes.evidence;
  console.log(`\n${FRAME} at ${sizeMm} mm: ${unknowns} unknowns, ${factorEntries} entries in L`);
  const scipy = scipyTimes(
    matrixMarket(K, []),
    matrixMarket(M, []),
    MODES + modes.rigid.length,
    ownShift,
  );
  const ratio = (ours: number, theirs: number | undefined) =>
    theirs === undefined ? "" : `   ${(ours / theirs).toFixed(2)} x SciPy's ${ms(theirs).trim()}`;
  console.log(`  mesh                      ${ms(meshed.seconds)}`);
  console.log(`  assembly                  ${ms(assembled.seconds)}`);
  console.log(`  ordering and symbolic     ${ms(ordered.seconds)}`);
  const ours = ordered.seconds + factored.seconds;
  console.log(
    `  numeric factorisation     ${ms(factored.seconds)}${ratio(ours, scipy?.factorise)}${scipy ? " (with ordering, as its splu)" : ""}`,
  );
  console.log(
    `  ${MODES} modes, proof, names   ${ms(solved.seconds)}${ratio(solved.seconds, scipy?.solve)}`,
  );
  console.log(`  residuals and ranking     ${ms(ranked.seconds)}`);
  if (!scipy) {
    console.log("  SciPy: not found (python3 with scipy), no comparison");
    return;
  }
  const theirs = scipy.lambda.slice(modes.rigid.length);
  const worst = theirs.reduce((w, l, i) => Math.max(w, Math.abs(modes.lambda[i] / l - 1)), 0);
  console.log(
    `  largest difference of an eigenvalue from SciPy ${scipy.scipy}: ${worst.toExponential(1)}`,
  );
}

for (const size of SIZES_MM) benchSize(size);
benchPlaces(FRAME, MODES);
benchVariants(FRAME);
await benchPage(FRAME);
