import { For, type JSX, Show } from "solid-js";
import { shortText } from "../../../core/report/plain-text.ts";
import type { CellChoice } from "./grid-column.ts";

const MOST_CHOICES = 50;
const MOST_CHARS = 60;

/** Choices whose value or words hold what was typed, those that start with it first. */
export function fittingChoices(choices: readonly CellChoice[], typed: string): CellChoice[] {
  const wanted = typed.trim().toLowerCase();
  const rank = ({ value, label }: CellChoice): number => {
    if (value.toLowerCase().startsWith(wanted)) return 0;
    return label.toLowerCase().startsWith(wanted) ? 1 : 2;
  };
  return choices
    .filter(({ value, label }) => `${value} ${label}`.toLowerCase().includes(wanted))
    .toSorted((a, b) => rank(a) - rank(b))
    .slice(0, MOST_CHOICES);
}

interface ChoiceListProps {
  readonly id: string;
  readonly label: string;
  readonly choices: readonly CellChoice[];
  /** number of the marked one; -1: none */
  readonly marked: number;
  readonly onChoose: (value: string) => void;
}

/** What may be chosen below the field of a cell. The focus stays in the field. */
export function ChoiceList(props: ChoiceListProps): JSX.Element {
  return (
    <ul class="grid-choices" role="listbox" id={props.id} aria-label={`Choices for ${props.label}`}>
      <For each={props.choices}>
        {(choice, place) => (
          <li
            id={`${props.id}-${place()}`}
            role="option"
            aria-selected={props.marked === place()}
            onPointerDown={(event) => {
              event.preventDefault();
              props.onChoose(choice.value);
            }}
          >
            <bdi>{shortText(choice.label, MOST_CHARS)}</bdi>
            <Show when={choice.value !== choice.label && choice.value !== ""}>
              <bdi class="quiet">{shortText(choice.value, MOST_CHARS)}</bdi>
            </Show>
          </li>
        )}
      </For>
    </ul>
  );
}
