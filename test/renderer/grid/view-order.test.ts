import { describe, expect, test } from "vitest";
import type { GridColumn } from "../../../renderer/components/grid/grid-column.ts";
import { keptOrder, orderOf } from "../../../renderer/components/grid/view-order.ts";

interface Row {
  readonly id: string;
  readonly size: number | null;
}

const COLUMNS: GridColumn<Row>[] = [
  { id: "id", title: "Id", widthPx: 50, text: ({ id }) => id },
  {
    id: "size",
    title: "Size",
    widthPx: 50,
    text: ({ size }) => String(size ?? ""),
    amount: ({ size }) => size,
  },
];
const ROWS: Row[] = [
  { id: "L10", size: 3 },
  { id: "l2", size: null },
  { id: "L1", size: 10 },
  { id: "K9", size: 3 },
];

const key = ({ id }: Row): string => id;

function shown(columnId: string, isDown: boolean, sifts = {}): string[] {
  return orderOf(ROWS, COLUMNS, { columnId, isDown }, sifts).map((place) => ROWS[place]?.id ?? "");
}

describe("sorting", () => {
  test("counts numbers in texts as numbers, and capitals as small letters", () => {
    expect(shown("id", false)).toEqual(["K9", "L1", "l2", "L10"]);
  });
  test("leaves equal rows in their order and empty ones at the end, both ways", () => {
    expect(shown("size", false)).toEqual(["L10", "K9", "L1", "l2"]);
    expect(shown("size", true)).toEqual(["L1", "L10", "K9", "l2"]);
  });
});

describe("sifting", () => {
  test.each([
    ["> 3", ["L1"]],
    [">=3", ["L10", "L1", "K9"]],
    ["<4", ["L10", "K9"]],
    ["= 3", ["L10", "K9"]],
    ["3..9", ["L10", "K9"]],
    ["0", ["L1"]],
  ])("sizes by %s gives %j", (sift, ids) => {
    expect(orderOf(ROWS, COLUMNS, null, { size: sift }).map((place) => ROWS[place]?.id)).toEqual(ids);
  });
  test("looks into texts without regard to capitals, by several columns at once", () => {
    expect(orderOf(ROWS, COLUMNS, null, { id: "l1" })).toEqual([0, 2]);
    expect(orderOf(ROWS, COLUMNS, null, { id: "l1", size: ">5" })).toEqual([2]);
  });
});

describe("an edit", () => {
  test("leaves rows where they are until somebody sorts again", () => {
    const after = ROWS.with(0, { id: "L10", size: 99 });
    expect(keptOrder([2, 0, 3], ROWS, after, key)).toEqual([2, 0, 3]);
  });
  test("that removes or adds rows keeps the others in order, new ones last", () => {
    const after = [...ROWS.toSpliced(0, 1), { id: "N", size: 0 }];
    expect(keptOrder([2, 0, 3], ROWS, after, key)).toEqual([1, 2, 3]);
  });
  test("keeps rows of one name apart", () => {
    const twins = [
      { id: "A", size: 1 },
      { id: "A", size: 2 },
      { id: "B", size: 3 },
    ];
    expect(keptOrder([2, 1, 0], twins, [...twins, { id: "C", size: 4 }], key)).toEqual([2, 0, 1, 3]);
  });
});
