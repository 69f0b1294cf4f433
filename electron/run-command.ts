import { EXIT, UsageError } from "./exit-status.ts";

type Command = (words: string[]) => Promise<number>;

/** Each command is loaded only when it is asked for: nobody who plans waits for what measures bodies. */
const COMMANDS: Readonly<Record<string, () => Promise<Command>>> = {
  demo: async () => (await import("./demo-command.ts")).demoCommand,
  plan: async () => (await import("./plan-command.ts")).planCommand,
  check: async () => (await import("./check-command.ts")).checkCommand,
  routes: async () => (await import("./routes-command.ts")).routesCommand,
  measure: async () => (await import("./measure-command.ts")).measureCommand,
  quote: async () => (await import("./quote-command.ts")).quoteCommand,
  purchase: async () => (await import("./purchase-command.ts")).purchaseCommand,
  schema: async () => (await import("./schema-command.ts")).schemaCommand,
};

const USAGE = `Usage:
  npm run demo                                     plans the demo shop into demo-week/
  npm run plan   -- SHOP.json [--from DATE] [--days N] [--seconds N] [--seed N] [--gap PCT] [--out DIR] [--json] [--quiet]
  npm run check  -- SHOP.json                      what is wrong or odd in a shop file
  npm run routes -- SHOP.json [--part ID|FILE] [--quantity N] [--unit U] [--all] [--profile] [--machine ID] [--svg FILE]
                                                   how each part, or a mesh file, can be made, and why not
  npm run measure -- FILE... [--unit U] [--json]   what mesh files (STL, 3MF) measure, and what is odd about them
  npm run measure -- --shop SHOP.json              measures the mesh files of a shop's parts again
  npm run quote  -- SHOP.json --part ID|FILE --quantity N [--by DATE] [--firm] [--machine ID] [--feedstock ID] [--csv FILE]
                   [--plan PLAN.json] [--from DATE] [--seconds N] [--unit U] [--customer NAME] [--out DIR] [--internal] [--json]
                                                   price and date for parts, against the work already there
  npm run purchase -- SHOP.json --case ID|FILE [--demand FILE.csv] [--weeks N] [--scenarios N] [--quick] [--out DIR] [--json] [--quiet]
                                                   whether another machine, shift or approval is worth its money
  npm run schema -- [shop|plan]                    the JSON Schema of a document
Exit status: 0 planned, 1 planned with late or unplanned orders, 2 bad input, 3 stopped, 70 a fault of the program.`;

/** Runs one command and returns the exit status. */
export async function runCommand(words: readonly string[]): Promise<number> {
  const [name = "", ...rest] = words;
  const load = COMMANDS[name];
  if (!load) {
    console.error(USAGE);
    return EXIT.badInput;
  }
  try {
    const command = await load();
    return await command(rest);
  } catch (error) {
    if (error instanceof UsageError) {
      console.error(`${error.message}\n\n${USAGE}`);
      return EXIT.badInput;
    }
    console.error(
      "This is a fault of the program, not of your file; nothing was written. Please report it:",
      error,
    );
    return EXIT.broken;
  }
}
