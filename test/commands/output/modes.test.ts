import { describe, expect, test } from "vitest";
import { modesText } from "../../../src/commands/output/modes-text.ts";
import { mainParts, poolNames } from "../../../src/commands/output/pooled-shares.ts";
import { NO_INK } from "../../../src/commands/terminal/ink.ts";
import { columnsOf } from "../../../src/commands/terminal/printable.ts";
import { analysis } from "./fixture.ts";

describe("the table of modes", () => {
  const text = modesText(analysis, NO_INK);

  test("keeps to 80 columns and cannot act on the terminal, whatever the names", () => {
    for (const line of text.split("\n")) expect(columnsOf(line)).toBeLessThanOrEqual(80);
    expect(text.replace(/[\n\u2068\u2069]/g, "")).not.toMatch(/[\p{Cc}\p{Cf}]/u);
  });

  test("has number, frequency, damping, name and the shares of the main parts", () => {
    expect(text).toMatch(/\n +1 +131 +1\.50 +arms flap, all together .* 60 %/);
    expect(text).toMatch(/\n +2 +1230 +1\.50 +.* 60 %/);
  });

  test("proves that none is missing", () => {
    expect(text.replace(/\s+/g, " ")).toContain(
      "8 modes below 1250 Hz, 6 of them the whole frame moving without bending; as many were found, so none is missing",
    );
  });
});

describe("main parts", () => {
  const arm = (name: string) => ({ name, group: "arm" });
  const model = {
    arms: [arm("left arm"), arm("right arm")],
    standoffs: [{ name: "p", group: "p" }],
  };
  const share = (part: string, strain: number) => ({ part, kind: "", strain, kinetic: 0 });
  const pools = poolNames(model);

  test("takes copies together, joints at their roots apart", () => {
    const shares = [
      share("top", 0.3),
      share("left arm", 0.25),
      share("right arm", 0.25),
      share("left arm root", 0.1),
      share("right arm root", 0.1),
    ];
    expect(mainParts(shares, pools)).toEqual([
      { name: "2 x arm", strain: 0.5 },
      { name: "top", strain: 0.3 },
      { name: "2 x arm root", strain: 0.2 },
    ]);
  });

  test("leaves single parts their names and small shares out", () => {
    expect(mainParts([share("p", 0.97), share("top", 0.03)], pools)).toEqual([
      { name: "p", strain: 0.97 },
    ]);
    expect(mainParts([share("p", 0.04)], pools)).toHaveLength(1);
  });
});
