import { describe, expect, test } from "vitest";
import {
  DARK,
  fromOklab,
  LIGHT,
  motionColour,
  motionScale,
  seriesStyle,
  type Theme,
} from "../../src/report/palette.ts";

/** Relative luminance and contrast ratio as in WCAG 2.2, "relative luminance", "contrast ratio". */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((i) => {
    const v = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [x, y] = [luminance(a), luminance(b)].sort((p, q) => q - p);
  return (x + 0.05) / (y + 0.05);
}

describe.each([
  ["light", LIGHT],
  ["dark", DARK],
] as const)("the %s theme", (_, theme: Theme) => {
  test("has text that can be read on every ground it stands on", () => {
    for (const ground of [theme.paper, theme.surface]) {
      for (const text of [theme.ink, theme.muted, theme.accent, theme.caution]) {
        expect(contrast(text, ground), `${text} on ${ground}`).toBeGreaterThan(4.5);
      }
    }
    expect(contrast(theme.onAccent, theme.accent)).toBeGreaterThan(4.5);
    expect(contrast(theme.ink, theme.accentSoft)).toBeGreaterThan(4.5);
    expect(contrast(theme.ink, theme.cautionSoft)).toBeGreaterThan(4.5);
    expect(contrast(theme.caution, theme.cautionSoft)).toBeGreaterThan(4.5);
  });

  test("has curves that stand out from the paper", () => {
    for (let i = 0; i < 8; i++) {
      expect(contrast(theme[`series${i}`], theme.surface)).toBeGreaterThan(3);
    }
  });
});

describe("the scale of motion", () => {
  test("has the colours of its ends and its white and black right", () => {
    expect(fromOklab(1, 0, 0)).toBe("#ffffff");
    expect(fromOklab(0, 0, 0)).toBe("#000000");
    // sRGB red in OKLab, from the definition's own table
    expect(fromOklab(0.627955, 0.224863, 0.125846)).toBe("#ff0000");
  });

  test("grows lighter in equal steps and never turns between red and green", () => {
    const colours = Array.from({ length: 9 }, (_, i) => motionColour(i / 8));
    const steps = colours.slice(1).map((c, i) => c.map((v, k) => v - colours[i][k]));
    for (const [L, a, b] of steps) {
      expect(L).toBeCloseTo(steps[0][0], 12);
      expect(b).toBeCloseTo(steps[0][2], 12);
      expect(Math.abs(a)).toBeLessThan(0.002);
    }
    const lightness = motionScale().map(([, hex]) => luminance(hex));
    expect(lightness).toEqual([...lightness].sort((p, q) => p - q));
    expect(lightness[8] / lightness[0]).toBeGreaterThan(10);
  });

  test("does not leave the gamut, where steps would shrink", () => {
    for (const [, hex] of motionScale()) {
      const channels = [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16));
      expect(Math.min(...channels)).toBeGreaterThan(0);
      expect(Math.max(...channels)).toBeLessThan(255);
    }
  });
});

describe("the styles of curves", () => {
  test("tell neighbours apart by colour and by dashes", () => {
    const styles = Array.from({ length: 40 }, (_, i) => seriesStyle(i));
    expect(new Set(styles.map((s) => `${s.colour} ${s.dash}`)).size).toBe(40);
    styles.slice(1).forEach((s, i) => {
      expect(s.dash).not.toBe(styles[i].dash);
      expect(s.colour).not.toBe(styles[i].colour);
    });
  });
});
