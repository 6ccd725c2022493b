/** The toy sweep as a program of its own, to be killed and interrupted: out, shard, workers, stuckAt. */

import { problemOf } from "../../src/commands/terminal/problems.ts";
import { InterruptedError } from "../../src/errors.ts";
import { interruptible } from "../../src/runs/interrupt.ts";
import { readShard } from "../../src/runs/shard.ts";
import { runSweep } from "../../src/runs/sweep-file.ts";
import { toySweep } from "./sweep-task.ts";

const [out, shard, workers, stuckAt] = process.argv.slice(2);
try {
  const { rows, total } = await interruptible((signal) =>
    runSweep({
      ...toySweep(out, {
        ...{ signal, shard: readShard(shard), workers: Number(workers) },
        ...(stuckAt !== undefined && { stuckAt: Number(stuckAt) }),
      }),
    }),
  );
  if (rows < total) throw new InterruptedError(`${rows} of ${total} rows are in ${out}`);
} catch (error) {
  const { exitCode, text } = problemOf(error, { debug: false });
  process.stderr.write(text);
  process.exitCode = exitCode;
}
process.stdout.write(`${process.listenerCount("SIGINT")} listeners\n`);
