import { loadGlpk } from "../../core/plan/engines/glpk.ts";
import { MOST_BUNDLES, SIDE, type StudyTools, studyCase } from "../../core/purchase/case-study.ts";
import { type CaseEvaluation, evaluateCase } from "../../core/purchase/evaluate.ts";
import { idleCandidates } from "../../core/purchase/idle-candidate.ts";
import { wholeMoney } from "../../core/report/case-view.ts";
import { checkCase } from "../../core/shop/check-case.ts";
import { checkShop } from "../../core/shop/check-shop.ts";
import type { Finding } from "../../core/shop/finding.ts";
import type { PurchaseCase } from "../../core/shop/purchase-case.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { usableShop } from "../../core/shop/usable-shop.ts";
import { KnownResults } from "./known-results.ts";
import type { PurchaseMessage, PurchaseNews } from "./purchase-messages.ts";
import { PurchaseTeam } from "./purchase-team.ts";

/*
 * Works out purchase cases off the window's thread: this worker keeps the books, a team of others runs the jobs. One run at a
 * time; what jobs found is remembered for the next one.
 */

type WorkMessage = Extract<PurchaseMessage, { kind: "work" }>;
/** News of one run without its number. */
type Told = PurchaseNews extends infer News ? (News extends unknown ? Omit<News, "run"> : never) : never;

const known = new KnownResults();
let current: { readonly run: number; readonly team: PurchaseTeam } | null = null;

self.addEventListener("message", ({ data }: MessageEvent<PurchaseMessage>) => {
  if (data.kind === "work") void work(data);
  else if (current?.run === data.run) current.team.end();
});

async function work(message: WorkMessage): Promise<void> {
  current?.team.end();
  const team = new PurchaseTeam(message.threads);
  const own = { run: message.run, team };
  current = own;
  const tell = (news: Told): void => self.postMessage({ run: message.run, ...news });
  try {
    const refusal = await workOut(message, team, tell);
    tell(refusal === null ? { kind: "end" } : { kind: "refused", sentence: refusal });
  } catch (fault) {
    tell({ kind: "fault", sentence: `This is a fault of the program: ${String(fault)}` });
  } finally {
    team.end();
    if (current === own) current = null;
    known.trim();
  }
}

/** Tells one answer after the other, the rough one first. Not null: why the case cannot be worked out. */
async function workOut(
  message: WorkMessage,
  team: PurchaseTeam,
  tell: (news: Told) => void,
): Promise<string | null> {
  const ready = readyCase(message);
  if (typeof ready === "string") return ready;
  const { shop, setAside, purchaseCase, findings } = ready;
  const tools = { ...toolsOf(team, shop.currency), engine: await loadGlpk() };
  const answer = async (evaluation: CaseEvaluation, more: Partial<StudyTools> = {}): Promise<void> => {
    const { gap } = evaluation;
    const study = await studyCase(shop, purchaseCase, evaluation, { ...tools, gap, ...more });
    // Further questions that were stopped half-way would say what they did not find out.
    if (more.side && team.isEnded) return;
    tell({ kind: "found", found: { shop, setAside, study, gap, findings } });
  };
  let rough: Promise<void> | null = null;
  const evaluation = await evaluateCase(shop, purchaseCase, {
    ...tools,
    runSamples: team.runSamples,
    onProgress: ({ stage, jobsDone, jobs }) =>
      tell({ kind: "progress", progress: { stage, done: jobsDone, all: jobs } }),
    onRough: (found) => void (rough = answer(found)),
  });
  await rough;
  // Stopped before one scenario was done everywhere: the rough answer is all there is, and it stays.
  if (evaluation.without.length > 0 || rough === null) await answer(evaluation);
  if (team.isEnded) return null;
  let done = 0;
  const askingFurther = (): void =>
    tell({ kind: "progress", progress: { stage: "asking further", done: done++, all: null } });
  askingFurther();
  await answer(evaluation, { side: SIDE, runJobs: counted(tools.runJobs, askingFurther) });
  return null;
}

interface ReadyCase {
  readonly shop: Shop;
  readonly setAside: number;
  readonly purchaseCase: PurchaseCase;
  readonly findings: readonly Finding[];
}

/** A case in the shop without what had to be set aside; a sentence: it cannot be worked out. */
function readyCase({ shop, purchaseCase }: WorkMessage): ReadyCase | string {
  const checked = checkShop(shop);
  const usable = usableShop(shop, checked);
  if (!usable.shop) return firstError(checked) ?? "The shop cannot be planned.";
  const found = checkCase(usable.shop, purchaseCase);
  const hindrance = firstError(found);
  if (hindrance !== undefined) return hindrance;
  const findings = [...found, ...idleCandidates(usable.shop, purchaseCase)];
  return { shop: usable.shop, setAside: usable.setAside.length, purchaseCase, findings };
}

function firstError(findings: readonly Finding[]): string | undefined {
  return findings.find(({ severity }) => severity === "error")?.sentence;
}

/** The tools of a run but for the engine; questions beside the main one come later. */
function toolsOf(team: PurchaseTeam, currency: string): Omit<StudyTools, "engine"> {
  return {
    runJobs: team.runJobs,
    hash: known.hash,
    cache: known.cache,
    stopped: () => team.isEnded,
    gap: null,
    money: wholeMoney(currency),
    side: null,
    mostBundles: MOST_BUNDLES,
  };
}

function counted(runJobs: StudyTools["runJobs"], onDone: () => void): StudyTools["runJobs"] {
  return (jobs, onResult, stopped) =>
    runJobs(
      jobs,
      (index, result) => {
        onResult(index, result);
        onDone();
      },
      stopped,
    );
}
