import type { OrderField } from "../order-fields.ts";

/** Which column of a table is which field of an order; null: not in the table. */
export type ColumnMap = Readonly<Partial<Record<OrderField, number>>>;

/** The fields in the order in which they are asked for, with what people head such columns with, in small letters. */
export const FIELDS: readonly {
  readonly field: OrderField;
  readonly title: string;
  readonly heads: readonly string[];
}[] = [
  {
    field: "id",
    title: "Order",
    heads: ["order", "order line", "order no", "order number", "no", "nr", "number", "id", "line"],
  },
  {
    field: "part",
    title: "Part",
    heads: ["part", "part id", "part no", "part number", "article", "item", "product", "description"],
  },
  {
    field: "quantity",
    title: "Copies",
    heads: ["copies", "quantity", "qty", "amount", "pieces", "pcs", "count"],
  },
  {
    field: "due",
    title: "Due",
    heads: ["due", "due date", "wanted", "deadline", "delivery", "delivery date", "ship date", "needed by"],
  },
  { field: "customer", title: "Customer", heads: ["customer", "client", "account", "company", "buyer"] },
  {
    field: "release",
    title: "Not before",
    heads: ["not before", "release", "release date", "start", "from", "available", "order date"],
  },
  { field: "lateCost", title: "Late, a day", heads: ["late, a day", "late cost", "penalty"] },
  {
    field: "price",
    title: "Price, each",
    heads: ["price, each", "price", "unit price", "price each", "sales price"],
  },
  { field: "allowLate", title: "May be late", heads: ["may be late", "late allowed", "allow late"] },
  {
    field: "perPiece",
    title: "Counts when done",
    heads: ["counts when done", "partial delivery", "per piece", "each"],
  },
  { field: "machine", title: "Only on", heads: ["only on", "machine", "pinned machine"] },
  { field: "feedstock", title: "Only of", heads: ["only of", "feedstock", "material", "pinned feedstock"] },
  { field: "note", title: "Note", heads: ["note", "notes", "remark", "comment"] },
];

/** Guesses by the heads: the same words first, then heads that begin with them; no column is taken twice. */
export function guessColumns(heads: readonly string[]): ColumnMap {
  const bare = heads.map((head) =>
    head
      .toLowerCase()
      .replace(/[_.:()[\]-]+/g, " ")
      .replace(/\s+/g, " ")
      .trim(),
  );
  const map: Partial<Record<OrderField, number>> = {};
  const taken = new Set<number>();
  const take = (fits: (head: string, word: string) => boolean): void => {
    for (const { field, heads: words } of FIELDS) {
      if (map[field] !== undefined) continue;
      const place = bare.findIndex((head, at) => !taken.has(at) && words.some((word) => fits(head, word)));
      if (place < 0) continue;
      map[field] = place;
      taken.add(place);
    }
  };
  take((head, word) => head === word);
  take((head, word) => word.length > 3 && head.startsWith(word));
  return map;
}

const MOST_CHARS = 200;

/** Under which name a mapping is remembered: the heads joined. */
export function mappingName(heads: readonly string[]): string {
  return heads.join(" | ").slice(0, MOST_CHARS);
}

/** A mapping as it is kept: head by field. */
export function keptColumns(map: ColumnMap, heads: readonly string[]): Record<string, string> {
  return Object.fromEntries(
    Object.entries(map).map(([field, place]) => [field, (heads[place] ?? "").slice(0, MOST_CHARS)]),
  );
}

/** The mapping that was kept, on a table with these heads; null where one of its heads is not there. */
export function foundColumns(
  kept: Readonly<Record<string, string>>,
  heads: readonly string[],
): ColumnMap | null {
  const map: Partial<Record<OrderField, number>> = {};
  for (const { field } of FIELDS) {
    const head = kept[field];
    if (head === undefined) continue;
    const place = heads.findIndex((candidate) => candidate.slice(0, MOST_CHARS) === head);
    if (place < 0) return null;
    map[field] = place;
  }
  return map;
}
