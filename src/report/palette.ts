/** Colours of the report, for a light and a dark page. */

/** Colours by what they are for; every one has a custom property of its name in the style sheet. */
export interface Theme {
  readonly paper: string;
  readonly surface: string;
  readonly sunken: string;
  readonly ink: string;
  readonly muted: string;
  readonly line: string;
  readonly accent: string;
  readonly accentSoft: string;
  readonly onAccent: string;
  readonly caution: string;
  readonly cautionSoft: string;
  readonly plate: string;
  readonly arm: string;
  readonly [series: `series${number}`]: string;
}

export const LIGHT: Theme = {
  paper: "#f5f3ee",
  surface: "#fdfcf9",
  sunken: "#ebe8e0",
  ink: "#1d2730",
  muted: "#55616a",
  line: "#cfcabd",
  accent: "#0c6468",
  accentSoft: "#d8e8e4",
  onAccent: "#ffffff",
  caution: "#9c3f0c",
  cautionSoft: "#f6e1d3",
  plate: "#8c97a0",
  arm: "#6d7780",
  series0: "#0c6468",
  series1: "#bd5310",
  series2: "#4a47a6",
  series3: "#a83a72",
  series4: "#65731a",
  series5: "#1f78b8",
  series6: "#75472a",
  series7: "#58646c",
};

export const DARK: Theme = {
  paper: "#12171b",
  surface: "#1a2127",
  sunken: "#232c33",
  ink: "#e9e6de",
  muted: "#a3afb5",
  line: "#3a464e",
  accent: "#5cc8bd",
  accentSoft: "#173a3b",
  onAccent: "#08211f",
  caution: "#f2a36b",
  cautionSoft: "#40291b",
  plate: "#71808a",
  arm: "#8d9aa3",
  series0: "#5cc8bd",
  series1: "#f2a35e",
  series2: "#aaa6f5",
  series3: "#ea8fbd",
  series4: "#c2ce68",
  series5: "#7bbfee",
  series6: "#cfa27e",
  series7: "#b3bdc3",
};

/** How a curve is told from the others, also without its colour. */
export interface SeriesStyle {
  /** a colour of the theme, as "--name" */
  readonly colour: string;
  readonly dash: "solid" | "dash" | "dot" | "dashdot" | "longdash" | "longdashdot";
  /** the same dashes for SVG */
  readonly strokes: string;
}

const DASHES: readonly Omit<SeriesStyle, "colour">[] = [
  { dash: "solid", strokes: "none" },
  { dash: "dash", strokes: "7 4" },
  { dash: "dot", strokes: "2 3" },
  { dash: "dashdot", strokes: "8 3 2 3" },
  { dash: "longdash", strokes: "12 4" },
];

const COLOURS = 8;

/** Style of the nth curve; eight colours and five dashes repeat together only after forty. */
export function seriesStyle(n: number): SeriesStyle {
  return { colour: `--series${n % COLOURS}`, ...DASHES[n % DASHES.length] };
}

/**
 * Colours from "stands still" (deep blue) to "moves most" (yellow): a straight line in the OKLab
 * space (B. Ottosson, A perceptual color space for image processing, 2020, from memory), so equal
 * steps look equal; it varies in lightness and from blue to yellow only, which people who do not
 * tell red from green see as well.
 */
export function motionScale(steps = 9): readonly (readonly [number, string])[] {
  return Array.from({ length: steps }, (_, i) => {
    const t = i / (steps - 1);
    return [Number(t.toFixed(4)), fromOklab(...motionColour(t))] as const;
  });
}

/** Lightness L and the axes a (red-green) and b (blue-yellow) of the scale at t from 0 to 1. */
export function motionColour(t: number): [number, number, number] {
  return [0.34 + 0.53 * t, -0.015 + 0.005 * t, -0.095 + 0.245 * t];
}

/** sRGB of an OKLab colour as #rrggbb, cut off at the edge of the gamut. */
export function fromOklab(L: number, a: number, b: number): string {
  const l = (L + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (L - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (L - 0.0894841775 * a - 1.291485548 * b) ** 3;
  const linear = [
    4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s,
    -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s,
    -0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s,
  ];
  return `#${linear.map((v) => hexByte(v)).join("")}`;
}

/** One channel through the sRGB transfer curve (IEC 61966-2-1). */
function hexByte(linear: number): string {
  const v = Math.min(1, Math.max(0, linear));
  const coded = v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055;
  return Math.round(coded * 255)
    .toString(16)
    .padStart(2, "0");
}

/** Custom properties of a theme: "--ink: #1d2730; ...". */
export function customProperties(theme: Theme): string {
  return Object.entries(theme)
    .map(([name, value]) => `--${name}: ${value};`)
    .join(" ");
}
