/** The text of a piece of a page without its tags. */
export function text({ html }: { readonly html: string }): string {
  return html
    .replace(/<br>/g, " ")
    .replace(/<[^>]*>/g, "")
    .replace(/\s+/g, " ");
}

/** Rows of the bodies of tables, each as its cells' texts. */
export function tableRows({ html }: { readonly html: string }): string[][] {
  const bodies = html.match(/<tbody>.*?<\/tbody>/gs) ?? [];
  return bodies
    .flatMap((b) => b.match(/<tr\b.*?<\/tr>/gs) ?? [])
    .map((r) => (r.match(/<(th|td)\b.*?<\/\1>/gs) ?? []).map((c) => text({ html: c }).trim()));
}
