import { type Accessor, createSignal } from "solid-js";
import type { PlanDocument } from "../../core/plan/plan-document.ts";
import type { Shop } from "../../core/shop/shop.ts";
import type { Host } from "../../electron/contract.ts";
import type { Along } from "./history.ts";
import { createPlanKeeper } from "./plan-keeper.ts";

/** A plan and the shop that it was made of; null: not known, it was read from its file. */
export interface SourcedPlan {
  readonly plan: PlanDocument;
  readonly source: Shop | null;
}

/** The plan that holds, kept beside the shop file; null: there is none yet. */
export interface AcceptedPlan {
  readonly now: Accessor<SourcedPlan | null>;
  /** accepts a plan as one step of undo, named by the label */
  readonly take: (label: string, next: SourcedPlan) => void;
  /** true where another window has accepted another plan since: it is taken here too, and said */
  readonly tookTheirs: () => Promise<boolean>;
}

export interface AcceptedPlanOptions {
  readonly host: Host;
  readonly handle: string;
  /** makes a step of undo out of something that is done beside the shop document, and does it */
  readonly remember: (label: string, along: Along) => void;
  /** said aloud and shown */
  readonly tell: (sentence: string) => void;
  readonly alarm: (sentence: string) => void;
}

const THEIRS =
  "Another window has accepted another plan meanwhile: it is the old plan here now. Nothing was written over.";

/** The accepted plan of the open shop, read from its file; belongs to the root that made it. */
export function createAcceptedPlan(options: AcceptedPlanOptions): AcceptedPlan {
  const { host, handle, remember, tell, alarm } = options;
  const [now, setNow] = createSignal<SourcedPlan | null>(null);
  const keeper = createPlanKeeper(host, handle, alarm);
  const put = (next: SourcedPlan | null): void => {
    setNow(next);
    keeper.keep(next?.plan ?? null);
  };
  void keeper.otherThan(null).then((read) => {
    if (read && now() === null) setNow({ plan: read, source: null });
  });
  return {
    now,
    take: (label, next) => {
      const before = now();
      remember(label, { again: () => put(next), back: () => put(before) });
    },
    tookTheirs: async () => {
      const theirs = await keeper.otherThan(now()?.plan ?? null);
      if (!theirs) return false;
      setNow({ plan: theirs, source: null });
      tell(THEIRS);
      return true;
    },
  };
}
