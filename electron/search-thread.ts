import { parentPort, workerData } from "node:worker_threads";
import { compileProblem } from "../core/plan/compile/compile-problem.ts";
import {
  type MemberData,
  runSearchOrder,
  type SearchNews,
  type SearchOrder,
} from "../core/plan/search-team.ts";

const { shop, request, stop } = workerData as MemberData;
const { problem } = compileProblem(shop, request);
const tell = (news: SearchNews): void => parentPort?.postMessage(news);

parentPort?.on("message", (order: SearchOrder) => {
  runSearchOrder(problem, order, stop, { now: () => performance.now(), tell });
});
