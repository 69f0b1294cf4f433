import type { Finding } from "../core/shop/finding.ts";

/** Prints findings on standard error, errors first, one sentence a line; only errors where only those are asked for. */
export function printFindings(
  findings: readonly Finding[],
  severities: readonly Finding["severity"][] = ["error", "warning"],
): void {
  for (const severity of severities) {
    for (const finding of findings) {
      if (finding.severity === severity) console.error(`${severity}: ${finding.sentence}`);
    }
  }
}
