/** The five-inch sample with names and remarks that try to break out of wherever they are shown. */

import { readFileSync } from "node:fs";
import { type ParseError, parse } from "jsonc-parser";

/**
 * What would run sets window.ran. At most 40 characters each, without invisible signs, since the program
 * refuses other names itself.
 */
export const HOSTILE_NAMES = {
  Brindle: "</title><script>ran=1</script>",
  bottom: "<img src=x onerror=ran=1>",
  middle: '<a href="javascript:ran=1">lead</a>',
  top: "\"' onmouseover='ran=1' x=\"`",
  arm: "<b>thick</b><br><sub>low</sub>",
  post: "{{7*7}} %{x} %{y:.1f} \\u003cimg\\x3e",
  camera: "<!--<svg onload=ran=1>",
  battery: "</style><style>*{display:none}</style>",
  "action camera": "</textarea></svg></math><iframe src=a>",
  "sandwich centre": "</script><script>ran=1</script>",
  "rear bay": "שלום عالم <i>turned</i> 🛸🧨",
  "under the top plate": "W".repeat(40),
  "nose bay": "&lt;img src=x onerror=ran=1&gt; &amp;",
} as const;

const REMARK = 'javascript:ran=1 <iframe srcdoc="<script>parent.ran=1</script>"></iframe> -->';

/** The text of the frame file. @throws Error when the sample no longer has one of the names */
export function hostileFrame(): string {
  const faults: ParseError[] = [];
  const file = parse(readFileSync("frames/five-inch.jsonc", "utf8"), faults);
  if (faults.length > 0) throw new Error("frames/five-inch.jsonc cannot be read");
  file.notes = [REMARK];
  file.plates.middle.note = REMARK;
  for (const place of Object.values(file.candidates)) (place as { note: string }).note = REMARK;
  let text = JSON.stringify(file, undefined, 2);
  for (const [name, hostile] of Object.entries(HOSTILE_NAMES)) {
    const quoted = JSON.stringify(name);
    if (!text.includes(quoted)) throw new Error(`the sample has nothing named ${quoted}`);
    text = text.replaceAll(quoted, () => JSON.stringify(hostile));
  }
  return text;
}
