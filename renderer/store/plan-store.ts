import { type Accessor, createMemo, createSignal, onCleanup } from "solid-js";
import type { PlanDocument } from "../../core/plan/plan-document.ts";
import type { PlanProgress } from "../../core/plan/plan-week.ts";
import type { Shop } from "../../core/shop/shop.ts";
import type { Host } from "../../electron/contract.ts";
import type { PlanningRun, PlanOptions } from "../worker/plan-client.ts";

/** Planning as it goes on; null: nothing is being planned. */
export interface PlanningState {
  readonly progress: PlanProgress | null;
  readonly isStopping: boolean;
  readonly seconds: number;
}

/**
 * The plan of the open shop. A new plan waits as `proposal` beside the old one until somebody accepts or drops it; the first
 * plan, with nothing to compare it to, is accepted at once. The accepted plan is kept beside the shop file.
 */
export interface PlanStore {
  readonly plan: Accessor<PlanDocument | null>;
  readonly proposal: Accessor<PlanDocument | null>;
  readonly planning: Accessor<PlanningState | null>;
  /** true where the shop was edited after the accepted plan was made in this window */
  readonly isOld: Accessor<boolean>;
  readonly start: (options: PlanOptions) => Promise<void>;
  /** the best plan so far becomes the result */
  readonly stop: () => void;
  readonly accept: () => void;
  readonly drop: () => void;
  /** puts a plan that was made elsewhere, such as by a move on the week page, in place of the accepted one */
  readonly replace: (plan: PlanDocument) => void;
}

type Start = (shop: Shop, options: PlanOptions, onProgress: (progress: PlanProgress) => void) => PlanningRun;

interface PlanStoreOptions {
  readonly host: Host;
  readonly handle: string;
  readonly shop: Accessor<Shop>;
  readonly start: Start;
  /** said aloud and shown */
  readonly tell: (sentence: string) => void;
  readonly alarm: (sentence: string) => void;
}

const COMPARE = "A new plan is made: compare it with the old one on the Week page.";

/** The store of plans; belongs to the root that made it. */
export function createPlanStore({ host, handle, shop, start, tell, alarm }: PlanStoreOptions): PlanStore {
  const [plan, setPlan] = createSignal<PlanDocument | null>(null);
  const [proposal, setProposal] = createSignal<PlanDocument | null>(null);
  const [planning, setPlanning] = createSignal<PlanningState | null>(null);
  /** the shop that the accepted plan was made of; null: not known, it was read from the file */
  const [source, setSource] = createSignal<Shop | null>(null);
  let proposalSource: Shop | null = null;
  let run: PlanningRun | null = null;
  onCleanup(() => run?.stop());

  function take(next: PlanDocument, of: Shop | null): void {
    setPlan(next);
    setSource(of);
    void keepPlan(host, handle, next, alarm);
  }

  async function begin(options: PlanOptions): Promise<void> {
    const of = shop();
    setPlanning({ progress: null, isStopping: false, seconds: options.seconds });
    try {
      const mine = start(of, options, (progress) =>
        setPlanning((before) => before && { ...before, progress }),
      );
      run = mine;
      const made = await mine.result;
      if (plan() === null) take(made, of);
      else {
        proposalSource = of;
        setProposal(made);
      }
      tell(plan() === made ? "The plan is made." : COMPARE);
    } catch (error) {
      alarm(error instanceof Error ? error.message : "Planning ended without a plan.");
    } finally {
      run = null;
      setPlanning(null);
    }
  }

  void host.call("readPlan", { handle }).then((answer) => {
    if (answer.ok && answer.value.plan && plan() === null) setPlan(answer.value.plan);
  });
  return {
    plan,
    proposal,
    planning,
    isOld: createMemo(() => plan() !== null && source() !== null && source() !== shop()),
    start: begin,
    stop: () => {
      setPlanning((before) => before && { ...before, isStopping: true });
      run?.stop();
    },
    accept: () => {
      const next = proposal();
      if (next) take(next, proposalSource);
      setProposal(null);
    },
    drop: () => void setProposal(null),
    replace: (next) => take(next, shop()),
  };
}

/** Keeps the accepted plan beside the shop file. */
async function keepPlan(
  host: Host,
  handle: string,
  plan: PlanDocument,
  alarm: (sentence: string) => void,
): Promise<void> {
  const answer = await host.call("keepPlan", { handle, plan });
  const sentence = answer.ok
    ? answer.value.status === "failed" && answer.value.sentence
    : answer.trouble.sentence;
  if (sentence) alarm(sentence);
}
