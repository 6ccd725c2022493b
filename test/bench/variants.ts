/**
 * Times variants of a frame from its reduced model against the same variants solved exactly, side by side
 * in one run: a sweep of the arms' thickness, width and joint, and samples in which everything that has a
 * spread varies. Both begin with a drawn and meshed frame file with its changes; what the reduced model
 * takes to be made is told apart. The errors are of the frequencies with the stack.
 */

import { changedFrame, type FrameSource, readFrameSource } from "../../src/frame/change.ts";
import { inputsOf, withInput } from "../../src/frame/inputs.ts";
import { parsePath } from "../../src/frame/parse-path.ts";
import { dimensionsOf, sampledValues } from "../../src/study/dimensions.ts";
import { haltonSequence } from "../../src/study/halton.ts";
import { trainingPoints } from "../../src/study/training.ts";
import { exactOutcome } from "../../src/variants/exact.ts";
import { type Prepared, prepareVariant } from "../../src/variants/prepare.ts";
import { modesOf, reduceVariants, solveBase, variantSolver } from "../../src/variants/reduced.ts";
import type { Outcome } from "../../src/variants/types.ts";
import { best, ms } from "./best.ts";

/** Variants of which the frequencies are compared, and those that are timed. */
const COMPARED = 6;
const TIMED = 12;
/** What the time for many variants is told for. */
const MANY = { variants: 1000, cores: 2 } as const;
/** Takes whatever the reduced model gives: its errors are to be seen. */
const ANY_ERROR = 1e3;

interface Study {
  readonly name: string;
  readonly training: readonly Prepared[];
  readonly variant: (i: number) => Prepared;
}

function sweep(source: FrameSource, meshSize: number): Study {
  const at = (thickness: number, width: number, kappa: number) => {
    const changes = [
      { path: parsePath("arms.arm.thickness"), written: thickness },
      { path: parsePath("arms.arm.width"), written: [width, width - 4] },
      { path: parsePath("arms.arm.joint.kappa"), written: kappa },
    ];
    return prepareVariant(changedFrame(source, changes).file, meshSize);
  };
  const between = haltonSequence(3, 1);
  return {
    name: "arms 4 to 6 mm thick, 15 to 19 mm wide, kappa 5 to 20",
    training: [
      at(4, 15, 20),
      at(6, 19, 5),
      at(4, 19, 5),
      at(6, 15, 20),
      at(5, 17, 5),
      at(5, 17, 20),
    ],
    variant: (i) => {
      const [t, w, k] = between.point(i);
      return at(4 + 2 * t, 15 + 4 * w, 5 * 4 ** k);
    },
  };
}

function spreads(source: FrameSource, meshSize: number): Study {
  const inputs = inputsOf(source);
  const dimensions = dimensionsOf([inputs]);
  const at = (point: Float64Array) => {
    const values = sampledValues(inputs, dimensions, point);
    const changes = values.map(({ input, value }) => withInput(source, input, value));
    return prepareVariant(changedFrame(source, changes).file, meshSize);
  };
  const points = haltonSequence(dimensions.size, 1);
  return {
    name: `all ${dimensions.size} inputs that have a spread`,
    training: trainingPoints(dimensions.size, 6).map(at),
    variant: (i) => at(points.point(i)),
  };
}

function worstError(found: Outcome, exact: Outcome): number {
  return found.frequencies.reduce(
    (most, f, k) => Math.max(most, Math.abs(f / exact.frequencies[k] - 1)),
    0,
  );
}

function benchStudy(source: FrameSource, make: (source: FrameSource, size: number) => Study) {
  const start = performance.now();
  const base = solveBase(prepareVariant(source.file));
  const { name, training, variant } = make(source, base.solved.prepared.mesh.size);
  const count = base.all.modes.lambda.length;
  const reduced = reduceVariants(
    base,
    training.map((prepared) => modesOf(prepared, count)),
  );
  const solver = variantSolver(reduced, ANY_ERROR);
  solver.outcome(variant(0)); // makes what variants share
  const made = (performance.now() - start) / 1e3;

  let [worst, estimate] = [0, 0];
  for (let i = 0; i < COMPARED; i++) {
    const prepared = variant(i);
    const found = solver.outcome(prepared);
    worst = Math.max(worst, worstError(found, exactOutcome(prepared, { modes: reduced.count })));
    estimate = Math.max(estimate, found.solution.error);
  }
  const timed = Array.from({ length: TIMED }, (_, i) => i);
  const quick = best(() => timed.map((i) => solver.outcome(variant(i))));
  const slow = best(() => exactOutcome(variant(0), { modes: reduced.count }));
  const each = quick.seconds / TIMED;
  const many = made + (MANY.variants * each) / MANY.cores;
  console.log(`  ${name}`);
  console.log(
    `    space of ${reduced.frame.space.width} vectors from ${training.length} variants, made in ${ms(made).trim()}`,
  );
  console.log(
    `    a variant ${ms(each).trim()}, exactly ${ms(slow.seconds).trim()}: 1/${(slow.seconds / each).toFixed(1)}; frequencies ${(100 * worst).toFixed(3)} % off at most, estimate ${(100 * estimate).toFixed(3)} %`,
  );
  console.log(
    `    ${MANY.variants} variants on ${MANY.cores} cores: ${many.toFixed(0)} s, exactly ${((MANY.variants * slow.seconds) / MANY.cores).toFixed(0)} s`,
  );
}

export function benchVariants(frame: string): void {
  const source = readFrameSource(frame);
  console.log(`\n${frame}: variants from the reduced model`);
  benchStudy(source, sweep);
  benchStudy(source, spreads);
}
