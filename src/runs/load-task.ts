/** The one place where a module is imported by a name that is only known when the program runs. */

import type { TaskModule } from "./task.ts";

/** @param task URL of a task module (`task.ts`) */
export async function loadTask<S, J, R>(task: string): Promise<TaskModule<S, J, R>> {
  return (await import(task)) as TaskModule<S, J, R>;
}
