import { writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { type BenchCall, type BenchRow, atLeast } from "./bench-row.ts";
import { asMarkdown, asText, type BenchTable } from "./results-file.ts";

interface Bench {
  readonly name: string;
  readonly title: string;
  /** imported when it is its turn, so that one bench does not warm or fill the memory of another */
  readonly run: (call: BenchCall) => Promise<readonly BenchRow[]>;
}

const SECONDS_PER_INSTANCE = 5;

const BENCHES: readonly Bench[] = [
  {
    name: "routes",
    title: "Routes estimated per second",
    run: async () => {
      const { benchRoutes } = await import("./routes-bench.ts");
      return benchRoutes().map(({ name, value, unit, target }) => atLeast(name, value, unit, target));
    },
  },
  {
    name: "bodies",
    title: "Bodies read from STL and 3MF, and measured",
    run: async (call) => (await import("./bodies-bench.ts")).benchBodies(call),
  },
  {
    name: "packing",
    title: "Rectangle packing, published instances (Berkey & Wang 1987; Martello & Vigo 1998)",
    run: async (call) => (await import("./rectangle-packing-bench.ts")).benchRectanglePacking(call),
  },
  {
    name: "assignment",
    title: "Generalized assignment, published instances (OR-Library)",
    run: async (call) => (await import("./gap-rows.ts")).benchAssignment(call),
  },
  {
    name: "tardiness",
    title: "One machine, weighted tardiness (OR-Library; Crauwels, Potts & Van Wassenhove 1998)",
    run: async (call) =>
      (await import("./weighted-tardiness-bench.ts")).benchWeightedTardiness(call, SECONDS_PER_INSTANCE),
  },
  {
    name: "setups",
    title: "One machine, weighted tardiness with sequence-dependent set-ups (Cicirello 2003)",
    run: async (call) =>
      (await import("./weighted-tardiness-setups-bench.ts")).benchWeightedTardinessSetUps(
        call,
        SECONDS_PER_INSTANCE,
      ),
  },
  {
    name: "machines",
    title: "Unrelated machines with sequence-dependent set-ups (Vallada & Ruiz 2011)",
    run: async (call) =>
      (await import("./unrelated-machines-bench.ts")).benchUnrelatedMachines(call, SECONDS_PER_INSTANCE),
  },
  {
    name: "laws",
    title: "Laws on random shops",
    run: async (call) => (await import("./laws-bench.ts")).benchLaws(call),
  },
  {
    name: "demo",
    title: "The demo shop from the command line",
    run: async (call) => (await import("./demo-bench.ts")).benchDemo(call),
  },
  {
    name: "dates",
    title: "Dates by simulation",
    run: async (call) => (await import("./dates-bench.ts")).benchDates(call),
  },
  {
    name: "quotes",
    title: "Quotes against the work of a generated shop",
    run: async (call) => (await import("./quote-bench.ts")).benchQuotes(call),
  },
  {
    name: "plans",
    title: "Planning generated shops",
    run: async (call) => (await import("./plan-bench.ts")).benchPlans(call),
  },
  {
    name: "purchase",
    title: "A purchase case on a generated shop",
    run: async (call) => (await import("./purchase-bench.ts")).benchPurchase(call),
  },
  {
    name: "screen",
    title: "The screen in Chromium, over the browser door",
    run: async (call) => (await import("./screen-bench.ts")).benchScreen(call),
  },
];

const USAGE = `Usage: npm run bench -- [--only NAME] [--quick]; names: ${BENCHES.map(({ name }) => name).join(", ")}`;

const { values } = parseArgs({
  options: { only: { type: "string" }, quick: { type: "boolean", default: false } },
});
const chosen = BENCHES.filter(({ name }) => values.only === undefined || name === values.only);
if (chosen.length === 0) throw new Error(USAGE);

const tables: BenchTable[] = [];
for (const { name, title, run } of chosen) {
  console.log(`\n${name} ...`);
  const rows = await run({ quick: values.quick, say: (text) => console.log(`  ${text}`) });
  tables.push({ title, rows });
  console.log(asText({ title, rows }));
}

const command = ["npm run bench", ...(process.argv.length > 2 ? ["--", ...process.argv.slice(2)] : [])].join(
  " ",
);
const isWhole = values.only === undefined && !values.quick;
if (isWhole) writeFileSync(new URL("RESULTS.md", import.meta.url), asMarkdown(tables, command, new Date()));
console.log(
  isWhole
    ? "\nWritten to test/bench/RESULTS.md."
    : "\nOnly a whole run without --quick writes test/bench/RESULTS.md.",
);
