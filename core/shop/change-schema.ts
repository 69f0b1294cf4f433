import { z } from "zod";
import type { Change } from "./change.ts";
import { id } from "./fields.ts";
import { SHOP_LISTS, type ShopList } from "./shop-lists.ts";
import { shopSchema } from "./shop.ts";

const at = z.int().min(0).nullable();

function listChanges(list: ShopList): z.ZodType {
  return z.discriminatedUnion("kind", [
    z.strictObject({
      kind: z.literal("put"),
      list: z.literal(list),
      entry: shopSchema.shape[list].element,
      at,
    }),
    z.strictObject({ kind: z.literal("remove"), list: z.literal(list), id, at }),
  ]);
}

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
  }),
});

/** A `Change` as it comes from outside: a message or a line of a journal. Every entry is held to its own schema. */
export const changeSchema = z.union([settingsChange, ...SHOP_LISTS.map(listChanges)]) as unknown as z.ZodType<
  Change,
  Change
>;
