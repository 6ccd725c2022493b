/** A short film of a canvas. Runs in the page: gets from outside only what it is handed. */

import type { Browser, Element } from "./types.ts";

interface Recorder {
  ondataavailable: ((event: { readonly data: { readonly size: number } }) => void) | null;
  onstop: (() => void) | null;
  onerror: (() => void) | null;
  start(): void;
  stop(): void;
}
interface Stream {
  getTracks(): Iterable<{ stop(): void }>;
}
interface Filming {
  readonly MediaRecorder?: {
    new (stream: unknown, options: object): Recorder;
    isTypeSupported(type: string): boolean;
  };
}

/**
 * What the canvas shows from now on for a number of milliseconds, as the address of a file in memory
 * (WebM). Fails where the browser cannot film; the caller asks before it shows its button.
 */
export function recordClip(browser: Browser, canvas: Element, duration: number): Promise<string> {
  return new Promise((ready, fail) => {
    const { MediaRecorder } = browser as unknown as Filming;
    if (MediaRecorder === undefined) {
      fail(new Error("this browser cannot film"));
      return;
    }
    const source = canvas as unknown as { captureStream(rate: number): Stream };
    const options = { mimeType: "video/webm", videoBitsPerSecond: 4e6 };
    const stream = source.captureStream(30);
    const recorder = new MediaRecorder(stream, options);
    const end = () => {
      for (const track of stream.getTracks()) track.stop();
    };
    const pieces: unknown[] = [];
    recorder.ondataavailable = ({ data }) => {
      if (data.size > 0) pieces.push(data);
    };
    recorder.onerror = () => {
      end();
      fail(new Error("the film broke off"));
    };
    recorder.onstop = () => {
      end();
      const file = new browser.Blob(pieces, { type: "video/webm" });
      ready(browser.URL.createObjectURL(file));
    };
    recorder.start();
    browser.setTimeout(() => recorder.stop(), duration);
  });
}
