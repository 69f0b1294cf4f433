/**
 * Writes assets/demo.shop.json: an invented works with invented customers, parts, grades and prices, so that a planned week
 * shows the trade-offs between filament and pellet machines; and assets/demo.case.json, an invented purchase case for it. Nothing in it describes a real works, product or price list.
 * Run with `npx tsx assets/make-demo.ts`; the same seed writes the same file.
 */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { demoCase } from "./demo/purchase-case.ts";
import { demoShop } from "./demo/works.ts";

const shop = demoShop();
write("demo.shop.json", shop);
write("demo.case.json", demoCase(shop));

function write(name: string, document: object): void {
  const path = fileURLToPath(new URL(name, import.meta.url));
  writeFileSync(path, `${JSON.stringify(document, null, 2)}\n`);
  console.log(`wrote ${path}`);
}
