/** A file of whole lines and what a killed program may leave behind the last. */

export interface Lines {
  /** each with its line break */
  readonly whole: readonly string[];
  /** bytes of `whole` together */
  readonly bytes: number;
  /** what stands behind the last line break, without the zeros that a power cut may leave there */
  readonly torn: Buffer;
}

const LINE_FEED = 0x0a;

export function readLines(content: Buffer): Lines {
  const whole: string[] = [];
  let bytes = 0;
  for (let end = content.indexOf(LINE_FEED); end >= 0; end = content.indexOf(LINE_FEED, bytes)) {
    whole.push(content.toString("utf8", bytes, end + 1));
    bytes = end + 1;
  }
  let last = content.length;
  while (last > bytes && content[last - 1] === 0) last--;
  return { whole, bytes, torn: content.subarray(bytes, last) };
}

/** Whether line and beginning agree as far as both go. */
export function agree(line: Buffer, begin: string): boolean {
  const expected = Buffer.from(begin);
  const common = Math.min(line.length, expected.length);
  return line.subarray(0, common).equals(expected.subarray(0, common));
}
