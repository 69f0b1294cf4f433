import type { Machine } from "../shop/machine.ts";
import type { Candidate } from "../shop/purchase-case.ts";
import type { PurchaseChange } from "../shop/purchase-change.ts";
import type { Shop } from "../shop/shop.ts";

/**
 * The shop as it would be with candidates, whatever their order: machines first come, then the rest changes, and last of all
 * machines are sold. What a change names and the shop does not have is left as it is; `checkCase` says so. A new machine starts
 * with nothing loaded and no time out of service; the builds of a sold one go with it.
 * Example: "one more like B1" gives the shop a further machine.
 */
export function applyCandidates(shop: Shop, candidates: readonly Candidate[]): Shop {
  const changes = candidates.flatMap((candidate) => candidate.changes);
  return changes.toSorted((a, b) => TURN[a.kind] - TURN[b.kind]).reduce(applyChange, shop);
}

const TURN: Readonly<Record<PurchaseChange["kind"], number>> = {
  "add-alike": 0,
  "add-machine": 1,
  "add-shift": 2,
  "approve-unattended": 2,
  "buy-out": 2,
  "sell-machine": 3,
};

function applyChange(shop: Shop, change: PurchaseChange): Shop {
  switch (change.kind) {
    case "add-machine":
      return withMachine(shop, change.machine);
    case "add-alike":
      return withAlike(shop, change);
    case "sell-machine":
      return {
        ...shop,
        machines: shop.machines.filter(({ id }) => id !== change.machineId),
        builds: shop.builds.filter(({ machineId }) => machineId !== change.machineId),
      };
    case "add-shift":
      return {
        ...shop,
        calendars: shop.calendars.map((calendar) =>
          calendar.id === change.calendarId
            ? { ...calendar, shifts: [...calendar.shifts, change.shift] }
            : calendar,
        ),
      };
    case "approve-unattended":
      return {
        ...shop,
        machines: shop.machines.map((machine) =>
          machine.id === change.machineId ? approved(machine, change.mostH) : machine,
        ),
      };
    case "buy-out":
      return withOffer(shop, change);
  }
}

function withMachine(shop: Shop, machine: Machine): Shop {
  return { ...shop, machines: [...shop.machines, { ...machine, loaded: null, outOfService: [] }] };
}

function withAlike(shop: Shop, change: PurchaseChange & { kind: "add-alike" }): Shop {
  const like = shop.machines.find(({ id }) => id === change.alike);
  if (!like) return shop;
  const { id, name, calendarId = like.calendarId } = change;
  return withMachine(shop, { ...like, id, name, calendarId });
}

function approved(machine: Machine, mostH: number | undefined): Machine {
  const { unattendedMaxH: _, ...rest } = machine;
  return mostH === undefined
    ? { ...rest, unattended: true }
    : { ...rest, unattended: true, unattendedMaxH: mostH };
}

function withOffer(
  shop: Shop,
  { partId, pricePerPiece, leadTimeDays }: PurchaseChange & { kind: "buy-out" },
): Shop {
  return {
    ...shop,
    parts: shop.parts.map((part) =>
      part.id === partId ? { ...part, buyOut: { pricePerPiece, leadTimeDays } } : part,
    ),
  };
}
