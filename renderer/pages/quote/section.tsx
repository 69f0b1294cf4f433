import { createUniqueId, type JSX, Show } from "solid-js";

interface SectionProps {
  readonly title: string;
  /** true: its figures are still being worked out */
  readonly isComing?: boolean;
  readonly isWide?: boolean;
  readonly children: JSX.Element;
}

/** One part of the answer under its heading. */
export function Section(props: SectionProps): JSX.Element {
  const id = createUniqueId();
  return (
    <section
      class="panel quote-section"
      classList={{ "is-wide": props.isWide ?? false }}
      aria-labelledby={id}
    >
      <h2 id={id}>{props.title}</h2>
      <Show when={!props.isComing} fallback={<p class="quiet">Being worked out.</p>}>
        {props.children}
      </Show>
    </section>
  );
}
