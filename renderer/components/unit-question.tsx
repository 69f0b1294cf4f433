import { createSignal, For, type JSX, Show } from "solid-js";
import { type LengthUnit, lengthUnit, MM_PER_UNIT } from "../../core/geometry/length-unit.ts";
import { useStores } from "../store/stores.ts";
import { type UnitQuestion as Question, unitQuestion } from "../store/unit-question.ts";
import "../styles/unit-question.css";
import { Button } from "./button.tsx";
import { Dialog } from "./dialog.tsx";
import { NameText } from "./name-text.tsx";

/** The units that STL files are usually in, by name. */
const UNITS: readonly { readonly unit: LengthUnit; readonly words: string }[] = [
  { unit: "millimeter", words: "millimetres" },
  { unit: "inch", words: "inches" },
  { unit: "centimeter", words: "centimetres" },
  { unit: "meter", words: "metres" },
  { unit: "foot", words: "feet" },
  { unit: "micron", words: "micrometres" },
];
const MOST_FILES = 8;

/** Asks for the unit of files that name none: an STL file holds numbers alone. */
export function UnitQuestion(): JSX.Element {
  return (
    <Show when={unitQuestion()} keyed>
      {(question) => <Ask question={question} />}
    </Show>
  );
}

function Ask(props: { readonly question: Question }): JSX.Element {
  const { format } = useStores();
  const [unit, setUnit] = createSignal<LengthUnit>("millimeter");
  return (
    <Dialog
      title={
        props.question.files.length === 1 ? "Which unit is the file in?" : "Which unit are the files in?"
      }
      isOpen
      onClose={() => props.question.answer(null)}
      foot={
        <>
          <Button onClick={() => props.question.answer(null)}>Cancel</Button>
          <Button look="main" onClick={() => props.question.answer(unit())}>
            Take {props.question.files.length === 1 ? "it" : "them"} so
          </Button>
        </>
      }
    >
      <p>An STL file holds numbers and no unit. Choose the one in which it was saved; the size tells.</p>
      <fieldset class="unit-choices">
        <legend class="unseen">Unit</legend>
        <For each={UNITS}>
          {(choice) => (
            <label class="check">
              <input
                type="radio"
                name="unit"
                value={choice.unit}
                checked={unit() === choice.unit}
                onChange={(event) => setUnit(lengthUnit(event.currentTarget.value) ?? "millimeter")}
              />
              <span>{choice.words}</span>
            </label>
          )}
        </For>
      </fieldset>
      <table class="table">
        <caption class="unseen">Largest side in the chosen unit</caption>
        <thead>
          <tr>
            <th scope="col">File</th>
            <th scope="col" class="num">
              Largest side
            </th>
          </tr>
        </thead>
        <tbody>
          <For each={props.question.files.slice(0, MOST_FILES)}>
            {({ name, largestSide }) => (
              <tr>
                <th scope="row">
                  <NameText text={name} most={60} />
                </th>
                <td class="num">{format().lengthText(largestSide * MM_PER_UNIT[unit()])}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </Dialog>
  );
}
