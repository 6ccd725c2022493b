/** Pictures as browsers take them, read back: PNG with eight bits a channel, not interlaced. */

import { inflateSync } from "node:zlib";

export interface Picture {
  readonly width: number;
  readonly height: number;
  /** 3 or 4 bytes a pixel, row by row from the top */
  readonly channels: 3 | 4;
  readonly bytes: Uint8Array;
}

export const PNG_SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

/** @throws Error when the bytes are no such picture */
export function readPng(file: Buffer): Picture {
  if (!file.subarray(0, 8).equals(PNG_SIGNATURE)) throw new Error("no PNG");
  let header: Buffer | undefined;
  const data: Buffer[] = [];
  for (let at = 8; at < file.length; ) {
    const length = file.readUInt32BE(at);
    const kind = file.toString("latin1", at + 4, at + 8);
    const body = file.subarray(at + 8, at + 8 + length);
    if (kind === "IHDR") header = body;
    if (kind === "IDAT") data.push(body);
    at += 12 + length;
  }
  if (header === undefined) throw new Error("a PNG without a header");
  const [width, height] = [header.readUInt32BE(0), header.readUInt32BE(4)];
  const [depth, kind, , , interlaced] = header.subarray(8);
  const channels = kind === 6 ? 4 : 3;
  if (depth !== 8 || (kind !== 2 && kind !== 6) || interlaced !== 0) {
    throw new Error(`a PNG of another kind: ${depth} bits, colour type ${kind}`);
  }
  const bytes = unfiltered(inflateSync(Buffer.concat(data)), width * channels, height, channels);
  return { width, height, channels, bytes };
}

/** Each row begins with the number of its filter; what it says of a byte is relative to its neighbours. */
function unfiltered(raw: Uint8Array, stride: number, height: number, step: number): Uint8Array {
  const out = new Uint8Array(stride * height);
  for (let y = 0; y < height; y++) {
    const filter = raw[y * (stride + 1)];
    for (let i = 0; i < stride; i++) {
      const here = y * stride + i;
      const left = i >= step ? out[here - step] : 0;
      const above = y > 0 ? out[here - stride] : 0;
      const corner = i >= step && y > 0 ? out[here - stride - step] : 0;
      out[here] = raw[y * (stride + 1) + 1 + i] + predicted(filter, left, above, corner);
    }
  }
  return out;
}

function predicted(filter: number, left: number, above: number, corner: number): number {
  if (filter === 1) return left;
  if (filter === 2) return above;
  if (filter === 3) return (left + above) >> 1;
  if (filter !== 4) return 0;
  const guess = left + above - corner;
  const [a, b, c] = [left, above, corner].map((v) => Math.abs(guess - v));
  return a <= b && a <= c ? left : b <= c ? above : corner;
}

/** Share of the pixels that differ from the most frequent colour, the background. */
export function inkShare({ bytes, channels }: Picture): number {
  const counts = new Map<number, number>();
  for (let i = 0; i < bytes.length; i += channels) {
    const colour = (bytes[i] << 16) | (bytes[i + 1] << 8) | bytes[i + 2];
    counts.set(colour, (counts.get(colour) ?? 0) + 1);
  }
  return 1 - Math.max(...counts.values()) / (bytes.length / channels);
}

/** Number of different colours. */
export function colourCount({ bytes, channels }: Picture): number {
  const colours = new Set<number>();
  for (let i = 0; i < bytes.length; i += channels) {
    colours.add((bytes[i] << 16) | (bytes[i + 1] << 8) | bytes[i + 2]);
  }
  return colours.size;
}
