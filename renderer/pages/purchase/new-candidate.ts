import type { Candidate, PurchaseCase } from "../../../core/shop/purchase-case.ts";
import type { PurchaseChange } from "../../../core/shop/purchase-change.ts";
import type { Machine } from "../../../core/shop/machine.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { nextId } from "../../store/next-id.ts";

export type ChangeKind = PurchaseChange["kind"];

/** What can be bought or done, as the menu names it. */
export const CHANGE_WORDS: Readonly<Record<ChangeKind, string>> = {
  "add-alike": "Another machine like one of ours",
  "add-machine": "A new machine",
  "sell-machine": "Sale of a machine",
  "add-shift": "Second shift or overtime",
  "approve-unattended": "Running with nobody there, if approved",
  "buy-out": "Buying a part elsewhere",
};

export const CHANGE_KINDS = Object.keys(CHANGE_WORDS) as ChangeKind[];

const USUAL_LIFE_YEARS = 8;
const FIRST_ID = "candidate-0";

/** Why a kind of change cannot be made in this shop; null: it can. */
export function hindranceOf(kind: ChangeKind, shop: Shop): string | null {
  if (kind === "buy-out")
    return shop.parts.length === 0 ? "The shop has no part: add one on page Parts." : null;
  if (kind === "add-shift")
    return shop.calendars.length === 0 ? "The shop has no calendar: add one on page Machines." : null;
  return shop.machines.length === 0 ? "The shop has no machine: add one on page Machines." : null;
}

/** A candidate of one change, with the figures that the shop knows. Example: like F1, at the price that F1's hour rate names. */
export function newCandidate(kind: ChangeKind, shop: Shop, { candidates }: PurchaseCase): Candidate {
  const change = newChange(kind, shop, candidates);
  return withKnownMoney(shop, change, {
    id: nextId(FIRST_ID, idsIn(candidates)),
    name: nameOf(shop, change),
    changes: [change],
    price: 0,
    installation: 0,
    training: 0,
    yearlyCost: 0,
    lifeYears: USUAL_LIFE_YEARS,
    residualValue: 0,
  });
}

/** The same under an id of its own; the machines it adds get ids of their own too. */
export function copyOfCandidate(like: Candidate, shop: Shop, { candidates }: PurchaseCase): Candidate {
  const taken = machineIds(shop, candidates);
  const changes = like.changes.map((change): PurchaseChange => {
    if (change.kind === "add-alike") return { ...change, id: takeId(change.id, taken) };
    if (change.kind !== "add-machine") return change;
    return { ...change, machine: { ...change.machine, id: takeId(change.machine.id, taken) } };
  });
  return { ...like, id: nextId(like.id, idsIn(candidates)), name: `${like.name} (copy)`, changes };
}

/** A change of a kind with what the shop has first; `hindranceOf` must be null. */
export function newChange(kind: ChangeKind, shop: Shop, candidates: readonly Candidate[]): PurchaseChange {
  const [machine] = shop.machines;
  const [calendar] = shop.calendars;
  const [part] = shop.parts;
  if (kind === "buy-out" && part) return { kind, partId: part.id, pricePerPiece: 0, leadTimeDays: 10 };
  if (kind === "add-shift" && calendar) {
    const shift = { days: [1, 2, 3, 4, 5], start: "16:00", end: "22:00", operators: 1 };
    return { kind, calendarId: calendar.id, shift, premiumPct: 20, otherWorkPct: 0 };
  }
  if (!machine) throw new RangeError(`no entry in the shop for a change of the kind ${kind}`);
  const taken = machineIds(shop, candidates);
  switch (kind) {
    case "add-alike":
      return { kind, alike: machine.id, id: takeId(machine.id, taken), name: `Like ${machine.name}` };
    case "add-machine":
      return { kind, machine: newMachineLike(machine, taken) };
    case "sell-machine":
      return { kind, machineId: machine.id, proceeds: 0 };
    default:
      return { kind: "approve-unattended", machineId: machine.id };
  }
}

/** A machine to buy with the figures of one that stands there; whether it may run alone is decided anew. */
export function newMachineLike(like: Machine, taken: Set<string>): Machine {
  const { unattendedMaxH: _, ...machine } = like;
  const id = takeId(like.id, taken);
  return { ...machine, id, name: `New ${like.name}`, unattended: false, loaded: null, outOfService: [] };
}

/** Ids of the machines of the shop and of all that candidates add. */
export function machineIds(shop: Shop, candidates: readonly Candidate[]): Set<string> {
  const added = candidates.flatMap(({ changes }) =>
    changes.flatMap((change) => {
      if (change.kind === "add-alike") return [change.id];
      return change.kind === "add-machine" ? [change.machine.id] : [];
    }),
  );
  return new Set([...shop.machines.map(({ id }) => id), ...added]);
}

/** Price, life and residual value as the hour rate of an added machine names them. */
function withKnownMoney(shop: Shop, change: PurchaseChange, candidate: Candidate): Candidate {
  const machine = addedMachine(shop, change);
  if (!machine || typeof machine.hourRate === "number") return candidate;
  const { purchasePrice, residualValue, lifeYears } = machine.hourRate;
  return { ...candidate, price: purchasePrice, residualValue, lifeYears: Math.max(1, Math.round(lifeYears)) };
}

function addedMachine(shop: Shop, change: PurchaseChange): Machine | undefined {
  if (change.kind === "add-machine") return change.machine;
  return change.kind === "add-alike" ? shop.machines.find(({ id }) => id === change.alike) : undefined;
}

function nameOf(shop: Shop, change: PurchaseChange): string {
  const machine = (id: string): string => shop.machines.find((one) => one.id === id)?.name ?? id;
  switch (change.kind) {
    case "add-alike":
      return `Another ${machine(change.alike)}`;
    case "add-machine":
      return change.machine.name;
    case "sell-machine":
      return `Sale of ${machine(change.machineId)}`;
    case "add-shift":
      return `Evening shift, ${shop.calendars.find(({ id }) => id === change.calendarId)?.name ?? change.calendarId}`;
    case "approve-unattended":
      return `${machine(change.machineId)} with nobody there, if approved`;
    case "buy-out":
      return `${shop.parts.find(({ id }) => id === change.partId)?.name ?? change.partId} bought elsewhere`;
  }
}

function takeId(like: string, taken: Set<string>): string {
  const id = nextId(like, taken);
  taken.add(id);
  return id;
}

function idsIn(candidates: readonly Candidate[]): Set<string> {
  return new Set(candidates.map(({ id }) => id));
}
