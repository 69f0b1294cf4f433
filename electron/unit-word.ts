import { type LengthUnit, lengthUnit } from "../core/geometry/length-unit.ts";
import { UsageError } from "./exit-status.ts";

const SHORT: Readonly<Record<string, LengthUnit>> = {
  um: "micron",
  mm: "millimeter",
  cm: "centimeter",
  in: "inch",
  ft: "foot",
  m: "meter",
};

/** The unit that a word after `--unit` names, null where there is none. Throws a UsageError for any other word. */
export function unitOf(word: string | undefined): LengthUnit | null {
  if (word === undefined) return null;
  const unit = SHORT[word] ?? lengthUnit(word);
  if (unit) return unit;
  throw new UsageError(`--unit takes ${Object.keys(SHORT).join(", ")} or the whole word, not "${word}"`);
}
