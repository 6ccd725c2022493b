/** Mirrored copies: "left and right" flips y, "front and rear" flips x, "all four corners" both. */

export type Copies = "none" | "left and right" | "front and rear" | "all four corners";

/** One copy: the signs its coordinates take and the words that name it. */
export interface Copy {
  readonly sx: 1 | -1;
  readonly sy: 1 | -1;
}

const SIGNS: Record<Copies, readonly Copy[]> = {
  none: [{ sx: 1, sy: 1 }],
  "left and right": [
    { sx: 1, sy: 1 },
    { sx: 1, sy: -1 },
  ],
  "front and rear": [
    { sx: 1, sy: 1 },
    { sx: -1, sy: 1 },
  ],
  "all four corners": [
    { sx: 1, sy: 1 },
    { sx: 1, sy: -1 },
    { sx: -1, sy: 1 },
    { sx: -1, sy: -1 },
  ],
};

/** The copies of a part, the part as drawn first. */
export function copiesOf(copies: Copies): readonly Copy[] {
  return SIGNS[copies];
}

/** "arm" -> "front left arm", by where the copy lies; the name alone when there is one copy. */
export function copyName(name: string, copies: Copies, x: number, y: number): string {
  const ahead = x >= 0 ? "front" : "rear";
  const beside = y >= 0 ? "left" : "right";
  switch (copies) {
    case "none":
      return name;
    case "left and right":
      return `${beside} ${name}`;
    case "front and rear":
      return `${ahead} ${name}`;
    case "all four corners":
      return `${ahead} ${beside} ${name}`;
  }
}

/**
 * The whole outline from the part drawn: the left half from front to rear (points on y = 0 may close
 * it), or the front-left quarter from the x axis side to the y axis side.
 */
export function completeOutline(
  half: readonly (readonly [number, number])[],
  symmetry: Copies,
): [number, number][] {
  const joined = (a: [number, number][], b: [number, number][]) => {
    const all = [...a, ...b];
    return all.filter(([x, y], i) => {
      const [px, py] = all[(i + all.length - 1) % all.length];
      return Math.hypot(x - px, y - py) > 1e-9;
    });
  };
  const drawn = joined(
    half.map(([x, y]) => [x, y] as [number, number]),
    [],
  );
  const flipped = (points: [number, number][], sx: number, sy: number) =>
    points.map(([x, y]) => [sx * x, sy * y] as [number, number]).reverse();
  switch (symmetry) {
    case "none":
      return drawn; // with the first corner repeated at the end taken out
    case "left and right":
      return joined(drawn, flipped(drawn, 1, -1));
    case "front and rear":
      return joined(drawn, flipped(drawn, -1, 1));
    case "all four corners": {
      const left = joined(drawn, flipped(drawn, -1, 1));
      return joined(left, flipped(left, 1, -1));
    }
  }
}
