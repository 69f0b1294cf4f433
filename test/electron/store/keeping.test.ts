import {
  chmodSync,
  existsSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import type { Opened } from "../../../electron/contract/shop-messages.ts";
import { textOf } from "../../../electron/store/open-shop.ts";
import { aPlan } from "../../fixtures/a-plan.ts";
import { aWorks } from "../../fixtures/a-works.ts";
import { aDesk, aDeskWithShop, aFolder, anOrder, aShop, type Desk, noteOn } from "../a-desk.ts";

function noteIn(path: string): string | undefined {
  return (JSON.parse(readFileSync(path, "utf8")) as ReturnType<typeof aShop>).orders[0]?.note;
}

/** A host that is gone without having saved: its journal stays, as after a crash. */
async function crashAfter(desk: Desk, notes: readonly string[]): Promise<void> {
  const opened = await desk.open();
  for (const [version, note] of notes.entries()) await desk.write(opened, version, note);
  const folder = join(desk.data, "journals", readdirSync(join(desk.data, "journals"))[0] ?? "");
  for (const name of readdirSync(folder)) {
    const text = readFileSync(join(folder, name), "utf8");
    rmSync(join(folder, name));
    // The number of no living process.
    writeFileSync(join(folder, name.replace(/^\d+/, "999999999")), text);
  }
}

function journalOf(desk: Desk): string {
  const folder = join(desk.data, "journals", readdirSync(join(desk.data, "journals"))[0] ?? "");
  const name = readdirSync(folder).find((candidate) => candidate.startsWith("999999999"));
  return join(folder, name ?? "");
}

test("an edit is in the file after saving, and the state before it among the backups", async () => {
  const desk = aDeskWithShop();
  const opened = await desk.open();
  await desk.write(opened, 0, "one");
  expect((await desk.call("save", { handle: opened.handle, overwrite: false })).status).toBe("saved");
  expect(noteIn(desk.shopPath)).toBe("one");
  const { backups } = await desk.call("listBackups", { handle: opened.handle });
  expect(backups).toHaveLength(1);
  const backup = await desk.call("openBackup", { handle: opened.handle, id: backups[0]?.id ?? "" });
  expect(backup.status === "opened" && backup.shop.orders[0]?.note).toBe("0");
  await desk.host.end();
});

test("an edit saves itself within seconds, and a window that waits is told", async () => {
  const desk = aDeskWithShop();
  const opened = await desk.open();
  await desk.write(opened, 0, "one");
  let { stamp } = opened;
  let savedVersion = 0;
  while (savedVersion < 1) {
    const watched = await desk.call("watch", { handle: opened.handle, client: "test", stamp, version: 1 });
    ({ stamp, savedVersion } = watched);
  }
  expect(noteIn(desk.shopPath)).toBe("one");
  await desk.host.end();
});

test("after a crash both choices are offered, and keep gives every edit back", async () => {
  const desk = aDeskWithShop();
  await crashAfter(desk, ["one", "two"]);
  const next = aDesk(desk.folder);
  const { recovery, handle, shop } = await next.open();
  expect(shop.orders[0]?.note).toBe("0");
  expect(recovery).toMatchObject({ edits: 2, lines: ["orders: 2 put"], fits: true });
  const kept = (await next.call("recover", { handle, choice: "keep" })) as Opened;
  expect(kept.shop.orders[0]?.note).toBe("two");
  await next.host.end();
  expect(noteIn(desk.shopPath)).toBe("two");
});

test("drop leaves the shop as the file has it, and the journal is set aside, not destroyed", async () => {
  const desk = aDeskWithShop();
  await crashAfter(desk, ["one"]);
  const next = aDesk(desk.folder);
  const { handle } = await next.open();
  const dropped = (await next.call("recover", { handle, choice: "drop" })) as Opened;
  expect(dropped.shop.orders[0]?.note).toBe("0");
  await next.host.end();
  expect((await aDesk(desk.folder).open()).recovery).toBeNull();
  expect(existsSync(journalOf(desk).replace(/journal$/, "aside"))).toBe(true);
});

test("a torn last line of the journal is dropped, the lines before it count", async () => {
  const desk = aDeskWithShop();
  await crashAfter(desk, ["one", "two"]);
  const journal = journalOf(desk);
  writeFileSync(journal, readFileSync(journal, "utf8").slice(0, -20));
  const { recovery } = await aDesk(desk.folder).open();
  expect(recovery?.edits).toBe(1);
});

test("nothing behind a damaged line of the journal is trusted", async () => {
  const desk = aDeskWithShop();
  await crashAfter(desk, ["one", "two", "three"]);
  const journal = journalOf(desk);
  writeFileSync(journal, readFileSync(journal, "utf8").replace('"note":"two"', '"note":"tWo"'));
  const { recovery } = await aDesk(desk.folder).open();
  expect(recovery?.edits).toBe(1);
});

test("a journal of something else than edits recovers nothing and hinders nobody", async () => {
  const desk = aDeskWithShop();
  await crashAfter(desk, ["one"]);
  writeFileSync(journalOf(desk), "0123456789abcdef {}\nnonsense\n");
  expect((await aDesk(desk.folder).open()).recovery).toBeNull();
});

test("edits found on a file that changed since are put where they still fit, and the rest is counted", async () => {
  const desk = aDeskWithShop();
  const opened = await desk.open();
  const { handle } = opened;
  const put = { kind: "put", list: "orders", entry: anOrder("O-9", "new"), at: 0 } as const;
  await desk.call("commit", { handle, client: "test", baseVersion: 0, changes: [put] });
  const remove = { kind: "remove", list: "orders", id: "O-1", at: 1 } as const;
  await desk.call("commit", { handle, client: "test", baseVersion: 1, changes: [remove] });
  await crashAfter(desk, []);
  const shop = aShop();
  writeFileSync(desk.shopPath, textOf({ ...shop, name: "Changed", orders: [anOrder("O-9", "theirs")] }));
  const next = aDesk(desk.folder);
  const found = await next.open();
  expect(found.recovery?.fits).toBe(false);
  const kept = (await next.call("recover", { handle: found.handle, choice: "keep" })) as Opened;
  expect(kept.shop.name).toBe("Changed");
  expect(kept.shop.orders.map(({ id, note }) => [id, note])).toEqual([["O-9", "new"]]);
  expect(kept.notes.join()).toContain("1 of the edits found had no place any more");
});

test("a file that another process changed is not written over; the answer offers three ways on", async () => {
  const desk = aDeskWithShop();
  const opened = await desk.open();
  await desk.write(opened, 0, "mine");
  writeFileSync(desk.shopPath, textOf({ ...aShop(), name: "Theirs" }));
  const answer = await desk.call("save", { handle: opened.handle, overwrite: false });
  expect(answer).toMatchObject({
    status: "conflict",
    reason: "changed",
    choices: ["reload", "save-as", "overwrite"],
  });
  expect(readFileSync(desk.shopPath, "utf8")).toContain("Theirs");
});

test("overwriting knowingly keeps what was there as a backup", async () => {
  const desk = aDeskWithShop();
  const opened = await desk.open();
  await desk.write(opened, 0, "mine");
  writeFileSync(desk.shopPath, textOf({ ...aShop(), name: "Theirs" }));
  expect((await desk.call("save", { handle: opened.handle, overwrite: true })).status).toBe("saved");
  expect(noteIn(desk.shopPath)).toBe("mine");
  const { backups } = await desk.call("listBackups", { handle: opened.handle });
  const texts = await Promise.all(
    backups.map(({ id }) => desk.call("openBackup", { handle: opened.handle, id })),
  );
  expect(texts.map((text) => text.status === "opened" && text.shop.name)).toContain("Theirs");
  await desk.host.end();
});

test("reading again after a conflict shows theirs, and mine is set aside in a journal", async () => {
  const desk = aDeskWithShop();
  const opened = await desk.open();
  await desk.write(opened, 0, "mine");
  writeFileSync(desk.shopPath, textOf({ ...aShop(), name: "Theirs" }));
  const again = (await desk.call("reload", { handle: opened.handle })) as Opened;
  expect(again.shop.name).toBe("Theirs");
  expect(again.recovery).toBeNull();
  const journals = readdirSync(join(desk.data, "journals"), { recursive: true }).map(String);
  expect(journals.filter((name) => name.endsWith(".aside"))).toHaveLength(1);
  await expect(desk.call("save", { handle: opened.handle, overwrite: false })).rejects.toThrow(
    "not open here",
  );
});

test("a change by another process is noticed without being asked for", async () => {
  const desk = aDeskWithShop();
  const { handle, stamp } = await desk.open();
  const waiting = desk.call("watch", { handle, client: "test", stamp, version: 0 });
  writeFileSync(desk.shopPath, textOf({ ...aShop(), name: "Theirs" }));
  expect(await waiting).toMatchObject({ file: "changed", version: 0, changes: [] });
});

test("a file that is removed while open is noticed, not recreated unasked, and saved again when asked", async () => {
  const desk = aDeskWithShop();
  const opened = await desk.open();
  const { handle, stamp } = opened;
  const waiting = desk.call("watch", { handle, client: "test", stamp, version: 0 });
  rmSync(desk.shopPath);
  expect((await waiting).file).toBe("removed");
  await desk.write(opened, 0, "mine");
  expect(await desk.call("save", { handle, overwrite: false })).toMatchObject({ reason: "removed" });
  expect(existsSync(desk.shopPath)).toBe(false);
  expect((await desk.call("save", { handle, overwrite: true })).status).toBe("saved");
  expect(noteIn(desk.shopPath)).toBe("mine");
});

test("a shop whose whole folder is gone can be saved under another name", async () => {
  const desk = aDeskWithShop();
  const opened = await desk.open();
  await desk.write(opened, 0, "mine");
  rmSync(desk.shopPath);
  const saved = await desk.call("saveAs", { handle: opened.handle, fileName: "rescued" });
  expect(saved).toMatchObject({ status: "saved", fileName: "rescued.shop.json" });
  await desk.host.end();
});

test("a read-only file is opened with a note, left as it is, and its edits stay in the journal", async () => {
  const desk = aDeskWithShop();
  chmodSync(desk.shopPath, 0o444);
  const opened = await desk.open();
  expect(opened.notes.join()).toContain("may only be read");
  await desk.write(opened, 0, "mine");
  const answer = await desk.call("save", { handle: opened.handle, overwrite: false });
  expect(answer).toMatchObject({ status: "failed", code: "read-only" });
  expect(noteIn(desk.shopPath)).toBe("0");
  await desk.host.end();
  await crashAfter(aDesk(desk.folder), []);
  expect((await aDesk(desk.folder).open()).recovery?.edits).toBe(1);
});

test("two windows of one process share the shop: the one behind is told what it missed", async () => {
  const desk = aDeskWithShop();
  const first = await desk.open();
  const second = await desk.open();
  expect(second.handle).toBe(first.handle);
  const { handle } = first;
  const edit = { handle, baseVersion: 0, changes: [noteOn("O-1", "first")] };
  await desk.call("commit", { ...edit, client: "first" });
  const late = await desk.call("commit", { ...edit, client: "second" });
  expect(late).toEqual({ status: "behind", version: 1, changes: [noteOn("O-1", "first")] });
  const seen = await desk.call("watch", { handle, client: "second", stamp: -1, version: 0 });
  expect(seen.changes).toEqual([noteOn("O-1", "first")]);
  const own = await desk.call("watch", { handle, client: "first", stamp: -1, version: 0 });
  expect(own.changes).toEqual([]);
  await desk.host.end();
});

test("two windows that open at the same moment share the shop too", async () => {
  const desk = aDeskWithShop();
  const [first, second] = await Promise.all([desk.open(), desk.open()]);
  expect(first.handle).toBe(second.handle);
});

test("a shop that another living process has open is said to be, and its journal is left alone", async () => {
  const desk = aDeskWithShop();
  await crashAfter(desk, ["theirs"]);
  const journal = journalOf(desk);
  renameSync(journal, journal.replace("999999999", String(process.ppid)));
  const opened = await aDesk(desk.folder).open();
  expect(opened.notes.join()).toContain("open in another window");
  expect(opened.recovery).toBeNull();
});

test("a journal that nobody has touched for long is of a process that is gone, even if its number lives again", async () => {
  const desk = aDeskWithShop();
  await crashAfter(desk, ["theirs"]);
  const journal = journalOf(desk);
  const again = journal.replace("999999999", String(process.ppid));
  renameSync(journal, again);
  utimesSync(again, new Date(0), new Date(0));
  expect((await aDesk(desk.folder).open()).recovery?.edits).toBe(1);
});

test("edits that do not fit are refused whole: the ones before them are not kept either", async () => {
  const desk = aDeskWithShop();
  const { handle } = await desk.open();
  const gone = { kind: "remove", list: "orders", id: "O-7", at: null } as const;
  const changes = [noteOn("O-1", "one"), gone];
  const answer = await desk.call("commit", { handle, client: "test", baseVersion: 0, changes });
  expect(answer.status).toBe("misfit");
  const again = await desk.open();
  expect(again.version).toBe(0);
  expect(again.shop.orders[0]?.note).toBe("0");
});

test("a file with entries that cannot be read is copied to the backups before anything is saved", async () => {
  const folder = aFolder();
  const desk = aDesk(folder);
  const broken = { ...aShop(), orders: [...aShop().orders, { id: "O-2" }] };
  writeFileSync(desk.shopPath, JSON.stringify(broken));
  const opened = await desk.open();
  expect(opened.shop.orders).toHaveLength(1);
  expect(opened.notes.join()).toContain("the file as it was is among its backups");
  const { backups } = await desk.call("listBackups", { handle: opened.handle });
  expect(backups).toHaveLength(1);
});

test("what a killed process left half written beside the shop is swept up, a living one's is not", async () => {
  const desk = aDeskWithShop();
  writeFileSync(join(desk.folder, ".works.shop.json.999999999-1.tmp"), "{");
  writeFileSync(join(desk.folder, `.works.shop.json.${process.pid}-999.tmp`), "{");
  await desk.open();
  expect(readdirSync(desk.folder).filter((name) => name.endsWith(".tmp"))).toEqual([
    `.works.shop.json.${process.pid}-999.tmp`,
  ]);
});

test("a file that is no shop is told in sentences, and nothing is open", async () => {
  const desk = aDesk();
  writeFileSync(desk.shopPath, "{");
  expect(await desk.call("openFirst", {})).toMatchObject({
    status: "unreadable",
    fileName: "works.shop.json",
  });
});

test("the first start opens a copy of the demo shop, the second start the same copy", async () => {
  const folder = aFolder();
  const first = aDesk(folder, { launchFile: null });
  const opened = await first.open();
  expect(opened.isDemo).toBe(true);
  await first.host.end();
  const again = await aDesk(folder, { launchFile: null }).open();
  expect([again.folder, again.fileName]).toEqual([opened.folder, opened.fileName]);
});

test("the accepted plan is kept beside the shop, and goes again where none is accepted any more", async () => {
  const desk = aDeskWithShop();
  const { handle } = await desk.open();
  const plan = aPlan(aWorks());
  expect(await desk.call("keepPlan", { handle, plan })).toEqual({ status: "kept" });
  expect((await desk.call("readPlan", { handle })).plan?.builds).toHaveLength(plan.builds.length);
  for (let again = 0; again < 2; again += 1)
    expect(await desk.call("keepPlan", { handle, plan: null })).toEqual({ status: "kept" });
  expect(existsSync(join(desk.folder, "works.plan.json"))).toBe(false);
  expect(await desk.call("readPlan", { handle })).toEqual({ plan: null });
  await desk.host.end();
});
