import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, describe, expect, test } from "vitest";
import { describeInBrowser, findChromium } from "./chromium.ts";
import { inlinePage, openOffline } from "./page.ts";

/** Fills a 4 x 4 canvas through a shader and reads one pixel back. */
const DRAW_WITH_WEBGL = `(() => {
  const gl = document.createElement("canvas").getContext("webgl");
  if (gl === null) return "no WebGL";
  gl.viewport(0, 0, 4, 4);
  const program = gl.createProgram();
  for (const [type, source] of [
    [gl.VERTEX_SHADER, "attribute vec2 p; void main() { gl_Position = vec4(p, 0.0, 1.0); }"],
    [gl.FRAGMENT_SHADER, "void main() { gl_FragColor = vec4(0.2, 0.4, 0.6, 1.0); }"],
  ]) {
    const shader = gl.createShader(type);
    gl.shaderSource(shader, source);
    gl.compileShader(shader);
    gl.attachShader(program, shader);
  }
  gl.bindAttribLocation(program, 0, "p");
  gl.linkProgram(program);
  gl.useProgram(program);
  gl.bindBuffer(gl.ARRAY_BUFFER, gl.createBuffer());
  gl.bufferData(gl.ARRAY_BUFFER, new Float32Array([-1, -1, 3, -1, -1, 3]), gl.STATIC_DRAW);
  gl.enableVertexAttribArray(0);
  gl.vertexAttribPointer(0, 2, gl.FLOAT, false, 0, 0);
  gl.drawArrays(gl.TRIANGLES, 0, 3);
  const pixel = new Uint8Array(4);
  gl.readPixels(1, 1, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel);
  return Array.from(pixel);
})()`;

describeInBrowser("the browser harness", (browser) => {
  const folder = mkdtempSync(path.join(tmpdir(), "stillpoint-browser-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test("renders a page and runs its script", async () => {
    const html = "<p id=a>before</p><script>document.all.a.textContent = 'after'</script>";
    const { page, requests, errors } = await openOffline(browser(), inlinePage(html));
    expect(await page.textContent("#a")).toBe("after");
    const box = await page.locator("#a").boundingBox();
    expect(box?.width).toBeGreaterThan(100);
    expect(requests).toEqual([]);
    expect(errors).toEqual([]);
  });

  test("draws with WebGL", async () => {
    const { page } = await openOffline(browser(), inlinePage("<p>canvas</p>"));
    expect(await page.evaluate(DRAW_WITH_WEBGL)).toEqual([51, 102, 153, 255]);
  });

  test("opens a file that stands alone without a request", async () => {
    const file = path.join(folder, "alone.html");
    writeFileSync(
      file,
      "<img alt='' src='data:image/gif;base64,R0lGODlhAQABAAAAACwAAAAAAQABAAA='>",
    );
    const { requests } = await openOffline(browser(), pathToFileURL(file).href);
    expect(requests).toEqual([]);
  });

  test("tells what a page asks for outside itself", async () => {
    writeFileSync(path.join(folder, "beside.css"), "p { color: red }");
    const file = path.join(folder, "asking.html");
    writeFileSync(
      file,
      `<link rel=stylesheet href=beside.css><p>text</p><img alt="" src="https://elsewhere.invalid/a.png">
       <script>fetch("http://elsewhere.invalid/b").catch(() => { document.title = "refused" });</script>`,
    );
    const { page, requests } = await openOffline(browser(), pathToFileURL(file).href);
    await page.waitForFunction("document.title === 'refused'");
    expect([...requests].sort()).toEqual([
      pathToFileURL(path.join(folder, "beside.css")).href,
      "http://elsewhere.invalid/b",
      "https://elsewhere.invalid/a.png",
    ]);
  });

  test("collects the errors of a page", async () => {
    const html = "<script>console.error('said'); missing();</script>";
    const { errors } = await openOffline(browser(), inlinePage(html));
    expect([...errors].sort()).toEqual(["missing is not defined", "said"]);
  });
});

describe("findChromium", () => {
  const machine = (platform: string, env: Record<string, string>, ...files: string[]) => ({
    platform,
    env,
    isExecutable: (file: string) => files.includes(file),
  });

  test("prefers CHROMIUM_PATH, then the search path, then the usual places", () => {
    const files = ["/own/browser", "/opt/bin/google-chrome", "/usr/bin/chromium"];
    const at = (env: Record<string, string>) => findChromium(machine("linux", env, ...files));
    expect(at({ CHROMIUM_PATH: "/own/browser", PATH: "/opt/bin" })).toBe("/own/browser");
    expect(at({ CHROMIUM_PATH: "", PATH: "/bin:/opt/bin" })).toBe("/opt/bin/google-chrome");
    expect(at({ PATH: "/bin" })).toBe("/usr/bin/chromium");
  });

  test("knows the places of macOS and Windows", () => {
    const mac = "/Applications/Chromium.app/Contents/MacOS/Chromium";
    expect(findChromium(machine("darwin", {}, mac))).toBe(mac);
    const windows = "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe";
    const env = { ProgramFiles: "C:\\Program Files", Path: "C:\\Windows;D:\\tools" };
    expect(findChromium(machine("win32", env, windows))).toBe(windows);
    expect(findChromium(machine("win32", env, windows, "D:\\tools\\chromium.exe"))).toBe(
      "D:\\tools\\chromium.exe",
    );
  });

  test("is undefined on a machine without a browser", () => {
    expect(findChromium(machine("linux", { PATH: "/bin" }))).toBeUndefined();
  });

  test("refuses a CHROMIUM_PATH that names nothing", () => {
    expect(() =>
      findChromium(machine("linux", { CHROMIUM_PATH: "/gone" }, "/bin/chromium")),
    ).toThrow('CHROMIUM_PATH is "/gone"');
  });
});
