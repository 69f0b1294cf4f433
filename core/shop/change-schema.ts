import { z } from "zod";
import type { Change } from "./change.ts";
import { ENTRY_SCHEMAS } from "./entry-schemas.ts";
import { id } from "./fields.ts";
import { SHOP_LISTS, type ShopList } from "./shop-lists.ts";
import { shopSchema } from "./shop.ts";

const at = z.int().min(0).nullable();

function putInto(list: ShopList) {
  return z.strictObject({
    kind: z.literal("put"),
    list: z.literal(list),
    entry: ENTRY_SCHEMAS[list],
    at,
  });
}

const [firstList, ...otherLists] = SHOP_LISTS;

const settingsChange = z.strictObject({
  kind: z.literal("settings"),
  settings: shopSchema.omit({
    schema: true,
    calendars: true,
    machines: true,
    feedstocks: true,
    parts: true,
    orders: true,
    builds: true,
    quotes: true,
    cases: true,
  }),
});

/**
 * A `Change` as it comes from outside: a message or a line of a journal. Kind and list choose the one schema that an entry is
 * held to, so thousands of changes at once are read as quickly as the entries themselves.
 */
export const changeSchema = z.discriminatedUnion("kind", [
  settingsChange,
  z.discriminatedUnion("list", [putInto(firstList), ...otherLists.map(putInto)]),
  z.strictObject({ kind: z.literal("remove"), list: z.enum(SHOP_LISTS), id, at }),
]) as unknown as z.ZodType<Change, Change>;
