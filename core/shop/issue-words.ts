import type { z } from "zod";

type Issue = z.core.$ZodIssue;
type RawIssue = z.core.$ZodRawIssue;

/** One thing that does not fit the schema: where, from the root of what was checked, and what is wrong in words. */
export interface Misfit {
  readonly path: readonly (string | number)[];
  readonly words: string;
}

/**
 * Words for an issue to which the schema itself gives none: "is missing", "must be a number, not text".
 * Given to zod as the error map of one check.
 */
export function wordsOfIssue(issue: RawIssue): string {
  switch (issue.code) {
    case "invalid_type":
      return issue.input === undefined
        ? "is missing"
        : `must be ${KIND_WORDS[issue.expected] ?? issue.expected}, not ${shown(issue.input)}`;
    case "invalid_value":
      return issue.input === undefined
        ? "is missing"
        : `must be ${issue.values.map((value) => JSON.stringify(value)).join(" or ")}, not ${shown(issue.input)}`;
    case "too_small":
      return `must be at least ${issue.minimum}`;
    case "too_big":
      return `must be at most ${issue.maximum}`;
    case "unrecognized_keys":
      return `has no field ${issue.keys.map((key) => JSON.stringify(key)).join(", ")}: correct its name or remove it`;
    default:
      return "is not as it should be";
  }
}

/**
 * What is wrong, flat: where a value may have one of several shapes, only the misfits of the shape that it comes closest to.
 */
export function misfitsOf(issues: readonly Issue[]): Misfit[] {
  return issues.flatMap((issue) => {
    if (issue.code !== "invalid_union") return [{ path: issue.path.map(stepOf), words: issue.message }];
    const shapes = issue.errors.map((errors) => misfitsOf(errors));
    return closestShape(shapes).map(({ path, words }) => ({
      path: [...issue.path.map(stepOf), ...path],
      words,
    }));
  });
}

const KIND_WORDS: Readonly<Record<string, string>> = {
  number: "a number",
  int: "a whole number",
  string: "text",
  boolean: "true or false",
  array: "a list in [ ]",
  object: "a record in { }",
};

/** The shape with the right kind of value and the right `kind` field; among those, the one with the fewest misfits. */
function closestShape(shapes: readonly Misfit[][]): readonly Misfit[] {
  const distance = (shape: readonly Misfit[]): number =>
    shape.length + (shape.some(({ path }) => path.length === 0 || path.at(-1) === "kind") ? FAR : 0);
  return shapes.toSorted((a, b) => distance(a) - distance(b))[0] ?? [];
}

const FAR = 1000;

function stepOf(step: PropertyKey): string | number {
  return typeof step === "number" ? step : String(step);
}

const LONGEST_SHOWN = 40;

function shown(value: unknown): string {
  if (value === null) return "null";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object") return "a record";
  if (typeof value === "string") {
    const text = value.length > LONGEST_SHOWN ? `${value.slice(0, LONGEST_SHOWN)}...` : value;
    return `the text ${JSON.stringify(text)}`;
  }
  if (value === Infinity || value === -Infinity) return "a number too large to hold";
  return String(value);
}
