import type { Feedstock } from "./feedstock.ts";
import { about, type EntryFindings, type Finding } from "./finding.ts";
import { plausibilityFindings } from "./plausible.ts";
import type { ShopIndex } from "./shop-index.ts";
import { FEEDSTOCK_RANGES } from "./usual-ranges.ts";

/** Findings about feedstocks: price, ranges the wrong way round, numbers that cannot be right. */
export function checkFeedstocks({ shop }: ShopIndex): Finding[] {
  return shop.feedstocks.flatMap((feedstock) => {
    const say = about("feedstocks", feedstock.id);
    return [
      ...priceFindings(say, feedstock),
      ...rangeFindings(say, feedstock),
      ...dryingFindings(say, feedstock),
      ...plausibilityFindings(say, feedstock, FEEDSTOCK_RANGES),
    ];
  });
}

function priceFindings(say: EntryFindings, feedstock: Feedstock): Finding[] {
  if (feedstock.pricePerKg === null) {
    return [
      say.error(
        "pricePerKg",
        "missing-price",
        "no price per kg, so nothing can be costed or planned on it; enter one",
      ),
    ];
  }
  if (feedstock.pricePerKg > 0) return [];
  return [
    say.warning(
      "pricePerKg",
      "costs-nothing",
      "its price is 0, so plans will prefer it; enter what it costs",
    ),
  ];
}

function rangeFindings(say: EntryFindings, feedstock: Feedstock): Finding[] {
  const { nozzleC, bondC, carryC, minLayerS, maxLayerS } = feedstock;
  const findings: Finding[] = [];
  if (nozzleC.min > nozzleC.max) {
    findings.push(
      say.error(
        "nozzleC",
        "min-above-max",
        `the lowest nozzle temperature, ${nozzleC.min} degC, is above the highest, ${nozzleC.max} degC; swap or correct them`,
      ),
    );
  }
  if (minLayerS !== undefined && maxLayerS !== undefined && minLayerS > maxLayerS) {
    findings.push(
      say.error(
        "minLayerS",
        "min-above-max",
        `the shortest layer time, ${minLayerS} s, is above the longest, ${maxLayerS} s; swap or correct them`,
      ),
    );
  }
  if (bondC >= carryC) {
    findings.push(
      say.error(
        "bondC",
        "no-layer-temperature",
        `a layer must be at least ${bondC} degC to bond but at most ${carryC} degC to carry the next, so none can be built; correct one`,
      ),
    );
  }
  if (carryC > nozzleC.max) {
    findings.push(
      say.warning(
        "carryC",
        "carry-above-nozzle",
        `layers are said to carry the next at ${carryC} degC, hotter than any nozzle for it, ${nozzleC.max} degC; check both`,
      ),
    );
  }
  return findings;
}

function dryingFindings(say: EntryFindings, { dryH, dryC, nozzleC }: Feedstock): Finding[] {
  if (dryH === 0) return [];
  if (dryC === 0)
    return [
      say.warning(
        "dryC",
        "no-drying-temperature",
        `it is to be dried for ${dryH} h, but no temperature is given; take it from the supplier's sheet`,
      ),
    ];
  if (dryC < nozzleC.min) return [];
  return [
    say.warning(
      "dryC",
      "dries-too-hot",
      `drying at ${dryC} degC is as hot as the nozzle; it would melt: take the temperature from the supplier's sheet`,
    ),
  ];
}
