import type { Mesh } from "../core/geometry/mesh.ts";
import type { QuoteContext } from "../core/report/quote-facts.ts";
import { quoteSheet } from "../core/report/quote-sheet.ts";
import { type OutFile, writeFiles } from "./out-folder.ts";
import type { QuoteCall } from "./quote-call.ts";

/** Writes the customer's sheet, the internal one where it is asked for, and the quote with its answer. */
export async function writeQuoteFiles(
  { outDir, internal, json }: QuoteCall,
  context: QuoteContext,
  meshes: ReadonlyMap<string, Mesh>,
): Promise<void> {
  if (outDir === null) return;
  const { quote, answer } = context;
  const inside = internal
    ? [{ name: "quote-internal.html", text: quoteSheet(context, "inside", meshes) }]
    : [];
  const files: OutFile[] = [
    { name: "quote.html", text: quoteSheet(context, "customer", meshes) },
    ...inside,
    { name: "quote.json", text: JSON.stringify({ quote, answer }, null, 2) },
  ];
  await writeFiles(outDir, files);
  if (!json) console.log(`\nWritten to ${outDir}: ${files.map(({ name }) => name).join(", ")}`);
}
