/** What a word means, beside the place where it stands. Runs in the page. */

import type { Browser } from "./types.ts";

/** Opens a word's meaning where its link is; without a script the link leads to the glossary. */
export function startWords(browser: Browser): void {
  const { document } = browser;
  const note = document.getElementById("word-note");
  if (note?.showPopover === undefined) return;
  const [says, more] = ["word-says", "word-more"].map((id) => document.getElementById(id));
  if (!says || !more) return;
  document.addEventListener("click", (event) => {
    const link = event.target.closest("a.term");
    if (link === null || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const entry = document.getElementById((link.getAttribute("href") ?? "").slice(1));
    if (entry === null) return;
    event.preventDefault();
    says.textContent = entry.nextElementSibling?.textContent ?? "";
    more.href = link.href;
    const { left, bottom } = link.getBoundingClientRect();
    note.showPopover?.();
    const room = browser.innerWidth - note.clientWidth - 16;
    note.style.left = `${Math.max(8, Math.min(left, room))}px`;
    const below = bottom + 8 + note.clientHeight < browser.innerHeight;
    const above = link.getBoundingClientRect().top - 10 - note.clientHeight;
    note.style.top = `${below ? bottom + 6 : Math.max(8, above)}px`;
    // So that it is read aloud and the next Tab leads to its link; closing it leads back to the word.
    note.focus();
  });
  more.addEventListener("click", () => note.hidePopover?.());
}
