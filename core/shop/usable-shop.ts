import type { Build } from "./build.ts";
import { copiesInBuilds, keepsItsPlace } from "./build-copies.ts";
import { DUPLICATE_ID } from "./check-whole.ts";
import { capital, type Finding, stepsOf } from "./finding.ts";
import { isInstant, minuteOf } from "./instants.ts";
import type { Machine } from "./machine.ts";
import type { Shop } from "./shop.ts";
import { ENTRY_WORD, SHOP_LISTS, type ShopList } from "./shop-lists.ts";

/** One entry that plans leave out, and why. */
export interface SetAside {
  readonly list: ShopList;
  readonly id: string;
  readonly sentence: string;
  /** of an order: copies still to be made, null where its quantity cannot be read; else 0 */
  readonly copies: number | null;
}

export interface UsableShop {
  /** the shop without what was set aside; null while an error about the shop as a whole stops all planning */
  readonly shop: Shop | null;
  readonly setAside: SetAside[];
}

/**
 * The part of a shop that can be planned: entries with errors are set aside together with what depends on them (machines
 * with their calendar, orders with their part or pin, committed and running builds with their machine, feedstock or orders,
 * and the orders of a build that was set aside, since nobody can count their copies). A committed or running build that was
 * set aside still keeps its time on its machine, as time out of service. What a machine has loaded is forgotten where it
 * names nothing that exists. `findings` are those of `readShop` and `checkShop` together, `unreadCopies` those of `readShop`.
 * Example: an error at part P takes the orders of P with it; all others stay.
 */
export function usableShop(
  shop: Shop,
  findings: readonly Finding[],
  unreadCopies: ReadonlyMap<string, number> = new Map(),
): UsableShop {
  const errors = findings.filter((finding) => finding.severity === "error");
  const unique = withoutDoubles(shop);
  const aside = directlyAside(unique, errors);
  spread(unique, aside);
  const copiesOf = copiesToMake(unique, unreadCopies);
  const first = SHOP_LISTS.flatMap((list) =>
    [...aside[list]].map(([id, sentence]) => ({ list, id, sentence, copies: copiesOf(list, id) })),
  );
  const isStopped = errors.some((finding) => placeOf(finding) === null);
  return {
    shop: isStopped ? null : withoutAside(unique, aside),
    setAside: [...first, ...doublesAside(shop, errors)],
  };
}

/** Sentences of what is set aside, by list and id. */
type Aside = Readonly<Record<ShopList, Map<string, string>>>;

/** The entry that a finding is about; null where it is about the shop as a whole. */
function placeOf({ where }: Finding): { readonly list: ShopList; readonly id: string } | null {
  const [first, id] = stepsOf(where);
  const list = SHOP_LISTS.find((candidate) => candidate === first);
  return list === undefined || id === undefined ? null : { list, id };
}

/** Copies that each order still wants: ordered less those in builds. 0 for what is no order, null where it has no readable quantity. */
function copiesToMake(
  shop: Shop,
  unreadCopies: ReadonlyMap<string, number>,
): (list: ShopList, id: string) => number | null {
  const made = copiesInBuilds(shop.builds);
  const ordered = new Map([
    ...unreadCopies,
    ...shop.orders.map(({ id, quantity }) => [id, quantity] as const),
  ]);
  const wanted = (id: string): number | null => {
    const quantity = ordered.get(id);
    return quantity === undefined ? null : Math.max(0, quantity - (made.get(id) ?? 0));
  };
  return (list, id) => (list === "orders" ? wanted(id) : 0);
}

/** The second and later entries of one id. */
function doublesAside(shop: Shop, errors: readonly Finding[]): SetAside[] {
  return errors.flatMap((finding) => {
    const place = placeOf(finding);
    if (finding.code !== DUPLICATE_ID || place === null) return [];
    const later = place.list === "orders" ? shop.orders.filter(({ id }) => id === place.id).slice(1) : [];
    const copies = later.reduce((sum, order) => sum + order.quantity, 0);
    return [{ ...place, sentence: finding.sentence, copies }];
  });
}

function withoutDoubles(shop: Shop): Shop {
  return {
    ...shop,
    calendars: firstOfEachId(shop.calendars),
    machines: firstOfEachId(shop.machines),
    feedstocks: firstOfEachId(shop.feedstocks),
    parts: firstOfEachId(shop.parts),
    orders: firstOfEachId(shop.orders),
    builds: firstOfEachId(shop.builds),
    quotes: firstOfEachId(shop.quotes),
    cases: firstOfEachId(shop.cases),
  };
}

function firstOfEachId<Item extends { readonly id: string }>(items: readonly Item[]): Item[] {
  const seen = new Set<string>();
  return items.filter(({ id }) => !seen.has(id) && seen.add(id));
}

function directlyAside(shop: Shop, errors: readonly Finding[]): Aside {
  const aside: Aside = {
    calendars: new Map(),
    machines: new Map(),
    feedstocks: new Map(),
    parts: new Map(),
    orders: new Map(),
    builds: new Map(),
    quotes: new Map(),
    cases: new Map(),
  };
  const present = Object.fromEntries(
    SHOP_LISTS.map((list) => [list, new Set(shop[list].map(({ id }) => id))]),
  );
  for (const finding of errors) {
    const place = placeOf(finding);
    if (finding.code === DUPLICATE_ID || place === null) continue;
    // An unreadable entry was left out when the file was read; one of the same id that could be read stays.
    const isReadTwin = finding.code === "schema" && present[place.list]?.has(place.id);
    if (!isReadTwin && !aside[place.list].has(place.id)) aside[place.list].set(place.id, finding.sentence);
  }
  return aside;
}

/** Sets aside what depends on something set aside, until nothing more does. */
function spread(shop: Shop, aside: Aside): void {
  for (let before = -1, now = countOf(aside); now > before; before = now, now = countOf(aside)) {
    for (const machine of shop.machines)
      follow(aside, "machines", machine.id, [["calendars", machine.calendarId]]);
    for (const { id, partId, pinned } of shop.orders) {
      follow(aside, "orders", id, [
        ["parts", partId],
        ["machines", pinned?.machineId],
        ["feedstocks", pinned?.feedstockId],
      ]);
    }
    for (const build of shop.builds) spreadBuild(aside, build);
  }
}

function spreadBuild(aside: Aside, build: Build): void {
  if (build.state === "planned" || keepsItsPlace(build)) {
    follow(aside, "builds", build.id, [
      ["machines", build.machineId],
      ["feedstocks", build.feedstockId],
      ...build.items.map((item): Dependency => ["orders", item.orderId]),
    ]);
  }
  if (build.state === "planned") return;
  for (const { orderId } of build.items) follow(aside, "orders", orderId, [["builds", build.id]]);
}

type Dependency = readonly [list: ShopList, id: string | undefined];

function follow(aside: Aside, list: ShopList, id: string, dependencies: readonly Dependency[]): void {
  if (aside[list].has(id)) return;
  const cause = dependencies.find(([other, otherId]) => otherId !== undefined && aside[other].has(otherId));
  if (!cause) return;
  const sentence = `${capital(ENTRY_WORD[list])} ${id}: set aside with ${ENTRY_WORD[cause[0]]} ${cause[1]}, on which it depends.`;
  aside[list].set(id, sentence);
}

function countOf(aside: Aside): number {
  return SHOP_LISTS.reduce((sum, list) => sum + aside[list].size, 0);
}

function withoutAside(shop: Shop, aside: Aside): Shop {
  const kept = <Item extends { readonly id: string }>(list: ShopList, items: readonly Item[]): Item[] =>
    items.filter(({ id }) => !aside[list].has(id));
  const feedstocks = kept("feedstocks", shop.feedstocks);
  const feedstockIds = new Set(feedstocks.map(({ id }) => id));
  const placed = shop.builds.filter((build) => aside.builds.has(build.id) && keepsItsPlace(build));
  return {
    ...shop,
    calendars: kept("calendars", shop.calendars),
    machines: kept("machines", shop.machines).map((machine) =>
      withLoadedThatExists(withBlocks(machine, placed, shop.timeZone), feedstockIds),
    ),
    feedstocks,
    parts: kept("parts", shop.parts),
    orders: kept("orders", shop.orders),
    builds: kept("builds", shop.builds),
    quotes: kept("quotes", shop.quotes),
    cases: kept("cases", shop.cases),
  };
}

/** The machine with the time of builds that were set aside as time out of service. */
function withBlocks(machine: Machine, builds: readonly Build[], timeZone: string): Machine {
  const blocks = builds
    .filter((build) => build.machineId === machine.id && lastsSomeTime(build, timeZone))
    .map(({ id, setUpStart, unloadEnd }) => ({
      from: setUpStart,
      to: unloadEnd,
      reason: `build ${id}, set aside`,
    }));
  return blocks.length === 0 ? machine : { ...machine, outOfService: [...machine.outOfService, ...blocks] };
}

function lastsSomeTime({ setUpStart, unloadEnd }: Build, timeZone: string): boolean {
  if (!isInstant(setUpStart) || !isInstant(unloadEnd)) return false;
  return minuteOf(setUpStart, timeZone) < minuteOf(unloadEnd, timeZone);
}

function withLoadedThatExists(machine: Machine, feedstockIds: ReadonlySet<string>): Machine {
  if (machine.loaded === null) return machine;
  const { feedstockId, nozzleId } = machine.loaded;
  const exists = feedstockIds.has(feedstockId) && machine.nozzles.some((nozzle) => nozzle.id === nozzleId);
  return exists ? machine : { ...machine, loaded: null };
}
