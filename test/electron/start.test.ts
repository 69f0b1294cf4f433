import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));

test.each([
  [["--fast"], "--fast"],
  [["a.shop.json", "b.shop.json"], "start takes one shop file"],
])(
  "%j do not fit: a sentence, then the usage, status 2, and nothing is built or opened",
  (words, sentence) => {
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      ["--import", "tsx", "electron/start.ts", ...words],
      { cwd: ROOT, encoding: "utf8" },
    );
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr.split("\n")[0]).toContain(sentence);
    expect(stderr).toContain("\nUsage: npm start");
    expect(stderr).not.toContain("    at ");
  },
);
