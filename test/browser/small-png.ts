/** Pictures made small: at most 256 colours, chosen by median cut (Heckbert 1982, from memory). */

import { crc32, deflateSync } from "node:zlib";
import { type Picture, PNG_SIGNATURE } from "./png.ts";

const MOST_COLOURS = 256;

interface Counted {
  readonly rgb: readonly [number, number, number];
  readonly count: number;
}

/** The same picture as a PNG with a palette. */
export function smallPng(picture: Picture): Buffer {
  const { width, height, channels, bytes } = picture;
  const counts = new Map<number, number>();
  for (let i = 0; i < bytes.length; i += channels) {
    const colour = key(bytes, i);
    counts.set(colour, (counts.get(colour) ?? 0) + 1);
  }
  const colours = [...counts].map(([colour, count]): Counted => {
    return { rgb: [colour >> 16, (colour >> 8) & 255, colour & 255], count };
  });
  const boxes = medianCut(colours);
  const entry = new Map<number, number>();
  boxes.forEach((box, i) => {
    for (const { rgb } of box) entry.set((rgb[0] << 16) | (rgb[1] << 8) | rgb[2], i);
  });
  const rows = new Uint8Array((width + 1) * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const colour = key(bytes, (y * width + x) * channels);
      rows[y * (width + 1) + 1 + x] = entry.get(colour) ?? 0;
    }
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 3, 0, 0, 0], 8);
  return Buffer.concat([
    PNG_SIGNATURE,
    chunk("IHDR", header),
    chunk("PLTE", Buffer.from(boxes.flatMap(mean))),
    chunk("IDAT", deflateSync(rows, { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

const key = (bytes: Uint8Array, i: number) => (bytes[i] << 16) | (bytes[i + 1] << 8) | bytes[i + 2];

/** Boxes of colours, the one with the largest spread times number of pixels cut first. */
function medianCut(colours: readonly Counted[]): Counted[][] {
  const boxes = [{ colours: [...colours], ...spread(colours) }];
  while (boxes.length < MOST_COLOURS) {
    const worst = boxes.reduce((a, b) => (b.size > a.size ? b : a));
    if (worst.colours.length < 2) break;
    const sorted = worst.colours.toSorted((a, b) => a.rgb[worst.channel] - b.rgb[worst.channel]);
    const half = sorted.reduce((sum, c) => sum + c.count, 0) / 2;
    let cut = 0;
    for (
      let seen = 0;
      cut < sorted.length - 1 && (cut === 0 || seen + sorted[cut].count <= half);
    ) {
      seen += sorted[cut++].count;
    }
    const parts = [sorted.slice(0, cut), sorted.slice(cut)];
    boxes.splice(
      boxes.indexOf(worst),
      1,
      ...parts.map((part) => ({ colours: part, ...spread(part) })),
    );
  }
  return boxes.map((b) => b.colours);
}

/** The channel that varies most; its range times the root of the number of pixels, 0 for one colour. */
function spread(colours: readonly Counted[]): { channel: number; size: number } {
  const ranges = [0, 1, 2].map((k) => {
    const [low, high] = colours.reduce(
      ([l, h], { rgb }) => [Math.min(l, rgb[k]), Math.max(h, rgb[k])],
      [255, 0],
    );
    return high - low;
  });
  const channel = ranges.indexOf(Math.max(...ranges));
  const pixels = colours.reduce((sum, c) => sum + c.count, 0);
  return { channel, size: colours.length > 1 ? ranges[channel] * Math.sqrt(pixels) : 0 };
}

function mean(box: readonly Counted[]): number[] {
  const pixels = box.reduce((sum, c) => sum + c.count, 0);
  return [0, 1, 2].map((k) =>
    Math.round(box.reduce((sum, c) => sum + c.rgb[k] * c.count, 0) / pixels),
  );
}

function chunk(kind: string, body: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(kind, "latin1"), body]);
  const out = Buffer.alloc(named.length + 8);
  out.writeUInt32BE(body.length, 0);
  named.copy(out, 4);
  out.writeUInt32BE(crc32(named), named.length + 4);
  return out;
}
