import { describe, expect, test } from "vitest";
import { profileText } from "../../../core/report/profile-text.ts";
import { timesOf } from "../../fixtures/layer-times.ts";

const WINDOW = { shortestLayerS: 30, longestLayerS: 120 };

function rowsOf(busyS: readonly number[], window = {}): string[] {
  return profileText(timesOf(busyS, window)).filter((line) => line.includes(" mm|"));
}

const many = (count: number, seconds: number): number[] => Array.from({ length: count }, () => seconds);

describe("the layer times as text", () => {
  test("have the top first and the slowest time of each row", () => {
    const rows = rowsOf([...many(20, 40), ...many(20, 80)], WINDOW);
    expect(rows[0]).toMatch(/^ +20\.0 mm\|.*\| +80\.0 s$/);
    expect(rows.at(-1)).toMatch(/\| +40\.0 s$/);
  });

  test("are at most 18 rows, each within 80 columns, a layer in each where there are fewer", () => {
    expect(rowsOf(many(1000, 40), WINDOW)).toHaveLength(18);
    expect(rowsOf(many(3, 40), WINDOW)).toHaveLength(3);
    for (const line of profileText(timesOf([...many(900, 20), ...many(100, 2000)], WINDOW))) {
      expect([...line].length, line).toBeLessThanOrEqual(80);
    }
  });

  test("show waiting up to the window, and say so", () => {
    const [row = ""] = rowsOf(many(5, 20), WINDOW);
    expect(row).toMatch(/\| *~+#·+ *\| +30\.0 s waits$/);
  });

  test("mark what lasts too long beyond the window, and say so; at its end not", () => {
    expect(rowsOf(many(5, 130), WINDOW)[0]).toMatch(
      /\| *·+!? *! *\| +130 s too slow$|\| *·+!.*\| +130 s too slow$/,
    );
    expect(rowsOf(many(5, 120), WINDOW)[0]).not.toContain("too slow");
  });

  test("span from the quickest to the slowest where layers of a row differ", () => {
    const busyS = Array.from({ length: 360 }, (_, at) => (at % 2 ? 40 : 100));
    expect(rowsOf(busyS, WINDOW)[0]).toMatch(/\| *·*=+#·* *\| +100 s$/);
  });

  test("end with what stands out, by the numbers of the layers", () => {
    const text = profileText(timesOf([130, 130, ...many(10, 20), 60, 130], WINDOW)).join(" ");
    expect(text).toContain("A layer takes 30.0 s to 130 s.");
    expect(text).toContain("10 layers wait for the one below to cool (layers 3 to 12), together 1.7 min.");
    expect(text).toContain("3 layers last too long to bond: layers 1 to 2 and 14.");
  });

  test("with no limit have the whole width as window", () => {
    const lines = profileText(timesOf(many(5, 40)));
    expect(lines[0]).toBe("Layer time over the height, window no limit");
    expect(rowsOf(many(5, 40))[0]).toMatch(/\|·+#·+\|/);
  });
});
