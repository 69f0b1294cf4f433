import type { LengthUnit } from "../core/geometry/length-unit.ts";
import { UsageError } from "./exit-status.ts";
import { readWords } from "./read-words.ts";
import { unitOf } from "./unit-word.ts";

/** The words of one `routes` call, checked. */
export interface RoutesCall {
  readonly path: string;
  /** id of a part of the shop, or a mesh file; none: every part */
  readonly part: string | null;
  /** copies wanted; none: the largest order of the part */
  readonly quantity: number | null;
  readonly unit: LengthUnit | null;
  /** true: feedstocks in the other form too */
  readonly all: boolean;
  /** true: layer times of the best route */
  readonly profile: boolean;
  readonly machineId: string | null;
  readonly svg: string | null;
}

const MOST_COPIES = 100_000;

/** Reads the words after `routes`. Throws a UsageError that says which word does not fit. */
export function readRoutesCall(words: string[]): RoutesCall {
  const { values, positionals } = readWords(words, OPTIONS);
  const [path, ...more] = positionals;
  if (!path || more.length > 0) throw new UsageError("routes needs one shop file");
  const profile = (values.profile ?? false) || values.svg !== undefined;
  if (profile && values.part === undefined)
    throw new UsageError("--profile needs --part: an id or a mesh file");
  if (values.svg?.trim() === "") throw new UsageError("--svg needs the name of the file to write");
  return {
    path,
    part: values.part ?? null,
    quantity: quantityOf(values.quantity),
    unit: unitOf(values.unit),
    all: values.all ?? false,
    profile,
    machineId: values.machine ?? null,
    svg: values.svg ?? null,
  };
}

const OPTIONS = {
  part: { type: "string" },
  quantity: { type: "string" },
  unit: { type: "string" },
  all: { type: "boolean" },
  profile: { type: "boolean" },
  machine: { type: "string" },
  svg: { type: "string" },
} as const;

function quantityOf(text: string | undefined): number | null {
  if (text === undefined) return null;
  const value = text.trim() === "" ? NaN : Number(text);
  if (Number.isInteger(value) && value >= 1 && value <= MOST_COPIES) return value;
  throw new UsageError(`--quantity takes a whole number from 1 to ${MOST_COPIES}, not "${text}"`);
}
