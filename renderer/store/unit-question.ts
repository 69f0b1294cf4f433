import { createSignal } from "solid-js";
import type { LengthUnit } from "../../core/geometry/length-unit.ts";

/** Files that name no unit, and the largest side of each in their own numbers. */
export interface UnitQuestion {
  readonly files: readonly { readonly name: string; readonly largestSide: number }[];
  readonly answer: (unit: LengthUnit | null) => void;
}

const [question, setQuestion] = createSignal<UnitQuestion | null>(null);

/** What is being asked now; null: nothing. */
export { question as unitQuestion };

/** Asks in which unit files are that name none; null: they are not wanted after all. */
export function askUnit(files: UnitQuestion["files"]): Promise<LengthUnit | null> {
  return new Promise((resolve) => {
    setQuestion({
      files,
      answer: (unit) => {
        setQuestion(null);
        resolve(unit);
      },
    });
  });
}
