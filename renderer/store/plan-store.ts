import { type Accessor, createMemo, createSignal, onCleanup } from "solid-js";
import type { PlanDocument } from "../../core/plan/plan-document.ts";
import type { PlanProgress } from "../../core/plan/plan-week.ts";
import { withEarlierPlan } from "../../core/plan/replan/with-earlier-plan.ts";
import type { Shop } from "../../core/shop/shop.ts";
import type { PlanningRun, PlanOptions } from "../worker/plan-client.ts";
import { type AcceptedPlanOptions, createAcceptedPlan, type SourcedPlan } from "./accepted-plan.ts";
import { isSameShop } from "./same-shop.ts";

/** Planning as it goes on; null: nothing is being planned. */
export interface PlanningState {
  readonly progress: PlanProgress | null;
  readonly isStopping: boolean;
  readonly seconds: number;
}

/**
 * The plan of the open shop. A new plan waits as `proposal` beside the old one until somebody accepts or drops it; the first
 * plan, with nothing to compare it to, is accepted at once. Accepting is a step of undo. The accepted plan is kept beside the
 * shop file, and the next planning takes its builds as planned earlier.
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
  readonly accept: () => Promise<void>;
  readonly drop: () => void;
}

type Start = (shop: Shop, options: PlanOptions, onProgress: (progress: PlanProgress) => void) => PlanningRun;

interface PlanStoreOptions extends AcceptedPlanOptions {
  readonly shop: Accessor<Shop>;
  readonly start: Start;
}

const COMPARE = "A new plan is made: compare it with the old one on the Week page.";

/** The store of plans; belongs to the root that made it. */
export function createPlanStore(options: PlanStoreOptions): PlanStore {
  const { shop, start, tell, alarm } = options;
  const accepted = createAcceptedPlan(options);
  const [proposed, setProposed] = createSignal<SourcedPlan | null>(null);
  const [planning, setPlanning] = createSignal<PlanningState | null>(null);
  const plan = createMemo(() => accepted.now()?.plan ?? null);
  let run: PlanningRun | null = null;
  onCleanup(() => run?.stop());

  async function begin(asked: PlanOptions): Promise<void> {
    setPlanning({ progress: null, isStopping: false, seconds: asked.seconds });
    try {
      await accepted.tookTheirs();
      const source = shop();
      const earlier = plan();
      const mine = start(earlier ? withEarlierPlan(source, earlier) : source, asked, (progress) =>
        setPlanning((before) => before && { ...before, progress }),
      );
      run = mine;
      const made = { plan: await mine.result, source };
      if (plan() === null) accepted.take("the first plan", made);
      else setProposed(made);
      tell(plan() === made.plan ? "The plan is made." : COMPARE);
    } catch (error) {
      alarm(error instanceof Error ? error.message : "Planning ended without a plan.");
    } finally {
      run = null;
      setPlanning(null);
    }
  }

  return {
    plan,
    proposal: createMemo(() => proposed()?.plan ?? null),
    planning,
    isOld: createMemo(() => {
      const source = accepted.now()?.source ?? null;
      return source !== null && !isSameShop(source, shop());
    }),
    start: begin,
    stop: () => {
      setPlanning((before) => before && { ...before, isStopping: true });
      run?.stop();
    },
    accept: async () => {
      const next = proposed();
      if (!next || (await accepted.tookTheirs()) || proposed() !== next) return;
      accepted.take("the new plan", next);
      setProposed(null);
    },
    drop: () => void setProposed(null),
  };
}
