import { compileProblem } from "../../core/plan/compile/compile-problem.ts";
import type { PlanProblem } from "../../core/plan/plan-problem.ts";
import {
  type MemberData,
  runSearchOrder,
  type SearchNews,
  type SearchOrder,
} from "../../core/plan/search-team.ts";

/** The first message is the shop, every later one a search. */
let given: { readonly problem: PlanProblem; readonly stop: SharedArrayBuffer | null } | null = null;

const tell = (news: SearchNews): void => self.postMessage(news);

self.addEventListener("message", ({ data }: MessageEvent<MemberData | SearchOrder>) => {
  if ("shop" in data) given = { problem: compileProblem(data.shop, data.request).problem, stop: data.stop };
  else if (given) runSearchOrder(given.problem, data, given.stop, { now: () => performance.now(), tell });
});
