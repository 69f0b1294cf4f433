import { type ParseArgsConfig, parseArgs } from "node:util";
import { UsageError } from "./exit-status.ts";

/** The words of one call by their names, the others in order. Throws a UsageError that names a word that does not fit. */
export function readWords<const Options extends NonNullable<ParseArgsConfig["options"]>>(
  words: string[],
  options: Options,
) {
  try {
    return parseArgs({ args: words, allowPositionals: true, options });
  } catch (error) {
    throw new UsageError((error as Error).message);
  }
}
