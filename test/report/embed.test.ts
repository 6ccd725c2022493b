import { createHash } from "node:crypto";
import { runInNewContext } from "node:vm";
import { gunzipSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  contentPolicy,
  dataElement,
  inlineScript,
  libraryElement,
} from "../../src/report/embed.ts";
import type { PlotLibrary } from "../../src/report/types.ts";

const INSIDE = { kind: "inside", source: "window.Plotly = '</script>';" } as const;
const BESIDE = { kind: "beside", file: "plotly-1.2.3.min.js" } as const;

const inside = (tag: string) => tag.replace(/^<script[^>]*>/, "").replace(/<\/script>$/, "");

describe("dataElement", () => {
  test("gives the data back and holds no sign that HTML looks for", () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: "binary" })), (data) => {
        const packed = inside(dataElement("d", data).html);
        expect(packed).toMatch(/^[\w+/=]+$/);
        expect(JSON.parse(gunzipSync(Buffer.from(packed, "base64")).toString())).toEqual(data);
      }),
    );
  });

  test("is data, not a script", () => {
    expect(dataElement("d", "</script>").html).toMatch(/^<script type="text\/plain" id="d">/);
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
    expect(contentPolicy(script, BESIDE)).toContain(`script-src 'sha256-${hash}' `);
  });
});

describe("contentPolicy", () => {
  test("allows styles, the page's script and what that hands over, and forbids all else", () => {
    const rest =
      "style-src 'unsafe-inline'; img-src data: blob:; base-uri 'none'; form-action 'none'";
    const policy = (library: PlotLibrary) =>
      contentPolicy(inlineScript("1"), library).replace(/sha256-[\w+/=]+/, "HASH");
    expect(policy(INSIDE)).toBe(`default-src 'none'; script-src 'HASH' blob:; ${rest}`);
    expect(policy(BESIDE)).toBe(`default-src 'none'; script-src 'HASH' 'self'; ${rest}`);
  });
});

describe("libraryElement", () => {
  test("carries the library compressed, and as no script", () => {
    const { html } = libraryElement(INSIDE);
    expect(html).toMatch(/^<script type="text\/plain" id="library">[\w+/=]+<\/script>$/);
    expect(gunzipSync(Buffer.from(inside(html), "base64")).toString()).toBe(INSIDE.source);
  });

  test("or names the file beside the page", () => {
    expect(libraryElement(BESIDE).html).toBe(
      '<script type="text/plain" id="library" data-beside="plotly-1.2.3.min.js"></script>',
    );
  });
});
