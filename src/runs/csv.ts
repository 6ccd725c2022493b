/** Fields of comma-separated values (RFC 4180). */

/** Quoted where needed, quotes doubled. */
export function csvField(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * The same for a file that is made to be opened in a spreadsheet: a text that begins like a formula gets
 * an apostrophe before it, so that it is shown and not computed (common practice, no source).
 */
export function spreadsheetField(text: string): string {
  return csvField(/^[=+\-@\t\r\n＝＋－＠]/.test(text) ? `'${text}` : text);
}

/** The fields of one line without its end; undefined where a quote is not closed or stands alone. */
export function readCsvLine(line: string): string[] | undefined {
  if (!/^(?:[^"]|"(?:[^"]|"")*")*$/.test(line)) return undefined;
  const fields = line.match(/(?<=^|,)(?:"(?:[^"]|"")*"|[^",]*)(?=,|$)/g) ?? [];
  return fields.map((field) => {
    return field.startsWith('"') ? field.slice(1, -1).replaceAll('""', '"') : field;
  });
}
