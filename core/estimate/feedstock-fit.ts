import type { Feedstock, FlameClass } from "../shop/feedstock.ts";
import { FLAME_CLASSES } from "../shop/feedstock.ts";
import type { Machine } from "../shop/machine.ts";
import type { Part } from "../shop/part.ts";
import type { RouteReason, RouteReasonCode } from "./route.ts";
import { say } from "./say.ts";

/**
 * Every reason why a feedstock does not suit a part: its polymer family where the customer named some, and what the part
 * must bear. Empty: it suits. Example: PLA that softens at 55 degC for a part that must bear 80: one reason.
 */
export function partReasons(part: Part, feedstock: Feedstock): RouteReason[] {
  const reasons: RouteReason[] = [];
  const { needs, families } = part;
  const { properties } = feedstock;
  if (families.length > 0 && !families.includes(feedstock.family)) {
    reasons.push({
      code: "family",
      sentence: `${feedstock.name} is ${feedstock.family}, the part may be ${families.join(" or ")}.`,
      values: { family: feedstock.family, accepted: families.join(", ") },
    });
  }
  const least = (
    code: RouteReasonCode,
    has: number,
    need: number | undefined,
    what: string,
    unit: string,
  ) => {
    if (need === undefined || has >= need) return;
    const sentence = `${feedstock.name} ${what} ${say(has)} ${unit}, the part needs ${say(need)} ${unit}.`;
    reasons.push({ code, sentence, values: { has, need } });
  };
  const acrossMPa = (properties.tensileStrengthMPa * properties.acrossLayersPct) / 100;
  least("heat-deflection", properties.heatDeflectionC, needs.heatDeflectionC, "bears heat up to", "°C");
  least("stiffness", properties.tensileModulusMPa, needs.tensileModulusMPa, "has a modulus of", "MPa");
  least("strength", properties.tensileStrengthMPa, needs.tensileStrengthMPa, "has a strength of", "MPa");
  least("strength-across-layers", acrossMPa, needs.acrossLayersMPa, "has a strength across layers of", "MPa");
  if (needs.flameClass && flameRank(properties.flameClass) < flameRank(needs.flameClass)) {
    const has = properties.flameClass ? `flame class ${properties.flameClass}` : "no known flame class";
    const sentence = `${feedstock.name} has ${has}, the part needs ${needs.flameClass}.`;
    reasons.push({ code: "flame-class", sentence, values: { has, need: needs.flameClass } });
  }
  return reasons;
}

/** Rank by UL 94, higher resists more; an unknown class ranks below all. */
function flameRank(flameClass: FlameClass | undefined): number {
  return flameClass === undefined ? -1 : FLAME_CLASSES.indexOf(flameClass);
}

/**
 * Every reason why a machine cannot run a feedstock: form, temperatures, wear, and a price that nobody has entered. Empty: it
 * can. Example: 250 degC at least on a machine of 240: one reason.
 */
export function machineReasons(machine: Machine, feedstock: Feedstock): RouteReason[] {
  const reasons: RouteReason[] = [];
  const { name, nozzleC, platformC, needsChamberC } = feedstock;
  const most = (code: RouteReasonCode, need: number, has: number, what: string) => {
    if (need <= has) return;
    const sentence = `${name} needs ${what} of ${say(need)} °C, the machine reaches ${say(has)} °C.`;
    reasons.push({ code, sentence, values: { need, has } });
  };
  if (feedstock.form !== machine.process) {
    const sentence = `${name} comes as ${feedstock.form}, the machine takes ${machine.process}.`;
    reasons.push({ code: "form", sentence, values: { form: feedstock.form, process: machine.process } });
  }
  most("nozzle-temperature", nozzleC.min, machine.maxNozzleC, "a nozzle");
  most("platform-temperature", platformC, machine.maxPlatformC, "a platform");
  if (needsChamberC !== undefined) {
    most("chamber-temperature", needsChamberC, machine.chamberC, "air around the part");
  }
  if (feedstock.abrasive && !machine.hardened) {
    const sentence = `${name} is abrasive, the machine is not hardened against it.`;
    reasons.push({ code: "abrasive", sentence, values: { feedstock: feedstock.id } });
  }
  if (feedstock.pricePerKg === null) {
    const sentence = `${name} has no price: enter what a kilogram costs.`;
    reasons.push({ code: "no-price", sentence, values: { feedstock: feedstock.id } });
  }
  return reasons;
}
