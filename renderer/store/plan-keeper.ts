import type { PlanDocument } from "../../core/plan/plan-document.ts";
import type { Host } from "../../electron/contract.ts";

/** The accepted plan's file beside the shop. */
export interface PlanKeeper {
  /** writes it, one after the other in the order of the calls; null takes the file away */
  readonly keep: (plan: PlanDocument | null) => void;
  /** what lies beside the shop where it is another plan than the one given; null: the same, or none */
  readonly otherThan: (plan: PlanDocument | null) => Promise<PlanDocument | null>;
}

/** The keeper of one open shop; a plan that cannot be written is said with `alarm`. */
export function createPlanKeeper(host: Host, handle: string, alarm: (sentence: string) => void): PlanKeeper {
  let keeping: Promise<void> = Promise.resolve();
  const write = async (plan: PlanDocument | null): Promise<void> => {
    const answer = await host.call("keepPlan", { handle, plan });
    const sentence = answer.ok
      ? answer.value.status === "failed" && answer.value.sentence
      : answer.trouble.sentence;
    if (sentence) alarm(sentence);
  };
  return {
    keep: (plan) => {
      keeping = keeping.then(nextTask).then(() => write(plan));
    },
    otherThan: async (plan) => {
      await keeping;
      const answer = await host.call("readPlan", { handle });
      const kept = answer.ok ? answer.value.plan : null;
      return kept && (plan === null || markOf(kept) !== markOf(plan)) ? kept : null;
    },
  };
}

/** Writing out a large plan takes a moment: it waits until what was just shown is drawn and keys are heard. */
function nextTask(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}

/** Tells plans apart by what they decide, whatever the order of their fields. */
function markOf({ plannedFrom, horizonDays, cost, builds }: PlanDocument): string {
  const places = builds.map(({ id, machineId, setUpStart }) => [id, machineId, setUpStart]);
  return JSON.stringify([plannedFrom, horizonDays, cost.total, places]);
}
