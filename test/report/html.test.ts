import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { escapeHtml, html, joined, named, plotText, raw } from "../../src/report/html.ts";

describe("html", () => {
  test("escapes text between tags and in attributes, but not its own HTML", () => {
    const name = `<b a="1" b='2'>&\``;
    const escaped = "&lt;b a=&quot;1&quot; b=&#39;2&#39;&gt;&amp;&#96;";
    expect(html`<i title="${name}">${name}</i>`.html).toBe(`<i title="${escaped}">${escaped}</i>`);
    expect(html`<p>${html`<i>${name}</i>`}</p>`.html).toBe(`<p><i>${escaped}</i></p>`);
  });

  test("joins lists and leaves out what is not there", () => {
    expect(html`${[1, "<", html`<hr>`]}${undefined}${false}${0}`.html).toBe("1&lt;<hr>0");
    expect(joined([raw("<a>"), html`${"<"}`], " & ").html).toBe("<a> &amp; &lt;");
  });

  test("keeps a name from turning the text around it", () => {
    expect(named("a<b").html).toBe("<bdi>a&lt;b</bdi>");
  });

  test("leaves no sign that could end an element or an attribute", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        expect(escapeHtml(text)).not.toMatch(/[<>"'`]|&(?!(?:amp|lt|gt|quot|#39|#96);)/);
      }),
    );
  });
});

describe("plotText", () => {
  test("writes tags and entities so that the plot library shows their signs", () => {
    expect(plotText("<b>5 &lt; 6</b>")).toBe("&lt;b&gt;5 &amp;lt; 6&lt;/b&gt;");
  });
});
