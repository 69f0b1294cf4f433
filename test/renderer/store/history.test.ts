import { describe, expect, test } from "vitest";
import type { Change } from "../../../core/shop/change.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { edit, type History, NO_HISTORY, redo, undo } from "../../../renderer/store/history.ts";
import { aShop, anOrder } from "../../fixtures/a-route.ts";

const SHOP = aShop({ orders: [anOrder({ id: "A" })] });

function note(text: string): Change[] {
  return [{ kind: "put", list: "orders", entry: anOrder({ id: "A", note: text }), at: null }];
}

function typed(texts: readonly (readonly [text: string, atMs: number, typing: string | null])[]): {
  shop: Shop;
  history: History;
} {
  return texts.reduce<{ shop: Shop; history: History }>(
    ({ shop, history }, [text, atMs, typing]) =>
      edit(shop, history, { label: "note", changes: note(text), typing, atMs, along: null }),
    { shop: SHOP, history: NO_HISTORY },
  );
}

describe("undo", () => {
  test("takes back what was typed in one go at once", () => {
    const { shop, history } = typed([
      ["h", 0, "A/note"],
      ["hi", 400, "A/note"],
      ["hi!", 1800, "A/note"],
    ]);
    expect(history.done).toHaveLength(1);
    expect(undo(shop, history)?.shop).toEqual(SHOP);
  });
  test("takes back separately what was typed after a rest, elsewhere, or not typed", () => {
    expect(
      typed([
        ["h", 0, "A/note"],
        ["hi", 1501, "A/note"],
      ]).history.done,
    ).toHaveLength(2);
    expect(
      typed([
        ["h", 0, "A/note"],
        ["hi", 10, "B/note"],
      ]).history.done,
    ).toHaveLength(2);
    expect(
      typed([
        ["h", 0, null],
        ["hi", 10, null],
      ]).history.done,
    ).toHaveLength(2);
  });
  test("and redo lead to the same shops again, and an edit ends the redo", () => {
    const done = typed([
      ["one", 0, null],
      ["two", 9, null],
    ]);
    const back = undo(done.shop, done.history);
    const again = back && redo(back.shop, back.history);
    expect(again?.shop).toEqual(done.shop);
    const other =
      back &&
      edit(back.shop, back.history, {
        label: "x",
        changes: note("three"),
        typing: null,
        atMs: 20,
        along: null,
      });
    expect(other?.history.undone).toEqual([]);
  });
  test("says what goes to the journal: the way back itself", () => {
    const done = typed([["one", 0, null]]);
    expect(undo(done.shop, done.history)?.changes).toEqual([
      { kind: "put", list: "orders", entry: SHOP.orders[0], at: null },
    ]);
  });
  test("of nothing is nothing", () => {
    expect(undo(SHOP, NO_HISTORY)).toBeNull();
    expect(redo(SHOP, NO_HISTORY)).toBeNull();
  });
});
