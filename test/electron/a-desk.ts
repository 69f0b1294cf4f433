import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import type { Change } from "../../core/shop/change.ts";
import { emptyShop } from "../../core/shop/empty-shop.ts";
import type { Order } from "../../core/shop/order.ts";
import type { Shop } from "../../core/shop/shop.ts";
import type { Input, MethodName, Output } from "../../electron/contract.ts";
import { dispatch } from "../../electron/dispatch.ts";
import { type HostSide, makeHost } from "../../electron/host.ts";
import type { HostTools } from "../../electron/host/host-tools.ts";
import type { Opened } from "../../electron/contract/shop-messages.ts";
import { textOf } from "../../electron/store/open-shop.ts";

/** A works with so many order lines, and nothing else: enough for a store. */
export function aShop(orders = 1): Shop {
  const head = { name: "Test works", timeZone: "Europe/Berlin", currency: "EUR" };
  const lines = Array.from({ length: orders }, (_, index) => anOrder(`O-${index + 1}`, "0"));
  return { ...emptyShop({ ...head, display: { length: "mm", mass: "kg" } }), orders: lines };
}

export function anOrder(id: string, note: string): Order {
  return {
    id,
    customer: "Invented",
    partId: "P",
    quantity: 1,
    releaseAt: "2026-11-30T06:00",
    dueAt: "2026-12-04T12:00",
    allowLate: true,
    perPiece: false,
    note,
  };
}

/** The edit that writes a note on an order. */
export function noteOn(id: string, note: string): Change {
  return { kind: "put", list: "orders", entry: anOrder(id, note), at: null };
}

/** A folder that is gone after the test. */
export function aFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "desk-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export interface Desk {
  readonly folder: string;
  readonly data: string;
  readonly shopPath: string;
  readonly host: HostSide;
  /** calls through the dispatcher, as a door does; a trouble fails the test */
  readonly call: <Name extends MethodName>(name: Name, input: Input<Name>) => Promise<Output<Name>>;
  readonly open: () => Promise<Opened>;
  /** commits a note and gives the new version */
  readonly write: (opened: Opened, version: number, note: string) => Promise<void>;
}

/** A host over a temporary folder with one shop file in it. */
export function aDesk(folder = aFolder(), tools: Partial<HostTools> = {}): Desk {
  const shopPath = join(folder, "works.shop.json");
  const data = join(folder, "data");
  const host = makeHost({
    data,
    assets: join(import.meta.dirname, "../../assets"),
    info: { door: "browser", reason: "a test", version: "0", platform: "test" },
    launchFile: shopPath,
    dialogs: null,
    makePdf: null,
    now: () => Date.now(),
    ...tools,
  });
  const call: Desk["call"] = async (name, input) => {
    const answer = await dispatch(host.methods, name, input);
    if (!answer.ok) throw new Error(answer.trouble.sentence);
    return answer.value as Output<typeof name>;
  };
  const open = async (): Promise<Opened> => {
    const answer = await call("openFirst", {});
    if (answer.status !== "opened") throw new Error(`not opened: ${JSON.stringify(answer)}`);
    return answer;
  };
  const write: Desk["write"] = async ({ handle }, version, note) => {
    const edit = { handle, client: "test", baseVersion: version, changes: [noteOn("O-1", note)] };
    const answer = await call("commit", edit);
    if (answer.status !== "committed") throw new Error(`not committed: ${JSON.stringify(answer)}`);
  };
  return { folder, data, shopPath, host, call, open, write };
}

/** The same with a shop of one order in its file. */
export function aDeskWithShop(tools: Partial<HostTools> = {}): Desk {
  const desk = aDesk(aFolder(), tools);
  writeFileSync(desk.shopPath, textOf(aShop()));
  return desk;
}
