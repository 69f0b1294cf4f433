import { checkMachines } from "./check-machines.ts";
import { about, type EntryFindings, type Finding, listed, whereOf } from "./finding.ts";
import type { Machine } from "./machine.ts";
import type { Candidate, PurchaseCase } from "./purchase-case.ts";
import type { PurchaseChange } from "./purchase-change.ts";
import type { Shop } from "./shop.ts";
import { indexShop } from "./shop-index.ts";

/** Findings about what candidates change: names that are not there, candidates that overlap, running with nobody there. */
export function caseChangeFindings(shop: Shop, purchaseCase: PurchaseCase): Finding[] {
  const say = about("cases", purchaseCase.id);
  const { candidates } = purchaseCase;
  if (candidates.length === 0)
    return [say.error("candidates", "no-candidate", "nothing to buy or do is named; add a candidate")];
  return [
    ...sameIdFindings(say, candidates),
    ...candidates.flatMap((candidate) => [
      ...candidate.changes.flatMap((change) => changeFindings(say, shop, candidate, change)),
      ...withinFindings(say, candidate),
    ]),
    ...candidates.flatMap((candidate) => machineFindings(shop, purchaseCase, candidate)),
    ...overlapFindings(say, candidates),
    ...unattendedFindings(say, candidates),
  ];
}

function sameIdFindings(say: EntryFindings, candidates: readonly Candidate[]): Finding[] {
  return doubled(candidates.map(({ id }) => id)).map((id) =>
    say.error("candidates", "duplicate-id", `two candidates have the id ${id}; give each its own`),
  );
}

function doubled(values: readonly string[]): string[] {
  return [...new Set(values.filter((value, place) => values.indexOf(value) !== place))];
}

function changeFindings(
  say: EntryFindings,
  shop: Shop,
  { id, name }: Candidate,
  change: PurchaseChange,
): Finding[] {
  const who = `candidate ${id} (${name})`;
  const missing = (code: string, what: string): Finding[] => [
    say.error("candidates", code, `${who}: there is no ${what}; name one that exists`),
  ];
  const hasMachine = (machineId: string): boolean =>
    shop.machines.some((machine) => machine.id === machineId);
  const hasCalendar = (calendarId: string): boolean =>
    shop.calendars.some((calendar) => calendar.id === calendarId);
  const taken = (machineId: string): Finding[] =>
    hasMachine(machineId)
      ? [
          say.error(
            "candidates",
            "duplicate-id",
            `${who}: the shop has a machine ${machineId} already; give the new one another id`,
          ),
        ]
      : [];
  switch (change.kind) {
    case "add-machine":
      return taken(change.machine.id);
    case "add-alike":
      return [
        ...taken(change.id),
        ...(hasMachine(change.alike) ? [] : missing("unknown-machine", `machine ${change.alike}`)),
        ...(change.calendarId === undefined || hasCalendar(change.calendarId)
          ? []
          : missing("unknown-calendar", `calendar ${change.calendarId}`)),
      ];
    case "sell-machine":
      return hasMachine(change.machineId) ? [] : missing("unknown-machine", `machine ${change.machineId}`);
    case "approve-unattended":
      return approvalFindings(say, shop, who, change.machineId);
    case "add-shift":
      return hasCalendar(change.calendarId)
        ? []
        : missing("unknown-calendar", `calendar ${change.calendarId}`);
    case "buy-out":
      return shop.parts.some((part) => part.id === change.partId)
        ? []
        : missing("unknown-part", `part ${change.partId}`);
  }
}

function approvalFindings(say: EntryFindings, shop: Shop, who: string, machineId: string): Finding[] {
  const machine = shop.machines.find(({ id }) => id === machineId);
  if (!machine)
    return [
      say.error(
        "candidates",
        "unknown-machine",
        `${who}: there is no machine ${machineId}; name one that exists`,
      ),
    ];
  if (!machine.unattended || machine.unattendedMaxH !== undefined) return [];
  const noEffect = `${who}: machine ${machineId} is approved for any time with nobody there already, so this changes nothing; remove it`;
  return [say.warning("candidates", "no-effect", noEffect)];
}

/** What one candidate does twice, or undoes itself. */
function withinFindings(say: EntryFindings, { id, name, changes }: Candidate): Finding[] {
  return doubled(changes.flatMap(marksOf)).map((mark) =>
    say.error(
      "candidates",
      "twice",
      `candidate ${id} (${name}) changes ${mark} twice; leave one of the changes`,
    ),
  );
}

/** Candidates of which at most one can be chosen. */
function overlapFindings(say: EntryFindings, candidates: readonly Candidate[]): Finding[] {
  return overlappingCandidates(candidates).map(([one, other, mark]) =>
    say.warning(
      "candidates",
      "overlap",
      `candidates ${one} and ${other} both change ${mark}, so at most one of them is taken into a bundle`,
    ),
  );
}

/**
 * Pairs of candidates that change the same thing, by id, and what it is: they exclude each other in a bundle.
 * Example: two that sell machine B1 give one pair and "machine B1".
 */
export function overlappingCandidates(
  candidates: readonly Candidate[],
): (readonly [string, string, string])[] {
  return candidates.flatMap((one, place) =>
    candidates.slice(place + 1).flatMap((other) => {
      const marks = new Set(one.changes.flatMap(marksOf));
      const shared = other.changes.flatMap(marksOf).find((mark) => marks.has(mark));
      return shared === undefined ? [] : [[one.id, other.id, shared] as const];
    }),
  );
}

/** What a change takes for itself. Shifts may be added to one calendar several times. */
function marksOf(change: PurchaseChange): string[] {
  switch (change.kind) {
    case "add-machine":
      return [`machine ${change.machine.id}`];
    case "add-alike":
      return [`machine ${change.id}`];
    case "sell-machine":
    case "approve-unattended":
      return [`machine ${change.machineId}`];
    case "buy-out":
      return [`the price of part ${change.partId} made elsewhere`];
    case "add-shift":
      return [];
  }
}

/** A new machine is held to what every machine of the shop is. */
function machineFindings(shop: Shop, { id: caseId }: PurchaseCase, candidate: Candidate): Finding[] {
  const added = candidate.changes.flatMap((change) =>
    change.kind === "add-machine" ? [change.machine] : [],
  );
  return added.flatMap((machine) =>
    checkMachines(indexShop({ ...shop, machines: [asNew(machine)] }))
      .filter(({ code }) => code !== "unattended")
      .map((finding) => ({ ...finding, where: whereOf("cases", caseId, "candidates", candidate.id) })),
  );
}

function asNew(machine: Machine): Machine {
  return { ...machine, loaded: null, outOfService: [] };
}

/** Who decides about running with nobody there. */
function unattendedFindings(say: EntryFindings, candidates: readonly Candidate[]): Finding[] {
  const named = candidates
    .filter(({ changes }) => changes.some(runsAlone))
    .map(({ id, name }) => `${id} (${name})`);
  if (named.length === 0) return [];
  return [
    say.warning(
      "candidates",
      "unattended",
      `${listed(named)} would run with nobody there. Whether that may be is for the person responsible to decide, by the makers' instructions, local fire and building codes, the insurer's terms and the advice of qualified people; this program does not judge it, and only reckons what it would be worth`,
    ),
  ];
}

function runsAlone(change: PurchaseChange): boolean {
  return change.kind === "approve-unattended" || (change.kind === "add-machine" && change.machine.unattended);
}
