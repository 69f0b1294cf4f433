import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import type * as fsPromises from "node:fs/promises";
import { join } from "node:path";
import { afterEach, expect, onTestFinished, test, vi } from "vitest";
import { textOf } from "../../../electron/store/open-shop.ts";
import { aDesk, aDeskWithShop, aFolder, aShop } from "../a-desk.ts";

/** Names of files whose writing fails as on a full disk. */
let full: RegExp | null = null;

const { refuse } = vi.hoisted(() => ({
  refuse: async (): Promise<never> => {
    throw Object.assign(new Error("ENOSPC: no space left on device"), { code: "ENOSPC", syscall: "write" });
  },
}));

vi.mock("node:fs/promises", async (importOriginal) => {
  const original = await importOriginal<typeof fsPromises>();
  const open: typeof original.open = async (path, ...rest) => {
    const file = await original.open(path, ...rest);
    if (full?.test(String(path))) Object.assign(file, { writeFile: refuse, appendFile: refuse });
    return file;
  };
  return { ...original, open };
});

afterEach(() => {
  full = null;
});

test("on a full disk the old file stays whole, the sentence says what to do, and the edits are in the journal", async () => {
  const desk = aDeskWithShop();
  const opened = await desk.open();
  await desk.write(opened, 0, "mine");
  full = /works\.shop\.json\..*tmp$/;
  const answer = await desk.call("save", { handle: opened.handle, overwrite: false });
  expect(answer).toMatchObject({ status: "failed", code: "disk-full" });
  expect(answer.status === "failed" && answer.sentence).toBe(
    "works.shop.json could not be saved: the disk is full. Free some space there. Your edits are kept in the program's journal until then.",
  );
  expect(readFileSync(desk.shopPath, "utf8")).toBe(textOf(aShop()));
  full = null;
  expect((await desk.call("save", { handle: opened.handle, overwrite: false })).status).toBe("saved");
  await desk.host.end();
});

test("where the journal's disk is full the edit is taken with a warning, and saving still works", async () => {
  const desk = aDeskWithShop();
  full = /journal$/;
  const opened = await desk.open();
  const { handle } = opened;
  const changes = [{ kind: "remove", list: "orders", id: "O-1", at: null } as const];
  const answer = await desk.call("commit", { handle, client: "test", baseVersion: 0, changes });
  expect(answer.status === "committed" && answer.warning).toContain("the disk is full");
  expect((await desk.call("save", { handle, overwrite: false })).status).toBe("saved");
  expect(readFileSync(desk.shopPath, "utf8")).not.toContain("O-1");
  await desk.host.end();
});

test("preferences on a full disk: told, and the ones before stay", async () => {
  const desk = aDeskWithShop();
  const { preferences } = await desk.call("readPreferences", {});
  full = /settings\.json\..*tmp$/;
  const answer = await desk.call("writePreferences", { preferences: { ...preferences, theme: "dark" } });
  expect(answer).toMatchObject({ status: "failed", sentence: expect.stringContaining("the disk is full") });
  expect((await desk.call("readPreferences", {})).preferences.theme).toBe("system");
});

/** A real disk of 64 kB; null where this user may not mount one. */
function smallDisk(): string | null {
  const folder = aFolder();
  try {
    execFileSync("mount", ["-t", "tmpfs", "-o", "size=64k", "tmpfs", folder], { stdio: "ignore" });
  } catch {
    return null;
  }
  onTestFinished(() => void execFileSync("umount", ["-l", folder]));
  return folder;
}

test("a real disk of 64 kB that is full keeps the old file whole (skipped where no such disk may be mounted)", async ({
  skip,
}) => {
  const folder = smallDisk();
  if (folder === null)
    return skip("mounting a tmpfs is not allowed here; the failing writes above stand for it");
  const shopPath = join(folder, "works.shop.json");
  writeFileSync(shopPath, textOf(aShop()));
  const desk = aDesk(aFolder(), { launchFile: shopPath });
  const opened = await desk.open();
  await desk.write(opened, 0, "x".repeat(70_000));
  const answer = await desk.call("save", { handle: opened.handle, overwrite: false });
  expect(answer).toMatchObject({ status: "failed", code: "disk-full" });
  expect(readFileSync(shopPath, "utf8")).toBe(textOf(aShop()));
  await desk.write(opened, 1, "short");
  expect((await desk.call("save", { handle: opened.handle, overwrite: false })).status).toBe("saved");
  await desk.host.end();
});
