import { For, type JSX } from "solid-js";

export interface KeyValue {
  readonly name: string;
  readonly value: JSX.Element;
}

/** Facts in pairs: what, and how much. */
export function KeyValues(props: { readonly pairs: readonly KeyValue[] }): JSX.Element {
  return (
    <dl class="pairs">
      <For each={props.pairs}>
        {(pair) => (
          <>
            <dt>{pair.name}</dt>
            <dd>{pair.value}</dd>
          </>
        )}
      </For>
    </dl>
  );
}
