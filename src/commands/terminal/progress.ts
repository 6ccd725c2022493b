/** Signs of life for work that takes longer than a person likes to wait in silence. */

import type { Terminal } from "./terminal.ts";

/** Seconds before the first line: on a terminal, and in a log where only long waits are of interest. */
const PATIENCE = { watched: 1, unwatched: 10 };

/** To be called as each stage begins: prints the stage's name once the work has become long. */
export function progressOn(terminal: Terminal): (stage: string) => void {
  const patience = terminal.watched ? PATIENCE.watched : PATIENCE.unwatched;
  return (stage) => {
    const seconds = terminal.elapsed();
    if (seconds >= patience) terminal.complain(`stillpoint: ${stage} (${seconds.toFixed(0)} s)\n`);
  };
}
