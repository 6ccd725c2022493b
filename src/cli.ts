#!/usr/bin/env node
/** Entry of the program: arguments in, exit code out. */

import { run } from "./commands/program.ts";
import { processTerminal } from "./commands/terminal/terminal.ts";

// Not process.exit: what is still on its way through a pipe would be lost.
process.exitCode = await run(process.argv.slice(2), processTerminal());
