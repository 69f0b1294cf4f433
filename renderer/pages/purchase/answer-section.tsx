import { createUniqueId, type JSX } from "solid-js";

interface SectionProps {
  readonly title: string;
  readonly children: JSX.Element;
}

/** One part of the answer under its heading. */
export function AnswerSection(props: SectionProps): JSX.Element {
  const id = createUniqueId();
  return (
    <section class="panel answer-section" aria-labelledby={id}>
      <h3 id={id}>{props.title}</h3>
      {props.children}
    </section>
  );
}
