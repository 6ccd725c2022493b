/** What goes wrong with files, in words. */

import { inputError } from "../errors.ts";

const REASONS: Readonly<Record<string, string>> = {
  EACCES: "you have no permission to write there",
  EPERM: "the system does not allow it",
  EROFS: "the disk is read-only",
  ENOSPC: "the disk is full",
  EDQUOT: "your share of the disk is full",
  ENOTDIR: "a part of its path is a file, not a folder",
  EEXIST: "a part of its path is a file, not a folder",
  ENAMETOOLONG: "the name is too long",
  ELOOP: "its links lead in a circle",
};

/** Does the work on a file that is written. @throws InputError instead of the system's errors */
export function explained<T>(file: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    const reason = REASONS[code] ?? `the system reports ${code}`;
    throw inputError("", `${file} cannot be written: ${reason}.`);
  }
}
