import { EXIT, UsageError } from "./exit-status.ts";
import { type MeasuredFile, measuredDocument, measuredLines, measureFile } from "./measure-file.ts";
import { measureShop } from "./measure-shop.ts";
import { printFindings } from "./print-findings.ts";
import { readWords } from "./read-words.ts";
import { unitOf } from "./unit-word.ts";

/**
 * `measure FILE... [--unit U] [--json]`: what each mesh file measures, and what is odd about it; a bad file does not keep the
 * others from being measured. Status 0, or 2 where one cannot be used. `measure --shop SHOP.json` measures the parts of a shop
 * anew.
 */
export async function measureCommand(words: string[]): Promise<number> {
  const { values, positionals } = readWords(words, OPTIONS);
  if (values.shop !== undefined) {
    if (positionals.length === 0 && values.unit === undefined && !values.json)
      return measureShop(values.shop);
    throw new UsageError(
      "measure --shop takes one shop file and nothing else: the shop knows files and units",
    );
  }
  if (positionals.length === 0) throw new UsageError("measure needs a mesh file");
  const unit = unitOf(values.unit);
  const measured: MeasuredFile[] = [];
  for (const path of positionals) {
    const file = await measureFile(path, unit);
    measured.push(file);
    printFindings(file.findings);
    if (!values.json && file.facts) console.log(`${measuredLines(file).join("\n")}\n`);
  }
  if (values.json) console.log(JSON.stringify(measured.map(measuredDocument), null, 2));
  return measured.some(isBad) ? EXIT.badInput : EXIT.planned;
}

function isBad({ facts, findings }: MeasuredFile): boolean {
  return !facts || findings.some(({ severity }) => severity === "error");
}

const OPTIONS = { unit: { type: "string" }, json: { type: "boolean" }, shop: { type: "string" } } as const;
