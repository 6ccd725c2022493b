import { createHash } from "node:crypto";
import { runInNewContext } from "node:vm";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { contentPolicy, dataElement, inlineScript } from "../../src/report/embed.ts";

const inside = (tag: string) => tag.replace(/^<script[^>]*>/, "").replace(/<\/script>$/, "");

describe("dataElement", () => {
  test("gives the data back and holds no sign that HTML looks for", () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: "binary" })), (data) => {
        const json = inside(dataElement("d", data).html);
        expect(json).not.toMatch(/[<>&\u2028\u2029]/);
        expect(JSON.parse(json)).toEqual(data);
      }),
    );
  });

  test("is data, not a script", () => {
    expect(dataElement("d", "</script>").html).toBe(
      '<script type="application/json" id="d">"\\u003c/script\\u003e"</script>',
    );
  });
});

describe("inlineScript", () => {
  test("keeps what a script means while hiding what ends one", () => {
    const texts = ["</script>", "<!--", "<script>", "a\u2028b"];
    const code = `[${texts.map((t) => JSON.stringify(t)).join(",")}].concat(/<!--/.source)`;
    const text = inside(inlineScript(code).tag.html);
    expect(text).not.toMatch(/<\/?script|<!--/i);
    expect(runInNewContext(text)).toEqual([...texts, "\\x3c!--"]);
  });

  test("is known to the policy by the hash of its very text", () => {
    const script = inlineScript("let a = 1;\r\nlet b = '</script>';");
    const text = inside(script.tag.html);
    expect(text).not.toContain("\r");
    const hash = createHash("sha256").update(text).digest("base64");
    expect(script.source).toBe(`'sha256-${hash}'`);
    expect(contentPolicy([script])).toContain(`script-src 'sha256-${hash}';`);
  });
});

describe("contentPolicy", () => {
  test("allows styles and the named scripts, and forbids all else", () => {
    const policy = contentPolicy([inlineScript("1")]);
    expect(policy).toMatch(
      /^default-src 'none'; script-src 'sha256-[\w+/=]+'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'$/,
    );
  });
});
