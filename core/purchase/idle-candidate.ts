import { findRoutes } from "../estimate/find-routes.ts";
import type { Machine } from "../shop/machine.ts";
import type { Candidate, PurchaseCase } from "../shop/purchase-case.ts";
import type { Shop } from "../shop/shop.ts";
import type { Finding } from "../units/finding.ts";
import { applyCandidates } from "./apply-candidate.ts";
import { whereOf } from "../shop/finding.ts";

/** A finding and the candidate that it is about. */
interface IdleFinding extends Finding {
  readonly candidateId: string;
}

/**
 * Candidates that add machines of which not one can make any part of the demand: a warning each, since its value is then minus
 * what is paid for it. A candidate that changes anything else as well is not judged here.
 * Example: a machine with a platform smaller than every part gives one warning at "cases/C-1/candidates/small".
 */
export function idleCandidates(shop: Shop, purchaseCase: PurchaseCase): IdleFinding[] {
  return purchaseCase.candidates.flatMap((candidate) => {
    const machines = machinesOnly(shop, candidate);
    if (machines.length === 0 || machines.some((machine) => canMakeAny(shop, purchaseCase, machine)))
      return [];
    return [
      {
        candidateId: candidate.id,
        severity: "warning" as const,
        code: "makes-nothing",
        where: whereOf("cases", purchaseCase.id, "candidates", candidate.id),
        sentence: `Candidate ${candidate.id} (${candidate.name}) can make none of the parts that are ordered, so it is worth minus what is paid for it; ask for the routes of a part on it to see why, or take another machine.`,
      },
    ];
  });
}

/** The machines a candidate adds, where that is all it does. */
function machinesOnly(shop: Shop, candidate: Candidate): Machine[] {
  if (!candidate.changes.every(({ kind }) => kind === "add-machine" || kind === "add-alike")) return [];
  const before = new Set(shop.machines.map(({ id }) => id));
  return applyCandidates(shop, [candidate]).machines.filter(({ id }) => !before.has(id));
}

function canMakeAny(shop: Shop, { demand }: PurchaseCase, machine: Machine): boolean {
  const lines = demand.kind === "rows" ? demand.rows : demand.kind === "typed" ? demand.lines : shop.orders;
  const wanted = new Set(lines.map(({ partId }) => partId));
  return shop.parts.some(
    (part) =>
      wanted.has(part.id) &&
      findRoutes(part, machine, shop.feedstocks).some(({ status }) => status === "route"),
  );
}
