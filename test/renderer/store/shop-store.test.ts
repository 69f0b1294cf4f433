import { createRoot } from "solid-js";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { Change } from "../../../core/shop/change.ts";
import { createShopStore, type ShopStore } from "../../../renderer/store/shop-store.ts";
import { aShop, anOrder } from "../../fixtures/a-route.ts";
import { fakeHost, type FakeHost } from "../fake-host.ts";

const SHOP = aShop({ orders: ["A", "B"].map((id) => anOrder({ id })) });

let dispose: () => void = () => undefined;
let fake: FakeHost;
let store: ShopStore;
let told: string[];
let lost: string[];

beforeEach(() => {
  vi.useFakeTimers();
  fake = fakeHost(SHOP);
  told = [];
  lost = [];
  createRoot((end) => {
    dispose = end;
    store = createShopStore({
      host: fake.host,
      opened: fake.opened,
      now: () => 0,
      onLost: (sentence) => lost.push(sentence),
      tell: (sentence) => told.push(sentence),
    });
  });
});

afterEach(() => {
  dispose();
  vi.useRealTimers();
});

function put(id: string, note: string): Change[] {
  return [{ kind: "put", list: "orders", entry: anOrder({ id, note }), at: null }];
}

function notes(orders: readonly { readonly id: string; readonly note: string }[]): string {
  return orders.map(({ id, note }) => `${id}:${note}`).join(" ");
}

describe("an edit", () => {
  test("is seen at once and is with the host shortly after", async () => {
    store.apply("note", put("A", "x"));
    expect(notes(store.shop().orders)).toBe("A:x B:");
    expect(store.saving.state().kind).toBe("writing");
    await vi.advanceTimersByTimeAsync(250);
    expect(fake.shop()).toEqual(store.shop());
  });

  test("leaves the shop that was read before as it was", () => {
    const before = store.shop();
    store.apply("note", put("A", "x"));
    expect(before).toEqual(SHOP);
  });

  test("and its undo and redo all reach the host in order", async () => {
    store.apply("one", put("A", "1"));
    store.apply("two", put("B", "2"));
    store.undo();
    await vi.advanceTimersByTimeAsync(250);
    expect(notes(fake.shop().orders)).toBe("A:1 B:");
    store.redo();
    store.undo();
    store.undo();
    await vi.advanceTimersByTimeAsync(250);
    expect(fake.shop()).toEqual(SHOP);
    expect(told).toContain("Undone: two.");
  });

  test("that does not fit is refused whole, before anybody sees it", () => {
    expect(() =>
      store.apply("bad", [...put("A", "x"), { kind: "remove", list: "orders", id: "none", at: null }]),
    ).toThrow();
    expect(store.shop()).toEqual(SHOP);
  });

  test("changes the findings shortly after", async () => {
    store.apply("part", [
      { kind: "put", list: "orders", entry: anOrder({ id: "A", partId: "nowhere" }), at: null },
    ]);
    await vi.advanceTimersByTimeAsync(250);
    expect(store.findingsAt("orders/A").map(({ code }) => code)).toContain("unknown-part");
    expect(store.findingsAt("orders/B").map(({ code }) => code)).not.toContain("unknown-part");
  });
});

describe("two windows on one shop", () => {
  test("keep both edits, and both show the same", async () => {
    fake.editElsewhere(put("B", "theirs"));
    store.apply("mine", put("A", "mine"));
    await vi.advanceTimersByTimeAsync(250);
    expect(notes(store.shop().orders)).toBe("A:mine B:theirs");
    expect(fake.shop()).toEqual(store.shop());
    expect(store.undoLabel()).toBeNull();
  });

  test("that edit the same entry end with the same: the later one", async () => {
    fake.editElsewhere(put("A", "theirs"));
    store.apply("mine", put("A", "mine"));
    await vi.advanceTimersByTimeAsync(250);
    expect(notes(fake.shop().orders)).toBe("A:mine B:");
    expect(fake.shop()).toEqual(store.shop());
  });

  test("where one removes what the other edits by place: the shop is opened again", async () => {
    fake.editElsewhere([{ kind: "remove", list: "orders", id: "A", at: null }]);
    store.apply("mine", [{ kind: "remove", list: "orders", id: "A", at: 0 }]);
    await vi.advanceTimersByTimeAsync(250);
    expect(lost).toEqual(["Another window has changed this shop in the same places."]);
  });
});

describe("a host in trouble", () => {
  test("is asked again, and the edit arrives once", async () => {
    fake.answerNext("commit", { ok: false, trouble: { code: "file", sentence: "The disk is full." } });
    store.apply("note", put("A", "x"));
    await vi.advanceTimersByTimeAsync(250);
    expect(store.saving.state()).toEqual({ kind: "trouble", sentence: "The disk is full." });
    await vi.advanceTimersByTimeAsync(2500);
    expect(fake.shop()).toEqual(store.shop());
    expect(fake.calls.filter(({ name }) => name === "commit")).toHaveLength(2);
  });

  test("that says an edit does not fit: the shop is opened again", async () => {
    fake.answerNext("commit", { ok: true, value: { status: "misfit", sentence: "It does not fit." } });
    store.apply("note", put("A", "x"));
    await vi.advanceTimersByTimeAsync(250);
    expect(lost).toEqual(["It does not fit."]);
  });
});

test("a file that something else has changed is never written over silently", async () => {
  const sentence = "Something else has changed the file.";
  fake.answerNext("save", {
    ok: true,
    value: { status: "conflict", reason: "changed", sentence, choices: [] },
  });
  await store.saving.save(false);
  expect(store.saving.conflict()).toMatchObject({ reason: "changed", sentence });
  await store.saving.save(true);
  expect(store.saving.conflict()).toBeNull();
  expect(fake.calls.filter(({ name }) => name === "save").map(({ input }) => input)).toEqual([
    { handle: "h1", overwrite: false },
    { handle: "h1", overwrite: true },
  ]);
});

test("what belongs to a step beside the document is taken back and done again with it, and nothing is sent for it", async () => {
  const done: string[] = [];
  const along = { again: () => void done.push("again"), back: () => void done.push("back") };
  store.apply("the new plan", [], { along });
  expect(store.undoLabel()).toBe("the new plan");
  store.apply("note", put("A", "x"));
  store.undo();
  expect(done).toEqual(["again"]);
  store.undo();
  store.redo();
  expect(done).toEqual(["again", "back", "again"]);
  await vi.advanceTimersByTimeAsync(250);
  expect(fake.calls.filter(({ name }) => name === "commit")).not.toHaveLength(0);
  expect(fake.shop()).toEqual(SHOP);
});
