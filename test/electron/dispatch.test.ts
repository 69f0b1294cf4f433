import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test, vi } from "vitest";
import { DEFAULT_PREFERENCES } from "../../electron/contract/preferences.ts";
import { METHODS, type MethodName } from "../../electron/contract.ts";
import { dispatch } from "../../electron/dispatch.ts";
import { makeHost } from "../../electron/host.ts";
import type { Methods } from "../../electron/host/methods.ts";
import { aDeskWithShop, aFolder } from "./a-desk.ts";

test("every call of the contract has a function behind it, and there is no function more", () => {
  const { host } = aDeskWithShop();
  expect(Object.keys(host.methods).toSorted()).toEqual(Object.keys(METHODS).toSorted());
});

test.each(["constructor", "toString", "__proto__", "", "nothing"])("a call %j is refused", async (name) => {
  const { host } = aDeskWithShop();
  expect(await dispatch(host.methods, name, {})).toMatchObject({ ok: false, trouble: { code: "refused" } });
});

test("a field that the contract does not have is refused", async () => {
  const { host } = aDeskWithShop();
  const answer = await dispatch(host.methods, "openFirst", { path: "/etc/passwd" });
  expect(answer).toMatchObject({ ok: false, trouble: { code: "refused" } });
});

test.each(["../up.shop.json", "a/b", "a\\b", "", "x".repeat(201)])(
  "the file name %j is refused",
  async (fileName) => {
    const { host } = aDeskWithShop();
    const answer = await dispatch(host.methods, "openUpload", { fileName, text: "{}" });
    expect(answer).toMatchObject({ ok: false, trouble: { code: "refused" } });
  },
);

test("a handle that is not open is told as gone", async () => {
  const { host } = aDeskWithShop();
  const answer = await dispatch(host.methods, "save", { handle: "shop-x", overwrite: false });
  expect(answer).toMatchObject({ ok: false, trouble: { code: "gone" } });
});

test("a fault of the program is data too, and it is written to the console", async () => {
  const quiet = vi.spyOn(console, "error").mockImplementation(() => undefined);
  const broken = { appInfo: async () => ({ door: "wall" }) } as unknown as Methods;
  expect(await dispatch(broken, "appInfo", {})).toMatchObject({ ok: false, trouble: { code: "fault" } });
  expect(quiet).toHaveBeenCalledOnce();
  quiet.mockRestore();
});

test("an upload never lies over another of its name", async () => {
  const desk = aDeskWithShop();
  const text = (await desk.call("shopText", { handle: (await desk.open()).handle })).text;
  const names = await Promise.all(
    [1, 2].map(async () => {
      const answer = await desk.call("openUpload", { fileName: "works.shop.json", text });
      return answer.status === "opened" ? answer.fileName : answer.status;
    }),
  );
  expect(new Set(names).size).toBe(2);
});

test("a new shop is empty, is there after a restart, and heads the list of recent ones", async () => {
  const folder = aFolder();
  const first = aDeskWithShop({ launchFile: null, data: folder });
  const head = { name: "Riverside Works", timeZone: "Europe/Berlin", currency: "EUR" };
  await first.call("newShop", { ...head, display: { length: "mm", mass: "kg" } });
  await first.host.end();
  const next = aDeskWithShop({ launchFile: null, data: folder });
  const { recent } = await next.call("listRecent", {});
  expect(recent[0]).toMatchObject({ shopName: "Riverside Works", isThere: true });
  const again = await next.call("openRecent", { id: recent[0]?.id ?? "" });
  expect(again.status === "opened" && [again.shop.name, again.shop.orders.length]).toEqual([
    "Riverside Works",
    0,
  ]);
});

test("preferences are kept, and an unreadable file of them keeps nobody out", async () => {
  const data = aFolder();
  const desk = aDeskWithShop({ data });
  const { preferences } = await desk.call("readPreferences", {});
  await desk.call("writePreferences", { preferences: { ...preferences, theme: "dark", units: "inch" } });
  const next = aDeskWithShop({ data });
  expect((await next.call("readPreferences", {})).preferences).toMatchObject({
    theme: "dark",
    units: "inch",
  });
  writeFileSync(join(data, "settings.json"), "{");
  expect((await next.call("readPreferences", {})).preferences).toEqual(DEFAULT_PREFERENCES);
  expect(readFileSync(join(data, "settings.json.unreadable"), "utf8")).toBe("{");
});

test("with dialogs an export is written where the person says, and cancelled where they do not", async () => {
  const folder = aFolder();
  const paths = [`${folder}/week.csv`, null];
  const saveExport = async (): Promise<string | null> => paths.shift() ?? null;
  const dialogs = { openShop: async () => null, saveShop: async () => null, saveExport };
  const desk = aDeskWithShop({ dialogs });
  const input = { fileName: "week.csv", bytes: new Uint8Array([1, 2]) };
  expect(await desk.call("writeExport", input)).toEqual({ status: "written", fileName: "week.csv", folder });
  expect((await desk.call("writeExport", input)).status).toBe("cancelled");
});

test("without dialogs exports, PDF and opening say which door this is, and what to do", async () => {
  const desk = aDeskWithShop();
  const bytes = new Uint8Array([1]);
  expect((await desk.call("writeExport", { fileName: "a.csv", bytes })).status).toBe("not-here");
  expect((await desk.call("printPdf", { fileName: "a.pdf", html: null, landscape: true })).status).toBe(
    "not-here",
  );
  expect((await desk.call("openDialog", {})).status).toBe("no-dialog");
});

const NAMES: readonly MethodName[] = ["readMesh", "storeMesh", "writeExport"];

test("the calls that carry bytes say so in the contract", () => {
  const marked = Object.entries(METHODS).filter(([, shape]) => "bytes" in shape);
  expect(marked.map(([name]) => name)).toEqual(NAMES);
});

test("a host can be made without touching the disk", () => {
  const info = { door: "browser", reason: "", version: "", platform: "" } as const;
  const tools = {
    data: "/no/such",
    assets: "",
    info,
    launchFile: null,
    dialogs: null,
    makePdf: null,
    now: () => 0,
  };
  expect(() => makeHost(tools)).not.toThrow();
});
