import { buildSchema } from "./build.ts";
import { calendarSchema } from "./calendar.ts";
import { feedstockSchema } from "./feedstock.ts";
import { machineSchema } from "./machine.ts";
import { orderSchema } from "./order.ts";
import { partSchema } from "./part.ts";
import { purchaseCaseSchema } from "./purchase-case.ts";
import { quoteSchema } from "./quote.ts";

/** The schema that an entry of each list is held to by itself. */
export const ENTRY_SCHEMAS = {
  calendars: calendarSchema,
  machines: machineSchema,
  feedstocks: feedstockSchema,
  parts: partSchema,
  orders: orderSchema,
  builds: buildSchema,
  quotes: quoteSchema,
  cases: purchaseCaseSchema,
} as const;
