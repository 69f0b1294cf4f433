/**
 * Writes assets/demo.shop.json: an invented works with invented customers, parts, grades and prices, so that a planned week
 * shows the trade-offs between filament and pellet machines. Nothing in it describes a real works, product or price list.
 * Run with `npx tsx assets/make-demo.ts`; the same seed writes the same file.
 */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { demoShop } from "./demo/works.ts";

const path = fileURLToPath(new URL("demo.shop.json", import.meta.url));
writeFileSync(path, `${JSON.stringify(demoShop(), null, 2)}\n`);
console.log(`wrote ${path}`);
