/** One line on standard error that is written over; on a pipe, a line for each stage and a line a second at most. */
export interface StatusLine {
  readonly show: (stage: string, text: string) => void;
  /** a line of its own that stays */
  readonly say: (text: string) => void;
  readonly clear: () => void;
}

/** Opens the line. Quiet: nothing is ever written. */
export function statusLine(quiet: boolean): StatusLine {
  const { isTTY, columns } = process.stderr;
  let lastMs = -Infinity;
  let lastStage = "";
  const clear = (): void => {
    if (!quiet && isTTY) process.stderr.write("\r\u001b[2K");
  };
  return {
    show: (stage, text) => {
      const nowMs = performance.now();
      const isNews = isTTY || stage !== lastStage || nowMs - lastMs >= 1000;
      if (quiet || !isNews) return;
      lastMs = nowMs;
      lastStage = stage;
      // A terminal that does not know its width says 0.
      const shown = text.slice(0, (columns || 120) - 1);
      process.stderr.write(isTTY ? `\r\u001b[2K${shown}` : `${shown}\n`);
    },
    say: (text) => {
      clear();
      if (!quiet) process.stderr.write(`${text}\n`);
    },
    clear,
  };
}
