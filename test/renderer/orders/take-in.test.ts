import { describe, expect, test } from "vitest";
import { applyChanges } from "../../../core/shop/change-many.ts";
import { rejectionAt } from "../../../renderer/components/grid/rejections.ts";
import { makeFormat } from "../../../renderer/format/format.ts";
import { orderReadingOf } from "../../../renderer/pages/orders/order-fields.ts";
import { copyOrder } from "../../../renderer/pages/orders/order-rows.ts";
import {
  foundColumns,
  guessColumns,
  keptColumns,
} from "../../../renderer/pages/orders/take-in/guess-columns.ts";
import { guessEncoding, readTable } from "../../../renderer/pages/orders/take-in/read-table.ts";
import { takeIn, type TakenIn, type Twins } from "../../../renderer/pages/orders/take-in/take-in.ts";
import { nextId } from "../../../renderer/store/next-id.ts";
import { changesOfEntries } from "../../../renderer/store/renames.ts";
import { aPart, aShop, anOrder } from "../../fixtures/a-route.ts";
import { BRITISH_RULES } from "../format-rules.ts";

const SHOP = aShop({
  parts: [aPart({ id: "clip", name: "Cable clip" })],
  orders: [anOrder({ id: "O-1", note: "mine" })],
});
const FORMAT = makeFormat(BRITISH_RULES);

async function taken(rows: string[][], twins: Twins = "replace"): Promise<TakenIn> {
  const made = await takeIn({
    rows,
    map: { id: 0, part: 1, quantity: 2, due: 3 },
    reading: orderReadingOf(SHOP, FORMAT),
    twins,
    orders: SHOP.orders,
    newOrder: (ids) => anOrder({ id: nextId("N-0", ids), partId: "?", quantity: 1 }),
    renamed: copyOrder,
    onShare: () => true,
  });
  if (!made) throw new Error("it was stopped");
  return made;
}

function ordersOf({ edit }: TakenIn): string[] {
  return applyChanges(SHOP, changesOfEntries(SHOP, "orders", edit)).shop.orders.map(
    ({ id, partId, quantity }) => `${id} ${partId} ${quantity}`,
  );
}

function read(bytes: BlobPart): ReturnType<typeof readTable> {
  return readTable(new File([bytes], "a.csv"), null, FORMAT);
}

describe("lines of a table", () => {
  test("become orders; parts are found by their id and by their name, whatever the capitals", async () => {
    const made = await taken([
      ["A", "clip", "5", "2026-12-01"],
      ["B", "CABLE CLIP", "1,000", "2.12.2026"],
      ["", "unknown", "", ""],
    ]);
    expect(ordersOf(made).slice(1)).toEqual(["A clip 5", "B clip 1000", "N-1 unknown 1"]);
    expect(made.faults).toEqual([]);
  });

  test("with cells that cannot be read become orders too: each such cell is listed and keeps its text", async () => {
    const made = await taken([
      ["A", "clip", "many", "soon"],
      ["B", "clip", "2", "2026-12-01"],
    ]);
    expect(made.faults.map(({ line, title }) => `${line} ${title}`)).toEqual(["2 Copies", "2 Due"]);
    const row = made.edit.inserted[0]?.row;
    expect(row && rejectionAt(row, "quantity")?.text).toBe("many");
    expect(row && rejectionAt(row, "due")?.text).toBe("soon");
    expect(made.edit.inserted).toHaveLength(2);
  });

  test("with the name of an order that is here replace it, leave it, or get a new name, as asked", async () => {
    const line = [["O-1", "clip", "9", "2026-12-01"]];
    const replaced = await taken(line, "replace");
    expect(replaced.edit.replaced[0]?.row).toMatchObject({ id: "O-1", quantity: 9, note: "mine" });
    const kept = await taken(line, "keep");
    expect(kept.left).toEqual([2]);
    expect(kept.edit.replaced).toEqual([]);
    const renamed = await taken(line, "rename");
    expect(renamed.edit.inserted[0]?.row).toMatchObject({ id: "O-2", quantity: 9 });
  });

  test("with one name twice in the table are both kept, the second under a new name with its marks", async () => {
    const made = await taken([
      ["A-1", "clip", "1", "2026-12-01"],
      ["A-1", "clip", "x", "2026-12-01"],
    ]);
    expect(made.edit.inserted.map(({ row }) => row.id)).toEqual(["A-1", "A-2"]);
    expect(rejectionAt(made.edit.inserted[1]!.row, "quantity")?.text).toBe("x");
  });

  test("100,000 of them are read, none lost", async () => {
    const rows = Array.from({ length: 100_000 }, (_, at) => [
      `B-${at}`,
      "clip",
      String((at % 90) + 1),
      "2026-12-04 12:00",
    ]);
    const made = await taken(rows);
    expect(made.edit.inserted).toHaveLength(100_000);
    const { shop, inverses } = applyChanges(SHOP, changesOfEntries(SHOP, "orders", made.edit));
    expect(shop.orders).toHaveLength(100_001);
    expect(applyChanges(shop, inverses).shop).toEqual(SHOP);
  });

  test("are no longer read once somebody stops", async () => {
    const options = {
      rows: [["A", "clip", "1", "2026-12-01"]],
      map: {},
      reading: orderReadingOf(SHOP, FORMAT),
      orders: [],
    };
    const made = await takeIn({
      ...options,
      twins: "keep",
      newOrder: () => anOrder({}),
      renamed: copyOrder,
      onShare: () => false,
    });
    expect(made).toBeNull();
  });
});

describe("columns", () => {
  test("are guessed by their heads, each once", () => {
    expect(guessColumns(["Order No.", "Part number", "Qty", "Due date", "Ship date", "Remark"])).toEqual({
      id: 0,
      part: 1,
      quantity: 2,
      due: 3,
      note: 5,
    });
    expect(guessColumns(["Foo", "Bar"])).toEqual({});
  });
  test("that were said once are found again, but not in another table", () => {
    const kept = keptColumns({ id: 1, due: 0 }, ["When", "Job"]);
    expect(foundColumns(kept, ["Job", "More", "When"])).toEqual({ id: 0, due: 2 });
    expect(foundColumns(kept, ["Job", "More"])).toBeNull();
  });
});

describe("a text file", () => {
  test.each([
    [
      "UTF-8 with a mark",
      new Uint8Array([0xef, 0xbb, 0xbf, ...new TextEncoder().encode("a,ü\n1,2")]),
      "utf-8",
    ],
    ["UTF-8", new TextEncoder().encode("a;ü\r\n1;2"), "utf-8"],
    ["Windows-1252", new Uint8Array([0x61, 0x09, 0xfc, 0x0a, 0x31, 0x09, 0x32]), "windows-1252"],
    [
      "UTF-16",
      new Uint8Array([0xff, 0xfe, 0x61, 0, 0x2c, 0, 0xfc, 0, 0x0a, 0, 0x31, 0, 0x2c, 0, 0x32, 0]),
      "utf-16le",
    ],
  ])("in %s is read as what it says", async (_name, bytes, encoding) => {
    expect(guessEncoding(bytes)).toBe(encoding);
    expect((await read(bytes)).rows).toEqual([
      ["a", "ü"],
      ["1", "2"],
    ]);
  });
  test("with line ends and separators in quotes keeps them, and empty lines are passed over", async () => {
    expect((await read('a,b\n"x, ""y""\nz",2\n\n,\n')).rows).toEqual([
      ["a", "b"],
      ['x, "y"\nz', "2"],
    ]);
  });
});
