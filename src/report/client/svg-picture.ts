/** The same picture as lines and areas, for SVG. Runs in the page: every function stands alone. */

import type { Area, Overlay, Paint, Projected, Scene } from "./viewer-types.ts";

/**
 * Triangles that face the eye, from the furthest to the nearest. Large ones are halved until they are
 * about as small as the plates' cells, or the order of their middles would say little.
 *
 * @param covered whether a point (pixels, depth) lies behind a surface; what does wholly is left out
 */
export function paintedAreas(
  scene: Scene,
  seen: Projected,
  paint: Paint,
  covered: (x: number, y: number, depth: number) => boolean,
): Area[] {
  const { triangles, partOf } = scene;
  const { values, colours, opacity } = paint;
  const last = colours.length - 1;
  const most = 9 * seen.scale;
  const out: Area[] = [];
  // Per corner: x, y, depth, value.
  const add = (part: number, corners: readonly (readonly number[])[], light: number): void => {
    const side = (i: number) => {
      const [p, q] = [corners[i], corners[(i + 1) % 3]];
      return Math.hypot(p[0] - q[0], p[1] - q[1], seen.scale * (p[2] - q[2]));
    };
    const longest = [0, 1, 2].reduce((a, b) => (side(b) > side(a) ? b : a));
    if (side(longest) > most) {
      const [p, q, r] = [0, 1, 2].map((k) => corners[(longest + k) % 3]);
      const half = p.map((v, k) => (v + q[k]) / 2);
      add(part, [p, half, r], light);
      add(part, [half, q, r], light);
      return;
    }
    const middle = [0, 1, 2, 3].map((k) => (corners[0][k] + corners[1][k] + corners[2][k]) / 3);
    if ([...corners, middle].every((c) => covered(c[0], c[1], c[2]))) return;
    const row = values ? Math.round(last * Math.min(1, Math.max(0, middle[3]))) : part;
    const hex = colours[row].map((v) =>
      Math.min(255, Math.round(light * v))
        .toString(16)
        .padStart(2, "0"),
    );
    out.push({
      points: corners.flatMap((c) => [c[0], c[1]]),
      fill: `#${hex.join("")}`,
      opacity: opacity[part],
      depth: middle[2],
    });
  };
  for (let t = 0; t < partOf.length; t++) {
    const part = partOf[t];
    if (opacity[part] <= 0) continue;
    const [a, b, c] = [0, 1, 2].map((k) => {
      const v = triangles[3 * t + k];
      return [seen.x[v], seen.y[v], seen.depth[v], values?.[v] ?? 0];
    });
    const twice = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
    if (twice > -1e-9) continue;
    const dzx = ((b[2] - a[2]) * (c[1] - a[1]) - (c[2] - a[2]) * (b[1] - a[1])) / twice;
    const dzy = ((c[2] - a[2]) * (b[0] - a[0]) - (b[2] - a[2]) * (c[0] - a[0])) / twice;
    const [nx, ny] = [-dzx * seen.scale, dzy * seen.scale];
    const facing = (-0.35 * nx + 0.55 * ny + 0.76) / Math.hypot(nx, ny, 1);
    add(part, [a, b, c], paint.dimmest + (1.05 - paint.dimmest) * Math.max(0, facing));
  }
  return out.sort((p, q) => p.depth - q.depth);
}

/** A whole SVG picture; `namespace` is that of SVG, which the page's script does not hold itself. */
export function svgPicture(
  width: number,
  height: number,
  ground: string,
  areas: readonly Area[],
  { strokes, badges, letters }: Overlay,
  title: string,
  namespace: string,
): string {
  const n = (v: number) => String(Math.round(10 * v) / 10);
  const safe = (text: string) => text.replace(/[&<>"]/g, (c) => `&#${c.charCodeAt(0)};`);
  const path = (points: readonly number[], step: number, close: string) => {
    let d = "";
    for (let i = 0; i < points.length; i += 2)
      d += `${i % step === 0 ? "M" : "L"}${n(points[i])} ${n(points[i + 1])}`;
    return d + close;
  };
  const area = ({ points, fill, opacity }: Area) =>
    opacity < 1
      ? `<path d="${path(points, 6, "Z")}" fill="${fill}" fill-opacity="${opacity}"/>`
      : // A hair of its own colour, or the ground would shine through between neighbours.
        `<path d="${path(points, 6, "Z")}" fill="${fill}" stroke="${fill}" stroke-width=".6"/>`;
  const stroke = (s: Overlay["strokes"][number]) =>
    `<path d="${path(s.pieces, 4, "")}" fill="none" stroke="${s.colour}" stroke-width="${s.width}" stroke-linecap="round"${s.dash ? ` stroke-dasharray="${s.dash.join(" ")}"` : ""}/>`;
  const badge = (b: Overlay["badges"][number]) =>
    `<path d="${path(b.points, b.points.length, "Z")}" fill="${b.fill}" stroke="${b.edge}" stroke-width="2"/>`;
  const letter = (l: Overlay["letters"][number]) =>
    `<text x="${n(l.x)}" y="${n(l.y)}" fill="${l.colour}" font-size="${l.size}" text-anchor="middle">${safe(l.text)}</text>`;
  return [
    `<svg xmlns="${namespace}" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" font-family="system-ui, sans-serif">`,
    `<title>${safe(title)}</title>`,
    `<rect width="${width}" height="${height}" fill="${ground}"/>`,
    ...areas.map(area),
    ...strokes.map(stroke),
    ...badges.map(badge),
    ...letters.map(letter),
    "</svg>",
  ].join("\n");
}
