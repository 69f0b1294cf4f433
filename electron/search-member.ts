import { Worker } from "node:worker_threads";
import type { MemberData, TeamMember } from "../core/plan/search-team.ts";

/** Starts one search on a thread of Node. */
export function startThread(data: MemberData): TeamMember {
  const worker = new Worker(new URL("./search-thread.js", import.meta.url), { workerData: data });
  return {
    tell: (order) => worker.postMessage(order),
    hear: (onNews, onFault) => {
      worker.on("message", onNews);
      worker.once("error", onFault);
    },
    end: () => worker.terminate(),
  };
}
