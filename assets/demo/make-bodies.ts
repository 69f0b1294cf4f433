/**
 * Writes assets/bodies/: the mesh files of the demo shop's parts, all invented, made from the few lines each in `bodies/`.
 * Run with `npx tsx assets/demo/make-bodies.ts`; the same script writes the same files. Then `npx tsx assets/make-demo.ts`.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { BODIES } from "./bodies/all-bodies.ts";

const folder = fileURLToPath(new URL("../bodies/", import.meta.url));
mkdirSync(folder, { recursive: true });
let size = 0;
for (const { file, bytes } of BODIES) {
  const content = bytes();
  size += content.length;
  writeFileSync(`${folder}${file}`, content);
}
console.log(`wrote ${BODIES.length} files, ${Math.round(size / 1000)} kB, to ${folder}`);
