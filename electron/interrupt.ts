import { EXIT } from "./exit-status.ts";

let keepBest: (() => void) | null = null;

/** Who hears of the next Ctrl+C; null: nobody has anything to keep, and the program ends at once. */
export function onInterrupt(keep: (() => void) | null): void {
  keepBest = keep;
}

/** Listens for Ctrl+C from now on. The first one during a search keeps its best plan; any other ends the program. */
export function listenForInterrupt(): void {
  process.on("SIGINT", () => {
    if (!keepBest) {
      process.stderr.write("Stopped at once: nothing more is planned or written.\n");
      // A read that is under way, as of a pipe that nobody fills, holds up the end: the next Ctrl+C then is the system's own.
      process.removeAllListeners("SIGINT");
      process.exit(EXIT.stopped);
    }
    keepBest();
    keepBest = null;
  });
}
