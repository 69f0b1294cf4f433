import { readFileSync } from "node:fs";
import { measureBody } from "../../core/geometry/measure.ts";
import { readBody } from "../../core/geometry/read-body.ts";

/** Started as a process of its own for each file: reads and measures it once, and tells times and the most memory held. */
const [file = ""] = process.argv.slice(2);
const bytes = readFileSync(file);
const startMs = performance.now();
const reading = readBody(bytes, { fileName: file, unit: "millimeter" });
const readMs = performance.now() - startMs;
if (reading.mesh === null) throw new Error(reading.findings[0]?.sentence);
const measures = measureBody(reading.mesh);
const measureMs = performance.now() - startMs - readMs;
const mostMb = process.resourceUsage().maxRSS / 1024;
console.log(JSON.stringify({ readMs, measureMs, mostMb, closed: measures.closed }));
