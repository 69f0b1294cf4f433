import type { MemberData, TeamMember } from "../../core/plan/search-team.ts";

/** Starts one search in a worker of the browser. */
export function startSearchWorker(data: MemberData): TeamMember {
  const worker = new Worker(new URL("./search-worker.ts", import.meta.url), { type: "module" });
  worker.postMessage(data);
  return {
    tell: (order) => worker.postMessage(order),
    hear: (onNews, onFault) => {
      worker.addEventListener("message", ({ data: news }) => onNews(news));
      worker.addEventListener("error", ({ message }) => onFault(new Error(`search worker: ${message}`)));
    },
    end: () => worker.terminate(),
  };
}
