import { checkCommand } from "./check-command.ts";
import { demoCommand } from "./demo-command.ts";
import { measureCommand } from "./measure-command.ts";
import { planCommand } from "./plan-command.ts";
import { routesCommand } from "./routes-command.ts";
import { schemaCommand } from "./schema-command.ts";
import { EXIT, UsageError } from "./exit-status.ts";

const COMMANDS: Readonly<Record<string, (words: string[]) => Promise<number>>> = {
  demo: demoCommand,
  plan: planCommand,
  check: checkCommand,
  routes: routesCommand,
  measure: measureCommand,
  schema: schemaCommand,
};

const USAGE = `Usage:
  npm run demo                                     plans the demo shop into demo-week/
  npm run plan   -- SHOP.json [--from DATE] [--days N] [--seconds N] [--seed N] [--gap PCT] [--out DIR] [--json] [--quiet]
  npm run check  -- SHOP.json                      what is wrong or odd in a shop file
  npm run routes -- SHOP.json [--part ID|FILE] [--quantity N] [--unit U] [--all] [--profile] [--machine ID] [--svg FILE]
                                                   how each part, or a mesh file, can be made, and why not
  npm run measure -- FILE... [--unit U] [--json]   what mesh files (STL, 3MF) measure, and what is odd about them
  npm run measure -- --shop SHOP.json              measures the mesh files of a shop's parts again
  npm run schema -- [shop|plan]                    the JSON Schema of a document
Exit status: 0 planned, 1 planned with late or unplanned orders, 2 bad input, 3 stopped, 70 a fault of the program.`;

/** Runs one command and returns the exit status. */
export async function runCommand(words: readonly string[]): Promise<number> {
  const [name = "", ...rest] = words;
  const command = COMMANDS[name];
  if (!command) {
    console.error(USAGE);
    return EXIT.badInput;
  }
  try {
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
