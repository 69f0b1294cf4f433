import type { JSX } from "solid-js";
import { shortText } from "../../core/report/plain-text.ts";

/** More than any column shows; the rest of a longer name is in its editor. */
const MOST_CHARS = 200;

/** A name that a person typed as one line of plain text: cut where it is too long, unable to turn or stretch what is around it. */
export function NameText(props: { readonly text: string; readonly most?: number }): JSX.Element {
  const shown = (): string => shortText(props.text, props.most ?? MOST_CHARS);
  return (
    <bdi class="name" dir="auto" title={shown()}>
      {shown()}
    </bdi>
  );
}
