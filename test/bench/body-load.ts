import { readFileSync } from "node:fs";
import { measureBody } from "../../core/geometry/measure.ts";
import { readBody } from "../../core/geometry/read-body.ts";

/**
 * Started as a process of its own for each file: reads and measures it, first as the first thing it does, then some times
 * more, as a window that stays open does. Tells the times and the most memory held after the first.
 */
const [file = ""] = process.argv.slice(2);
const bytes = readFileSync(file);

function load() {
  const startMs = performance.now();
  const reading = readBody(bytes, { fileName: file, unit: "millimeter" });
  const readMs = performance.now() - startMs;
  if (reading.mesh === null) throw new Error(reading.findings[0]?.sentence);
  const { closed } = measureBody(reading.mesh);
  return { readMs, measureMs: performance.now() - startMs - readMs, closed };
}

const first = load();
const mostMb = process.resourceUsage().maxRSS / 1024;
const again = [1, 2, 3].map(load).map(({ readMs, measureMs }) => readMs + measureMs);
console.log(JSON.stringify({ ...first, mostMb, againMs: Math.min(...again) }));
