import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { openResultFiles } from "../../../electron/store/result-files.ts";

const FOLDER = mkdtempSync(join(tmpdir(), "hopper-results-"));
let next = 0;
const freshFolder = (): string => join(FOLDER, String(next++));

afterAll(() => rmSync(FOLDER, { recursive: true, force: true }));

describe("results in files", () => {
  test("come back as they were, also where JSON would lose a number", () => {
    const folder = freshFolder();
    const result = { weeks: [{ revenue: 1.5, years: Number.POSITIVE_INFINITY }], none: undefined };
    openResultFiles(folder, "1").set("a", result);
    expect(openResultFiles(folder, "1").get("a")).toEqual(result);
  });

  test("are not known under another key or to another version of the program", () => {
    const folder = freshFolder();
    openResultFiles(folder, "1").set("a", 7);
    expect(openResultFiles(folder, "1").get("b")).toBeUndefined();
    expect(openResultFiles(folder, "2").get("a")).toBeUndefined();
  });

  test("that were written by half count as not known", () => {
    const folder = freshFolder();
    const files = openResultFiles(folder, "1");
    files.set("a", { weeks: Array.from({ length: 100 }, (_, week) => week) });
    const [name = ""] = readdirSync(folder);
    const whole = readFileSync(join(folder, name));
    writeFileSync(join(folder, name), whole.subarray(0, whole.length - 9));
    expect(files.get("a")).toBeUndefined();
  });

  test("keep within the bound: those that were used longest ago go first, using one counts", () => {
    const folder = freshFolder();
    const files = openResultFiles(folder, "1");
    for (const key of ["a", "b", "c"]) {
      files.set(key, key);
      const old = new Date(2020, 0, 1);
      for (const name of readdirSync(folder)) utimesSync(join(folder, name), old, old);
    }
    files.get("a");
    const bytes = statSync(join(folder, readdirSync(folder)[0] ?? "")).size;
    openResultFiles(folder, "1", bytes + 1).trim();
    expect(readdirSync(folder)).toHaveLength(1);
    expect(files.get("a")).toBe("a");
  });

  test("that cannot be written trouble nobody", () => {
    const inTheWay = join(FOLDER, "file");
    writeFileSync(inTheWay, "");
    const files = openResultFiles(join(inTheWay, "results"), "1");
    files.set("a", 1);
    files.trim();
    expect(files.get("a")).toBeUndefined();
  });
});
