/** Sentences made for every output, as a page sets them. */

/** Curly quotes round names, and numbers that stay with their units at the end of a line. */
export function pageText(text: string): string {
  return text
    .replace(/"([^"]*)"/g, "“$1”")
    .replace(/(\d) (%|dB|Hz|deg\/s|rpm|kg|g|mm|ms|degrees?)(?![\w])/g, "$1\u00a0$2");
}
