import type { Shop } from "../../core/shop/shop.ts";
import { seededRandom } from "../../core/units/random.ts";
import { shuffled } from "../bench/draw.ts";

/** Seeds of the random shops a law is held against: 1000 with LAWS=full, LAWS_SHOPS of them, or few enough to be quick. */
export function lawSeeds(few: number): number[] {
  const asked = process.env["LAWS"] === "full" ? 1000 : Number(process.env["LAWS_SHOPS"] ?? few);
  return Array.from({ length: asked }, (_, index) => index + 1);
}

/** The same shop with every list in another order. */
export function permuted(shop: Shop, seed: number): Shop {
  const random = seededRandom(seed);
  const mixed = <T>(list: readonly T[]): T[] => shuffled(list, random);
  return {
    ...shop,
    calendars: mixed(shop.calendars),
    machines: mixed(shop.machines),
    feedstocks: mixed(shop.feedstocks),
    parts: mixed(shop.parts),
    orders: mixed(shop.orders),
    builds: mixed(shop.builds),
  };
}
