import type { Shop } from "../shop/shop.ts";

/**
 * The shop with feedstocks of one form at a multiple of their price, for the break-even price of pellets or filament.
 * One without a price stays without. Example: pellets at 4.2 per kg and a factor of 1.5 cost 6.3; filament stays.
 */
export function withFeedstockPrice(shop: Shop, form: "filament" | "pellet", factor: number): Shop {
  return {
    ...shop,
    feedstocks: shop.feedstocks.map((feedstock) =>
      feedstock.form === form && feedstock.pricePerKg !== null
        ? { ...feedstock, pricePerKg: feedstock.pricePerKg * factor }
        : feedstock,
    ),
  };
}
