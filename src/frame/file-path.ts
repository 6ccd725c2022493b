/** A place in a frame file, as keys and list positions from the top. */
export type FilePath = readonly (string | number)[];

const PLAIN_KEY = /^[A-Za-z_$][\w$-]*$/;

/**
 * A path as users read it: `plates.bottom.thickness`, `plates."rear deck".outline#3` with list
 * entries counted from 1.
 */
export function formatPath(path: FilePath): string {
  let text = "";
  for (const step of path) {
    if (typeof step === "number") {
      text += `#${step + 1}`;
    } else {
      const key = PLAIN_KEY.test(step) ? step : JSON.stringify(step);
      text += text === "" ? key : `.${key}`;
    }
  }
  return text;
}
