import type { Costing } from "../../core/shop/costing.ts";
import type { Part } from "../../core/shop/part.ts";
import type { Seller } from "../../core/shop/seller.ts";
import { SHOP_SCHEMA, type Shop } from "../../core/shop/shop.ts";
import { makeBuilds } from "./builds.ts";
import { FEEDSTOCKS } from "./feedstocks.ts";
import { CALENDARS, MACHINES } from "./machines.ts";
import { makeOrders } from "./orders.ts";
import type { PartPlan } from "./part-kinds.ts";
import { PARTS } from "./parts.ts";
import { demoCase } from "./purchase-case.ts";
import { QUOTES } from "./quotes.ts";
import { withBody } from "./with-body.ts";

/** Common practice, no source; for the user to overwrite. */
export const COSTING: Costing = {
  labourPerH: 36,
  engineeringPerH: 62,
  engineeringFilamentH: 0.75,
  engineeringPelletH: 4,
  energyPerKWh: 0.24,
  floorPerM2Year: 110,
  interestPctPerYear: 5,
  interestOn: "mean-capital",
  overheadPct: 12,
  marginPct: 20,
  defaultLateCostPerDay: 45,
};

const SELLER: Seller = {
  name: "Alderquay Works (invented)",
  address: "1 Invented Quay\n00000 Nowhere",
  contact: "The quoting desk, quotes@alderquay.invalid",
  taxNumber: "",
  terms: "Payment within 30 days. Delivery from our gate.",
  validDays: 30,
};

const SEED = 20_261_130;

/** The demo shop document: always the same. `bodyOf` gives a part its body. */
export function demoShop(bodyOf: (plan: PartPlan) => Part = withBody): Shop {
  const orders = makeOrders(SEED);
  const shop: Shop = {
    schema: SHOP_SCHEMA,
    name: "Alderquay Works (invented)",
    timeZone: "Europe/Berlin",
    currency: "EUR",
    display: { length: "mm", mass: "kg" },
    costing: COSTING,
    seller: SELLER,
    calendars: CALENDARS,
    machines: MACHINES,
    feedstocks: FEEDSTOCKS,
    parts: PARTS.map(bodyOf),
    orders,
    builds: makeBuilds(orders),
    quotes: QUOTES,
    cases: [],
  };
  const { schema: _, ...purchaseCase } = demoCase(shop);
  return { ...shop, cases: [purchaseCase] };
}
