import { machineHourRate } from "../cost/machine-hour-rate.ts";
import type { Machine } from "../shop/machine.ts";
import type { Shop } from "../shop/shop.ts";
import { ownCostOf } from "./own-cost.ts";
import { priceLine, priceRule } from "./price.ts";
import type { QuoteLineRequest } from "./quote-order.ts";

/** A price with one input lower and higher than the shop has it. */
export interface PriceDriver {
  readonly input: string;
  /** what was changed, such as "10 % less" */
  readonly low: { readonly change: string; readonly price: number };
  readonly high: { readonly change: string; readonly price: number };
  /** how far the two prices lie apart, currency */
  readonly swing: number;
}

/** What a price depends on. */
export interface PriceDrivers {
  /** of all copies, currency */
  readonly price: number;
  /** the inputs that move it most, most first */
  readonly drivers: readonly PriceDriver[];
  /** price if prints take as much less or more time as estimates are usually off */
  readonly band: { readonly low: number; readonly high: number };
}

/** One input, and the shop with it lower and higher. */
interface Input {
  readonly input: string;
  readonly low: { readonly change: string; readonly shop: Shop };
  readonly high: { readonly change: string; readonly shop: Shop };
}

const MOST_DRIVERS = 5;
/** Estimates of time are good to about 10 % (their own band); how far the others may be off: common practice, no source. */
const TIME_PCT = 10;
const PRICE_PCT = 10;
const WORK_PCT = 25;

/**
 * The five inputs that move the price of a line by itself the most, each made lower and higher alone while the shop chooses its
 * cheapest way anew, and the band of the estimate of time. Null where the line has no price. Example: print time 10 % more moves
 * a price of 320 to 338, feedstock 10 % dearer to 331.
 */
export function priceDrivers(shop: Shop, line: QuoteLineRequest): PriceDrivers | null {
  const price = priceOfLine(shop, line);
  if (price === null) return null;
  const time = timeInput(shop);
  const moved = [time, ...otherInputs(shop)].flatMap((each) => driverOf(each, line) ?? []);
  const drivers = moved.filter(({ swing }) => swing > 0).toSorted((a, b) => b.swing - a.swing);
  const prices = [time.low, time.high].map((side) => priceOfLine(side.shop, line) ?? price);
  return {
    price,
    drivers: drivers.slice(0, MOST_DRIVERS),
    band: { low: Math.min(...prices), high: Math.max(...prices) },
  };
}

function driverOf({ input, low, high }: Input, line: QuoteLineRequest): PriceDriver | null {
  const [lowPrice, highPrice] = [priceOfLine(low.shop, line), priceOfLine(high.shop, line)];
  if (lowPrice === null || highPrice === null) return null;
  return {
    input,
    low: { change: low.change, price: lowPrice },
    high: { change: high.change, price: highPrice },
    swing: Math.abs(highPrice - lowPrice),
  };
}

function priceOfLine(shop: Shop, line: QuoteLineRequest): number | null {
  const { cost } = ownCostOf(shop, line);
  if (cost === null) return null;
  const { quantity } = line;
  return priceLine({ quantity, copiesCost: cost, oneOffCost: 0 }, priceRule(shop))?.total ?? null;
}

function timeInput(shop: Shop): Input {
  return byShare("print time", TIME_PCT, (factor) =>
    withMachines(shop, (machine) => ({ ...machine, timeFactor: machine.timeFactor * factor })),
  );
}

function otherInputs(shop: Shop): Input[] {
  const { costing } = shop;
  const costed = (change: Partial<Shop["costing"]>): Shop => ({
    ...shop,
    costing: { ...costing, ...change },
  });
  return [
    byShare("price of feedstock", PRICE_PCT, (factor) => ({
      ...shop,
      feedstocks: shop.feedstocks.map((feedstock) => ({
        ...feedstock,
        pricePerKg: feedstock.pricePerKg === null ? null : feedstock.pricePerKg * factor,
      })),
    })),
    byShare("machine-hour rate", PRICE_PCT, (factor) =>
      withMachines(shop, (machine) => ({
        ...machine,
        hourRate: machineHourRate(machine, costing).perH * factor,
      })),
    ),
    byShare("cost of an operator's hour", PRICE_PCT, (factor) =>
      costed({ labourPerH: costing.labourPerH * factor }),
    ),
    byShare("hours for tool paths", WORK_PCT, (factor) =>
      costed({
        engineeringFilamentH: costing.engineeringFilamentH * factor,
        engineeringPelletH: costing.engineeringPelletH * factor,
      }),
    ),
    byShare("finishing work", WORK_PCT, (factor) => ({
      ...shop,
      parts: shop.parts.map((part) => ({
        ...part,
        finishing: {
          ...part.finishing,
          labourMin: part.finishing.labourMin * factor,
          machiningMin: part.finishing.machiningMin * factor,
        },
      })),
    })),
    failures(shop),
  ];
}

function failures(shop: Shop): Input {
  const times = (factor: number): Shop =>
    withMachines(shop, (machine) => ({ ...machine, failuresPer1000H: machine.failuresPer1000H * factor }));
  return {
    input: "failed builds",
    low: { change: "half as many", shop: times(0.5) },
    high: { change: "twice as many", shop: times(2) },
  };
}

function byShare(input: string, pct: number, shopAt: (factor: number) => Shop): Input {
  return {
    input,
    low: { change: `${pct} % less`, shop: shopAt(1 - pct / 100) },
    high: { change: `${pct} % more`, shop: shopAt(1 + pct / 100) },
  };
}

function withMachines(shop: Shop, change: (machine: Machine) => Machine): Shop {
  return { ...shop, machines: shop.machines.map(change) };
}
