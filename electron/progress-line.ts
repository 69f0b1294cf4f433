import type { PlanProgress } from "../core/plan/plan-week.ts";
import { minorUnitDigits } from "../core/units/currency.ts";

/** One line on standard error that is written over as the plan gets better; on a pipe, a line for each stage and a line a second at most. */
export function progressLine(
  currency: string,
  quiet: boolean,
): { show: (progress: PlanProgress) => void; clear: () => void } {
  const { isTTY, columns } = process.stderr;
  let lastMs = -Infinity;
  let lastStage = "";
  return {
    show: (progress) => {
      const nowMs = performance.now();
      const isNews = isTTY || progress.stage !== lastStage || nowMs - lastMs >= 1000;
      if (quiet || !isNews) return;
      lastMs = nowMs;
      lastStage = progress.stage;
      // A terminal that does not know its width says 0.
      const text = progressText(progress, currency).slice(0, (columns || 120) - 1);
      process.stderr.write(isTTY ? `\r\u001b[2K${text}` : `${text}\n`);
    },
    clear: () => {
      if (!quiet && isTTY) process.stderr.write("\r\u001b[2K");
    },
  };
}

function progressText({ stage, cost, toGainPct, elapsedS }: PlanProgress, currency: string): string {
  const costText = cost === null ? "" : `  cost ${cost.toFixed(minorUnitDigits(currency))} ${currency}`;
  const gapText = toGainPct === null ? "" : `  at most ${toGainPct.toFixed(1)} % left to gain`;
  return `${elapsedS.toFixed(1)} s  ${stage}${costText}${gapText}`;
}
