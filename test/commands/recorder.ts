/** A terminal that keeps what is printed. */

import { PLAIN_SIGNS } from "../../src/commands/terminal/bar-signs.ts";
import { type Ink, NO_INK } from "../../src/commands/terminal/ink.ts";
import type { Terminal } from "../../src/commands/terminal/terminal.ts";

export interface Recorder {
  readonly terminal: Terminal;
  readonly out: () => string;
  readonly err: () => string;
}

export function recorder(ink: Ink = NO_INK, watched = false, elapsed = () => 0): Recorder {
  const printed = { out: "", err: "" };
  const terminal = {
    print: (text: string) => {
      printed.out += text;
    },
    complain: (text: string) => {
      printed.err += text;
    },
    ink,
    bars: PLAIN_SIGNS,
    watched,
    elapsed,
  };
  return { terminal, out: () => printed.out, err: () => printed.err };
}
