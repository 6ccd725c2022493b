/** Reads comma-separated values by the grammar of RFC 4180, to check what the program writes. */

/** Rows of fields. @throws Error for text that the grammar does not allow */
export function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  const field = (): string => {
    if (text[at] !== '"') {
      const [plain] = /^[^",\r\n]*/.exec(text.slice(at)) as RegExpExecArray;
      at += plain.length;
      return plain;
    }
    const quoted = /^"((?:[^"]|"")*)"/.exec(text.slice(at));
    if (quoted === null) throw new Error(`a quote is not closed at ${at}`);
    at += quoted[0].length;
    return quoted[1].replaceAll('""', '"');
  };
  while (at < text.length) {
    row.push(field());
    if (text[at] === ",") {
      at++;
    } else if (text.startsWith("\r\n", at)) {
      at += 2;
      rows.push(row);
      row = [];
    } else {
      throw new Error(`neither a comma nor the end of a line at ${at}`);
    }
  }
  if (row.length > 0) throw new Error("the last line has no end");
  return rows;
}
