import type { Finding } from "../core/shop/finding.ts";

/** Prints findings on standard error, errors first, one sentence a line. */
export function printFindings(findings: readonly Finding[]): void {
  for (const severity of ["error", "warning"] as const) {
    for (const finding of findings) {
      if (finding.severity === severity) console.error(`${severity}: ${finding.sentence}`);
    }
  }
}
