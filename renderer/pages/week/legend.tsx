import { For, type JSX } from "solid-js";
import { FamilyMark } from "../../components/family-mark.tsx";
import type { WeekState } from "./week-state.ts";

const PIECES = [
  ["change", "changeover"],
  ["work", "set-up or unload"],
  ["print", "print"],
  ["wait", "waits to be taken off"],
  ["unstaffed", "nobody there"],
  ["shut", "works shut"],
  ["service", "out of service"],
] as const;

const SIGNS = [
  ["◇", "due"],
  ["▼", "late until here"],
  ["◥", "late build"],
  ["●", "committed"],
  ["▶", "running"],
  ["⚲", "pinned"],
] as const;

/** What shades, hatches and signs of the picture mean. */
export function Legend(props: { readonly week: WeekState }): JSX.Element {
  const used = () => {
    const families = new Set([...props.week.picture().byId.values()].map(({ mark }) => mark.family));
    return props.week.picture().marks.filter(({ family }) => families.has(family));
  };
  return (
    <details class="week-legend">
      <summary>What the picture shows</summary>
      <ul>
        <For each={used()}>
          {(mark) => (
            <li>
              <FamilyMark mark={mark} name={mark.family} />
            </li>
          )}
        </For>
        <For each={PIECES}>
          {([look, words]) => (
            <li>
              <i class={`week-swatch ${look}`} aria-hidden="true" />
              {words}
            </li>
          )}
        </For>
        <For each={SIGNS}>
          {([sign, words]) => (
            <li>
              <span class="week-sign" aria-hidden="true">
                {sign}
              </span>
              {words}
            </li>
          )}
        </For>
      </ul>
    </details>
  );
}
