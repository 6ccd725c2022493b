import { describe, expect, test } from "vitest";
import { term, WORDS, wordsSection } from "../../src/report/words.ts";

describe("the glossary", () => {
  test("has entries with names of their own, in the order of the alphabet", () => {
    const ids = WORDS.map((w) => w.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.filter((id) => !/^[a-z]+(-[a-z]+)*$/.test(id))).toEqual([]);
    const terms = WORDS.map((w) => w.term.toLowerCase());
    expect(terms).toEqual(terms.toSorted());
  });

  test("is short: one to three sentences, at most 45 words", () => {
    const long = WORDS.filter(({ says }) => {
      const sentences = says.split(/[.!?](?:\s|$)/).filter((s) => s !== "").length;
      return sentences > 3 || says.split(/\s+/).length > 45 || !says.endsWith(".");
    });
    expect(long.map((w) => w.id)).toEqual([]);
  });

  test("is where the links lead", () => {
    const { html } = wordsSection();
    for (const { id } of WORDS)
      expect(html.match(new RegExp(`id="word-${id}"`, "g"))).toHaveLength(1);
    expect(term("blade-pass").html).toBe('<a class="term" href="#word-blade-pass">blade pass</a>');
    expect(term("mode", "modes & <more>").html).toBe(
      '<a class="term" href="#word-mode">modes &amp; &lt;more&gt;</a>',
    );
    // @ts-expect-error no such entry
    expect(term("no-such-word").html).toContain("no-such-word");
  });
});
