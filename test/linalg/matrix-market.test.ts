import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { matrixMarket, readMatrixMarket } from "../../src/linalg/matrix-market.ts";
import { toDense } from "../../src/linalg/sparse.ts";
import { compress, triplets } from "./arbitrary.ts";

describe("Matrix Market", () => {
  test("writes banner, comments, sizes and the lower triangle", () => {
    const A = compress({
      n: 2,
      entries: [
        { i: 0, j: 1, value: 0.1 },
        { i: 0, j: 0, value: -2 },
      ],
    });
    expect(matrixMarket(A, ["stiffness", "in N/m\nand N m"])).toBe(
      [
        "%%MatrixMarket matrix coordinate real symmetric",
        "% stiffness",
        "% in N/m",
        "% and N m",
        "2 2 2",
        "1 1 -2.0000000000000000e+0",
        "2 1 1.0000000000000001e-1",
        "",
      ].join("\n"),
    );
  });

  test("comes back to the last bit", () => {
    const value = fc.double({ noNaN: true, noDefaultInfinity: true });
    fc.assert(
      fc.property(triplets(10), fc.array(value, { minLength: 40, maxLength: 40 }), (t, values) => {
        const entries = t.entries.map((e, k) => ({ ...e, value: values[k % 40] }));
        const A = compress({ n: t.n, entries });
        const back = readMatrixMarket(matrixMarket(A, ["any"]));
        expect(back.pattern.n).toBe(t.n);
        // A zero is not written, so its sign is not kept.
        expect(toDense(back).map((x) => x + 0)).toEqual(toDense(A).map((x) => x + 0));
      }),
    );
  });

  const head = "%%MatrixMarket matrix coordinate real symmetric\n";
  test.each([
    ["%%MatrixMarket matrix array real general\n1 1\n3\n", 1, "the first line must read"],
    [`${head}2 3 0\n`, 2, 'a symmetric matrix has sizes "n n entries"'],
    [`${head}%\n2 2 1\n3 1 5\n`, 4, "(3, 1) lies outside the matrix: indices go from 1 to 2"],
    [`${head}2 2 1\n1 1 abc\n`, 3, '3 numbers are expected, but found "1 1 abc"'],
    [`${head}2 2 2\n1 1 5\n`, 4, "2 entries were announced, but there are 1"],
    [`${head}2 2 1\n1 1 5\n2 2 5\n`, 4, "1 entries were announced, but there are more"],
    ["", 1, "the first line must read"],
    [`${head}%`, 3, "3 numbers are expected"],
  ])("refuses %j", (text, line, message) => {
    const error = (() => {
      try {
        readMatrixMarket(text);
      } catch (caught) {
        return caught;
      }
      return undefined;
    })();
    expect(error).toBeInstanceOf(InputError);
    expect((error as InputError).findings[0].line).toBe(line);
    expect((error as InputError).message).toContain(message);
  });
});
