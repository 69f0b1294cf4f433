import { countText } from "../core/report/display.ts";
import { EXIT, UsageError } from "./exit-status.ts";
import { printFindings } from "./print-findings.ts";
import { readShopFile } from "./read-shop-file.ts";
import { bodyFileFindings } from "./shop-bodies.ts";

/** `check SHOP.json`: prints every finding. Status 0 without errors, 2 with. */
export async function checkCommand(words: string[]): Promise<number> {
  const [path, ...rest] = words;
  if (!path || rest.length > 0) throw new UsageError("check needs one shop file");
  const file = await readShopFile(path);
  const findings = [...file.findings, ...(file.shop ? await bodyFileFindings(path, file.shop) : [])];
  printFindings(findings);
  const errors = findings.filter((finding) => finding.severity === "error").length;
  const warnings = findings.length - errors;
  console.log(`${countText(errors, "error")}, ${countText(warnings, "warning")} in ${path}`);
  return errors > 0 ? EXIT.badInput : EXIT.planned;
}
