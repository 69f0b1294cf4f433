import { isMainThread } from "node:worker_threads";

/** Loaded before a measured program: when it ends, it tells the most memory that it held, threads included, KB. */
if (isMainThread) {
  process.on("exit", () => process.stderr.write(`\nmost memory ${process.resourceUsage().maxRSS} KB\n`));
}
