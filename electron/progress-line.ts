import type { PlanProgress } from "../core/plan/plan-week.ts";
import { minorUnitDigits } from "../core/units/currency.ts";
import { statusLine } from "./status-line.ts";

/** The status line of a plan that gets better. */
export function progressLine(
  currency: string,
  quiet: boolean,
): { show: (progress: PlanProgress) => void; clear: () => void } {
  const line = statusLine(quiet);
  return {
    show: (progress) => line.show(progress.stage, progressText(progress, currency)),
    clear: line.clear,
  };
}

function progressText({ stage, cost, toGainPct, elapsedS }: PlanProgress, currency: string): string {
  const costText = cost === null ? "" : `  cost ${cost.toFixed(minorUnitDigits(currency))} ${currency}`;
  const gapText = toGainPct === null ? "" : `  at most ${toGainPct.toFixed(1)} % left to gain`;
  return `${elapsedS.toFixed(1)} s  ${stage}${costText}${gapText}`;
}
